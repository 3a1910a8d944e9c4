package fuelwright.ride;

import fuelwright.ride.RowLog.Skip;
import java.util.Arrays;

/**
 * The rows whose time can be believed: one that is missing or jumps away from neighbours that run on without it is dropped and logged.
 *
 * @param timeS time of each row that is left, s
 * @param from the row of the file's figures that each is; empty where none was dropped
 */
record KeptRows(double[] timeS, int[] from) {

    /** Three thousand years: no clock shows that, s. */
    private static final double LATEST_S = 1e11;

    /** Drops rows of {@code raw} whose time in {@code values} doesn't fit; {@code values} isn't modified. */
    static KeptRows of(RawTable raw, double[] values) {
        int n = raw.rows();
        double step = TimeSteps.median(values, n);
        double[] good = new double[n];
        int[] from = null;
        int count = 0;
        for (int i = 0; i < n; i++) {
            Skip why = misfit(values, i, count == 0 ? Double.NaN : good[count - 1], step);
            if (why == null) {
                if (from != null) {
                    from[count] = i;
                }
                good[count++] = values[i];
            } else {
                raw.log().skip(why, raw.lines().line(i));
                if (from == null) {
                    from = new int[n];
                    for (int k = 0; k < count; k++) {
                        from[k] = k;
                    }
                }
            }
        }
        return new KeptRows(
                count == n ? good : Arrays.copyOf(good, count), from == null ? new int[0] : Arrays.copyOf(from, count));
    }

    /** How many rows are left. */
    int rows() {
        return timeS.length;
    }

    /** The row of the file's figures that row {@code row} is. */
    int source(int row) {
        return from.length == 0 ? row : from[row];
    }

    /** A single row that jumps away and whose neighbours run on without it has a wrong stamp. */
    private static Skip misfit(double[] values, int i, double before, double step) {
        double value = values[i];
        if (Double.isNaN(value)) {
            return Skip.NO_TIME;
        }
        if (!(Math.abs(value) < LATEST_S)) {
            return Skip.TIME_OUT_OF_LINE;
        }
        if (i + 1 < values.length && !Double.isNaN(before)) {
            double next = values[i + 1];
            boolean neighboursRun = next >= before && next - before <= 5 * step;
            if (neighboursRun && (value < before || value > next && value - next > 10 * step)) {
                return Skip.TIME_OUT_OF_LINE;
            }
        }
        return null;
    }
}
