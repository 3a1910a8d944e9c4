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
        int[] rows = rows(y);
        if (rows.length < LEAST_READINGS) {
            return Optional.empty();
        }
        Drawn[] guesses = new Drawn[SHARES.length * RECOVERIES_S.length];
        for (int g = 0; g < guesses.length; g++) {
            guesses[g] = new Drawn(
                    SHARES[g / RECOVERIES_S.length] * most, RECOVERIES_S[g % RECOVERIES_S.length], rows.length);
        }
        draw(trace, flow, rows, guesses);
        Departures left = new Departures(trace, y, rows, pieces(d, trace, rows));
        FuelFading best = null;
        for (Drawn guess : guesses) {
            d.pace.check();
            FuelFading one = slope(trace, flow, left, guess);
            best = one != null && (best == null || one.merit > best.merit) ? one : best;
        }
        return Optional.ofNullable(best);
    }

    /** The readings that have a departure. */
    private static int[] rows(double[] y) {
        int[] rows = new int[y.length];
        int m = 0;
        for (int i = 0; i < y.length; i++) {
            if (!Double.isNaN(y[i])) {
                rows[m++] = i;
            }
        }
        return Arrays.copyOf(rows, m);
    }

    /** ln(lambda / target) of the readings at high flow with fuel on; NaN elsewhere. */
    private static double[] departures(Dossier d, Dossier.Trace of, double[] flow, double least) {
        BurntTrace trace = of.burnt();
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
                    && !d.isWarming(of.ride(), trace.row(i));
            y[i] = counts
                    ? Math.log(trace.lambda(i)
                            / d.target.value(
                                    trace.speedRpm(i), byThrottle ? trace.throttlePercent(i) : trace.pressureKpa(i)))
                    : Double.NaN;
        }
        return y;
    }

    /** The piece of the table that each of the rows lies in. */
    private static int[] pieces(Dossier d, BurntTrace trace, int[] rows) {
        boolean byThrottle = d.fuel.load().kind() == Axis.Kind.THROTTLE;
        Map<Long, Integer> numbers = new HashMap<>();
        int[] pieces = new int[rows.length];
        for (int k = 0; k < rows.length; k++) {
            long speed = Math.round(Math.log(trace.speedRpm(rows[k])) / PIECE_LOG_RPM);
            long load = Math.round(trace.load(rows[k]) / (byThrottle ? PIECE_THROTTLE : PIECE_KPA));
            pieces[k] = numbers.computeIfAbsent(1000 * speed + load, key -> numbers.size());
        }
        return pieces;
    }

    /** For how long much fuel has been drawn, by one guess at what is much and how soon the supply recovers. */
    private static final class Drawn {
        final double above;
        final double recoveryS;
        /** At each of the rows that count, s, and which stretch of high flow it is in or after. */
        final double[] s;

        final int[] stretch;
        int stretches;
        private double now;
        private boolean on;
        private double lastOnS = Double.NEGATIVE_INFINITY;

        Drawn(double above, double recoveryS, int rows) {
            this.above = above;
            this.recoveryS = recoveryS;
            this.s = new double[rows];
            this.stretch = new int[rows];
        }

        double next(double t, double dt, double flow, double filled, double recovered) {
            boolean high = flow >= above;
            if (!(dt >= 0) || dt > GAP_S) {
                now = dt > GAP_S ? now * recovered : 0;
                on = false;
            } else {
                now = high ? MOST_S - (MOST_S - now) * filled : now * recovered;
            }
            if (high && !on) {
                stretches += t - lastOnS > GAP_S || !(dt >= 0) ? 1 : 0;
            }
            lastOnS = high ? t : lastOnS;
            on = high;
            return now;
        }
    }

    /** Follows all guesses through the ride at once: what costs is the same for several of them. */
    private static void draw(BurntTrace trace, double[] flow, int[] rows, Drawn[] guesses) {
        double[] recovered = new double[RECOVERIES_S.length];
        double before = Double.NaN;
        int k = 0;
        for (int i = 0; i < flow.length && k < rows.length; i++) {
            double t = trace.burntS(i);
            double dt = t - before;
            double filled = flow[i] >= guesses[0].above ? Math.exp(-dt / MOST_S) : Double.NaN;
            for (int r = 0; r < recovered.length; r++) {
                recovered[r] = Math.exp(-dt / RECOVERIES_S[r]);
            }
            for (int g = 0; g < guesses.length; g++) {
                double now = guesses[g].next(t, dt, flow[i], filled, recovered[g % recovered.length]);
                if (rows[k] == i) {
                    guesses[g].s[k] = now;
                    guesses[g].stretch[k] = guesses[g].stretches;
                }
            }
            k += rows[k] == i ? 1 : 0;
            before = t;
        }
    }

    /** By one guess, at every reading. */
    private static double[] drawnS(BurntTrace trace, double[] flow, Drawn guess) {
        Drawn again = new Drawn(guess.above, guess.recoveryS, 0);
        double[] drawn = new double[flow.length];
        double before = Double.NaN;
        for (int i = 0; i < drawn.length; i++) {
            double t = trace.burntS(i);
            double dt = t - before;
            drawn[i] = again.next(t, dt, flow[i], Math.exp(-dt / MOST_S), Math.exp(-dt / guess.recoveryS));
            before = t;
        }
        return drawn;
    }

    /** Departures of the readings that count from their piece of the table, with what engine speed and load explain taken out. */
    private static final class Departures {
        final int[] pieces;
        final double[] left;
        private final double[] speed;
        private final double[] load;

        Departures(BurntTrace trace, double[] y, int[] rows, int[] pieces) {
            this.pieces = pieces;
            left = within(pieces, k -> y[rows[k]]);
            speed = within(pieces, k -> Math.log(trace.speedRpm(rows[k])));
            load = within(pieces, k -> trace.load(rows[k]));
            removeByPiece(pieces, speed, load);
            takeOut(left);
        }

        private void takeOut(double[] of) {
            removeByPiece(pieces, speed, of);
            remove(load, of);
        }

        /** The same of something else. */
        double[] alike(double[] figures) {
            double[] of = within(pieces, k -> figures[k]);
            takeOut(of);
            return of;
        }
    }

    private static FuelFading slope(BurntTrace trace, double[] flow, Departures of, Drawn guess) {
        double[] left = of.left;
        double[] draw = of.alike(guess.s);
        int m = left.length;
        double xx = dot(draw, draw);
        double slope = dot(draw, left) / xx;
        double all = dot(left, left);
        if (!(xx > 1e-6 * m) || !(slope > 0)) {
            return null;
        }
        double[] scores = new double[guess.stretches + 1];
        double[] own = new double[scores.length];
        boolean[] seen = new boolean[scores.length];
        for (int k = 0; k < m; k++) {
            int s = guess.stretch[k];
            scores[s] += draw[k] * (left[k] - slope * draw[k]);
            own[s] += draw[k] * left[k];
            seen[s] |= Math.abs(draw[k]) > 0.1;
        }
        int groups = 0;
        int agreeing = 0;
        for (int s = 0; s < scores.length; s++) {
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
        return fades ? new FuelFading(trace, slope, drawnS(trace, flow, guess), share) : null;
    }

    private interface Figure {
        double at(int k);
    }

    /** What is left of a figure beyond the mean of its piece. */
    private static double[] within(int[] pieces, Figure figure) {
        int most = Arrays.stream(pieces).max().orElse(0);
        double[] sums = new double[most + 1];
        int[] counts = new int[most + 1];
        double[] out = new double[pieces.length];
        for (int k = 0; k < out.length; k++) {
            out[k] = figure.at(k);
            sums[pieces[k]] += out[k];
            counts[pieces[k]]++;
        }
        for (int k = 0; k < out.length; k++) {
            out[k] -= sums[pieces[k]] / counts[pieces[k]];
        }
        return out;
    }

    /** The same piece by piece: at the edge of a hole the table is far steeper than elsewhere. */
    private static void removeByPiece(int[] pieces, double[] by, double[] of) {
        int most = Arrays.stream(pieces).max().orElse(0);
        double[] sizes = new double[most + 1];
        double[] shares = new double[most + 1];
        for (int k = 0; k < of.length; k++) {
            sizes[pieces[k]] += by[k] * by[k];
            shares[pieces[k]] += by[k] * of[k];
        }
        for (int k = 0; k < of.length; k++) {
            double size = sizes[pieces[k]];
            of[k] -= size > 0 ? shares[pieces[k]] / size * by[k] : 0;
        }
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
        double faded = slopePerS * drawnS(event.row());
        double beyondTarget = Math.log(event.leanest() / event.target());
        double beyondLimit = Math.log(event.leanest() / event.limit());
        return faded >= beyondLimit || faded >= HALF * beyondTarget;
    }

    /** For how long much fuel had been drawn at a row of the ride, s. */
    double drawnS(int row) {
        return drawnS[SamePlace.reading(trace, row)];
    }
}
