package fuelwright.safety;

import fuelwright.table.Axis;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/**
 * Units that can't be right as far as the figures show: a clock that is a thousand times too fast or slow, a mixture that isn't lambda.
 * With either no other rule can be trusted to find a danger, so both are a Stop.
 */
final class Plausible implements Rule {

    private static final int MEDIAN_ROWS = 50_000;
    private static final double SHORTEST_STEP_S = 0.0008;
    private static final double LONGEST_STEP_S = 2.5;
    /** Engines don't change speed by more than this most of the time, relative a second. */
    private static final double MOST_RATE = 2;
    /** Rates are taken over so many rows, so that a logger's last digit doesn't look like movement. */
    private static final int RATE_ROWS = 10;

    private static final double LEAST_LAMBDA = 0.66;
    private static final double MOST_LAMBDA = 1.30;
    private static final double RICH_TARGET = 0.93;
    private static final double LEAN_READING = 1.04;
    private static final double LIGHT_TARGET = 0.97;
    /** Where the target is rich the reading is lower by this at least: it goes with its target, as lambda does. */
    private static final double FOLLOWS_LAMBDA = 0.02;

    private static final int LEAST_ROWS = 20;

    private static final String SEE_WHICH =
            "See whether the column is an equivalence ratio; if it is lambda, the engine is dangerously lean";

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        for (int r = 0; r < d.rides(); r++) {
            RideRows rows = d.rows(r);
            int clock = out.size();
            time(rows, out);
            Say.about(out, clock, rows.ride.name());
            for (int s = 0; s < rows.ride.mixtures().size(); s++) {
                int from = out.size();
                mixture(d, rows, s, out);
                Say.about(out, from, Say.sensor(rows.ride, s));
            }
        }
        return out;
    }

    private static void time(RideRows rows, List<Caution> out) {
        if (rows.size < LEAST_ROWS) {
            return;
        }
        double[] steps = new double[rows.size / stride(rows) + 1];
        double[] rates = new double[rows.size / stride(rows) + 1];
        int n = 0;
        int moving = 0;
        int stride = stride(rows);
        for (int i = 1; i < rows.size; i += stride) {
            double step = rows.timeS[i] - rows.timeS[i - 1];
            if (step > 0) {
                steps[n++] = step;
            }
            int back = i - RATE_ROWS;
            if (back >= 0 && rows.isRunning(i) && rows.isRunning(back) && rows.timeS[i] > rows.timeS[back]) {
                double change = Math.abs(Math.log(rows.speedRpm[i] / rows.speedRpm[back]));
                rates[moving++] = change / (rows.timeS[i] - rows.timeS[back]);
            }
        }
        double step = median(steps, n);
        double rate = moving < LEAST_ROWS ? 0 : median(rates, moving);
        boolean fast = n > 0 && step < SHORTEST_STEP_S || rate > MOST_RATE;
        boolean slow = n > 0 && step > LONGEST_STEP_S;
        if (fast || slow) {
            out.add(new Caution(
                    "time-unit",
                    Caution.Level.STOP,
                    "The clock can't be right",
                    String.format(
                            Locale.ROOT,
                            "Rows of %s are %.3g s apart%s: the time column looks like another unit",
                            rows.ride.name(),
                            step,
                            fast && rate > MOST_RATE ? " and engine speed leaps" : ""),
                    "Give the time column's unit and read the ride again: lean moments can't be timed with this clock",
                    new TreeSet<>(),
                    List.of()));
        }
    }

    private static void mixture(Dossier d, RideRows rows, int s, List<Caution> out) {
        double[] lambda = rows.mixture(s);
        int stride = stride(rows);
        double[] all = new double[rows.size / stride + 1];
        double[] rich = new double[all.length];
        double[] richTargets = new double[all.length];
        double[] light = new double[all.length];
        int n = 0;
        int riches = 0;
        int lights = 0;
        boolean byThrottle = d.target.load().kind() == Axis.Kind.THROTTLE;
        for (int i = 0; i < rows.size; i += stride) {
            if (Double.isNaN(lambda[i]) || !rows.isRunning(i) || rows.isOverrun(i)) {
                continue;
            }
            all[n++] = lambda[i];
            double target =
                    d.target.value(rows.speedRpm[i], byThrottle ? rows.throttlePercent[i] : rows.pressureKpa[i]);
            if (target > LIGHT_TARGET && lambda[i] > 0) {
                light[lights++] = lambda[i];
            }
            if (target < RICH_TARGET && lambda[i] > 0) {
                rich[riches] = lambda[i];
                richTargets[riches++] = target;
            }
        }
        if (n < LEAST_ROWS) {
            return;
        }
        String name = rows.ride.mixtures().get(s).heading() + " of " + rows.ride.name();
        double median = median(all, n);
        if (median < LEAST_LAMBDA || median > MOST_LAMBDA) {
            out.add(
                    stop(
                            "mixture-unit",
                            "The mixture can't be lambda",
                            String.format(
                                    Locale.ROOT,
                                    "Half of %s is %s lambda %.3g with the engine running%s",
                                    name,
                                    median < LEAST_LAMBDA ? "below" : "above",
                                    median,
                                    median > 6 && median < 22 ? "; it looks like an AFR" : ""),
                            "Give the column's unit and the display's ratio, and read the ride again; if both are right the sensor is at its end"));
            return;
        }
        double read = median(rich, riches);
        double target = median(richTargets, riches);
        boolean follows = lights >= LEAST_ROWS && median(light, lights) > read + FOLLOWS_LAMBDA;
        if (riches >= LEAST_ROWS && !follows && read > LEAN_READING && Math.abs(Math.log(read * target)) < 0.07) {
            out.add(stop(
                    "mixture-upside-down",
                    "The mixture may be upside down",
                    String.format(
                            Locale.ROOT,
                            "Where the target is lambda %.2f, %s reads %.2f, which is nearly its reciprocal",
                            target,
                            name,
                            read),
                    SEE_WHICH));
            return;
        }
        OverrunReadings overruns = OverrunReadings.of(rows, lambda);
        boolean sure = overruns.isUpsideDown();
        if (sure || overruns.looksUpsideDown(median)) {
            out.add(new Caution(
                    "mixture-upside-down",
                    sure ? Caution.Level.STOP : Caution.Level.CHECK,
                    "The mixture may be upside down",
                    String.format(
                            Locale.ROOT,
                            "%s reads %.2f, as rich as can be, in most of %d overruns of %.1f s or more, where the exhaust is air and lambda at"
                                    + " its lean end: it looks like a fuel–air ratio, which counts rich as above 1. A lean engine then looks rich",
                            name,
                            overruns.median(),
                            overruns.count(),
                            OverrunReadings.LEAST_S),
                    SEE_WHICH + "; where fuel isn't cut on the overrun, see why it is so rich there",
                    new TreeSet<>(),
                    List.of()));
        }
    }

    private static Caution stop(String rule, String title, String what, String todo) {
        return new Caution(rule, Caution.Level.STOP, title, what, todo, new TreeSet<>(), List.of());
    }

    /** Medians of long rides are taken over so many rows, spread evenly. */
    private static int stride(RideRows rows) {
        return Math.max(1, rows.size / MEDIAN_ROWS);
    }

    private static double median(double[] values, int count) {
        double[] sorted = Arrays.copyOf(values, count);
        Arrays.sort(sorted);
        return count == 0 ? Double.NaN : sorted[count / 2];
    }
}
