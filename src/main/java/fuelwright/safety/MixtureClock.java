package fuelwright.safety;

import fuelwright.ride.Ride;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/**
 * Whether mixture and throttle keep one clock, by the overruns: when the throttle closes and fuel is cut, free air has to reach the sensor
 * shortly after, and as shortly at the end of the ride as at its beginning. Two loggers whose clocks drift apart, or a column moved against the
 * rest, show otherwise; every reading is then laid to a place where it wasn't burnt.
 */
final class MixtureClock implements Rule {

    private static final double FREE_AIR_LAMBDA = 1.2;
    private static final double BURNING_LAMBDA = 1.08;
    private static final double EDGE_S = 0.5;
    /** So long an overrun gives free air time to arrive, s. */
    private static final double OVERRUN_S = 1.2;
    /** And so long the throttle was open before, s. */
    private static final double OPEN_S = 1.5;

    private static final double SEARCH_BACK_S = 3;
    private static final double SEARCH_ON_S = 4;
    private static final int LEAST_EACH = 4;
    /** Common practice, no source: half a second is several times what a delay varies by at one sensor. */
    private static final double DRIFT_S = 0.5;
    /** Exhaust needs some time to arrive: before the throttle it can't, and after this long it is late, s. */
    private static final double EARLIEST_S = -0.3;

    private static final double LATEST_S = 2.5;

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        for (int r = 0; r < d.rides(); r++) {
            for (int s = 0; s < d.ride(r).mixtures().size(); s++) {
                sensor(d, r, s, out);
            }
        }
        return out;
    }

    private static void sensor(Dossier d, int r, int s, List<Caution> out) {
        RideRows rows = d.rows(r);
        double[] lags = lags(rows, rows.mixture(s));
        int n = lags.length;
        if (n < 2 * LEAST_EACH) {
            return;
        }
        int third = Math.max(LEAST_EACH, n / 3);
        double early = median(Arrays.copyOfRange(lags, 0, third));
        double late = median(Arrays.copyOfRange(lags, n - third, n));
        double all = median(lags);
        Ride ride = d.ride(r);
        String sensor = ride.mixtures().get(s).heading() + " in " + ride.name();
        if (Math.abs(late - early) > DRIFT_S) {
            out.add(caution(
                            "The clocks drift apart",
                            String.format(
                                    Locale.ROOT,
                                    "%s shows free air %.1f s after the throttle closes early in the ride and %.1f s after it late",
                                    sensor,
                                    early,
                                    late),
                            "Log mixture and throttle with one logger, or align the two again; cells may hold readings burnt elsewhere")
                    .about(Say.sensor(ride, s)));
        } else if (all < EARLIEST_S || all > LATEST_S) {
            out.add(caution(
                            "Mixture and throttle are apart",
                            String.format(
                                    Locale.ROOT,
                                    "%s shows free air %.1f s %s the throttle closes",
                                    sensor,
                                    Math.abs(all),
                                    all < 0 ? "before" : "after"),
                            "Look at how the two clocks were aligned; cells may hold readings burnt elsewhere")
                    .about(Say.sensor(ride, s)));
        }
    }

    private static Caution caution(String title, String what, String todo) {
        return new Caution("mixture-clock", Caution.Level.CHECK, title, what, todo, new TreeSet<>(), List.of());
    }

    /** For each overrun that tells, when free air came, counted from when the throttle closed, s. In the order of the ride. */
    private static double[] lags(RideRows rows, double[] lambda) {
        double[] lags = new double[rows.size];
        int n = 0;
        double openSince = Double.NaN;
        double open = 0;
        for (int i = 1; i < rows.size; i++) {
            boolean overrun = rows.isOverrun(i);
            if (!overrun) {
                openSince = Double.isNaN(openSince) ? rows.timeS[i] : openSince;
                open = rows.timeS[i] - openSince;
                continue;
            }
            boolean begins = !rows.isOverrun(i - 1);
            openSince = Double.NaN;
            if (begins && open >= OPEN_S && lasts(rows, i)) {
                double lag = freeAir(rows, lambda, i);
                if (!Double.isNaN(lag)) {
                    lags[n++] = lag;
                }
            }
        }
        return Arrays.copyOf(lags, n);
    }

    private static boolean lasts(RideRows rows, int from) {
        int i = from;
        while (i < rows.size && rows.isOverrun(i) && rows.timeS[i] - rows.timeS[from] < OVERRUN_S) {
            i++;
        }
        return i < rows.size && rows.isOverrun(i);
    }

    /** The rise through free air that is nearest to the closing of the throttle, counted from there, s; NaN where there is none. */
    private static double freeAir(RideRows rows, double[] lambda, int closing) {
        double best = Double.NaN;
        int i = closing;
        while (i > 0 && rows.timeS[closing] - rows.timeS[i] < SEARCH_BACK_S && rows.timeS[i] <= rows.timeS[closing]) {
            i--;
        }
        double before = Double.NaN;
        for (; i < rows.size && rows.timeS[i] - rows.timeS[closing] < SEARCH_ON_S; i++) {
            if (Double.isNaN(lambda[i])) {
                continue;
            }
            double lag = rows.timeS[i] - rows.timeS[closing];
            if (before < FREE_AIR_LAMBDA
                    && lambda[i] >= FREE_AIR_LAMBDA
                    && isEdge(rows, lambda, i)
                    && !(Math.abs(lag) >= Math.abs(best))) {
                best = lag;
            }
            before = lambda[i];
        }
        return best;
    }

    /** Free air comes at once; an engine that runs leaner and leaner doesn't. */
    private static boolean isEdge(RideRows rows, double[] lambda, int at) {
        int i = at;
        while (i > 0 && rows.timeS[at] - rows.timeS[i] < EDGE_S && rows.timeS[i] <= rows.timeS[at]) {
            i--;
            if (lambda[i] < BURNING_LAMBDA) {
                return true;
            }
        }
        return false;
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
