package fuelwright.safety;

import fuelwright.estimate.SensorFit;
import fuelwright.ride.Ride;
import fuelwright.unit.Measured;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/** Whether each mixture sensor can be believed: frozen, at its end, blind to a fuel cut, slow. */
final class SensorHealth implements Rule {

    private static final double MOVED_SPEED_SHARE = 0.1;
    private static final double MOVED_THROTTLE_PERCENT = 10;
    private static final double MOVED_PRESSURE_KPA = 10;
    /** A display as coarse as this stands still though the mixture moves. */
    private static final double COARSE_LAMBDA = 0.02;

    private static final double SAME_LAMBDA = 1e-6;
    private static final double MUCH_SHARE = 0.2;
    private static final double PEGGED_SHARE = 0.05;
    private static final double BLIND_SHARE = 0.5;
    private static final double RICH_END = 0.70;
    private static final double FREE_AIR_LAMBDA = 1.2;
    private static final double CUT_S = 1.5;
    /** A cut counts where there is a reading so long after its start, s: some loggers show nothing in free air. */
    private static final double SHOWN_S = 1.0;

    private static final double BLANK_S = 1.0;
    private static final int CUTS = 3;
    private static final double USUAL_LAG_S = 0.1;
    private static final double SURE_ERRORS = 4;

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = Say.bySensor(d, (r, s, found) -> {
            RideRows rows = d.rows(r);
            double[] lambda = rows.mixture(s);
            frozen(d, r, s, rows, lambda, found);
            pegged(d, r, s, rows, lambda, found);
            freeAir(d, r, s, rows, lambda, found);
        });
        slow(d, out);
        return out;
    }

    private static String name(Ride ride, int sensor) {
        return ride.mixtures().size() > 1
                ? ride.mixtures().get(sensor).heading() + " in " + ride.name()
                : "The mixture reading in " + ride.name();
    }

    private static void frozen(Dossier d, int r, int s, RideRows rows, double[] lambda, List<Caution> out) {
        double limit = d.limits.of(Limit.SENSOR_FROZEN);
        double most = Arrays.stream(lambda).filter(Double::isFinite).max().orElse(0);
        double least = Arrays.stream(lambda).filter(Double::isFinite).min().orElse(0);
        double running = rows.seconds(rows::isRunning);
        boolean coarse = step(lambda) >= COARSE_LAMBDA;
        double total = 0;
        double underLoad = 0;
        List<Caution.Moment> moments = new ArrayList<>();
        int start = 0;
        int last = 0;
        for (int i = 1; i <= lambda.length; i++) {
            boolean same = i < lambda.length
                    && (Double.isNaN(lambda[i]) || lambda[i] == lambda[start])
                    && rows.timeS[i] - rows.timeS[last] <= BLANK_S;
            if (same) {
                last = Double.isNaN(lambda[i]) ? last : i;
                continue;
            }
            boolean atEnd = lambda[start] == most || lambda[start] == least;
            double length = rows.timeS[last] - rows.timeS[start];
            if (Double.isFinite(lambda[start])
                    && last > start
                    && length >= limit
                    && !(atEnd && most > least)
                    && moved(rows, start, last)
                    && (!coarse || targetMoved(d, rows, start, last, step(lambda)))) {
                total += length;
                for (int k = start; k < last; k++) {
                    underLoad += d.isHighLoad(r, rows.speedRpm[k], rows.throttlePercent[k], rows.pressureKpa[k])
                            ? rows.stepS(k)
                            : 0;
                }
                moments.add(rows.moment(r, start, last, lambda[start]));
            }
            start = i;
            last = i;
        }
        if (moments.isEmpty()) {
            return;
        }
        moments.sort((a, b) -> Double.compare(b.lengthS(), a.lengthS()));
        boolean stop = underLoad >= d.limits.of(Limit.LEAN_FOR) || total > MUCH_SHARE * running;
        out.add(new Caution(
                "sensor-frozen",
                stop ? Caution.Level.STOP : Caution.Level.CHECK,
                "Sensor frozen",
                name(rows.ride, s) + " stood still for " + Say.seconds(total) + " while the engine moved, "
                        + (underLoad > 0 ? Say.seconds(underLoad) + " of it at high load" : "none of it at high load")
                        + ": what was burnt then isn't known",
                "See to the sensor, its heater and its wiring, and ride again",
                new TreeSet<>(),
                moments));
    }

    private static boolean moved(RideRows rows, int from, int to) {
        return range(rows.speedRpm, from, to) > MOVED_SPEED_SHARE * rows.speedRpm[from]
                || range(rows.throttlePercent, from, to) > MOVED_THROTTLE_PERCENT
                || range(rows.pressureKpa, from, to) > MOVED_PRESSURE_KPA;
    }

    /** The usual step from one reading to the next that differs, lambda: no less than the last digit of the display. */
    private static double step(double[] lambda) {
        double least = Double.POSITIVE_INFINITY;
        double before = Double.NaN;
        for (double value : lambda) {
            double step = Math.abs(value - before);
            least = step > SAME_LAMBDA && step < least ? step : least;
            before = value > 0 ? value : before;
        }
        return Double.isFinite(least) ? least : 0;
    }

    /** Whether the mixture should have moved by more than a coarse display rounds away, long enough before the end of the stretch to be shown. */
    private static boolean targetMoved(Dossier d, RideRows rows, int from, int to, double stepLambda) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = from; i <= to && rows.timeS[i] <= rows.timeS[to] - SHOWN_S; i++) {
            double target = d.targetAt(d.nearestCell(rows.speedRpm[i], rows.load[i]));
            least = target < least ? target : least;
            most = target > most ? target : most;
        }
        return most - least > 2 * stepLambda;
    }

    private static double range(double[] values, int from, int to) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = from; i <= to; i++) {
            if (!Double.isNaN(values[i])) {
                least = Math.min(least, values[i]);
                most = Math.max(most, values[i]);
            }
        }
        return most - least;
    }

    private static void pegged(Dossier d, int r, int s, RideRows rows, double[] lambda, List<Caution> out) {
        double top = d.limits.of(Limit.SENSOR_TOP);
        FuelCutTimes cuts = FuelCutTimes.of(rows.ride);
        double clearing = d.limits.of(Limit.FUEL_CUT_CLEARING);
        double lastCut = Double.NEGATIVE_INFINITY;
        double all = 0;
        double lean = 0;
        double rich = 0;
        boolean warming = warmsUp(rows, lambda, top);
        for (int i = 0; i < lambda.length; i++) {
            if (rows.isOverrun(i) || cuts.at(rows.timeS[i])) {
                lastCut = rows.timeS[i];
            }
            warming &= !(lambda[i] < top) && rows.timeS[i] - rows.timeS[0] < LeanScan.WARMING_S;
            if (!rows.isRunning(i) || Double.isNaN(lambda[i]) || warming || rows.timeS[i] - lastCut < clearing) {
                continue;
            }
            double step = rows.stepS(i);
            all += step;
            lean += lambda[i] >= top ? step : 0;
            rich += lambda[i] <= RICH_END ? step : 0;
        }
        if (all > 0 && lean + rich >= PEGGED_SHARE * all) {
            boolean blind = lean + rich >= BLIND_SHARE * all;
            boolean atLean = lean >= rich;
            out.add(new Caution(
                    "sensor-at-its-end",
                    blind ? Caution.Level.STOP : Caution.Level.CHECK,
                    blind ? "The sensor sees nothing" : "The sensor is at its end",
                    name(rows.ride, s) + " is at its " + (atLean ? "lean" : "rich") + " end for "
                            + Say.percent(100 * (lean + rich) / all)
                            + " of the time with fuel on: how far beyond isn't known",
                    atLean
                            ? "See to sensor, heater, wiring and scale first; then look for an air leak or missing fuel"
                            : "See to sensor and scale; then look for too much fuel",
                    new TreeSet<>(),
                    List.of()));
        }
    }

    /** At its lean end from the first row on, and off it before long. */
    private static boolean warmsUp(RideRows rows, double[] lambda, double top) {
        for (int i = 0; i < lambda.length && rows.timeS[i] - rows.timeS[0] < LeanScan.WARMING_S; i++) {
            if (lambda[i] < top) {
                return true;
            }
        }
        return false;
    }

    /** During a fuel cut the exhaust is air: a sensor that doesn't show it is slow, mis-scaled, or the flag is wrong. */
    private static void freeAir(Dossier d, int r, int s, RideRows rows, double[] lambda, List<Caution> out) {
        FuelCutTimes cuts = FuelCutTimes.of(rows.ride);
        int seen = 0;
        int blind = 0;
        double highest = 0;
        int row = 0;
        for (int c = 0; c < cuts.size(); c++) {
            if (cuts.endS(c) - cuts.startS(c) < CUT_S) {
                continue;
            }
            double most = Double.NaN;
            while (row < lambda.length && rows.timeS[row] < cuts.startS(c)) {
                row++;
            }
            boolean shown = false;
            for (int i = row; i < lambda.length && rows.timeS[i] <= cuts.endS(c) + 1; i++) {
                most = Double.isNaN(most) || lambda[i] > most ? lambda[i] : most;
                shown |= lambda[i] > 0 && rows.timeS[i] >= cuts.startS(c) + SHOWN_S && rows.timeS[i] <= cuts.endS(c);
            }
            if (shown) {
                seen++;
                blind += most < FREE_AIR_LAMBDA ? 1 : 0;
                highest = Math.max(highest, most);
            }
        }
        if (seen >= CUTS && blind > BLIND_SHARE * seen) {
            out.add(new Caution(
                    "sensor-blind-to-fuel-cut",
                    Caution.Level.CHECK,
                    "No free air at fuel cut",
                    Sentence.of(
                            "%s stays below %s in %d of %d fuel cuts of %.1f s or more, though the exhaust is air then",
                            name(rows.ride, s), Measured.of(FREE_AIR_LAMBDA, Unit.LAMBDA, 1), blind, seen, CUT_S),
                    "Check the sensor in free air and the scale of its output before believing a figure",
                    new TreeSet<>(),
                    List.of()));
        }
    }

    private static void slow(Dossier d, List<Caution> out) {
        if (d.estimate().isEmpty()) {
            return;
        }
        // The fit is drawn towards a usual sensor: what lies far from it all the same was told by the rides.
        SensorFit fit = d.estimate().get().sensor();
        if (!fit.identified() && !(d.sensor.lagS() - USUAL_LAG_S > SURE_ERRORS * fit.lagErrorS())) {
            return;
        }
        double lagS = d.sensor.lagS();
        if (lagS > d.limits.of(Limit.SENSOR_SLOW)) {
            out.add(new Caution(
                    "sensor-slow",
                    Caution.Level.CHECK,
                    "Sensor slow",
                    String.format(
                            Locale.ROOT,
                            "The rides say that the sensor takes %.2f s for 63 %% of a step; 0.05 to 0.10 s is usual. Short lean moments stay hidden",
                            lagS),
                    "See to the sensor's age, heater and place, or to a filter in the logger",
                    new TreeSet<>(),
                    List.of()));
        }
    }
}
