package fuelwright.estimate;

import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealVector;

/**
 * How far each cell of a table stands out from the smooth surface around it. What an engine needs is mostly smooth, so what stands out in
 * the old table may be its own fault, and then all of it shows up in what the cells need; or it may be right. The rides say which.
 */
final class Unevenness {

    /** Cells across the patch that a cell is compared with. */
    private static final int PATCH = 5;
    /** A parabola in both directions: 1, x, y, x², xy, y². */
    private static final int TERMS = 6;
    /** Cells that stand out by more of the usual than this pull less at their neighbours' patch (Huber). */
    private static final double USUAL = 1.5;

    private Unevenness() {}

    /**
     * ln fuel of each cell less a parabola through the 5 × 5 cells around it, twice: the second time cells that stand out weigh less.
     *
     * @param delivered fuel, greater than 0
     * @return in {@link CellOrder}; zeros for tables that have fewer than five breakpoints on an axis
     */
    static double[] of(Table delivered) {
        if (delivered.speed().size() < PATCH || delivered.load().size() < PATCH) {
            return new double[delivered.cells()];
        }
        double[] weights = new double[delivered.cells()];
        Arrays.fill(weights, 1);
        double[] first = residuals(delivered, weights);
        double[] sizes = Arrays.stream(first).map(Math::abs).sorted().toArray();
        double usual = USUAL * 1.4826 * sizes[sizes.length / 2];
        for (int c = 0; c < weights.length; c++) {
            weights[c] = Math.abs(first[c]) > usual ? usual / Math.abs(first[c]) : 1;
        }
        return new CellOrder(delivered).fromTable(residuals(delivered, weights));
    }

    private static double[] residuals(Table table, double[] weights) {
        double[] left = new double[table.cells()];
        for (int c = 0; c < left.length; c++) {
            left[c] = residual(table, c, weights);
        }
        return left;
    }

    private static double residual(Table table, int cell, double[] weights) {
        int speed = first(table.speedIndex(cell), table.speed().size());
        int load = first(table.loadIndex(cell), table.load().size());
        double[][] rows = new double[PATCH * PATCH][TERMS];
        double[] fuel = new double[rows.length];
        for (int k = 0; k < rows.length; k++) {
            int c = table.cell(load + k / PATCH, speed + k % PATCH);
            double x = place(table.speed(), table.speedIndex(c)) - place(table.speed(), table.speedIndex(cell));
            double y = place(table.load(), table.loadIndex(c)) - place(table.load(), table.loadIndex(cell));
            double root = Math.sqrt(weights[c]);
            rows[k] = new double[] {root, root * x, root * y, root * x * x, root * x * y, root * y * y};
            fuel[k] = root * Math.log(table.at(c));
        }
        RealVector parabola = new QRDecomposition(new Array2DRowRealMatrix(rows, false))
                .getSolver()
                .solve(new ArrayRealVector(fuel, false));
        return Math.log(table.at(cell)) - parabola.getEntry(0);
    }

    /** First index of the patch around an index, inside the axis. */
    private static int first(int index, int size) {
        return Math.max(0, Math.min(size - PATCH, index - PATCH / 2));
    }

    private static double place(Axis axis, int index) {
        return SmoothPrior.coordinate(axis.kind(), axis.at(index));
    }
}
