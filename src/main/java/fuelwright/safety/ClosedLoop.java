package fuelwright.safety;

import fuelwright.table.Axis;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/**
 * Asks whether a closed loop works with its trims not logged: it makes light load look right whatever the table says. The sign is a
 * contrast, not a proof: where the target is near stoichiometric the steady stretches keep to it far better than the readings where it
 * is rich do. A limit cycle would be the better sign; it drowns in the scatter of the mixture (tried: the autocorrelation of steady
 * stretches doesn't tell such rides from open loop). So nothing is screened out for it.
 */
final class ClosedLoop implements Rule {

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

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        for (int r = 0; r < d.rides(); r++) {
            RideRows rows = d.rows(r);
            if (!rows.ride.hasTrims() && !rows.ride.mixtures().isEmpty()) {
                int from = out.size();
                ride(d, rows, out);
                Say.about(out, from, rows.ride.name());
            }
        }
        return out;
    }

    private static void ride(Dossier d, RideRows rows, List<Caution> out) {
        double[] lambda = rows.mixture(0);
        double[] target = new double[rows.size];
        double[] off = new double[rows.size];
        boolean byThrottle = d.target.load().kind() == Axis.Kind.THROTTLE;
        int open = 0;
        double[] where = new double[rows.size];
        Locator targets = new Locator(d.target);
        for (int i = 0; i < rows.size; i++) {
            target[i] = targets.value(rows.speedRpm[i], byThrottle ? rows.throttlePercent[i] : rows.pressureKpa[i]);
            off[i] = rows.isEvidence(i) ? Math.log(lambda[i] / target[i]) : Double.NaN;
            if (target[i] < OPEN_TARGET && !Double.isNaN(off[i])) {
                where[open++] = Math.abs(off[i]);
            }
        }
        double[] means = steadyMeans(rows, target, off);
        if (means.length < LEAST_STRETCHES || open < LEAST_READINGS) {
            return;
        }
        double light = median(means, means.length);
        double high = median(where, open);
        if (light < HUGS_LOG && high > OFF_LOG) {
            out.add(new Caution(
                    "closed-loop-unlogged",
                    Caution.Level.CHECK,
                    "Is a closed loop at work?",
                    String.format(
                            Locale.ROOT,
                            "In %s the mixture keeps within %.1f %% of its target in %d steady stretches at light load, though"
                                    + " where the target is rich it is %.0f %% off. A closed loop without its trims in the log"
                                    + " would look like that, and hide the table's error",
                            rows.ride.name(),
                            100 * light,
                            means.length,
                            100 * high),
                    "Switch the closed loop off or log its trims on the next ride; if there is none, nothing is wrong here",
                    new TreeSet<>(),
                    List.of()));
        }
    }

    /** Size of the mean departure of each steady stretch of evidence near the stoichiometric target, ln. */
    private static double[] steadyMeans(RideRows rows, double[] target, double[] off) {
        double[] means = new double[rows.size];
        int n = 0;
        int i = 0;
        while (i < rows.size) {
            double sum = 0;
            int j = i;
            while (j < rows.size
                    && target[j] > LOOP_TARGET
                    && !Double.isNaN(off[j])
                    && Math.abs(rows.speedRpm[j] / rows.speedRpm[i] - 1) < SAME_SPEED
                    && rows.timeS[j] >= rows.timeS[i]
                    && rows.timeS[j] - rows.timeS[i] < LONGEST_S) {
                sum += off[j++];
            }
            if (j > i && rows.timeS[j - 1] - rows.timeS[i] >= STRETCH_S) {
                means[n++] = Math.abs(sum / (j - i));
            }
            i = Math.max(j, i + 1);
        }
        return Arrays.copyOf(means, n);
    }

    private static double median(double[] values, int count) {
        double[] sorted = Arrays.copyOf(values, count);
        Arrays.sort(sorted);
        return sorted[count / 2];
    }
}
