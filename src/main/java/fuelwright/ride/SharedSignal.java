package fuelwright.ride;

import java.util.Arrays;

/** A channel on an even grid of times, for comparing two clocks. NaN where the log has a gap. */
final class SharedSignal {

    private static final double LONGEST_GAP_S = 2;

    final double startS;
    final double stepS;
    final double[] values;

    private SharedSignal(double startS, double stepS, double[] values) {
        this.startS = startS;
        this.stepS = stepS;
        this.values = values;
    }

    /** {@code column} over {@code timeS}, by straight lines between its own samples. */
    static SharedSignal of(Column timeS, Column column, double stepS) {
        int n = timeS.size();
        double start = timeS.at(0);
        int size = (int) Math.min(20_000_000, Math.floor((timeS.at(n - 1) - start) / stepS) + 1);
        double[] values = new double[Math.max(1, size)];
        Arrays.fill(values, Double.NaN);
        int before = -1;
        for (int i = 0; i < n; i++) {
            if (!column.has(i)) {
                continue;
            }
            if (before >= 0 && timeS.at(i) > timeS.at(before) && timeS.at(i) - timeS.at(before) <= LONGEST_GAP_S) {
                double t0 = timeS.at(before);
                double t1 = timeS.at(i);
                int from = (int) Math.ceil((t0 - start) / stepS - 1e-9);
                for (int k = Math.max(0, from); k < values.length && start + k * stepS <= t1 + 1e-9; k++) {
                    double share = (start + k * stepS - t0) / (t1 - t0);
                    values[k] = column.at(before) + share * (column.at(i) - column.at(before));
                }
            }
            before = i;
        }
        return new SharedSignal(start, stepS, values);
    }

    /** What is left when a moving average of {@code overS} is taken away: the movements, not the level. */
    SharedSignal movements(double overS) {
        int half = Math.max(1, (int) Math.round(overS / stepS / 2));
        double[] sum = new double[values.length + 1];
        int[] count = new int[values.length + 1];
        for (int i = 0; i < values.length; i++) {
            boolean there = !Double.isNaN(values[i]);
            sum[i + 1] = sum[i] + (there ? values[i] : 0);
            count[i + 1] = count[i] + (there ? 1 : 0);
        }
        double[] left = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            int from = Math.max(0, i - half);
            int to = Math.min(values.length, i + half + 1);
            left[i] = values[i] - (sum[to] - sum[from]) / (count[to] - count[from]);
        }
        return new SharedSignal(startS, stepS, left);
    }

    double endS() {
        return startS + (values.length - 1) * stepS;
    }

    /** The value at a time, by a straight line between grid points; NaN outside. */
    double at(double timeS) {
        double place = (timeS - startS) / stepS;
        int i = (int) Math.floor(place);
        if (i < 0 || i >= values.length) {
            return Double.NaN;
        }
        double share = place - i;
        if (share < 1e-9 || i + 1 >= values.length) {
            return share < 1e-9 ? values[i] : Double.NaN;
        }
        return values[i] + share * (values[i + 1] - values[i]);
    }

    /**
     * Correlation (Pearson) of this signal over [fromS, toS] with {@code other}, whose time is {@code t * rate + offsetS}; NaN where
     * less than four fifths of the window are there in both, or one of them stands still.
     */
    double correlation(double fromS, double toS, SharedSignal other, double rate, double offsetS) {
        int from = Math.max(0, (int) Math.round((fromS - startS) / stepS));
        int to = Math.min(values.length, (int) Math.round((toS - startS) / stepS));
        double n = 0;
        double sx = 0;
        double sy = 0;
        double sxx = 0;
        double syy = 0;
        double sxy = 0;
        for (int i = from; i < to; i++) {
            double x = values[i];
            double y = other.at((startS + i * stepS) * rate + offsetS);
            if (x == x && y == y) {
                n++;
                sx += x;
                sy += y;
                sxx += x * x;
                syy += y * y;
                sxy += x * y;
            }
        }
        if (n < 0.8 * (to - from) || n < 8) {
            return Double.NaN;
        }
        double vx = sxx - sx * sx / n;
        double vy = syy - sy * sy / n;
        return vx > 1e-9 * (sxx + 1e-12) && vy > 1e-9 * (syy + 1e-12)
                ? (sxy - sx * sy / n) / Math.sqrt(vx * vy)
                : Double.NaN;
    }
}
