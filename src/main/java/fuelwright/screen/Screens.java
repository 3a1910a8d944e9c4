package fuelwright.screen;

import fuelwright.ride.Ride;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.Arrays;
import java.util.Optional;

/**
 * Decides for each row of a ride whether it is evidence. Every rule is one method that marks rows; a row keeps the first reason in the
 * order of {@link Screen}. O(rows).
 */
public final class Screens {

    /** Rates are taken over this time, so that a logger's last digit doesn't look like movement, s. */
    private static final double RATE_SPAN_S = 0.25;
    /** After quick movement, wall film and sensor need this long, s. */
    private static final double SETTLING_S = 0.5;
    /** At small openings air goes with the opening: there its logarithm counts, from 2 % below closed, with this rate a second. */
    private static final double SMALL_OPENING_RATE = 1.2;

    private static final double CLOSED_OFFSET_PERCENT = 2;
    /** How far back from a fuel cut the closed throttle is looked at, s. */
    private static final double BEFORE_CUT_S = 1.5;
    /** A step of the clock beyond this is a gap, s. */
    private static final double GAP_S = 1.0;
    /** Gears between which none is shown for up to this long are a change, s. */
    private static final double LONGEST_CHANGE_S = 3.0;
    /** A stretch of lean readings up to this long, and this much leaner than what surrounds it, looks like a misfire. */
    private static final double SPIKE_S = 0.5;

    private static final double SPIKE_LAMBDA = 0.12;
    /** How far outside the breakpoints, relative to the outermost, a reading may lie. */
    private static final double OUTSIDE_SHARE = 0.15;

    private static final int ROWS_BETWEEN_QUESTIONS = 1 << 16;

    private final Columns c;
    private final ScreenSettings settings;
    private final LoggedTrims trims;
    private final byte[] reasons;
    private final boolean[] on = new boolean[Screen.values().length];

    private Screens(Ride ride, ScreenSettings settings, Axis.Kind loadKind) {
        this.c = new Columns(ride, loadKind);
        this.settings = settings;
        this.trims = LoggedTrims.of(ride);
        this.reasons = new byte[ride.size()];
        Arrays.fill(reasons, ScreenedRide.COUNTS);
        for (Screen screen : Screen.values()) {
            on[screen.ordinal()] = settings.isOn(screen);
        }
    }

    /**
     * @param speed engine-speed axis of the table that the ride was made with
     * @param load its load axis
     */
    public static ScreenedRide apply(Ride ride, ScreenSettings settings, Axis speed, Axis load) {
        return apply(ride, settings, speed, load, Optional.empty(), () -> {});
    }

    /**
     * The same, and where the target is known it looks for a closed loop whose trims aren't in the ride.
     *
     * @param targetLambda target, as lambda
     * @param stillWanted called now and then; whatever it throws ends the work
     */
    public static ScreenedRide apply(
            Ride ride,
            ScreenSettings settings,
            Axis speed,
            Axis load,
            Optional<Table> targetLambda,
            Runnable stillWanted) {
        Screens screens = new Screens(ride, settings, load.kind());
        screens.markAll(speed, load, stillWanted);
        stillWanted.run();
        if (screens.trims != LoggedTrims.TOLD && settings.isOn(Screen.CLOSED_LOOP_UNLOGGED)) {
            targetLambda.ifPresent(screens::markClosedLoop);
        }
        return new ScreenedRide(ride, screens.reasons);
    }

    /** Where a loop works it made the mixture right, not the table. */
    private void markClosedLoop(Table targetLambda) {
        double[] loads = c.load(targetLambda.load().kind());
        double[] asked = new double[reasons.length];
        for (int i = 0; i < asked.length; i++) {
            asked[i] = ClosedLoopSign.asked(targetLambda.value(c.speedRpm[i], loads[i]), c.commandedLambda[i]);
        }
        ClosedLoopSign sign = ClosedLoopSign.of(
                c.timeS, c.speedRpm, c.load, c.lambda, asked, row -> reasons[row] == ScreenedRide.COUNTS);
        boolean sure = trims.proveNothing(sign);
        for (int i = 0; sure && i < asked.length; i++) {
            mark(i, Screen.CLOSED_LOOP_UNLOGGED, sign.worksAt(c.speedRpm[i], c.load[i], asked[i]));
        }
    }

    private void markAll(Axis speed, Axis load, Runnable stillWanted) {
        for (int i = 0; i < reasons.length; i++) {
            if (i % ROWS_BETWEEN_QUESTIONS == 0) {
                stillWanted.run();
            }
            mark(i, Screen.NO_READING, !c.hasReading(i));
            mark(i, Screen.HELD_VALUE, c.isHeld(i));
            mark(i, Screen.NOT_RUNNING, c.speedRpm[i] < settings.speedAtLeastRpm());
            mark(i, Screen.TOO_COLD, c.coolantC[i] < settings.coolantAtLeastC());
            mark(i, Screen.SENSOR_LIMIT, c.lambda[i] <= settings.lambdaFrom() || c.lambda[i] >= settings.lambdaTo());
            mark(i, Screen.OUTSIDE_TABLE, isOutside(c.speedRpm[i], speed) || isOutside(c.load[i], load));
        }
        double[] openings = Columns.logs(c.throttlePercent, CLOSED_OFFSET_PERCENT);
        double[] speeds = Columns.logs(c.speedRpm, 0);
        for (int s = 0; s + 1 < c.segmentStarts.length; s++) {
            Segment segment = new Segment(c.segmentStarts[s], c.segmentStarts[s + 1]);
            markTimeBase(segment);
            stillWanted.run();
            markFuelCut(segment);
            stillWanted.run();
            markFrozen(segment);
            stillWanted.run();
            markMovement(segment, Screen.THROTTLE_MOVING, c.throttlePercent, settings.throttleRateAtMost());
            stillWanted.run();
            markMovement(segment, Screen.THROTTLE_MOVING, openings, SMALL_OPENING_RATE);
            stillWanted.run();
            markMovement(segment, Screen.SPEED_MOVING, speeds, settings.speedRateAtMost());
            stillWanted.run();
            markGearChanges(segment);
            stillWanted.run();
            markSpikes(segment);
            stillWanted.run();
        }
    }

    /** Rows {@code from} to {@code to} exclusive, without a restart between them. */
    private record Segment(int from, int to) {}

    private void mark(int row, Screen screen, boolean applies) {
        if (applies
                && on[screen.ordinal()]
                && (reasons[row] == ScreenedRide.COUNTS || reasons[row] > screen.ordinal())) {
            reasons[row] = (byte) screen.ordinal();
        }
    }

    private static boolean isOutside(double value, Axis axis) {
        return value < axis.first() * (1 - OUTSIDE_SHARE) || value > axis.last() * (1 + OUTSIDE_SHARE);
    }

    private void markTimeBase(Segment segment) {
        double until = Double.NEGATIVE_INFINITY;
        for (int i = segment.from + 1; i < segment.to; i++) {
            double step = c.timeS[i] - c.timeS[i - 1];
            if (step > GAP_S) {
                until = c.timeS[i] + SETTLING_S;
            }
            mark(i, Screen.TIME_BASE, step <= 0 || c.timeS[i] < until);
        }
    }

    /**
     * A cut is what a flag or a zero pulse says, or a closed throttle with a reading at the lean limit. The readings on the way there, back
     * to the closing of the throttle, aren't the table's doing either: the wall film is emptying.
     */
    private void markFuelCut(Segment segment) {
        double until = Double.NEGATIVE_INFINITY;
        boolean wasCut = false;
        for (int i = segment.from; i < segment.to; i++) {
            boolean cut = c.isFuelCutLogged(i) || c.lambda[i] >= settings.lambdaTo() && c.isOverrun(i);
            if (cut) {
                until = c.timeS[i] + settings.afterFuelCutS();
                mark(i, Screen.FUEL_CUT, true);
            } else {
                mark(i, Screen.AFTER_FUEL_CUT, c.timeS[i] < until);
            }
            if (cut && !wasCut) {
                for (int k = i - 1;
                        k >= segment.from && c.timeS[i] - c.timeS[k] < BEFORE_CUT_S && c.isOverrun(k);
                        k--) {
                    mark(k, Screen.FUEL_CUT, true);
                }
            }
            wasCut = cut;
        }
    }

    /** A reading that never moves while the engine does; four times as long where the engine stands still as well. */
    private void markFrozen(Segment segment) {
        int start = segment.from;
        for (int i = segment.from + 1; i <= segment.to; i++) {
            if (i < segment.to && (c.lambda[i] == c.lambda[start] || Double.isNaN(c.lambda[i]))) {
                continue;
            }
            double lengthS = c.timeS[i - 1] - c.timeS[start];
            boolean engineMoved = c.moved(start, i);
            // Where the ride has trims only, there is no reading that could be frozen.
            if (!Double.isNaN(c.lambda[start]) && lengthS > settings.frozenS() * (engineMoved ? 1 : 4)) {
                for (int k = start; k < i; k++) {
                    mark(k, Screen.SENSOR_FROZEN, true);
                }
            }
            start = i;
        }
    }

    /** Marks rows in and after movement: where values range over more than {@code most} a second within the last moment. */
    private void markMovement(Segment segment, Screen screen, double[] values, double most) {
        double until = Double.NEGATIVE_INFINITY;
        SlidingRange range = new SlidingRange(c.timeS, values, RATE_SPAN_S, segment.from, segment.to);
        for (int i = segment.from; i < segment.to; i++) {
            if (range.next(i) / RATE_SPAN_S > most) {
                until = c.timeS[i] + SETTLING_S;
            }
            mark(i, screen, c.timeS[i] <= until);
        }
    }

    private void markGearChanges(Segment segment) {
        double until = Double.NEGATIVE_INFINITY;
        int before = -1;
        for (int i = segment.from; i < segment.to; i++) {
            if (!Double.isNaN(c.gear[i])) {
                if (before >= 0 && c.gear[before] != c.gear[i]) {
                    until = c.timeS[i] + SETTLING_S;
                    // No gear was shown in between: it was being changed, unless that took too long.
                    boolean between = c.timeS[i] - c.timeS[before] <= LONGEST_CHANGE_S;
                    for (int k = before + 1; between && k < i; k++) {
                        mark(k, Screen.GEAR_CHANGE, true);
                    }
                }
                before = i;
            }
            mark(i, Screen.GEAR_CHANGE, c.timeS[i] <= until);
        }
    }

    /** Short lean excursions from the readings around them, with a throttle that isn't moving: misfire reads lean. */
    private void markSpikes(Segment segment) {
        int i = segment.from;
        int before = -1;
        while (i < segment.to) {
            if (Double.isNaN(c.lambda[i])) {
                i++;
                continue;
            }
            if (before >= 0
                    && c.lambda[i] - c.lambda[before] > SPIKE_LAMBDA
                    && c.timeS[i] - c.timeS[before] < SPIKE_S) {
                int end = endOfSpike(before, i, segment.to);
                for (int k = i; k < end; k++) {
                    mark(k, Screen.SPIKE, true);
                }
                if (end > i) {
                    i = end;
                    continue;
                }
            }
            before = i++;
        }
    }

    /** The first row back near the level before the spike, or {@code start} where it doesn't come back in time. */
    private int endOfSpike(int before, int start, int to) {
        for (int k = start + 1; k < to && c.timeS[k] - c.timeS[start] <= SPIKE_S; k++) {
            if (c.lambda[k] - c.lambda[before] < SPIKE_LAMBDA / 3) {
                return k;
            }
        }
        return start;
    }
}
