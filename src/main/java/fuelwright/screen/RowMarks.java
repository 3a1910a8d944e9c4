package fuelwright.screen;

import fuelwright.table.Axis;

/**
 * The rules of the screens: each looks at columns and its own thresholds only, and marks the rows that it keeps out. Which of several
 * reasons a row is counted under is no matter here. O(rows). Stateless but for its marks.
 */
final class RowMarks {

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

    private final Columns c;
    private final Runnable stillWanted;
    private final Marks marks;

    private RowMarks(Columns columns, Runnable stillWanted) {
        this.c = columns;
        this.stillWanted = stillWanted;
        this.marks = new Marks(columns.timeS.length);
    }

    /**
     * The rows that one screen keeps out; all but {@link Screen#CLOSED_LOOP_UNLOGGED}, which looks at what the others leave.
     *
     * @param stillWanted called now and then; whatever it throws ends the work
     */
    static Marks of(
            Screen screen, Columns columns, ScreenSettings settings, Axis speed, Axis load, Runnable stillWanted) {
        RowMarks rows = new RowMarks(columns, stillWanted);
        rows.mark(screen, settings, speed, load);
        return rows.marks;
    }

    private void mark(Screen screen, ScreenSettings settings, Axis speed, Axis load) {
        switch (screen) {
            case NO_READING -> eachRow(row -> !c.hasReading(row));
            case HELD_VALUE -> c.renewed().ifPresent(renewed -> eachRow(row -> !renewed.isNew(row)));
            case NOT_RUNNING -> eachRow(row -> c.speedRpm[row] < settings.speedAtLeastRpm());
            case TOO_COLD -> eachRow(row -> c.coolantC[row] < settings.coolantAtLeastC());
            case SENSOR_LIMIT ->
                eachRow(row -> c.lambda[row] <= settings.lambdaFrom() || c.lambda[row] >= settings.lambdaTo());
            case OUTSIDE_TABLE -> eachRow(row -> isOutside(c.speedRpm[row], speed) || isOutside(c.load[row], load));
            case TIME_BASE -> eachSegment(this::markTimeBase);
            case FUEL_CUT -> {
                double closed = c.closedPercent();
                eachSegment((from, to) -> markFuelCut(from, to, settings, closed));
            }
            case AFTER_FUEL_CUT -> {
                double closed = c.closedPercent();
                eachSegment((from, to) -> markAfterFuelCut(from, to, settings, closed));
            }
            case SENSOR_FROZEN -> eachSegment((from, to) -> markFrozen(from, to, settings.frozenS()));
            case THROTTLE_MOVING -> {
                eachSegment((from, to) -> markMovement(from, to, c.throttlePercent, settings.throttleRateAtMost()));
                double[] openings = Columns.logs(c.throttlePercent, CLOSED_OFFSET_PERCENT);
                eachSegment((from, to) -> markMovement(from, to, openings, SMALL_OPENING_RATE));
            }
            case SPEED_MOVING -> {
                double[] speeds = Columns.logs(c.speedRpm, 0);
                eachSegment((from, to) -> markMovement(from, to, speeds, settings.speedRateAtMost()));
            }
            case GEAR_CHANGE -> eachSegment(this::markGearChanges);
            case SPIKE -> eachSegment(this::markSpikes);
            default -> throw new IllegalArgumentException("screen " + screen);
        }
    }

    /** A rule for one row by itself. */
    private interface RowRule {
        boolean applies(int row);
    }

    /** A rule for rows {@code from} to {@code to} exclusive, without a restart between them. */
    private interface SegmentRule {
        void mark(int from, int to);
    }

    private void eachRow(RowRule rule) {
        stillWanted.run();
        for (int row = 0; row < c.timeS.length; row++) {
            marks.set(row, rule.applies(row));
        }
    }

    private void eachSegment(SegmentRule rule) {
        for (int s = 0; s + 1 < c.segmentStarts.length; s++) {
            stillWanted.run();
            rule.mark(c.segmentStarts[s], c.segmentStarts[s + 1]);
        }
    }

    private static boolean isOutside(double value, Axis axis) {
        return value < axis.first() * (1 - OUTSIDE_SHARE) || value > axis.last() * (1 + OUTSIDE_SHARE);
    }

    private void markTimeBase(int from, int to) {
        double until = Double.NEGATIVE_INFINITY;
        for (int i = from + 1; i < to; i++) {
            double step = c.timeS[i] - c.timeS[i - 1];
            if (step > GAP_S) {
                until = c.timeS[i] + SETTLING_S;
            }
            marks.set(i, step <= 0 || c.timeS[i] < until);
        }
    }

    /** What a flag or a zero pulse says, or a closed throttle with a reading at the lean limit. */
    private boolean isCut(int row, ScreenSettings settings, double closed) {
        return c.isFuelCutLogged(row) || c.lambda[row] >= settings.lambdaTo() && c.isOverrun(row, closed);
    }

    /**
     * Readings on the way to a cut, back to the closing of the throttle, aren't the table's doing either: the wall film is emptying.
     */
    private void markFuelCut(int from, int to, ScreenSettings settings, double closed) {
        boolean wasCut = false;
        for (int i = from; i < to; i++) {
            boolean cut = isCut(i, settings, closed);
            marks.set(i, cut);
            if (cut && !wasCut) {
                for (int k = i - 1;
                        k >= from && c.timeS[i] - c.timeS[k] < BEFORE_CUT_S && c.isOverrun(k, closed);
                        k--) {
                    marks.set(k, true);
                }
            }
            wasCut = cut;
        }
    }

    private void markAfterFuelCut(int from, int to, ScreenSettings settings, double closed) {
        double until = Double.NEGATIVE_INFINITY;
        for (int i = from; i < to; i++) {
            if (isCut(i, settings, closed)) {
                until = c.timeS[i] + settings.afterFuelCutS();
            } else {
                marks.set(i, c.timeS[i] < until);
            }
        }
    }

    /** A reading that never moves while the engine does; four times as long where the engine stands still as well. */
    private void markFrozen(int from, int to, double frozenS) {
        int start = from;
        for (int i = from + 1; i <= to; i++) {
            if (i < to && (c.lambda[i] == c.lambda[start] || Double.isNaN(c.lambda[i]))) {
                continue;
            }
            // Where the ride has trims only, there is no reading that could be frozen.
            if (!Double.isNaN(c.lambda[start])) {
                double lengthS = c.timeS[i - 1] - c.timeS[start];
                // Whether the engine moved is asked only where that decides.
                if (lengthS > frozenS * 4 || lengthS > frozenS && c.moved(start, i)) {
                    for (int k = start; k < i; k++) {
                        marks.set(k, true);
                    }
                }
            }
            start = i;
        }
    }

    /** Marks rows in and after movement: where values range over more than {@code most} a second within the last moment. */
    private void markMovement(int from, int to, double[] values, double most) {
        double until = Double.NEGATIVE_INFINITY;
        SlidingRange range = new SlidingRange(c.timeS, values, RATE_SPAN_S, from, to);
        for (int i = from; i < to; i++) {
            if (range.next(i) / RATE_SPAN_S > most) {
                until = c.timeS[i] + SETTLING_S;
            }
            marks.set(i, c.timeS[i] <= until);
        }
    }

    private void markGearChanges(int from, int to) {
        double until = Double.NEGATIVE_INFINITY;
        int before = -1;
        for (int i = from; i < to; i++) {
            if (!Double.isNaN(c.gear[i])) {
                if (before >= 0 && c.gear[before] != c.gear[i]) {
                    until = c.timeS[i] + SETTLING_S;
                    // No gear was shown in between: it was being changed, unless that took too long.
                    boolean between = c.timeS[i] - c.timeS[before] <= LONGEST_CHANGE_S;
                    for (int k = before + 1; between && k < i; k++) {
                        marks.set(k, true);
                    }
                }
                before = i;
            }
            marks.set(i, c.timeS[i] <= until);
        }
    }

    /** Short lean excursions from the readings around them, with a throttle that isn't moving: misfire reads lean. */
    private void markSpikes(int from, int to) {
        int i = from;
        int before = -1;
        while (i < to) {
            if (Double.isNaN(c.lambda[i])) {
                i++;
                continue;
            }
            if (before >= 0
                    && c.lambda[i] - c.lambda[before] > SPIKE_LAMBDA
                    && c.timeS[i] - c.timeS[before] < SPIKE_S) {
                int end = endOfSpike(before, i, to);
                for (int k = i; k < end; k++) {
                    marks.set(k, true);
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
