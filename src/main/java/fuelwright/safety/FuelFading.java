package fuelwright.safety;

import fuelwright.estimate.BurntTrace;
import fuelwright.table.Axis;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Tells a fuel supply that fails from a table that is lean. A table's error depends on where the engine runs; fuel that fades depends on how
 * long much of it was drawn. Both at once is a regression: with y = ln(lambda / target),
 *
 * <pre>  y = place + a · ln(rpm) + b · load + slope · drawn</pre>
 *
 * where <i>place</i> is one constant for each small piece of the table, a and b are common slopes within the pieces, and <i>drawn</i> is for how
 * long, s, flow has been above a share of the greatest (saturating), running out with a time constant while it is below. Shares and time constants are
 * tried; the one that explains most counts. The slope's error is taken from stretches of high flow as wholes (cluster-robust), since readings
 * of one stretch aren't independent. Where drawn and place go together, as in sweeps that are all alike, the regression has nothing to go by and says
 * nothing. O(readings · candidates). Immutable.
 */
final class FuelFading {

    /** From which share of the greatest flow on fuel may be drawn faster than it comes. */
    private static final double[] SHARES = {0.45, 0.55, 0.65, 0.75};

    /** A supply that fades finds a level at which it goes on: what is drawn saturates here, s. */
    private static final double MOST_S = 10;

    /** How fast the supply recovers below it, s. */
    private static final double[] RECOVERIES_S = {0.5, 20};

    /** Tip-in, wall film and lag are over by then, s. */
    private static final double SETTLED_S = 1.0;

    private static final double GAP_S = 1.0;
    private static final double RUNNING_RPM = 1200;
    private static final double PIECE_LOG_RPM = 0.05;
    private static final double PIECE_THROTTLE = 8;
    private static final double PIECE_KPA = 5;
    private static final int LEAST_READINGS = 60;
    private static final int LEAST_STRETCHES = 6;
    /** One bad stretch isn't fading: so many of the stretches have to show it by themselves. */
    private static final double AGREEING_SHARE = 0.65;

    private static final double LEAST_T = 4;
    /** Within the pieces the draw has to explain at least this share of what place leaves over. */
    private static final double LEAST_SHARE = 0.15;

    private static final double HALF = 0.5;
    /** And fade by so much, ln, over the spread of the draw. */
    private static final double LEAST_FADE = 0.02;

    private final BurntTrace trace;
    private final double slopePerS;
    private final double[] drawnS;
    private final double merit;

    private FuelFading(BurntTrace trace, double slopePerS, double[] drawnS, double merit) {
        this.trace = trace;
        this.slopePerS = slopePerS;
        this.drawnS = drawnS;
        this.merit = merit;
    }

    /** Empty where nothing fades, or where it can't be told. */
    static Optional<FuelFading> of(Dossier d, Dossier.Trace of) {
        BurntTrace trace = of.burnt();
        int n = trace.size();
        double[] flow = new double[n];
        double most = 0;
        for (int i = 0; i < n; i++) {
            flow[i] = d.flow.gramsPerSecond(trace.speedRpm(i), trace.load(i));
            most = flow[i] > most ? flow[i] : most;
        }
        double[] y = departures(d, of, flow, SHARES[0] * most);
        int[] pieces = pieces(d, trace, y);
        FuelFading best = null;
        for (double share : SHARES) {
            for (double recoveryS : RECOVERIES_S) {
                FuelFading one = fit(trace, y, pieces, flow, share * most, recoveryS);
                best = one != null && (best == null || one.merit > best.merit) ? one : best;
            }
        }
        return Optional.ofNullable(best);
    }

    /** ln(lambda / target) of the readings at high flow with fuel on; NaN elsewhere. */
    private static double[] departures(Dossier d, Dossier.Trace of, double[] flow, double least) {
        BurntTrace trace = of.burnt();
        RideRows rows = d.rows(of.ride());
        FuelCutTimes cuts = FuelCutTimes.of(d.ride(of.ride()));
        double clearing = d.limits.of(Limit.FUEL_CUT_CLEARING);
        double top = d.limits.of(Limit.SENSOR_TOP);
        boolean byThrottle = d.target.load().kind() == Axis.Kind.THROTTLE;
        double[] y = new double[trace.size()];
        double since = Double.NaN;
        double lastCut = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < y.length; i++) {
            double t = trace.burntS(i);
            boolean high = flow[i] >= least && trace.speedRpm(i) >= RUNNING_RPM;
            since = !high ? Double.NaN : Double.isNaN(since) ? t : since;
            lastCut = cuts.at(t) ? t : lastCut;
            boolean counts = high
                    && t - since >= SETTLED_S
                    && t - lastCut >= clearing
                    && trace.lambda(i) > 0
                    && trace.lambda(i) < top
                    && !rows.isScreened(trace.row(i), fuelwright.screen.Screen.TOO_COLD);
            y[i] = counts
                    ? Math.log(trace.lambda(i)
                            / d.target.value(
                                    trace.speedRpm(i), byThrottle ? trace.throttlePercent(i) : trace.pressureKpa(i)))
                    : Double.NaN;
        }
        return y;
    }

    private static int[] pieces(Dossier d, BurntTrace trace, double[] y) {
        boolean byThrottle = d.fuel.load().kind() == Axis.Kind.THROTTLE;
        Map<Long, Integer> numbers = new HashMap<>();
        int[] pieces = new int[y.length];
        for (int i = 0; i < y.length; i++) {
            long speed = Double.isNaN(y[i]) ? 0 : Math.round(Math.log(trace.speedRpm(i)) / PIECE_LOG_RPM);
            long load = Double.isNaN(y[i]) ? 0 : Math.round(trace.load(i) / (byThrottle ? PIECE_THROTTLE : PIECE_KPA));
            pieces[i] = Double.isNaN(y[i]) ? -1 : numbers.computeIfAbsent(1000 * speed + load, k -> numbers.size());
        }
        return pieces;
    }

    private static FuelFading fit(
            BurntTrace trace, double[] y, int[] pieces, double[] flow, double above, double recoveryS) {
        int n = y.length;
        double[] drawn = new double[n];
        int[] stretch = new int[n];
        int stretches = 0;
        double now = 0;
        boolean on = false;
        double lastOn = Double.NEGATIVE_INFINITY;
        double before = Double.NaN;
        for (int i = 0; i < n; i++) {
            double t = trace.burntS(i);
            double dt = t - before;
            boolean high = flow[i] >= above;
            if (!(dt >= 0) || dt > GAP_S) {
                now = dt > GAP_S ? now * Math.exp(-dt / recoveryS) : 0;
                on = false;
            } else {
                now = high ? MOST_S - (MOST_S - now) * Math.exp(-dt / MOST_S) : now * Math.exp(-dt / recoveryS);
            }
            if (high && !on) {
                stretches += t - lastOn > GAP_S || !(dt >= 0) ? 1 : 0;
            }
            lastOn = high ? t : lastOn;
            on = high;
            drawn[i] = now;
            stretch[i] = stretches;
            before = t;
        }
        return slope(trace, y, pieces, drawn, stretch, stretches + 1);
    }

    private static FuelFading slope(
            BurntTrace trace, double[] y, int[] pieces, double[] drawn, int[] stretch, int stretches) {
        int n = y.length;
        int[] rows = new int[n];
        int m = 0;
        for (int i = 0; i < n; i++) {
            if (pieces[i] >= 0) {
                rows[m++] = i;
            }
        }
        rows = Arrays.copyOf(rows, m);
        if (m < LEAST_READINGS) {
            return null;
        }
        double[] left = within(rows, pieces, i -> y[i]);
        double[] speed = within(rows, pieces, i -> Math.log(trace.speedRpm(i)));
        double[] load = within(rows, pieces, trace::load);
        double[] draw = within(rows, pieces, i -> drawn[i]);
        remove(speed, load);
        for (double[] of : new double[][] {left, draw}) {
            remove(speed, of);
            remove(load, of);
        }
        double xx = dot(draw, draw);
        double slope = dot(draw, left) / xx;
        double all = dot(left, left);
        if (!(xx > 1e-6 * m) || !(slope > 0)) {
            return null;
        }
        double[] scores = new double[stretches];
        double[] own = new double[stretches];
        boolean[] seen = new boolean[stretches];
        for (int k = 0; k < m; k++) {
            int s = stretch[rows[k]];
            scores[s] += draw[k] * (left[k] - slope * draw[k]);
            own[s] += draw[k] * left[k];
            seen[s] |= Math.abs(draw[k]) > 0.1;
        }
        int groups = 0;
        int agreeing = 0;
        for (int s = 0; s < stretches; s++) {
            groups += seen[s] ? 1 : 0;
            agreeing += seen[s] && own[s] > 0 ? 1 : 0;
        }
        double error = Math.sqrt(dot(scores, scores)) / xx;
        double share = slope * slope * xx / all;
        double fade = 2 * slope * Math.sqrt(xx / m);
        boolean fades = groups >= LEAST_STRETCHES
                && agreeing >= AGREEING_SHARE * groups
                && slope >= LEAST_T * error
                && share >= LEAST_SHARE
                && fade >= LEAST_FADE;
        return fades ? new FuelFading(trace, slope, drawn, share) : null;
    }

    private interface Figure {
        double at(int reading);
    }

    /** What is left of a figure beyond the mean of its piece. */
    private static double[] within(int[] rows, int[] pieces, Figure figure) {
        int most = 0;
        for (int row : rows) {
            most = Math.max(most, pieces[row]);
        }
        double[] sums = new double[most + 1];
        int[] counts = new int[most + 1];
        double[] out = new double[rows.length];
        for (int k = 0; k < rows.length; k++) {
            out[k] = figure.at(rows[k]);
            sums[pieces[rows[k]]] += out[k];
            counts[pieces[rows[k]]]++;
        }
        for (int k = 0; k < rows.length; k++) {
            out[k] -= sums[pieces[rows[k]]] / counts[pieces[rows[k]]];
        }
        return out;
    }

    /** Takes out of {@code of} what {@code by} explains. */
    private static void remove(double[] by, double[] of) {
        double size = dot(by, by);
        double share = size > 0 ? dot(by, of) / size : 0;
        for (int k = 0; k < of.length; k++) {
            of[k] -= share * by[k];
        }
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int k = 0; k < a.length; k++) {
            sum += a[k] * b[k];
        }
        return sum;
    }

    /** Whether the place would be within its limit but for the fading: the leanest reading without what was drawn before it. */
    boolean explains(LeanEvent event) {
        int low = 0;
        int high = trace.size() - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (trace.row(middle) < event.row()) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        double faded = slopePerS * drawnS[low];
        double beyondTarget = Math.log(event.leanest() / event.target());
        double beyondLimit = Math.log(event.leanest() / event.limit());
        return faded >= beyondLimit || faded >= HALF * beyondTarget;
    }
}
