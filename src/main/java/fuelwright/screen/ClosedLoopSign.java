package fuelwright.screen;

import java.util.Arrays;
import java.util.function.IntPredicate;
import org.apache.commons.math3.util.ResizableDoubleArray;

/**
 * The signs of a closed loop whose trims aren't logged. The first is control itself ({@link Pinned}): long means of steady stretches near the stoichiometric target are far nearer to it than
 * short ones. The second is a contrast, for a loop that hadn't the time to settle: there the stretches keep to the target far better than the readings where it is rich do. See decision 0160.
 */
public final class ClosedLoopSign {

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

    private final Pinned pinned;
    private final LoopRegion region;
    private final int stretches;
    private final double lightLog;
    private final double scatterLog;
    private final double openLog;

    private ClosedLoopSign(
            Pinned pinned, LoopRegion region, int stretches, double lightLog, double scatterLog, double openLog) {
        this.pinned = pinned;
        this.region = region;
        this.stretches = stretches;
        this.lightLog = lightLog;
        this.scatterLog = scatterLog;
        this.openLog = openLog;
    }

    /**
     * Measures a ride. O(rows · log rows).
     *
     * @param load what the fuel table is indexed by besides engine speed
     * @param targetLambda what each row should read: the target, or what the unit commands where that is richer
     * @param counts whether a row may be looked at
     */
    public static ClosedLoopSign of(
            double[] timeS,
            double[] speedRpm,
            double[] load,
            double[] lambda,
            double[] targetLambda,
            IntPredicate counts) {
        int n = timeS.length;
        double[] off = new double[n];
        ResizableDoubleArray open = new ResizableDoubleArray();
        Arrays.parallelSetAll(off, i -> counts.test(i) ? Math.log(lambda[i] / targetLambda[i]) : Double.NaN);
        for (int i = 0; i < n; i++) {
            if (targetLambda[i] < OPEN_TARGET && !Double.isNaN(off[i])) {
                open.addElement(Math.abs(off[i]));
            }
        }
        ResizableDoubleArray scatters = new ResizableDoubleArray();
        double[] means = steadyMeans(timeS, speedRpm, targetLambda, off, scatters);
        IntPredicate light = i -> worksAt(targetLambda[i]);
        LoopRegion region = LoopRegion.of(timeS, speedRpm, load, off, light);
        Pinned all = Pinned.of(timeS, off, light);
        Pinned inside = Pinned.of(timeS, off, i -> light.test(i) && region.holds(speedRpm[i], load[i]));
        return new ClosedLoopSign(
                inside.isPlainlyControlled() ? inside : all,
                region,
                means.length,
                median(means),
                median(scatters.getElements()),
                open.getNumElements() < LEAST_READINGS ? Double.NaN : median(open.getElements()));
    }

    /** The target, or what the unit commands where that is richer: what it enriches by itself isn't off target. */
    public static double asked(double targetLambda, double commandedLambda) {
        return commandedLambda > 0 && commandedLambda < targetLambda ? commandedLambda : targetLambda;
    }

    /** Whether a closed loop works at this target, where one works at all. */
    private static boolean worksAt(double targetLambda) {
        return targetLambda > LOOP_TARGET;
    }

    /** Whether a loop, if there is one, works here. Where it had no time to settle its region isn't known. */
    public boolean worksAt(double speedRpm, double load, double targetLambda) {
        return worksAt(targetLambda) && (!isControlled() || region.holds(speedRpm, load));
    }

    /** Whether control itself was seen. */
    public boolean isControlled() {
        return pinned.isControlled();
    }

    /** Whether it is worth asking: a table that happens to be right at light load may look the same. */
    public boolean isLikely() {
        return isControlled() || isContrast();
    }

    private boolean isContrast() {
        return stretches >= LEAST_STRETCHES && lightLog < HUGS_LOG && openLog > OFF_LOG;
    }

    /** Whether the readings at light load must not count. */
    public boolean isSure() {
        return isControlled() || isContrast() && lightLog < Math.min(SURELY_HUGS_LOG, SURELY_HUGS_SHARE * scatterLog);
    }

    /** Steady stretches at light load that the sign was seen in. */
    public int stretches() {
        return isControlled() ? pinned.stretches() : stretches;
    }

    /** Median size of the mean departure from the target in one of them, ln. */
    public double lightLog() {
        return isControlled() ? pinned.fourLog() : lightLog;
    }

    /** Median size of the departure in half a second of them, ln. */
    public double halfLog() {
        return pinned.halfLog();
    }

    /** Median size of the departure of a reading where the target is rich, ln; NaN where there are few. */
    public double openLog() {
        return openLog;
    }

    /** Size of the mean departure of each steady stretch near the stoichiometric target, ln. */
    private static double[] steadyMeans(
            double[] timeS, double[] speedRpm, double[] target, double[] off, ResizableDoubleArray scatters) {
        int size = timeS.length;
        ResizableDoubleArray means = new ResizableDoubleArray();
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
                scatters.addElement(Math.sqrt(Math.max(0, squares / (j - i) - mean * mean)));
                means.addElement(Math.abs(mean));
            }
            i = Math.max(j, i + 1);
        }
        return means.getElements();
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.parallelSort(sorted);
        return sorted.length == 0 ? Double.NaN : sorted[sorted.length / 2];
    }
}
