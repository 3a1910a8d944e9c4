package fuelwright.estimate;

import fuelwright.table.Bilinear;
import fuelwright.table.Table;

/**
 * One pass over a ride: predicts every reading from cells and nuisances, with derivatives.
 *
 * <p>At the burnt moment u the mixture is z(u) = ln(commanded) + ln Σw·T − ln Σw·B: fuel needed T = B·exp(e) over fuel delivered, both
 * interpolated as the control unit does. The derivative of z by cell c is w_c·T_c / Σw·T. The sensor shows z after its lag. Wall film:
 * fuel flow (it evaporates by time, not by cycle) against its own 0.4 s average shifts the mixture by a share X (Aquino, SAE 810494);
 * accel enrichment makes up for part of it while fuel for each cycle moves. O(rows).
 */
final class EvidencePass {

    /** Receives one reading; arrays are only valid during the call. */
    interface Sink {
        Sink NONE = (row, burntS, stepS, residual, film, place, shares, byNuisance) -> {};

        /**
         * @param row row of the ride
         * @param burntS when what was read was burnt, s
         * @param stepS time since the reading before, s
         * @param residual ln of reading over prediction
         * @param film how far fuelling is from its own average: a measure of how fast things move
         * @param place where in the table it was burnt: four for each cell, a number below 4 · cells
         * @param shares the cells that it depends on
         * @param byNuisance derivatives by the nuisances
         */
        void reading(
                int row,
                double burntS,
                double stepS,
                double residual,
                double film,
                int place,
                LagFilter shares,
                double[] byNuisance);
    }

    /** Between rows further apart than this the path is followed in smaller steps, s. */
    private static final double LONGEST_STEP_S = 0.03;
    /** Rows further apart than this don't belong together, s. */
    private static final double GAP_S = 1.0;
    /** Time constant of the wall film, s: 0.2 to 1 s for a warm engine (value from memory). */
    private static final double FILM_S = 0.4;
    /** Lags after a restart before readings count. */
    private static final double SETTLED_LAGS = 5;

    /** Rows between two steps of the pace; a power of two. */
    static final int STEP_ROWS = 1 << 14;

    private final Pace pace;
    private final Table current;
    private final CellOrder order;
    private final double[] needed;
    private final double[] nuisances;
    private final SensorModel measuredModel;

    /** Steps that may be taken as one where the engine keeps its place. */
    private static final int JOINED_STEPS = 2;
    /** Movement along either axis, in cells, up to which it does. */
    private static final double SAME_PLACE = 0.05;

    /** One end of a step: where the engine was at the burnt moment. */
    private static final class Point {
        final int[] cells = new int[4];
        final double[] shares = new double[4];
        int corner;
        double across;
        double up;
        double burntS;
        double z;
        double fuel;
        double injected;
        double fuelPerCycle;
        boolean cut;
        int place;

        /** Whether the mixture goes nearly on a straight line from one to the other. */
        boolean isNear(Point other) {
            return corner == other.corner
                    && cut == other.cut
                    && Math.abs(across - other.across) < SAME_PLACE
                    && Math.abs(up - other.up) < SAME_PLACE;
        }
    }

    /**
     * @param current delivered fuel in the table that is to be corrected
     * @param logFactors the point around which to work, ln for each cell, in {@link CellOrder}
     * @param nuisances values in {@link Nuisance} order
     */
    EvidencePass(Table current, double[] logFactors, double[] nuisances) {
        this(current, logFactors, nuisances, Pace.unheard());
    }

    /** @param pace goes on a step every {@link #STEP_ROWS} rows */
    EvidencePass(Table current, double[] logFactors, double[] nuisances, Pace pace) {
        this.pace = pace;
        this.current = current;
        this.order = new CellOrder(current);
        this.needed = new double[current.cells()];
        for (int c = 0; c < needed.length; c++) {
            needed[c] = current.at(c) * Math.exp(logFactors[order.ofCell(c)]);
        }
        this.nuisances = nuisances.clone();
        this.measuredModel = Nuisance.sensor(nuisances);
    }

    /** Visits every row with a reading, whether it counts or not, that has a settled past. */
    void run(Readings readings, Sink sink) {
        RideTrack track = readings.track;
        for (int s = 0; s + 1 < track.segmentStarts.length; s++) {
            int from = track.segmentStarts[s];
            run(readings, new Stretch(0, from, from, track.segmentStarts[s + 1]), sink);
        }
    }

    /** The same for the rows of a stretch. */
    void run(Readings readings, Stretch stretch, Sink sink) {
        new Segment(readings, stretch).run(sink);
    }

    private final class Segment {
        private final Readings readings;
        private final RideTrack track;
        private final SensorModel model;
        private final Stretch stretch;
        private final Moment moment;
        private final Moment between;
        private final double[] deliveredCells;
        private final boolean sameAxes;
        private final AxisCursor onSpeed = new AxisCursor(current.speed());
        private final AxisCursor onLoad = new AxisCursor(current.load());
        private final int speeds = current.speed().size();
        private final int loads = current.load().size();
        private final LagFilter lag = new LagFilter(current.cells());
        private final LagFilter slower = new LagFilter(0);
        private final LagFilter film = new LagFilter(0);
        private final double[] byNuisance = new double[Nuisance.COUNT];
        private final int[] cells = new int[4];
        private final double[] weights = new double[4];
        private Point here = new Point();
        private Point last = new Point();
        private Point next = new Point();
        private double lagged;
        private double laggedSlower;
        private double averageFuel;
        private double averagePerCycle;
        private double wall;
        private double lastWall;
        private double opening;
        private double closing;
        private double lastOpening;
        private double lastClosing;
        private double shown;
        private double slope;
        private double settledS;
        private double lastRowS;

        Segment(Readings readings, Stretch stretch) {
            this.readings = readings;
            this.track = readings.track;
            this.model = readings.measured ? measuredModel : SensorModel.none();
            this.stretch = stretch;
            this.moment = new Moment(track, readings.flowGPerS, model, stretch.lead(), stretch.to());
            this.between = new Moment(track, readings.flowGPerS, model, stretch.lead(), stretch.to());
            this.deliveredCells = readings.delivered.toArray();
            this.sameAxes = readings.delivered.speed().equals(current.speed())
                    && readings.delivered.load().equals(current.load());
        }

        void run(Sink sink) {
            boolean going = false;
            double lastReadingS = Double.NaN;
            for (int row = stretch.lead(); row < stretch.to(); row++) {
                if ((row & STEP_ROWS - 1) == 0) {
                    pace.step();
                }
                double t = track.timeS[row];
                if (!moment.goTo(row)) {
                    going = false;
                    continue;
                }
                if (going && t - lastRowS <= GAP_S && t >= lastRowS) {
                    going = advance(t - lastRowS);
                } else {
                    going = restart(t);
                }
                lastRowS = t;
                double reading = readings.reading[row];
                if (going && t >= settledS && !Double.isNaN(reading)) {
                    double step = Double.isNaN(lastReadingS) || t - lastReadingS > GAP_S ? GAP_S : t - lastReadingS;
                    lastReadingS = t;
                    if (row >= stretch.from()) {
                        double predicted = lagged + nuisanceTerms(row);
                        double film = Math.max(Math.abs(wall), Math.abs(opening) + Math.abs(closing));
                        sink.reading(row, here.burntS, step, reading - predicted, film, here.place, lag, byNuisance);
                    }
                }
            }
        }

        private boolean restart(double t) {
            if (!evaluate(here, moment)) {
                return false;
            }
            lag.restart(here.cells, here.shares);
            lagged = here.z;
            laggedSlower = here.z;
            averageFuel = here.injected;
            averagePerCycle = here.fuelPerCycle;
            wall = lastWall = 0;
            opening = closing = lastOpening = lastClosing = slope = 0;
            shown = here.z;
            boolean rideStarts = stretch.lead() == 0 && t == track.timeS[0];
            settledS = t + (rideStarts ? 1 : SETTLED_LAGS) * model.lagS();
            return true;
        }

        /**
         * Follows the path from the burnt moment before to that of the row, while the clock of the sensor moves on by {@code dtS}. What is
         * between two rows is looked at only where it can matter: inside a cell and without much movement the mixture goes on a straight line.
         */
        private boolean advance(double dtS) {
            if (!evaluate(next, moment)) {
                return false;
            }
            int steps = Math.max(1, (int) Math.ceil(dtS / LONGEST_STEP_S - 1e-9));
            if (steps <= JOINED_STEPS && next.isNear(here)) {
                steps = 1;
            }
            double step = dtS / steps;
            lag.prepare(step, model.lagS());
            slower.prepare(step, model.lagS() * 1.02);
            double startS = here.burntS;
            double endS = next.burntS;
            for (int k = 1; k < steps; k++) {
                turn();
                double at = startS + (endS - startS) * k / steps;
                if (!between.seek(at) || !evaluate(here, between)) {
                    return false;
                }
                follow(step);
            }
            Point end = next;
            next = last;
            last = here;
            here = end;
            follow(step);
            return true;
        }

        /** Makes room for a point between, leaving {@code next} alone. */
        private void turn() {
            Point free = last;
            last = here;
            here = free;
        }

        private void follow(double step) {
            lag.nextShares(last.cells, last.shares, here.cells, here.shares);
            lagged = lag.next(lagged, last.z, here.z);
            followFilm(here.burntS - last.burntS);
            // Delay and lag shift what the film does as well.
            double before = shown;
            shown = here.z + filmTerms(lastWall, lastOpening, lastClosing);
            laggedSlower = slower.next(laggedSlower, before, shown);
            double nowSlope = step > 1e-9 ? (shown - before) / step : 0;
            slope = lag.next(slope, nowSlope, nowSlope);
        }

        private void followFilm(double du) {
            film.prepare(Math.max(du, 0), FILM_S);
            averageFuel = film.next(averageFuel, last.injected, here.injected);
            averagePerCycle = film.next(averagePerCycle, last.fuelPerCycle, here.fuelPerCycle);
            double nowWall = 1 - averageFuel / here.fuel;
            double tipIn = 1 - averagePerCycle / here.fuelPerCycle;
            double nowOpening = Math.max(0, tipIn);
            double nowClosing = Math.min(0, tipIn);
            wall = lag.next(wall, lastWall, nowWall);
            opening = lag.next(opening, lastOpening, nowOpening);
            closing = lag.next(closing, lastClosing, nowClosing);
            lastWall = nowWall;
            lastOpening = nowOpening;
            lastClosing = nowClosing;
        }

        /** Works out the mixture at a moment. */
        private boolean evaluate(Point point, Moment at) {
            double rpm = at.interpolate(track.speedRpm);
            double load = at.interpolate(readings.load);
            double commanded = at.interpolate(readings.commanded);
            if (Double.isNaN(rpm) || Double.isNaN(load) || Double.isNaN(commanded)) {
                return false;
            }
            int[] corners = point.cells;
            double[] shares = point.shares;
            locate(rpm, load, corners, shares);
            point.corner = corners[0];
            point.across = shares[1] + shares[3];
            point.up = shares[2] + shares[3];
            point.place = 4 * corners[0] + (point.across < 0.5 ? 0 : 1) + (point.up < 0.5 ? 0 : 2);
            double delivered = sameAxes ? delivered(corners, shares) : deliveredAt(rpm, load);
            double sum = 0;
            for (int k = 0; k < 4; k++) {
                shares[k] *= needed[corners[k]];
                sum += shares[k];
            }
            for (int k = 0; k < 4; k++) {
                shares[k] /= sum;
                corners[k] = order.ofCell(corners[k]);
            }
            point.burntS = at.burntS();
            point.z = commanded + Math.log(sum / delivered);
            point.fuelPerCycle = readings.timesPressure ? delivered * Math.max(load, 1) : delivered;
            point.fuel = point.fuelPerCycle * Math.max(rpm, 100);
            point.cut = track.fuelCut[at.row()];
            point.injected = point.cut ? 0 : point.fuel;
            return true;
        }

        /** As {@link Bilinear#locate}. */
        private void locate(double rpm, double load, int[] corners, double[] shares) {
            double p = onSpeed.position(rpm);
            double q = onLoad.position(load);
            int i = Math.min((int) p, speeds - 2);
            int j = Math.min((int) q, loads - 2);
            double f = p - i;
            double g = q - j;
            int first = j * speeds + i;
            corners[0] = first;
            corners[1] = first + 1;
            corners[2] = first + speeds;
            corners[3] = first + speeds + 1;
            shares[0] = (1 - f) * (1 - g);
            shares[1] = f * (1 - g);
            shares[2] = (1 - f) * g;
            shares[3] = f * g;
        }

        private double deliveredAt(double rpm, double load) {
            Bilinear.locate(readings.delivered.speed(), readings.delivered.load(), rpm, load, cells, weights);
            return delivered(cells, weights);
        }

        private double delivered(int[] corners, double[] shares) {
            double sum = 0;
            for (int k = 0; k < 4; k++) {
                sum += shares[k] * deliveredCells[corners[k]];
            }
            return sum;
        }

        private double filmTerms(double wallNow, double openingNow, double closingNow) {
            return nuisances[Nuisance.WALL_FILM.ordinal()] * wallNow
                    + nuisances[Nuisance.OPENING.ordinal()] * openingNow
                    + nuisances[Nuisance.CLOSING.ordinal()] * closingNow;
        }

        private double nuisanceTerms(int row) {
            double filmed = filmTerms(wall, opening, closing);
            if (readings.measured) {
                byNuisance[Nuisance.FIXED_DELAY.ordinal()] = -slope;
                byNuisance[Nuisance.CYCLES.ordinal()] = -slope * 120 / moment.delaySpeedRpm();
                byNuisance[Nuisance.GAS.ordinal()] = -slope / moment.delayFlow();
                byNuisance[Nuisance.LAG.ordinal()] =
                        model.lagS() > 1e-6 ? (laggedSlower - lagged - filmed) / (0.02 * model.lagS()) : -slope;
            }
            byNuisance[Nuisance.WALL_FILM.ordinal()] = wall;
            byNuisance[Nuisance.OPENING.ordinal()] = opening;
            byNuisance[Nuisance.CLOSING.ordinal()] = closing;
            byNuisance[Nuisance.WARM_UP.ordinal()] = readings.warmUp[row];
            return filmed + nuisances[Nuisance.WARM_UP.ordinal()] * readings.warmUp[row];
        }
    }
}
