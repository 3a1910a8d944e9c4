package fuelwright.screen;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * The sign of a closed loop whose trims aren't logged: it makes light load look right whatever the table says, so where the target is near
 * stoichiometric the steady stretches keep to it far better than the readings where it is rich do. A limit cycle would be the better
 * sign; it drowns in the scatter of the mixture (tried: the autocorrelation of steady stretches doesn't tell such rides from open loop),
 * but it adds to that scatter while it keeps the mean right.
 *
 * @param stretches steady stretches at light load
 * @param lightLog median size of the mean departure from the target in one of them, ln
 * @param scatterLog median scatter of the readings within a stretch, ln
 * @param openLog median size of the departure of a reading where the target is rich, ln
 */
public record ClosedLoopSign(int stretches, double lightLog, double scatterLog, double openLog) {

    /** Closed loop on a narrow band works about stoichiometric only. */
    private static final double LOOP_TARGET = 0.97;

    private static final double OPEN_TARGET = 0.95;
    private static final double STRETCH_S = 3;
    private static final double LONGEST_S = 6;
    private static final double SAME_SPEED = 0.15;
    private static final int LEAST_STRETCHES = 8;
    private static final int LEAST_READINGS = 100;
    private static final double HUGS_LOG = 0.006;
    private static final double OFF_LOG = 0.04;
    /** Nearer to its target than a table that has been corrected comes. */
    private static final double SURELY_HUGS_LOG = 0.0025;
    /** A limit cycle scatters the readings and makes their mean right: with a table alone the mean is off by more of the scatter. */
    private static final double SURELY_HUGS_SHARE = 0.2;

    /**
     * Measures a ride without trims; empty where it has too little of either kind of reading. O(rows · log rows).
     *
     * @param counts whether a row may be looked at
     */
    public static Optional<ClosedLoopSign> of(
            double[] timeS, double[] speedRpm, double[] lambda, double[] targetLambda, IntPredicate counts) {
        int n = timeS.length;
        double[] off = new double[n];
        double[] where = new double[n];
        int open = 0;
        Arrays.parallelSetAll(off, i -> counts.test(i) ? Math.log(lambda[i] / targetLambda[i]) : Double.NaN);
        for (int i = 0; i < n; i++) {
            if (targetLambda[i] < OPEN_TARGET && !Double.isNaN(off[i])) {
                where[open++] = Math.abs(off[i]);
            }
        }
        double[] scatters = new double[n];
        double[] means = steadyMeans(timeS, speedRpm, targetLambda, off, scatters);
        return means.length < LEAST_STRETCHES || open < LEAST_READINGS
                ? Optional.empty()
                : Optional.of(new ClosedLoopSign(
                        means.length,
                        median(means, means.length),
                        median(scatters, means.length),
                        median(where, open)));
    }

    /** Whether a closed loop works at this target, where one works at all. */
    public static boolean worksAt(double targetLambda) {
        return targetLambda > LOOP_TARGET;
    }

    /** Whether it is worth asking: a table that happens to be right at light load may look the same. */
    public boolean isLikely() {
        return lightLog < HUGS_LOG && openLog > OFF_LOG;
    }

    /** Whether the readings at light load must not count. */
    public boolean isSure() {
        return isLikely() && lightLog < Math.min(SURELY_HUGS_LOG, SURELY_HUGS_SHARE * scatterLog);
    }

    /** Size of the mean departure of each steady stretch near the stoichiometric target, ln. */
    private static double[] steadyMeans(
            double[] timeS, double[] speedRpm, double[] target, double[] off, double[] scatters) {
        int size = timeS.length;
        double[] means = new double[size];
        int n = 0;
        int i = 0;
        while (i < size) {
            double sum = 0;
            double squares = 0;
            int j = i;
            while (j < size
                    && worksAt(target[j])
                    && !Double.isNaN(off[j])
                    && Math.abs(speedRpm[j] / speedRpm[i] - 1) < SAME_SPEED
                    && timeS[j] >= timeS[i]
                    && timeS[j] - timeS[i] < LONGEST_S) {
                squares += off[j] * off[j];
                sum += off[j++];
            }
            if (j > i && timeS[j - 1] - timeS[i] >= STRETCH_S) {
                double mean = sum / (j - i);
                scatters[n] = Math.sqrt(Math.max(0, squares / (j - i) - mean * mean));
                means[n++] = Math.abs(mean);
            }
            i = Math.max(j, i + 1);
        }
        return Arrays.copyOf(means, n);
    }

    private static double median(double[] values, int count) {
        double[] sorted = Arrays.copyOf(values, count);
        Arrays.parallelSort(sorted);
        return sorted[count / 2];
    }
}
