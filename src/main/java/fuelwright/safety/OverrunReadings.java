package fuelwright.safety;

import java.util.Arrays;

/**
 * What a sensor shows on the overrun, the throttle closed at speed. Without fuel the exhaust is air: lambda goes to its lean end, and a fuel–air ratio to its
 * rich one. An engine whose fuel isn't cut there may be rich, but no richer than burns.
 */
final class OverrunReadings {

    static final double LEAST_S = 1.5;
    /** The exhaust has cleared by then, s. */
    private static final double CLEARED_S = 1.0;

    /** No mixture as rich as this burns (published burnable range about AFR 8 to 18 on petrol), and few sensors show it. */
    private static final double UNBURNABLE_LAMBDA = 0.62;

    private static final double RICH_LAMBDA = 0.80;
    private static final double MOST_SHARE = 0.7;
    private static final int LEAST = 3;
    private static final int LEAST_FLAT = 6;
    private static final double FLAT_LAMBDA = 0.01;
    private static final double OFF_LAMBDA = 0.05;

    private final double[] levels;
    private final boolean cutLogged;

    private OverrunReadings(double[] levels, boolean cutLogged) {
        this.levels = levels;
        this.cutLogged = cutLogged;
    }

    static OverrunReadings of(RideRows rows, double[] lambda) {
        FuelCutTimes cuts = FuelCutTimes.of(rows.ride);
        boolean logged = cuts.size() > 0;
        double[] levels = new double[16];
        int n = 0;
        for (int i = 0; i < rows.size; i++) {
            int end = i;
            while (end < rows.size
                    && (logged ? cuts.at(rows.timeS[end]) : rows.isOverrun(end))
                    && rows.timeS[end] >= rows.timeS[i]
                    && (end == i || rows.stepS(end - 1) > 0)) {
                end++;
            }
            if (end - 1 > i && rows.timeS[end - 1] - rows.timeS[i] >= LEAST_S) {
                double from = rows.timeS[i] + CLEARED_S;
                double[] shown = java.util.stream.IntStream.range(i, end)
                        .filter(k -> rows.timeS[k] >= from && lambda[k] > 0)
                        .mapToDouble(k -> lambda[k])
                        .sorted()
                        .toArray();
                if (shown.length > 0) {
                    levels = n == levels.length ? Arrays.copyOf(levels, 2 * n) : levels;
                    levels[n++] = shown[shown.length / 2];
                }
            }
            i = Math.max(i, end - 1);
        }
        return new OverrunReadings(Arrays.copyOf(levels, n), logged);
    }

    int count() {
        return levels.length;
    }

    /** The middle one of what was shown. */
    double median() {
        double[] sorted = levels.clone();
        Arrays.sort(sorted);
        return sorted.length == 0 ? Double.NaN : sorted[sorted.length / 2];
    }

    /** Whether most of them, and so many, read this or leaner. */
    boolean isAt(double leastLambda, int least) {
        return levels.length >= least && share(leastLambda, Double.POSITIVE_INFINITY) >= MOST_SHARE;
    }

    /** Whether they read richer than anything burns, or rich though the log says that fuel was cut. */
    boolean isUpsideDown() {
        double limit = cutLogged ? RICH_LAMBDA : UNBURNABLE_LAMBDA;
        return levels.length >= LEAST && share(Double.NEGATIVE_INFINITY, limit) >= MOST_SHARE;
    }

    /**
     * Whether nearly all of them stand at the rich end of what the sensor showed in the ride, as free air does in a fuel–air ratio.
     *
     * @param otherwise what it shows with the throttle open, the middle
     */
    boolean looksUpsideDown(double otherwise) {
        double least = Arrays.stream(levels).min().orElse(Double.NaN);
        return levels.length >= LEAST_FLAT
                && least <= RICH_LAMBDA
                && otherwise > least + OFF_LAMBDA
                && share(least, least + FLAT_LAMBDA) >= MOST_SHARE;
    }

    private double share(double from, double to) {
        return (double) Arrays.stream(levels).filter(x -> x >= from && x <= to).count() / levels.length;
    }
}
