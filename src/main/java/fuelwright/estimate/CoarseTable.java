package fuelwright.estimate;

import fuelwright.table.Axis;
import fuelwright.table.Bilinear;
import fuelwright.table.Table;

/**
 * A large table with fewer breakpoints. Delay, lag, noise and smoothness are found on it, since they don't hang on how finely a table is
 * divided; the fine table's fit starts from the coarse one's. What costs is the factor of a band matrix, O(cells · band²), dozens of times.
 */
final class CoarseTable {

    /** Tables up to so many cells are small enough as they are. */
    private static final int LARGE_CELLS = 1024;
    /** Breakpoints that are left along each axis. */
    private static final int BREAKPOINTS = 16;

    private CoarseTable() {}

    static boolean isNeeded(Table table) {
        return table.cells() > LARGE_CELLS;
    }

    /** Every so many of the breakpoints, first and last among them, with the table's own figures there. */
    static Table of(Table table) {
        int[] columns = kept(table.speed().size());
        int[] rows = kept(table.load().size());
        double[] values = new double[columns.length * rows.length];
        for (int c = 0; c < values.length; c++) {
            values[c] = table.at(table.cell(rows[c / columns.length], columns[c % columns.length]));
        }
        return Table.of(table.quantity(), axis(table.speed(), columns), axis(table.load(), rows), values);
    }

    private static int[] kept(int size) {
        int[] kept = new int[Math.min(size, BREAKPOINTS)];
        for (int i = 0; i < kept.length; i++) {
            kept[i] = (int) Math.round(i * (size - 1.0) / (kept.length - 1));
        }
        return kept;
    }

    private static Axis axis(Axis axis, int[] kept) {
        double[] breakpoints = new double[kept.length];
        for (int i = 0; i < kept.length; i++) {
            breakpoints[i] = axis.at(kept[i]);
        }
        return new Axis(axis.kind(), breakpoints);
    }

    /**
     * Values on the fine table's cells, interpolated.
     *
     * @param values on the coarse table's cells, in {@link CellOrder} as the result is
     */
    static double[] refined(double[] values, Table coarse, Table fine) {
        double[] from = new CellOrder(coarse).toTable(values);
        double[] to = new double[fine.cells()];
        int[] cells = new int[4];
        double[] weights = new double[4];
        for (int c = 0; c < to.length; c++) {
            Bilinear.locate(coarse.speed(), coarse.load(), fine.speedAt(c), fine.loadAt(c), cells, weights);
            for (int k = 0; k < 4; k++) {
                to[c] += weights[k] * from[cells[k]];
            }
        }
        return new CellOrder(fine).fromTable(to);
    }
}
