package fuelwright.handover;

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

    private static final String KEY = "forecast";
    private static final int DECIMALS = 4;

    private ForecastFiles() {}

    /** File contents by name, the table itself last. */
    public static Map<String, byte[]> of(Table after, Table change, Table uncertainty, String remark) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put(Exports.UNCERTAINTY, bytes(rounded(uncertainty), remark));
        files.put(Exports.CHANGE, bytes(rounded(change), remark));
        files.put(FIRST_RIDE, bytes(after, remark));
        return files;
    }

    private static byte[] bytes(Table table, String remark) {
        List<Table.Note> notes = new ArrayList<>(table.notes());
        notes.removeIf(n -> n.key().equalsIgnoreCase(KEY));
        notes.add(new Table.Note(KEY, remark));
        return TableWriter.write(table.withNotes(notes)).getBytes(StandardCharsets.UTF_8);
    }

    private static Table rounded(Table table) {
        double[] cells = table.toArray();
        for (int c = 0; c < cells.length; c++) {
            cells[c] = Figures.rounded(cells[c], DECIMALS);
        }
        return table.withValues(cells);
    }
}
