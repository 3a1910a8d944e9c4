package fuelwright.handover;

import fuelwright.table.Numerals;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * The line above a table of changes that names the cells of which nothing is known. In the grid itself they hold 0, so that it stays a table of
 * numbers; without the line that would read as 'no change needed'.
 */
final class Unknown {

    static final String KEY = "unknown";

    private Unknown() {}

    /** The table with that line, or as it is where every cell is known. */
    static Table noted(Table change, IntPredicate unknown) {
        List<Table.Note> notes = new ArrayList<>(change.notes());
        notes.removeIf(n -> n.key().equalsIgnoreCase(KEY));
        words(change, unknown).ifPresent(w -> notes.add(new Table.Note(KEY, w)));
        return change.withNotes(notes);
    }

    private static Optional<String> words(Table table, IntPredicate unknown) {
        List<String> rows = new ArrayList<>();
        int count = 0;
        for (int load = 0; load < table.load().size(); load++) {
            List<String> speeds = new ArrayList<>();
            for (int speed = 0; speed < table.speed().size(); speed++) {
                if (unknown.test(table.cell(load, speed))) {
                    speeds.add(Numerals.shortest(table.speed().at(speed)));
                }
            }
            if (!speeds.isEmpty()) {
                count += speeds.size();
                rows.add((speeds.size() == table.speed().size() ? "all" : String.join(" ", speeds)) + " rpm at "
                        + Numerals.shortest(table.load().at(load)) + " "
                        + table.load().kind().unit().symbol());
            }
        }
        return count == 0
                ? Optional.empty()
                : Optional.of("0 means that nothing is known there, not that no change is needed: "
                        + (count == table.cells() ? "every cell" : String.join("; ", rows)));
    }
}
