package fuelwright.safety;

import fuelwright.airflow.Machine;
import fuelwright.table.Axis;
import fuelwright.unit.Sentence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/**
 * Readings that mean a fault rather than a mixture. A misfire leaves its oxygen unused and reads lean, in bursts; a leak ahead of the
 * sensor draws in air and reads lean where little flows (both common practice, no source). Enriching into either is wrong.
 */
final class LeakAndMisfire implements Rule {

    private static final double BURST_LAMBDA = 0.10;
    /** Six times the usual difference of two readings is four standard deviations of it. */
    private static final double BURST_SCATTERS = 6;

    /** Where bursts are the usual thing, readings 0.2 s apart differ by them: then noise is what neighbouring rows show, and bursts must be this large. */
    private static final double LARGE_BURST_LAMBDA = 0.25;
    /** By so much the middle of three rows misses the mean of its neighbours where readings 0.2 s apart differ by 1, both medians, in noise alone. */
    private static final double JITTER = Math.sqrt(6) / Math.sqrt(2) / 2;

    private static final int SCATTER_ROWS = 5000;
    private static final double BACK_SHARE = 0.6;
    private static final double BURST_S = 0.8;
    private static final double STEADY_PERCENT = 8;
    private static final double STEADY_KPA = 12;
    private static final double STEADY_S = 0.5;
    private static final double AFTER_OVERRUN_S = 1.5;
    private static final int BURSTS = 4;
    private static final double BURSTS_A_MINUTE = 0.4;

    private static final double LOW_FLOW_SHARE = 0.15;
    private static final double HIGH_FLOW_SHARE = 0.5;
    private static final double LEAK_LOG = 0.08;
    private static final double FINE_LOG = 0.04;
    private static final int LEAST_ROWS = 60;

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = Say.bySensor(d, (r, s, found) -> misfire(d, r, s, found));
        if (d.fuel.load().kind() == Axis.Kind.MANIFOLD_PRESSURE || !isBodyChanged(d)) {
            for (int r = 0; r < d.rides(); r++) {
                int from = out.size();
                leak(d, r, out);
                Say.about(out, from, d.ride(r).name());
            }
        }
        return out;
    }

    /** A bigger body makes a throttle-indexed table lean at small openings by itself: then a leak can't be told. */
    private static boolean isBodyChanged(Dossier d) {
        Machine machine = d.file.machine();
        return machine.before().isPresent()
                && machine.after().isPresent()
                && machine.after().get().boreMm()
                        > 1.01 * machine.before().get().boreMm();
    }

    private static void misfire(Dossier d, int r, int s, List<Caution> out) {
        RideRows rows = d.rows(r);
        double[] lambda = rows.mixture(s);
        double least = Math.max(BURST_LAMBDA, BURST_SCATTERS * scatter(rows, lambda));
        if (least > LARGE_BURST_LAMBDA) {
            least = Math.min(least, Math.max(LARGE_BURST_LAMBDA, BURST_SCATTERS * jitter(rows, lambda)));
        }
        List<Caution.Moment> moments = new ArrayList<>();
        TreeSet<Integer> cells = new TreeSet<>();
        double lastOverrun = Double.NEGATIVE_INFINITY;
        int before = -1;
        for (int i = 0; i < rows.size; i++) {
            if (rows.isOverrun(i)) {
                lastOverrun = rows.timeS[i];
            }
            if (!(lambda[i] > 0)) {
                continue;
            }
            boolean jumps = before >= 0
                    && lambda[i] - lambda[before] > least
                    && rows.timeS[i] - rows.timeS[before] < BURST_S / 2;
            if (jumps && rows.timeS[i] - lastOverrun > AFTER_OVERRUN_S && rows.isRunning(i)) {
                int end = endOfBurst(rows, lambda, before, i);
                if (end > i && isSteady(rows, i, end)) {
                    moments.add(rows.moment(r, i, end, highest(lambda, i, end)));
                    cells.add(d.nearestCell(rows.speedRpm[i], rows.load[i]));
                    i = end;
                }
            }
            before = isNearly(rows, before, i) ? before : i;
        }
        double minutes = rows.seconds(rows::isRunning) / 60;
        if (moments.size() >= BURSTS && moments.size() >= BURSTS_A_MINUTE * minutes) {
            moments.sort((a, b) -> Double.compare(b.worst(), a.worst()));
            out.add(new Caution(
                    "misfire",
                    Caution.Level.CHECK,
                    "Looks like misfire",
                    Sentence.of(
                            "%d short lean bursts at steady throttle in %s, %.1f a minute, up to %s: unused oxygen reads lean",
                            moments.size(),
                            rows.ride.name(),
                            moments.size() / minutes,
                            Say.lambda(moments.get(0).worst())),
                    "Look at plugs, coils, leads and gaps before adding fuel there",
                    cells,
                    moments));
        }
    }

    /** By how much readings a fifth of a second apart differ usually (median), lambda: a noisy sensor jumps without a misfire. */
    private static double scatter(RideRows rows, double[] lambda) {
        double[] steps = new double[Math.min(rows.size, SCATTER_ROWS) + 1];
        int stride = Math.max(1, rows.size / SCATTER_ROWS);
        int n = 0;
        for (int i = 0; i < rows.size && n < steps.length; i += stride) {
            int back = i;
            while (back > 0 && isNearly(rows, back - 1, i)) {
                back--;
            }
            back = Math.max(0, back - 1);
            double step = Math.abs(lambda[i] - lambda[back]);
            if (step >= 0
                    && rows.timeS[i] - rows.timeS[back] < BURST_S / 2
                    && rows.isRunning(i)
                    && !rows.isOverrun(i)) {
                steps[n++] = step;
            }
        }
        return n == 0 ? 0 : median(steps, n);
    }

    /** The same by how little the middle of three rows goes with its neighbours: a sensor's lag makes a burst smooth, not its noise. */
    private static double jitter(RideRows rows, double[] lambda) {
        double[] steps = new double[Math.min(rows.size, SCATTER_ROWS) + 1];
        int stride = Math.max(1, rows.size / SCATTER_ROWS);
        int n = 0;
        for (int i = 1; i + 1 < rows.size && n < steps.length; i += stride) {
            double off = Math.abs(lambda[i] - (lambda[i - 1] + lambda[i + 1]) / 2);
            if (off >= 0
                    && rows.timeS[i + 1] - rows.timeS[i - 1] < BURST_S / 2
                    && rows.isRunning(i)
                    && !rows.isOverrun(i)) {
                steps[n++] = off;
            }
        }
        return n == 0 ? Double.POSITIVE_INFINITY : median(steps, n) / JITTER;
    }

    /** The level before a jump is the one a fifth of a second back: a smeared edge mustn't pass as many small steps. */
    private static boolean isNearly(RideRows rows, int before, int now) {
        return before >= 0 && rows.timeS[now] - rows.timeS[before] < 0.2 && now - before < 8;
    }

    private static int endOfBurst(RideRows rows, double[] lambda, int before, int start) {
        double peak = lambda[start];
        for (int k = start + 1; k < rows.size && rows.timeS[k] - rows.timeS[start] <= BURST_S; k++) {
            peak = lambda[k] > peak ? lambda[k] : peak;
            if (lambda[k] < peak - BACK_SHARE * (peak - lambda[before])) {
                return k;
            }
        }
        return start;
    }

    private static boolean isSteady(RideRows rows, int start, int end) {
        return isSteady(rows, rows.throttlePercent, STEADY_PERCENT, start, end)
                && isSteady(rows, rows.pressureKpa, STEADY_KPA, start, end);
    }

    /** Whether a load keeps within a range from shortly before a burst to its end; so does one that wasn't logged. */
    private static boolean isSteady(RideRows rows, double[] load, double within, int start, int end) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int k = end; k >= 0 && rows.timeS[start] - rows.timeS[k] < STEADY_S; k--) {
            least = Math.min(least, Double.isNaN(load[k]) ? least : load[k]);
            most = Math.max(most, Double.isNaN(load[k]) ? most : load[k]);
        }
        return !(most - least >= within);
    }

    private static double highest(double[] lambda, int from, int to) {
        double most = 0;
        for (int i = from; i <= to; i++) {
            most = lambda[i] > most ? lambda[i] : most;
        }
        return most;
    }

    private static void leak(Dossier d, int r, List<Caution> out) {
        RideRows rows = d.rows(r);
        if (rows.ride.mixtures().isEmpty()) {
            return;
        }
        double[] lambda = rows.mixture(rows.ride.firstEvidence());
        boolean byThrottle = d.target.load().kind() == Axis.Kind.THROTTLE;
        double[] flow = new double[rows.size];
        double most = 0;
        for (int i = 0; i < rows.size; i++) {
            boolean counts = rows.isEvidence(i) && lambda[i] > 0;
            flow[i] = counts ? d.flow.gramsPerSecond(rows.speedRpm[i], rows.load[i]) : Double.NaN;
            most = flow[i] > most ? flow[i] : most;
        }
        double[] low = new double[rows.size];
        double[] high = new double[rows.size];
        int lows = 0;
        int highs = 0;
        Locator targets = new Locator(d.target);
        for (int i = 0; i < rows.size; i++) {
            if (Double.isNaN(flow[i])) {
                continue;
            }
            double target = targets.value(rows.speedRpm[i], byThrottle ? rows.throttlePercent[i] : rows.pressureKpa[i]);
            double y = Math.log(lambda[i] / target);
            if (Double.isNaN(y)) {
                continue;
            }
            if (flow[i] < LOW_FLOW_SHARE * most) {
                low[lows++] = y;
            } else if (flow[i] > HIGH_FLOW_SHARE * most) {
                high[highs++] = y;
            }
        }
        if (lows < LEAST_ROWS || highs < LEAST_ROWS) {
            return;
        }
        double atLow = median(low, lows);
        double atHigh = median(high, highs);
        Machine machine = d.file.machine();
        boolean bodies = d.fuel.load().kind() == Axis.Kind.THROTTLE
                && (machine.before().isEmpty() || machine.after().isEmpty());
        if (atLow > LEAK_LOG && Math.abs(atHigh) < FINE_LOG) {
            out.add(new Caution(
                    "leak",
                    Caution.Level.CHECK,
                    "Lean only where little flows",
                    String.format(
                                    Locale.ROOT,
                                    "In %s the mixture reads %.0f %% lean at small flow and is fine at large flow: ",
                                    rows.ride.name(),
                                    100 * Math.expm1(atLow))
                            + (bodies
                                    ? "bigger bodies do just that to a table by throttle; a leak ahead of the sensor looks the same"
                                    : "a leak ahead of the sensor does that"),
                    bodies
                            ? "Describe the engine and its bodies on the stage Machine; if they weren't changed, look for an exhaust or"
                                    + " intake leak before adding fuel at light load"
                            : "Look for an exhaust or intake leak before adding fuel at light load",
                    new TreeSet<>(),
                    List.of()));
        }
    }

    private static double median(double[] values, int count) {
        double[] sorted = Arrays.copyOf(values, count);
        Arrays.sort(sorted);
        return sorted[count / 2];
    }
}
