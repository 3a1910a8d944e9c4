package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.table.Numerals;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Whether the cells of a fuel table can be corrected by a factor at all. */
final class FuelCells {

    private static final int MOST_NAMED = 5;

    private FuelCells() {}

    /**
     * What stands in the way: a pulse table of which it isn't known whether it contains the dead time, or cells that deliver nothing.
     *
     * @param file the name as the user knows it
     * @param deadTimeMs empty where the user hasn't said
     */
    static List<Issue> objections(String file, Table table, OptionalDouble deadTimeMs) {
        List<Issue> issues = new ArrayList<>();
        if (table.quantity() == Quantity.INJECTOR_PULSE && deadTimeMs.isEmpty()) {
            issues.add(Issue.error(
                    file,
                    0,
                    0,
                    "these are injector pulses, and whether they contain the dead time can't be seen",
                    "Give the dead time of the injectors, 0 if the pulses don't contain it (--dead-time MS)"));
            return issues;
        }
        if (!table.quantity().isFuel()) {
            return issues;
        }
        double dead = deadTimeMs.orElse(0);
        for (int cell = 0; cell < table.cells() && issues.size() < MOST_NAMED; cell++) {
            if (!(table.quantity().delivered(table.at(cell), dead) > 0)) {
                issues.add(Issue.error(
                        file,
                        0,
                        0,
                        "the cell at " + Numerals.shortest(table.speedAt(cell)) + " rpm, "
                                + Numerals.shortest(table.loadAt(cell)) + " "
                                + table.load().kind().unit().symbol() + " holds " + Numerals.shortest(table.at(cell))
                                + " " + table.quantity().unit() + ", which delivers no fuel"
                                + (dead > 0 ? " with a dead time of " + Numerals.shortest(dead) + " ms" : ""),
                        "Correct the cell" + (dead > 0 ? ", or the dead time" : "")));
            }
        }
        return issues;
    }
}
