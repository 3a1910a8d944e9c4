package fuelwright.estimate;

import fuelwright.screen.ScreenedRide;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * Which cells of a table can be ridden for readings, by what the rides show: those in which readings counted while the engine kept its speed
 * or gained, for a second or more and not only now and then on its way down, and those between such cells. A little throttle at high engine
 * speed is only passed while the machine slows down, and no gear holds it there. Nothing below the lowest speed that the engine kept, or above
 * the redline. More throttle than was ridden at a speed can always be given, but not from so low a speed that the engine labours.
 * Immutable once made.
 */
final class Rideable {

    /** Time in a cell from which on it counts as ridden, s. */
    private static final double REACHED_S = 1;
    /** Falling faster than this, rpm a second over a second, the engine doesn't keep its speed (our choice, no source). */
    private static final double FALLING_RPM_PER_S = 100;
    /** Share of a cell's time in which the engine keeps its speed, so that it can be held there (our choice, no source). */
    private static final double KEPT_SHARE = 0.25;

    private static final double OVER_S = 0.5;
    private static final double LONGEST_STEP_S = 1;
    private static final double TURNING_RPM = 500;
    /** Share of the time below which engine speeds are taken for stalls and starts. */
    private static final double LOWEST_SHARE = 0.01;
    /** Noise of an idling engine (common practice, no source). */
    private static final double IDLE_NOISE = 0.95;

    /** Below so many times the lowest speed high load is only pulling away (common practice, no source). */
    private static final double PULLING_AWAY = 1.6;
    /** Below this share of the top speed an engine labours at more load than it was ridden with (common practice, no source). */
    private static final double LABOURS = 0.4;

    private final Table table;
    private final double[] inS;
    private final double[] nearS;
    private final double[] keptS;
    private final double lowestRpm;
    private final boolean[] can;

    private Rideable(Table table, List<Readings> rides, IntPredicate highLoad, OptionalDouble redlineRpm) {
        this.table = table;
        inS = new double[table.cells()];
        keptS = new double[table.cells()];
        rides.forEach(r -> add(r.track, r.screened));
        nearS = near();
        lowestRpm = lowest(rides);
        can = new boolean[table.cells()];
        double highest = redlineRpm.orElse(Double.POSITIVE_INFINITY);
        double labours = LABOURS * redlineRpm.orElseGet(this::fastest);
        for (int cell = 0; cell < can.length; cell++) {
            double speed = table.speedAt(cell);
            boolean high = highLoad.test(cell);
            can[cell] = speed <= highest
                    && speed >= (high ? PULLING_AWAY : IDLE_NOISE) * lowestRpm
                    && isWithin(cell)
                    && (!high || isKept(cell) || speed >= labours || isKeptFromBelow(cell));
        }
    }

    /** @param highLoad by cell of the table */
    static Rideable of(Table table, List<Readings> rides, IntPredicate highLoad, OptionalDouble redlineRpm) {
        return new Rideable(table, rides, highLoad, redlineRpm);
    }

    private void add(RideTrack track, ScreenedRide screened) {
        double[] load = track.load(table.load().kind());
        int back = 0;
        int ahead = 0;
        for (int i = 1; i < track.size(); i++) {
            double step = track.timeS[i] - track.timeS[i - 1];
            while (back < i && track.timeS[i] - track.timeS[back] > OVER_S) {
                back++;
            }
            while (ahead + 1 < track.size() && track.timeS[ahead] - track.timeS[i] < OVER_S) {
                ahead++;
            }
            double x = table.speed().position(track.speedRpm[i]);
            double y = table.load().position(load[i]);
            if (step > 0 && step < LONGEST_STEP_S && !track.fuelCut[i] && !Double.isNaN(x + y)) {
                int cell = table.cell((int) Math.round(y), (int) Math.round(x));
                inS[cell] += step;
                double span = track.timeS[ahead] - track.timeS[back];
                double rate = (track.speedRpm[ahead] - track.speedRpm[back]) / span;
                keptS[cell] += screened.counts(i) && span > 0 && rate >= -FALLING_RPM_PER_S ? step : 0;
            }
        }
    }

    /** The lowest speed that the engine kept: idle, where that was logged. */
    private static double lowest(List<Readings> rides) {
        double[] speeds = rides.stream()
                .flatMapToDouble(r -> Arrays.stream(r.track.speedRpm))
                .filter(rpm -> rpm > TURNING_RPM)
                .sorted()
                .toArray();
        return speeds.length == 0 ? 0 : speeds[(int) (LOWEST_SHARE * (speeds.length - 1))];
    }

    private double fastest() {
        return IntStream.range(0, keptS.length)
                .filter(this::isKept)
                .mapToDouble(table::speedAt)
                .max()
                .orElse(0);
    }

    private boolean isKept(int cell) {
        return keptS[cell] >= REACHED_S && keptS[cell] >= KEPT_SHARE * inS[cell];
    }

    private boolean isKept(int loadIndex, int speedIndex) {
        return isKept(table.cell(loadIndex, speedIndex));
    }

    /** Kept itself, or with no more throttle than it asks for kept at its speed or at a lower and a higher one. */
    private boolean isWithin(int cell) {
        if (isKept(cell)) {
            return true;
        }
        int speed = table.speedIndex(cell);
        boolean slower = false;
        boolean faster = false;
        for (int load = 0; load <= table.loadIndex(cell); load++) {
            for (int s = 0; s < table.speed().size(); s++) {
                if (isKept(load, s)) {
                    slower |= s <= speed;
                    faster |= s >= speed;
                }
            }
        }
        return slower && faster;
    }

    /** As much load, or more, was ridden at its speed or a lower one. */
    private boolean isKeptFromBelow(int cell) {
        for (int load = table.loadIndex(cell); load < table.load().size(); load++) {
            for (int s = 0; s <= table.speedIndex(cell); s++) {
                if (isKept(load, s)) {
                    return true;
                }
            }
        }
        return false;
    }

    boolean can(int cell) {
        return can[cell];
    }

    /** Cells that can't be ridden, in order. */
    List<Integer> beyond() {
        List<Integer> beyond = new ArrayList<>();
        for (int cell = 0; cell < can.length; cell++) {
            if (!can[cell]) {
                beyond.add(cell);
            }
        }
        return beyond;
    }

    /** The lowest speed that is asked for, rpm. */
    double lowestRpm() {
        return lowestRpm;
    }

    /** Seconds in each cell and those beside it, fuel on. */
    double[] nearS() {
        return nearS;
    }

    private double[] near() {
        double[] near = new double[inS.length];
        for (int c = 0; c < inS.length; c++) {
            for (int n : around(table, c)) {
                near[c] += inS[n];
            }
        }
        return near;
    }

    /** The cell and those beside it, corners too. */
    static List<Integer> around(Table table, int cell) {
        List<Integer> around = new ArrayList<>();
        int speeds = table.speed().size();
        for (int y = -1; y <= 1; y++) {
            for (int x = -1; x <= 1; x++) {
                int i = table.speedIndex(cell) + x;
                int j = table.loadIndex(cell) + y;
                if (i >= 0 && i < speeds && j >= 0 && j < table.load().size()) {
                    around.add(j * speeds + i);
                }
            }
        }
        return around;
    }
}
