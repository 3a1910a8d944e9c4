package fuelwright.ui.plot;

import java.util.function.IntToDoubleFunction;

/**
 * First, least, greatest and last of any stretch of a column, without looking at every row: blocks of {@value #BLOCK} rows, and blocks of
 * those. A single spike is seen at every zoom. Missing values (NaN) are passed over. O(log n) a query, built once in O(n). Immutable.
 */
public final class MinMaxPyramid {

    private static final int BLOCK = 16;

    /**
     * What a stretch holds.
     *
     * @param first first value there; NaN where there is none, as are the others
     */
    public record Extent(double first, double min, double max, double last) {
        public boolean isEmpty() {
            return Double.isNaN(first);
        }
    }

    private final IntToDoubleFunction values;
    private final int size;
    private final double[][] mins;
    private final double[][] maxs;

    /** @param values must not change afterwards */
    public MinMaxPyramid(int size, IntToDoubleFunction values) {
        this.values = values;
        this.size = size;
        int levels = 0;
        for (int n = size; n > BLOCK; n = (n + BLOCK - 1) / BLOCK) {
            levels++;
        }
        mins = new double[levels][];
        maxs = new double[levels][];
        for (int level = 0; level < levels; level++) {
            build(level);
        }
    }

    private void build(int level) {
        int below = level == 0 ? size : mins[level - 1].length;
        int n = (below + BLOCK - 1) / BLOCK;
        mins[level] = new double[n];
        maxs[level] = new double[n];
        for (int block = 0; block < n; block++) {
            double min = Double.NaN;
            double max = Double.NaN;
            int to = Math.min(below, (block + 1) * BLOCK);
            for (int i = block * BLOCK; i < to; i++) {
                min = lesser(min, level == 0 ? values.applyAsDouble(i) : mins[level - 1][i]);
                max = greater(max, level == 0 ? values.applyAsDouble(i) : maxs[level - 1][i]);
            }
            mins[level][block] = min;
            maxs[level][block] = max;
        }
    }

    public int size() {
        return size;
    }

    /** The value of one row; NaN where it is missing. */
    public double at(int row) {
        return values.applyAsDouble(row);
    }

    /** The extent of rows {@code from} (inclusive) to {@code to} (exclusive), clamped to what there is. */
    public Extent extent(int from, int to) {
        int low = Math.max(0, from);
        int high = Math.min(size, to);
        int first = firstThere(low, high);
        if (first >= high) {
            return new Extent(Double.NaN, Double.NaN, Double.NaN, Double.NaN);
        }
        int last = lastThere(low, high);
        double min = Double.NaN;
        double max = Double.NaN;
        int row = first;
        while (row <= last) {
            int level = -1;
            int span = 1;
            while (level + 1 < mins.length && row % (span * BLOCK) == 0 && row + span * BLOCK <= last + 1) {
                level++;
                span *= BLOCK;
            }
            min = lesser(min, level < 0 ? values.applyAsDouble(row) : mins[level][row / span]);
            max = greater(max, level < 0 ? values.applyAsDouble(row) : maxs[level][row / span]);
            row += span;
        }
        return new Extent(values.applyAsDouble(first), min, max, values.applyAsDouble(last));
    }

    /** The first row from {@code low} on that has a value; {@code high} or more where there is none below it. Whole empty blocks are passed over. */
    private int firstThere(int low, int high) {
        int row = low;
        while (row < high) {
            int level = -1;
            int span = 1;
            while (level + 1 < mins.length
                    && row % (span * BLOCK) == 0
                    && Double.isNaN(mins[level + 1][row / (span * BLOCK)])) {
                level++;
                span *= BLOCK;
            }
            if (level < 0 && !Double.isNaN(values.applyAsDouble(row))) {
                return row;
            }
            row += span;
        }
        return row;
    }

    /** The last row below {@code high} that has a value; there must be one from {@code low} on. */
    private int lastThere(int low, int high) {
        int end = high;
        while (end > low) {
            int level = -1;
            int span = 1;
            while (level + 1 < mins.length
                    && end % (span * BLOCK) == 0
                    && Double.isNaN(mins[level + 1][end / (span * BLOCK) - 1])) {
                level++;
                span *= BLOCK;
            }
            if (level < 0 && !Double.isNaN(values.applyAsDouble(end - 1))) {
                return end - 1;
            }
            end -= span;
        }
        return low;
    }

    private static double lesser(double a, double b) {
        return Double.isNaN(a) || b < a ? b : a;
    }

    private static double greater(double a, double b) {
        return Double.isNaN(a) || b > a ? b : a;
    }
}
