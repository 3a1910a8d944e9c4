package fuelwright.safety;

import fuelwright.estimate.BurntTrace;
import fuelwright.table.Table;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * Finds stretches that were lean at high load in one sensor's trace. One pass, O(readings).
 *
 * <p>The delay is undone by the trace. The lag is allowed for instead of undone, which would amplify noise: a reading is judged only where
 * load has been high for two time constants before it, so that what is left of an earlier mixture is below 14 %; what was lean all along counts from
 * where load got high. Left out: the engine
 * not running, fuel cut (logged, or a closed throttle that reads free air) and the clearing after it, and a reading that stays exactly
 * the same for long while the engine moves, which is a frozen sensor and reported as such, and a sensor that still warms up. Kept in, because a danger is one: movement of
 * throttle and speed, cold, and a reading at the sensor's lean end.
 */
final class LeanScan {

    private static final double GAP_S = 1.0;
    private static final double BREAK_S = 0.3;
    private static final double RUNNING_RPM = 500;
    private static final double OVERRUN_RPM = 1200;
    private static final double FREE_AIR_LAMBDA = 1.2;
    /** So many readings missing in a row after the throttle closed: a logger that shows nothing in free air. */
    private static final int BLANK_READINGS = 3;
    /** So many readings show how often the logger renews one. */
    private static final int HOLD_READINGS = 20_000;
    /** A sensor may show its lean end for so long after switching on, s. */
    static final double WARMING_S = 60;

    private static final double TIP_IN_S = 1.5;
    private static final double TIP_IN_START_S = 0.3;
    /** Load may be low for so long before the fuel system is called rested. */
    private static final double REST_S = 2.0;

    /** What is known of the trace beside the trace itself. */
    record Setting(
            int ride,
            int sensor,
            LoadThreshold highLoad,
            Table target,
            boolean targetByThrottle,
            Table cells,
            Limits limits,
            double lagS,
            double closedPercent,
            double highFlowRpm,
            FuelCutTimes cuts,
            IntPredicate cold) {}

    private final BurntTrace trace;
    private final Setting setting;
    private final LoadThreshold highLoad;
    private final double closedPercent;
    private final boolean targetByThrottle;
    private final Locator targets;
    private final Locator cells;
    private final double clearing;
    private final double lookBack;
    private final double floor;
    private final double ceiling;
    private final double edgeCeiling;
    private final double spare;
    private final double top;
    private final double frozenS;
    private final double holdS;
    private final CellHistory history;
    private final OpenStretch stretch;
    private final LeanEvents found;
    private List<LeanEvent> events = List.of();

    // State of the pass.
    private double highSince = Double.NaN;
    private double lastHigh = Double.NaN;
    private double flowSince = Double.NaN;
    private double lastCut = Double.NEGATIVE_INFINITY;
    private boolean wasClosed;
    private double sameSince;
    private double sameSpeed;
    private double sameThrottle;
    private boolean sameMoved;
    private double sameLambda = Double.NaN;
    private boolean warming;
    private double segmentStart;
    /** Whether every reading since load got high has been lean: then the lag of an earlier mixture isn't to blame for the first ones. */
    private boolean leanSinceHigh;

    private LeanScan(BurntTrace trace, Setting setting) {
        this.trace = trace;
        this.setting = setting;
        highLoad = setting.highLoad;
        closedPercent = setting.closedPercent;
        targetByThrottle = setting.targetByThrottle;
        targets = new Locator(setting.target);
        cells = new Locator(setting.cells);
        Limits limits = setting.limits;
        clearing = limits.of(Limit.FUEL_CUT_CLEARING);
        lookBack = 2 * setting.lagS;
        ceiling = limits.of(Limit.LEAN_CEILING);
        edgeCeiling = limits.edgeCeiling();
        spare = limits.of(Limit.LEAN_EXCESS);
        top = limits.of(Limit.SENSOR_TOP);
        frozenS = limits.of(Limit.SENSOR_FROZEN);
        double leastTarget = Arrays.stream(setting.target.toArray()).min().orElse(ceiling);
        floor = Math.min(ceiling, leastTarget + spare);
        holdS = Math.min(1, meanHoldS(trace));
        double leanFor = limits.of(Limit.LEAN_FOR) - 1e-6;
        history = new CellHistory(setting.cells.cells());
        stretch = new OpenStretch(trace, setting, leanFor, holdS);
        found = new LeanEvents(setting, leanFor);
    }

    /** The lean stretches of a trace, in the order in which they happened, and what each cell saw. */
    static LeanScan of(BurntTrace trace, Setting setting) {
        LeanScan scan = new LeanScan(trace, setting);
        scan.run();
        return scan;
    }

    List<LeanEvent> events() {
        return events;
    }

    int leanReadings(int cell) {
        return history.leanReadings(cell);
    }

    int fineReadings(int cell) {
        return history.fineReadings(cell);
    }

    /** How long a value stands before the next: a slow logger's one reading must not count as many. */
    private static double meanHoldS(BurntTrace trace) {
        int changes = 0;
        double total = 0;
        int n = Math.min(trace.size(), HOLD_READINGS);
        for (int i = 1; i < n; i++) {
            double step = trace.burntS(i) - trace.burntS(i - 1);
            total += step > 0 && step < GAP_S ? step : 0;
            changes += trace.lambda(i) != trace.lambda(i - 1) ? 1 : 0;
        }
        return total / Math.max(1, changes);
    }

    private void run() {
        double before = Double.NaN;
        int n = trace.size();
        for (int i = 0; i < n; i++) {
            double t = trace.burntS(i);
            double lambda = trace.lambda(i);
            if (!(lambda > 0)) {
                continue;
            }
            if (t - before > GAP_S || t < before - GAP_S) {
                close(false);
                highSince = Double.NaN;
            }
            if (Double.isNaN(before) || t < before - GAP_S) {
                warming = warmsUp(i);
                segmentStart = t;
            }
            track(i, t, lambda, before);
            before = t;
            warming &= lambda >= top && t - segmentStart < WARMING_S;
            if (!warming) {
                read(i, t, lambda);
            }
        }
        close(false);
        events = found.named(history);
    }

    /**
     * Whether a stretch of readings begins with a sensor that warms up: at its lean end from the first reading, with load not high, and
     * off it before long. A pull that is pegged from its first row is a danger instead.
     */
    private boolean warmsUp(int first) {
        if (highLoad.at(trace.speedRpm(first), trace.throttlePercent(first), trace.pressureKpa(first))) {
            return false;
        }
        int i = first;
        while (i < trace.size() && trace.lambda(i) >= top) {
            i++;
        }
        return i > first && i < trace.size() && trace.burntS(i) - trace.burntS(first) < WARMING_S;
    }

    /** Keeps what a reading is judged by: how long the value has stood still, and when fuel was last cut. */
    private void track(int i, double t, double lambda, double before) {
        double rpm = trace.speedRpm(i);
        double throttle = trace.throttlePercent(i);
        if (lambda != sameLambda) {
            sameLambda = lambda;
            sameSince = t;
            sameSpeed = rpm;
            sameThrottle = throttle;
            sameMoved = false;
        } else if (Math.abs(rpm - sameSpeed) > 0.1 * sameSpeed || Math.abs(throttle - sameThrottle) > 10) {
            sameMoved = true;
        }
        boolean closed = throttle <= closedPercent && rpm > OVERRUN_RPM;
        boolean freeAir = closed && lambda >= FREE_AIR_LAMBDA;
        boolean blank = wasClosed && t - before > Math.max(BREAK_S, BLANK_READINGS * holdS);
        if (freeAir && !highLoad.at(rpm, throttle, trace.pressureKpa(i)) || blank) {
            lastCut = t;
        } else {
            lastCut = Math.max(t < lastCut ? Double.NEGATIVE_INFINITY : lastCut, setting.cuts.lastS(t));
        }
        wasClosed = closed;
    }

    private void read(int i, double t, double lambda) {
        double rpm = trace.speedRpm(i);
        boolean high = highLoad.at(rpm, trace.throttlePercent(i), trace.pressureKpa(i)) && rpm >= RUNNING_RPM;
        if (!high) {
            if (stretch.isOpen() && t - lastHigh > BREAK_S) {
                close(false);
            }
            highSince = Double.NaN;
            return;
        }
        if (Double.isNaN(highSince)) {
            highSince = t;
            leanSinceHigh = true;
            if (!(t - lastHigh < REST_S)) {
                flowSince = t;
            }
        }
        lastHigh = t;
        if (t - lastCut < clearing) {
            leanSinceHigh = false;
            return;
        }
        boolean early = t - highSince < lookBack;
        if (early && !leanSinceHigh) {
            return;
        }
        double target = Double.NaN;
        double limit = floor;
        boolean isLean = false;
        if (lambda > floor) {
            target = targets.value(rpm, targetByThrottle ? trace.throttlePercent(i) : trace.pressureKpa(i));
            limit = leanest(target, ceiling);
            if (lambda > limit && !highLoad.isWellInside(rpm, trace.throttlePercent(i), trace.pressureKpa(i))) {
                limit = Math.max(leanest(target, edgeCeiling), ceiling);
            }
            isLean = lambda > limit;
        }
        leanSinceHigh &= isLean;
        if (early) {
            return;
        }
        int cell = cells.nearest(rpm, trace.load(i));
        if (isLean) {
            if (!stretch.isOpen()) {
                stretch.open(leanSinceHigh ? highSince : t, lambda);
            }
            stretch.lean(i, t, lambda, limit, target, sameMoved && t - sameSince >= frozenS);
            history.lean(cell, t, t - flowSince, rpm);
            return;
        }
        history.fine(cell, t, t - flowSince, rpm, setting.cold.test(trace.row(i)));
        if (stretch.isOpen()) {
            stretch.fine();
            if (t - stretch.endS() > BREAK_S) {
                close(true);
            }
        }
    }

    /** As {@link Limits#leanest}, without looking limits up at every reading. */
    private double leanest(double target, double most) {
        return target + spare < most ? target + spare : most;
    }

    private void close(boolean recovered) {
        if (stretch.isOpen() && stretch.close()) {
            found.add(stretch.event(cells, kind(recovered)), stretch.eases(), recovered);
        }
    }

    /** What it looks like before the whole trace is known. */
    private LeanEvent.Kind kind(boolean recovered) {
        boolean atOpening = stretch.startS() >= highSince
                && stretch.startS() - highSince <= lookBack + TIP_IN_START_S
                && stretch.endS() - highSince <= TIP_IN_S + lookBack;
        return recovered && atOpening ? LeanEvent.Kind.TIP_IN : LeanEvent.Kind.TABLE;
    }
}
