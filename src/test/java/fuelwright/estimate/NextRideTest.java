package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** A made-up ride whose truth is known asks for what it lacks. */
class NextRideTest {

    private static final MadeUpRide MADE = new MadeUpRide((rpm, load) -> 1.06 - 0.0008 * load, 25, MadeUpRide.SENSOR);
    private static final DoubleUnaryOperator SPEED = MadeUpRide.wandering(1800, 6800, 41);
    private static final DoubleUnaryOperator THROTTLE = MadeUpRide.lively(1, 60, 2.1);
    private static final ScreenedRide OLD = MADE.made("old", 90, SPEED, THROTTLE);
    private static final HighLoad RULE = HighLoad.byThrottle();

    private static NextRide next(Estimator estimator) {
        return estimator.nextRide(estimator.run(() -> {}), RULE);
    }

    private static Estimator estimator(ScreenedRide... rides) {
        List<Estimator.Source> sources =
                Arrays.stream(rides).map(r -> new Estimator.Source(r, MADE.old)).toList();
        return new Estimator(MADE.old, MADE.target, sources, Machine.unknown(), 0);
    }

    /** Mean uncertainty with three times the weight at high load. */
    private static double doubt(ScreenedRide... rides) {
        Estimate estimate = estimator(rides).run(() -> {});
        double sum = 0;
        double weights = 0;
        for (int c = 0; c < MADE.old.cells(); c++) {
            double w = RULE.at(MADE.old.speedAt(c), MADE.old.loadAt(c), Double.NaN, Double.NaN) ? 3 : 1;
            sum += w * estimate.uncertaintyPercent(c);
            weights += w;
        }
        return sum / weights;
    }

    @Test
    void ridingWhatIsSuggestedTellsMoreThanTheSameSecondsOfTheOldRide() {
        List<NextRide.Region> regions = next(estimator(OLD)).regions();
        assertTrue(regions.size() >= 2 && regions.size() <= 5, regions.toString());
        List<ScreenedRide> suggested = new ArrayList<>(List.of(OLD));
        double seconds = 0;
        for (NextRide.Region r : regions) {
            double speed = (r.speedFromRpm() + r.speedToRpm()) / 2;
            double halfSpeed = (r.speedToRpm() - r.speedFromRpm()) / 2;
            double load = (r.loadFrom() + r.loadTo()) / 2;
            double halfLoad = (r.loadTo() - r.loadFrom()) / 2;
            suggested.add(MADE.made(
                    "region " + suggested.size(),
                    r.seconds(),
                    t -> speed + halfSpeed * Math.sin(t / 2),
                    t -> load + halfLoad * Math.sin(t)));
            seconds += r.seconds();
        }
        double before = doubt(OLD);
        double again = doubt(OLD, MADE.made("again", seconds, SPEED, THROTTLE));
        double after = doubt(suggested.toArray(ScreenedRide[]::new));
        assertTrue(
                after < 0.7 * Math.min(again, before), before + " %, again " + again + " %, suggested " + after + " %");
    }

    @Test
    void whatIsPromisedForARegionIsLessThanItsDoubtNowAndHighLoadIsSaid() {
        NextRide next = next(estimator(OLD));
        assertTrue(next.uncertaintyAfterPercent() < next.uncertaintyPercent());
        for (NextRide.Region r : next.regions()) {
            assertTrue(r.uncertaintyAfterPercent() < r.uncertaintyPercent(), r.words());
            boolean high = r.cells().stream().anyMatch(c -> MADE.old.loadAt(c) >= HighLoad.THROTTLE_PERCENT);
            assertEquals(high, r.highLoad());
            assertEquals(high, r.words().contains("only on a dynamometer or a closed course"), r.words());
        }
    }

    @Test
    void overrunIsNeverAskedForNorHoldingFullLoadNearTheRedline() {
        ScreenedRide wide =
                MADE.made("wide", 240, MadeUpRide.wandering(1800, 7900, 43), MadeUpRide.lively(0, 100, 2.1));
        NextRide next = next(estimator(OLD, wide));
        assertFalse(next.regions().isEmpty());
        for (NextRide.Region r : next.regions()) {
            for (int c : r.cells()) {
                double speed = MADE.old.speedAt(c);
                double throttle = MADE.old.loadAt(c);
                assertFalse(throttle < 3 && speed >= 2500, r.words());
                assertTrue(r.pulls() || throttle < 60 || speed < 0.85 * 8000, r.words());
            }
            assertEquals(r.pulls(), r.words().contains("never held"), r.words());
        }
    }

    /** A ride as they are: a little throttle at high speed only while the machine slows down, and an idling engine. */
    private static ScreenedRide road() {
        return MADE.made(
                "road",
                400,
                t -> t < 40 ? 1850 : t % 40 < 25 ? 2200 + 180 * (t % 40) : 6700 - 300 * (t % 40 - 25),
                t -> t < 40 ? 0.5 : t % 40 < 25 ? 8 + 1.4 * (t % 40) : 4.5);
    }

    @Test
    void aLittleThrottleAtHighSpeedAndSpeedsBelowIdleAreNotAskedFor() {
        NextRide next = next(estimator(road()));
        Table table = MADE.old;
        assertFalse(next.regions().isEmpty());
        for (NextRide.Region r : next.regions()) {
            assertTrue(r.speedFromRpm() >= 1850, r.words());
            for (int c : r.cells()) {
                assertFalse(next.beyond().contains(c));
                assertFalse(table.loadAt(c) < 8 && table.speedAt(c) > 3000, r.words());
            }
        }
        for (int c = 0; c < table.cells(); c++) {
            boolean below = table.speedAt(c) < 0.95 * 1850;
            boolean coasting = table.loadAt(c) < 6 && table.speedAt(c) > 3500;
            assertTrue(next.beyond().contains(c) || !below && !coasting, table.speedAt(c) + " rpm, " + table.loadAt(c));
        }
    }

    @Test
    void highLoadThatNobodyRodeIsAskedForWhereItsSpeedWasRiddenAndNotAllOfItIsHighLoad() {
        List<NextRide.Region> regions = next(estimator(road())).regions();
        long high = regions.stream().filter(NextRide.Region::highLoad).count();
        assertTrue(high >= 1 && high <= 3 && high < regions.size(), regions.toString());
        assertTrue(
                regions.get(0).highLoad(),
                "doubt is greatest there: " + regions.get(0).words());
    }

    @Test
    void howACellIsRiddenFollowsSpeedLoadAndRedline() {
        Table table = Table.of(
                Quantity.VOLUMETRIC_EFFICIENCY,
                new Axis(Axis.Kind.ENGINE_SPEED, 1500, 2500, 7350, 8200),
                new Axis(Axis.Kind.THROTTLE, 0, 3, 100),
                new double[12]);
        OptionalDouble redline = OptionalDouble.of(8400);
        assertEquals(Riding.HOLD, Riding.of(table, table.cell(0, 0), false, redline), "idle and walking pace");
        assertEquals(Riding.NOT, Riding.of(table, table.cell(0, 1), false, redline));
        assertEquals(Riding.NOT, Riding.of(table, table.cell(0, 2), false, redline));
        assertEquals(Riding.HOLD, Riding.of(table, table.cell(1, 3), false, redline));
        assertEquals(Riding.HOLD, Riding.of(table, table.cell(2, 1), true, redline));
        assertEquals(Riding.PULL, Riding.of(table, table.cell(2, 2), true, redline));
        assertEquals(Riding.PULL, Riding.of(table, table.cell(2, 3), true, OptionalDouble.empty()));
        assertEquals(Riding.HOLD, Riding.of(table, table.cell(2, 2), true, OptionalDouble.of(9000)));
    }

    @Test
    void gearsAreFoundFromRoadSpeedAndThoseNotRiddenAreNotCounted() {
        double[] ratios = {0.0105, 0.015, 0.019};
        int n = 3000;
        double[] time = new double[n];
        double[] rpm = new double[n];
        double[] kmh = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = i * 0.1;
            rpm[i] = 3500 + 1500 * Math.sin(i / 70.0);
            kmh[i] = ratios[i / 1000] * rpm[i] * (1 + 0.004 * Math.sin(i));
        }
        Ride ride = new Ride(
                "gears",
                fuelwright.ride.Column.of(time),
                List.of(MadeUpRide.channel(Role.ENGINE_SPEED, rpm), MadeUpRide.channel(Role.ROAD_SPEED, kmh)),
                List.of(0),
                List.of());
        Gearing gearing = Gearing.of(List.of(ride));
        assertEquals(3, gearing.ratios().length);
        for (int g = 0; g < 3; g++) {
            assertEquals(ratios[g], gearing.ratios()[g], 0.01 * ratios[g]);
        }
        Gearing.Choice choice = gearing.at(4000).orElseThrow();
        assertEquals(3, choice.number());
        assertEquals(76, choice.roadSpeedKmh(), 1);
        assertFalse(gearing.isDoubtful());
        assertTrue(Gearing.of(List.of(OLD.ride())).at(4000).isEmpty());
    }

    @Test
    void aRoadSpeedThatShowsNoGearsIsNotUsedForThem() {
        int n = 4000;
        double[] time = new double[n];
        double[] rpm = new double[n];
        double[] many = new double[n];
        double[] loose = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = i * 0.1;
            rpm[i] = 4500 + 2500 * Math.sin(i / 70.0);
            many[i] = 0.006 * Math.pow(1.15, i / 400) * rpm[i];
            loose[i] = 60 + 30 * Math.sin(i / 41.0);
        }
        for (double[] kmh : List.of(many, loose)) {
            Ride ride = new Ride(
                    "rubbish",
                    fuelwright.ride.Column.of(time),
                    List.of(MadeUpRide.channel(Role.ENGINE_SPEED, rpm), MadeUpRide.channel(Role.ROAD_SPEED, kmh)),
                    List.of(0),
                    List.of());
            Gearing gearing = Gearing.of(List.of(ride));
            assertTrue(gearing.at(5000).isEmpty());
            assertTrue(gearing.isDoubtful());
        }
    }
}
