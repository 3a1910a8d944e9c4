package fuelwright.handover;

import fuelwright.job.PartGain;
import fuelwright.safety.Caution;
import fuelwright.table.Table;
import fuelwright.table.TableWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The files of a first-ride table. */
public final class ForecastFiles {

    public static final String FIRST_RIDE = "first-ride.csv";

    private static final String KEY = PartGain.FORECAST;
    private static final String CARRIED = "carried-stop";
    private static final int DECIMALS = 4;

    private ForecastFiles() {}

    /** File contents by name, the table itself last. Every table carries the Stop cautions among {@code cautions}. */
    public static Map<String, byte[]> of(
            Table after, Table change, Table uncertainty, String remark, List<Caution> cautions) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        List<Table.Note> stops = stops(after, cautions);
        files.put(Exports.UNCERTAINTY, bytes(rounded(uncertainty), remark, stops));
        files.put(Exports.CHANGE, bytes(marked(change), remark, stops));
        files.put(FIRST_RIDE, bytes(after, remark, stops));
        return files;
    }

    /**
     * The Stop cautions that go with the table: those that it came with, since a forecast has measured nothing that could lift them, and
     * those of today. That it came with some isn't noted as one more: it would pile up.
     */
    private static List<Table.Note> stops(Table after, List<Caution> cautions) {
        List<Table.Note> notes = new ArrayList<>(after.notes());
        notes.removeIf(n -> !n.key().equalsIgnoreCase(StopNotes.KEY));
        cautions.stream()
                .filter(c -> c.isStop() && !c.rule().equals(CARRIED))
                .map(c -> new Table.Note(StopNotes.KEY, StopNotes.text(c)))
                .filter(n -> !notes.contains(n))
                .forEach(notes::add);
        return notes;
    }

    private static byte[] bytes(Table table, String remark, List<Table.Note> stops) {
        List<Table.Note> notes = new ArrayList<>(table.notes());
        notes.removeIf(n -> n.key().equalsIgnoreCase(KEY) || n.key().equalsIgnoreCase(StopNotes.KEY));
        notes.add(new Table.Note(KEY, remark));
        notes.addAll(stops);
        return TableWriter.write(table.withNotes(notes)).getBytes(StandardCharsets.UTF_8);
    }

    /** A forecast that asks for nothing has measured nothing: such a cell is left alone because nothing is known. */
    private static Table marked(Table change) {
        return Unknown.noted(rounded(change), c -> Math.abs(change.at(c)) < CellLook.NO_CHANGE_PERCENT);
    }

    private static Table rounded(Table table) {
        double[] cells = table.toArray();
        for (int c = 0; c < cells.length; c++) {
            cells[c] = Figures.rounded(cells[c], DECIMALS);
        }
        return table.withValues(cells);
    }
}
