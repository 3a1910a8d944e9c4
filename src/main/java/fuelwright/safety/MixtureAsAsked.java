package fuelwright.safety;

import fuelwright.table.Axis;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/**
 * A mixture column without the delay, lag and noise that every sensor has: it follows the target row by row, or holds a handful of figures
 * only. Then it is what the control unit asked for, not what was burnt.
 */
final class MixtureAsAsked implements Rule {

    private static final int LEAST_ROWS = 400;
    /** Nearer to its target than this no sensor stays. */
    private static final double SAME_LOG = 0.004;

    private static final double SAME_SHARE = 0.95;
    private static final double APART_LAMBDA = 0.05;
    private static final int FEW_FIGURES = 4;
    private static final double FIGURE_LAMBDA = 1e-4;

    @Override
    public List<Caution> judge(Dossier d) {
        return Say.bySensor(d, (r, s, out) -> sensor(d, r, s, out));
    }

    private static void sensor(Dossier d, int r, int s, List<Caution> out) {
        RideRows rows = d.rows(r);
        double[] lambda = rows.mixture(s);
        boolean byThrottle = d.target.load().kind() == Axis.Kind.THROTTLE;
        Locator targets = new Locator(d.target);
        TreeSet<Long> figures = new TreeSet<>();
        double[] asked = new double[rows.size];
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        int n = 0;
        int same = 0;
        for (int i = 0; i < rows.size; i++) {
            double target = targets.value(rows.speedRpm[i], byThrottle ? rows.throttlePercent[i] : rows.pressureKpa[i]);
            if (!(lambda[i] > 0) || Double.isNaN(target) || !rows.isRunning(i) || rows.isOverrun(i)) {
                continue;
            }
            asked[n++] = target;
            same += Math.abs(Math.log(lambda[i] / target)) <= SAME_LOG ? 1 : 0;
            least = Math.min(least, lambda[i]);
            most = Math.max(most, lambda[i]);
            if (figures.size() <= FEW_FIGURES) {
                figures.add(Math.round(lambda[i] / FIGURE_LAMBDA));
            }
        }
        boolean follows = same >= SAME_SHARE * n && range(asked, n) >= APART_LAMBDA;
        boolean few = figures.size() <= FEW_FIGURES && most - least >= APART_LAMBDA;
        if (n < LEAST_ROWS || !(follows || few)) {
            return;
        }
        String why = follows
                ? String.format(Locale.ROOT, "is its target's to %.1f %% in %d of %d rows", 100 * SAME_LOG, same, n)
                : "holds no more than " + figures.size() + " different figures in " + n + " rows";
        out.add(new Caution(
                "mixture-as-asked",
                Caution.Level.STOP,
                "The mixture looks asked for, not measured",
                "The mixture of " + Say.sensor(rows.ride, s) + " " + why
                        + ", without the delay and noise of a sensor: what was really burnt isn't known",
                "See whether the column is a sensor's reading; name the sensor's own column instead, on the stage Rides or on the command line, and leave this one out",
                new TreeSet<>(),
                List.of()));
    }

    private static double range(double[] values, int n) {
        double least = Arrays.stream(values, 0, n).min().orElse(0);
        return Arrays.stream(values, 0, n).max().orElse(0) - least;
    }
}
