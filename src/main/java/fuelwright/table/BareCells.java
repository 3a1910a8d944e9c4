package fuelwright.table;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Cells without headings, as pasted from a grid on a screen: as many rows and columns as a table that is known, nothing but numbers, tabs,
 * semicolons or commas between them. They take that table's breakpoints and quantity, and that is said.
 */
public final class BareCells {

    private BareCells() {}

    /**
     * @param like the table whose cells these are
     * @return empty where the text isn't bare cells of that table's size: then it has headings, or is something else
     */
    public static Optional<Loaded<Table>> read(String name, byte[] bytes, Table like) {
        String text = TextDecoder.decode(name, bytes, new ArrayList<>());
        List<String> lines = text.lines()
                .filter(l -> !l.isBlank() && !l.strip().startsWith("#"))
                .toList();
        if (lines.isEmpty()) {
            return Optional.empty();
        }
        String first = lines.get(0);
        String delimiter = first.indexOf('\t') >= 0 ? "\t" : first.indexOf(';') >= 0 ? ";" : ",";
        boolean decimalComma = !delimiter.equals(",") && text.indexOf('.') < 0 && text.indexOf(',') >= 0;
        double[][] cells = new double[lines.size()][];
        for (int row = 0; row < cells.length; row++) {
            String[] fields = lines.get(row).split(delimiter, -1);
            cells[row] = new double[fields.length];
            for (int column = 0; column < fields.length; column++) {
                OptionalDouble number = Numerals.parse(fields[column], decimalComma);
                if (number.isEmpty()) {
                    return Optional.empty();
                }
                cells[row][column] = number.getAsDouble();
            }
            if (cells[row].length != cells[0].length) {
                return Optional.empty();
            }
        }
        boolean speedDown = like.orientation() == Table.Orientation.SPEED_DOWN;
        if (isShaped(cells, like, speedDown)) {
            return Optional.of(table(name, cells, like, speedDown));
        }
        return isShaped(cells, like, !speedDown) ? Optional.of(table(name, cells, like, !speedDown)) : Optional.empty();
    }

    private static boolean isShaped(double[][] cells, Table like, boolean speedDown) {
        int rows = speedDown ? like.speed().size() : like.load().size();
        int columns = speedDown ? like.load().size() : like.speed().size();
        return cells.length == rows && cells[0].length == columns;
    }

    private static Loaded<Table> table(String name, double[][] cells, Table like, boolean speedDown) {
        double[] values = new double[like.cells()];
        for (int c = 0; c < values.length; c++) {
            int i = like.speedIndex(c);
            int j = like.loadIndex(c);
            values[c] = speedDown ? cells[i][j] : cells[j][i];
        }
        String rows =
                speedDown ? like.speed().kind().words() : like.load().kind().words();
        Issue said = Issue.warning(
                name,
                0,
                0,
                "There are no breakpoints in it: those of the table that was meant are taken, one row for each "
                        + rows
                        + ", in its order",
                "Paste the headings too if the hardware lays its grid out in another order");
        return Loaded.of(like.withValues(values), List.of(said));
    }
}
