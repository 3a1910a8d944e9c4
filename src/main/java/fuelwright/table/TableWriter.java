package fuelwright.table;

/**
 * Writes a table in the program's own form: notes, corner cell with both axes, comma, decimal point, line feed. What is written reads
 * back as an equal table, and writing that gives the same bytes (in UTF-8).
 */
public final class TableWriter {

    private TableWriter() {}

    /**
     * The file's text. A cell without evidence (NaN) of a table of readings is written as 0.
     *
     * @throws IllegalArgumentException if a cell of another quantity isn't finite
     */
    public static String write(Table table) {
        return write(table, false);
    }

    /**
     * The same in the form that the user's hardware or spreadsheet reads.
     *
     * @param decimalComma comma as decimal sign and semicolon between fields
     */
    public static String write(Table table, boolean decimalComma) {
        char delimiter = decimalComma ? ';' : ',';
        char decimal = decimalComma ? ',' : '.';
        StringBuilder text = new StringBuilder();
        Quantity quantity = table.quantity();
        text.append("# ").append(TableReader.QUANTITY_KEY).append(": ").append(quantity.words());
        text.append(" [").append(quantity.unit()).append("]\n");
        for (Table.Note note : table.notes()) {
            if (!note.key().equalsIgnoreCase(TableReader.QUANTITY_KEY)) {
                text.append(line(note)).append('\n');
            }
        }
        boolean speedDown = table.orientation() == Table.Orientation.SPEED_DOWN;
        Axis rows = speedDown ? table.speed() : table.load();
        Axis columns = speedDown ? table.load() : table.speed();
        text.append(name(rows)).append(" \\ ").append(name(columns));
        for (int column = 0; column < columns.size(); column++) {
            text.append(delimiter).append(Numerals.shortest(columns.at(column)).replace('.', decimal));
        }
        text.append('\n');
        for (int row = 0; row < rows.size(); row++) {
            text.append(Numerals.shortest(rows.at(row)).replace('.', decimal));
            text.append(delimiter).append(row(table, row, delimiter, decimal)).append('\n');
        }
        return text.toString();
    }

    /** The figures alone, tabs between them, one line for each row of the table's orientation. */
    public static String cells(Table table, boolean decimalComma) {
        boolean speedDown = table.orientation() == Table.Orientation.SPEED_DOWN;
        StringBuilder text = new StringBuilder();
        for (int row = 0; row < (speedDown ? table.speed() : table.load()).size(); row++) {
            text.append(row(table, row, '\t', decimalComma ? ',' : '.')).append('\n');
        }
        return text.toString();
    }

    private static String row(Table table, int row, char delimiter, char decimal) {
        boolean speedDown = table.orientation() == Table.Orientation.SPEED_DOWN;
        StringBuilder text = new StringBuilder();
        for (int column = 0; column < (speedDown ? table.load() : table.speed()).size(); column++) {
            int cell = speedDown ? table.cell(column, row) : table.cell(row, column);
            text.append(column == 0 ? "" : String.valueOf(delimiter));
            text.append(figure(table.quantity(), table.at(cell)).replace('.', decimal));
        }
        return text.toString();
    }

    private static String figure(Quantity quantity, double value) {
        return Double.isNaN(value) && quantity == Quantity.READINGS ? "0" : Numerals.shortest(value);
    }

    private static String name(Axis axis) {
        return axis.kind().words() + " [" + axis.kind().unit().symbol() + "]";
    }

    private static String line(Table.Note note) {
        if (note.key().isEmpty()) {
            return note.value().isEmpty() ? "#" : "# " + note.value();
        }
        return "# " + note.key() + ":" + (note.value().isEmpty() ? "" : " " + note.value());
    }
}
