package fuelwright.table;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Figures as another program puts them on the clipboard: rows of cells between tabs (or semicolons), with or without a row and a column of
 * breakpoints. There are breakpoints where the first cell is empty or no number. Commas are decimal commas where no cell has a point.
 * Each cell that is no number is an error of its own, with its line and column. Immutable.
 */
public final class Pasted {

    private static final int MOST_SAID = 8;

    private final List<List<Double>> rows;
    private final boolean headed;

    private Pasted(List<List<Double>> rows, boolean headed) {
        this.rows = rows;
        this.headed = headed;
    }

    /** Reads it; refused with an error for each cell that can't be used. */
    public static Loaded<Pasted> read(String text) {
        List<List<String>> cells = cut(text);
        List<Issue> issues = new ArrayList<>();
        if (cells.isEmpty()) {
            return Loaded.refused(List.of(problem(0, 0, "There are no figures on the clipboard", "Copy cells first")));
        }
        boolean decimalComma = cells.stream().flatMap(List::stream).anyMatch(c -> c.matches("[^,]*\\d,\\d[^,]*|,\\d+"))
                && cells.stream().flatMap(List::stream).noneMatch(c -> c.matches("[+\u2212-]?\\d*\\.\\d+"));
        boolean headed = cells.size() > 1
                && cells.get(0).size() > 1
                && Numerals.parse(cells.get(0).get(0), decimalComma).isEmpty();
        int width = cells.get(0).size();
        List<List<Double>> rows = new ArrayList<>();
        for (int row = 0; row < cells.size(); row++) {
            List<String> line = cells.get(row);
            if (line.size() != width) {
                issues.add(problem(
                        row + 1,
                        0,
                        "Row " + (row + 1) + " has " + line.size() + " cells where the first has " + width,
                        "Copy a rectangle"));
            }
            List<Double> figures = new ArrayList<>();
            for (int column = 0; column < line.size(); column++) {
                boolean corner = headed && row == 0 && column == 0;
                OptionalDouble figure = Numerals.parse(line.get(column), decimalComma);
                if (figure.isEmpty() && !corner) {
                    issues.add(noNumber(row, column, line.get(column)));
                }
                figures.add(figure.orElse(0));
            }
            rows.add(List.copyOf(figures));
        }
        return issues.isEmpty()
                ? Loaded.of(new Pasted(List.copyOf(rows), headed), List.of())
                : Loaded.refused(few(issues));
    }

    private static Issue noNumber(int row, int column, String text) {
        String place = "Row " + (row + 1) + ", column " + (column + 1) + ": ";
        return text.isEmpty()
                ? problem(
                        row + 1,
                        column + 1,
                        place + "the cell is empty",
                        "A table has no empty cell; copy one with figures")
                : problem(row + 1, column + 1, place + "'" + text + "' is no number", "Write a number there");
    }

    private static List<Issue> few(List<Issue> issues) {
        if (issues.size() <= MOST_SAID) {
            return issues;
        }
        List<Issue> first = new ArrayList<>(issues.subList(0, MOST_SAID));
        first.add(problem(0, 0, "… and " + (issues.size() - MOST_SAID) + " more cells", "Copy figures only"));
        return first;
    }

    private static Issue problem(int line, int column, String what, String todo) {
        return Issue.error("", line, column, what, todo);
    }

    private static List<List<String>> cut(String text) {
        String delimiter = text.indexOf('\t') >= 0 ? "\t" : ";";
        List<List<String>> rows = new ArrayList<>();
        for (String line : text.split("\r\n|\r|\n", -1)) {
            if (line.startsWith("#")) {
                continue;
            }
            List<String> cells = new ArrayList<>();
            for (String cell : line.split(delimiter, -1)) {
                String stripped = Numerals.strip(cell);
                boolean quoted = stripped.length() > 1 && stripped.startsWith("\"") && stripped.endsWith("\"");
                cells.add(quoted ? Numerals.strip(stripped.substring(1, stripped.length() - 1)) : stripped);
            }
            rows.add(cells);
        }
        while (!rows.isEmpty() && rows.get(rows.size() - 1).equals(List.of(""))) {
            rows.remove(rows.size() - 1);
        }
        return rows;
    }

    /** Whether breakpoints stand above and beside the figures. */
    public boolean isHeaded() {
        return headed;
    }

    /** Rows of figures, breakpoints not counted. */
    public int rowCount() {
        return rows.size() - (headed ? 1 : 0);
    }

    /** Columns of figures, breakpoints not counted. */
    public int columnCount() {
        return rows.get(0).size() - (headed ? 1 : 0);
    }

    public double at(int row, int column) {
        int shift = headed ? 1 : 0;
        return rows.get(row + shift).get(column + shift);
    }

    /** The breakpoint above a column. */
    public double columnHead(int column) {
        return rows.get(0).get(column + 1);
    }

    /** The breakpoint beside a row. */
    public double rowHead(int row) {
        return rows.get(row + 1).get(0);
    }

    /**
     * The table with these figures at the cells that the breakpoints name, whichever axis lies across.
     *
     * @throws IllegalArgumentException with a sentence for the user, where a breakpoint isn't one of the table's
     * @throws IllegalStateException if there are no breakpoints
     */
    public Table into(Table table) {
        if (!headed) {
            throw new IllegalStateException("no breakpoints");
        }
        boolean speedAcross = columnHeads(table.speed()) && rowHeads(table.load());
        boolean loadAcross = columnHeads(table.load()) && rowHeads(table.speed());
        if (!speedAcross && !loadAcross) {
            throw new IllegalArgumentException(
                    "The breakpoints that were copied aren't this table's. Copy without them, or make"
                            + " the axes the same first");
        }
        double[] values = table.toArray();
        for (int row = 0; row < rowCount(); row++) {
            for (int column = 0; column < columnCount(); column++) {
                int cell = speedAcross
                        ? table.cell(index(table.load(), rowHead(row)), index(table.speed(), columnHead(column)))
                        : table.cell(index(table.load(), columnHead(column)), index(table.speed(), rowHead(row)));
                values[cell] = at(row, column);
            }
        }
        return table.withValues(values);
    }

    private boolean columnHeads(Axis axis) {
        for (int column = 0; column < columnCount(); column++) {
            if (index(axis, columnHead(column)) < 0) {
                return false;
            }
        }
        return true;
    }

    private boolean rowHeads(Axis axis) {
        for (int row = 0; row < rowCount(); row++) {
            if (index(axis, rowHead(row)) < 0) {
                return false;
            }
        }
        return true;
    }

    private static int index(Axis axis, double value) {
        int nearest = axis.nearest(value);
        return Math.abs(axis.at(nearest) - value) <= 1e-6 * Math.max(1, Math.abs(value)) ? nearest : -1;
    }
}
