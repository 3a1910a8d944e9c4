package fuelwright.table;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Reads a table from CSV, tolerantly: comma, semicolon or tab; decimal comma; any usual encoding; either orientation; other units of an
 * axis, converted. What is guessed or converted is said as a note. A file that can't be used is refused with line and column of each
 * error, up to {@value Problems#MOST_ERRORS}: ragged lines, breakpoints repeated or not ascending, no numbers, fewer than 2 × 2 or more
 * than 64 × 64 cells, figures that can't be, a quantity or an axis that isn't clear.
 */
public final class TableReader {

    /** Most breakpoints of an axis. */
    public static final int MOST_BREAKPOINTS = 64;

    private static final int MOST_ODD = 5;

    static final String QUANTITY_KEY = "quantity";

    private static final long MOST_BYTES = 4_000_000;

    private TableReader() {}

    public static Loaded<Table> read(Path path) {
        return read(path, TableOptions.none());
    }

    /** A file that can't be opened is refused like one that can't be understood. */
    public static Loaded<Table> read(Path path, TableOptions options) {
        String name = String.valueOf(path.getFileName());
        try {
            if (Files.isDirectory(path)) {
                return Loaded.refused(Issue.error(name, 0, 0, "This is a folder", "Give a table file in it"));
            }
            if (!Files.isRegularFile(path)) {
                return Loaded.refused(Issue.error(name, 0, 0, "There is no such file", "Check the name: " + path));
            }
            if (Files.size(path) > MOST_BYTES) {
                return Loaded.refused(Issue.error(
                        name, 0, 0, "The file is too large for a table", "Check that it isn't a ride: " + path));
            }
            return read(name, Files.readAllBytes(path), options);
        } catch (IOException e) {
            return Loaded.refused(Issue.error(name, 0, 0, "The file can't be read", "Check its permissions: " + path));
        }
    }

    public static Loaded<Table> read(String name, byte[] bytes) {
        return read(name, bytes, TableOptions.none());
    }

    /** @param bytes not modified */
    public static Loaded<Table> read(String name, byte[] bytes, TableOptions options) {
        Problems problems = new Problems(name);
        List<Issue> notes = new ArrayList<>();
        String text = TextDecoder.decode(name, bytes, notes);
        problems.add(notes);
        return read(text, options, problems);
    }

    /** What a table's file holds, whatever its encoding. */
    public static String text(String name, byte[] bytes) {
        return TextDecoder.decode(name, bytes, new ArrayList<>());
    }

    public static Loaded<Table> read(String name, String text) {
        return read(name, text, TableOptions.none());
    }

    public static Loaded<Table> read(String name, String text, TableOptions options) {
        return read(text.startsWith("\uFEFF") ? text.substring(1) : text, options, new Problems(name));
    }

    private static Loaded<Table> read(String text, TableOptions options, Problems problems) {
        Grid grid = Grid.cut(text, problems);
        if (grid.rows.isEmpty()) {
            problems.error(0, 0, "The file holds no table", "It needs a line of breakpoints and the grid below it");
            return Loaded.refused(problems.issues());
        }
        List<Table.Note> notes = new ArrayList<>();
        Optional<QuantityReader.Stated> quantity = notes(grid, notes, options, problems);
        Optional<AxisReader.Axes> axes = axes(grid, options, problems);
        double[][] cells = cells(grid, quantity, problems);
        if (problems.refused() || axes.isEmpty() || quantity.isEmpty()) {
            return Loaded.refused(problems.issues());
        }
        Table table = table(axes.get(), quantity.get().quantity(), cells, notes);
        Plausibility.check(table, problems);
        if (!problems.refused()) {
            oddCells(table, grid, problems);
        }
        return problems.refused() ? Loaded.refused(problems.issues()) : Loaded.of(table, problems.issues());
    }

    private static Optional<QuantityReader.Stated> notes(
            Grid grid, List<Table.Note> notes, TableOptions options, Problems problems) {
        Optional<QuantityReader.Stated> stated = Optional.empty();
        int statedAt = 0;
        for (Grid.Remark remark : grid.remarks) {
            int colon = remark.text().indexOf(':');
            String key = colon < 0 ? "" : remark.text().substring(0, colon).strip();
            String value = remark.text().substring(colon + 1);
            if (!key.equalsIgnoreCase(QUANTITY_KEY)) {
                notes.add(new Table.Note(key, value));
                checkCylinder(notes.get(notes.size() - 1), remark.line(), problems);
            } else if (statedAt > 0) {
                problems.error(
                        remark.line(), 0, "The quantity was already given in line " + statedAt, "Keep one of them");
            } else {
                statedAt = remark.line();
                stated = options.quantity().isPresent() && !QuantityReader.isKnown(value)
                        ? QuantityReader.told(options.quantity().get(), value, remark.line(), problems)
                        : QuantityReader.read(value, remark.line(), problems);
            }
        }
        if (statedAt == 0 && options.quantity().isPresent()) {
            return options.quantity().map(q -> new QuantityReader.Stated(q, 1));
        }
        if (statedAt == 0) {
            problems.error(
                    1,
                    0,
                    "Nothing says what the cells hold",
                    "Add a first line '# quantity: …', with one of these: " + QuantityReader.choices());
        }
        return stated;
    }

    private static void checkCylinder(Table.Note note, int line, Problems problems) {
        if (note.key().equalsIgnoreCase(Table.CYLINDER)
                && !Table.CYLINDERS.matcher(note.value()).matches()) {
            problems.error(
                    line,
                    0,
                    "The cylinder '" + note.value() + "' isn't a number from 1 to " + Table.MOST_CYLINDERS,
                    "Write the number of its mixture sensor in the ride, counted from the left; leave the line out if the table feeds all cylinders");
        }
    }

    private static Optional<AxisReader.Axes> axes(Grid grid, TableOptions options, Problems problems) {
        Grid.Row head = grid.rows.get(0);
        int columnCount = head.fields().size() - 1;
        int rowCount = grid.rows.size() - 1;
        if (columnCount < 2 || rowCount < 2) {
            problems.error(
                    head.line(),
                    0,
                    "The grid has " + Math.max(rowCount, 0) + " × " + Math.max(columnCount, 0) + " cells",
                    "A table needs at least 2 × 2");
            return Optional.empty();
        }
        if (columnCount > MOST_BREAKPOINTS || rowCount > MOST_BREAKPOINTS) {
            problems.error(
                    head.line(),
                    0,
                    "The grid has " + rowCount + " × " + columnCount + " cells",
                    "At most 64 × 64 can be used");
            return Optional.empty();
        }
        double[] columns = new double[columnCount];
        double[] rows = new double[rowCount];
        Breakpoints across = new Breakpoints(grid.decimalComma(), problems);
        for (int j = 0; j < columnCount; j++) {
            columns[j] = across.next(head.fields().get(j + 1), head.line(), j + 2);
        }
        Breakpoints down = new Breakpoints(grid.decimalComma(), problems);
        for (int i = 0; i < rowCount; i++) {
            Grid.Row row = grid.rows.get(i + 1);
            rows[i] = down.next(row.fields().get(0), row.line(), 1);
        }
        if (across.failed() || down.failed()) {
            return Optional.empty();
        }
        return AxisReader.read(head.fields().get(0), head.line(), rows, columns, options, problems);
    }

    private static double[][] cells(Grid grid, Optional<QuantityReader.Stated> quantity, Problems problems) {
        int width = grid.rows.get(0).fields().size();
        double[][] cells = new double[grid.rows.size() - 1][width - 1];
        for (int i = 0; i < cells.length; i++) {
            Grid.Row row = grid.rows.get(i + 1);
            int fields = row.fields().size();
            if (fields != width) {
                problems.error(
                        row.line(),
                        Math.min(fields, width) + 1,
                        "This line has " + fields + " fields, the line of breakpoints has " + width,
                        fields < width ? "Add the missing cells" : "Remove what is too much");
            }
            for (int j = 1; j < Math.min(fields, width); j++) {
                cells[i][j - 1] = cell(row, j, grid.decimalComma(), quantity, problems);
            }
        }
        return cells;
    }

    private static double cell(
            Grid.Row row, int index, boolean comma, Optional<QuantityReader.Stated> quantity, Problems problems) {
        String text = row.fields().get(index);
        OptionalDouble number = Numerals.parse(text, comma);
        if (number.isEmpty()) {
            Breakpoints.reportNoNumber(text, row.line(), index + 1, comma, problems);
            return Double.NaN;
        }
        if (quantity.isEmpty()) {
            return number.getAsDouble();
        }
        double scale = quantity.get().scale();
        double value = scale == 1 ? number.getAsDouble() : Numerals.tidy(number.getAsDouble() * scale);
        Quantity held = quantity.get().quantity();
        QuantityReader.objection(held, value)
                .ifPresent(why -> problems.error(
                        row.line(), index + 1, held.words() + " " + text + " " + why, "Correct the cell"));
        return value;
    }

    private static void oddCells(Table table, Grid grid, Problems problems) {
        List<OddCells.Odd> odd = OddCells.of(table);
        boolean speedDown = table.orientation() == Table.Orientation.SPEED_DOWN;
        for (OddCells.Odd each : odd.subList(0, Math.min(odd.size(), MOST_ODD))) {
            int speed = table.speedIndex(each.cell());
            int load = table.loadIndex(each.cell());
            problems.warning(
                    grid.rows.get((speedDown ? speed : load) + 1).line(),
                    (speedDown ? load : speed) + 2,
                    each.words(table) + " (" + Numerals.shortest(table.speedAt(each.cell())) + " rpm, "
                            + Numerals.shortest(table.loadAt(each.cell())) + " "
                            + table.load().kind().unit().symbol() + ")",
                    "Check that no digit or decimal sign slipped");
        }
        if (odd.size() > MOST_ODD) {
            problems.warning(
                    0,
                    0,
                    odd.size() - MOST_ODD + " more cells stand alone among theirs",
                    "Check that no digit or decimal sign slipped");
        }
    }

    private static Table table(AxisReader.Axes axes, Quantity quantity, double[][] cells, List<Table.Note> notes) {
        boolean speedDown = axes.rows().kind() == Axis.Kind.ENGINE_SPEED;
        Axis speed = speedDown ? axes.rows() : axes.columns();
        Axis load = speedDown ? axes.columns() : axes.rows();
        double[] values = new double[speed.size() * load.size()];
        for (int j = 0; j < load.size(); j++) {
            for (int i = 0; i < speed.size(); i++) {
                values[j * speed.size() + i] = speedDown ? cells[i][j] : cells[j][i];
            }
        }
        return new Table(
                quantity,
                speed,
                load,
                values,
                notes,
                speedDown ? Table.Orientation.SPEED_DOWN : Table.Orientation.SPEED_ACROSS);
    }
}
