package fuelwright.safety;

import fuelwright.screen.Screen;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/**
 * A throttle whose closed or fully open figure is another in one part of the rides than in another: the sensor slips or drifts, and every
 * figure laid to a throttle opening is laid to a wrong one. Each ride is looked at in thirds. A cold engine's raised idle doesn't count.
 */
final class ThrottleSlip implements Rule {

    private static final int PARTS = 3;
    private static final double MOST_CLOSED_PERCENT = 12;
    private static final double LEAST_OPEN_PERCENT = 88;
    private static final double SAME_PERCENT = 0.7;
    private static final double CLOSED_APART_PERCENT = 2;
    private static final double OPEN_APART_PERCENT = 3;
    static final double STANDS_S = 1.0;
    private static final int TIMES = 3;

    /** Where the throttle stood again and again at its least and at its greatest, in one part of a ride; NaN where it didn't. */
    private record Ends(double closed, double open) {}

    @Override
    public List<Caution> judge(Dossier d) {
        List<Ends> parts = new ArrayList<>();
        for (int r = 0; r < d.rides(); r++) {
            RideRows rows = d.rows(r);
            for (int p = 0; p < PARTS; p++) {
                parts.add(ends(rows, rows.size * p / PARTS, rows.size * (p + 1) / PARTS));
            }
        }
        double[] closed = parts.stream().mapToDouble(Ends::closed).toArray();
        double[] open = parts.stream().mapToDouble(Ends::open).toArray();
        boolean closes = range(closed) > CLOSED_APART_PERCENT;
        if (!closes && !(range(open) > OPEN_APART_PERCENT)) {
            return List.of();
        }
        double[] figures = closes ? closed : open;
        return List.of(new Caution(
                "throttle-slipped",
                Caution.Level.CHECK,
                closes ? "The closed throttle reads otherwise" : "The open throttle reads otherwise",
                String.format(
                        Locale.ROOT,
                        "The throttle's %s figure, where it stood again and again, is %.1f %% in one part of the rides and %.1f %% in another",
                        closes ? "least" : "greatest",
                        least(figures),
                        least(figures) + range(figures)),
                "Read it closed and fully open with the engine off; re-fit and re-learn the sensor, and leave out the part that is wrong",
                new TreeSet<>(),
                List.of()));
    }

    private static Ends ends(RideRows rows, int from, int to) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = from; i < to; i++) {
            if (counts(rows, i)) {
                least = Math.min(least, rows.throttlePercent[i]);
                most = Math.max(most, rows.throttlePercent[i]);
            }
        }
        boolean closed = least <= MOST_CLOSED_PERCENT && stands(rows, from, to, least, least + SAME_PERCENT) >= TIMES;
        boolean open = most >= LEAST_OPEN_PERCENT && stands(rows, from, to, most - SAME_PERCENT, most) >= TIMES;
        return new Ends(closed ? least : Double.NaN, open ? most : Double.NaN);
    }

    private static boolean counts(RideRows rows, int row) {
        return rows.isRunning(row)
                && !Double.isNaN(rows.throttlePercent[row])
                && !rows.isScreened(row, Screen.TOO_COLD);
    }

    /** How often the throttle stood between two figures for long. */
    static int stands(RideRows rows, int from, int to, double least, double most) {
        int times = 0;
        int start = -1;
        for (int i = from; i <= to; i++) {
            boolean there =
                    i < to && rows.isRunning(i) && rows.throttlePercent[i] >= least && rows.throttlePercent[i] <= most;
            if (there && start < 0) {
                start = i;
            } else if (!there && start >= 0) {
                times += rows.timeS[i - 1] - rows.timeS[start] >= STANDS_S ? 1 : 0;
                start = -1;
            }
        }
        return times;
    }

    private static double least(double[] figures) {
        return Arrays.stream(figures).filter(Double::isFinite).min().orElse(Double.NaN);
    }

    private static double range(double[] figures) {
        return Arrays.stream(figures).filter(Double::isFinite).max().orElse(Double.NaN) - least(figures);
    }
}
