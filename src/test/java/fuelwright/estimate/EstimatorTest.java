package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.mixture.Fuel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.screen.ScreenSettings;
import fuelwright.screen.ScreenedRide;
import fuelwright.screen.Screens;
import fuelwright.table.Table;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** From made-up rides back to the truth that they were made with, and changes that must not change anything. */
class EstimatorTest {

    private static final double HZ = 25;
    private static final MadeUpRide MADE =
            new MadeUpRide((rpm, load) -> 1.06 + 0.05 * Math.sin(rpm / 1500) - 0.0008 * load, HZ, MadeUpRide.SENSOR);
    private static final ScreenedRide FIRST =
            MADE.made("first", 240, MadeUpRide.wandering(1800, 6800, 41), MadeUpRide.lively(1, 75, 2.1));
    private static final ScreenedRide SECOND =
            MADE.made("second", 120, MadeUpRide.wandering(2500, 6000, 29), MadeUpRide.lively(2, 45, 1.6));
    private static final Estimate BOTH = estimate(MADE.old, Machine.unknown(), FIRST, SECOND);

    private static Estimator estimator(Table table, Machine machine, ScreenedRide... rides) {
        List<Estimator.Source> sources =
                Arrays.stream(rides).map(r -> new Estimator.Source(r, MADE.old)).toList();
        return new Estimator(table, MADE.target, sources, machine, 0);
    }

    private static Estimate estimate(Table table, Machine machine, ScreenedRide... rides) {
        return estimator(table, machine, rides).run(() -> {});
    }

    private static double truth(int cell) {
        return Math.log(MADE.needed.at(cell) / MADE.old.at(cell));
    }

    @Test
    void aPlantedFactorIsRecoveredWhereTheRideWas() {
        int measured = 0;
        int held = 0;
        double squares = 0;
        for (int c = 0; c < MADE.old.cells(); c++) {
            if (BOTH.standing(c) == Standing.MEASURED) {
                double off = BOTH.logFactor(c) - truth(c);
                measured++;
                squares += off * off;
                held += Math.abs(off) <= 1.96 * BOTH.logUncertainty(c) ? 1 : 0;
                assertEquals(0, off, 4 * BOTH.logUncertainty(c), "cell " + c);
                assertEquals(truth(c), BOTH.ownReadings(c), 0.03, "cell " + c + " by its own readings");
            }
        }
        for (int c = 0; c < MADE.old.cells(); c++) {
            assertEquals(!(BOTH.independentReadings(c) > 0), Double.isNaN(BOTH.ownReadings(c)), "cell " + c);
        }
        assertTrue(measured >= 15, measured + " measured");
        assertTrue(Math.sqrt(squares / measured) < 0.004, "rms " + Math.sqrt(squares / measured));
        assertTrue(held >= 0.8 * measured, held + " of " + measured + " within their 95 % interval");
    }

    @Test
    void delayAndLagAreRecoveredWithinHalfASample() {
        SensorModel found = BOTH.sensor().model();
        FlowModel flow = FlowModel.of(Machine.unknown(), MADE.old, 0);
        for (double[] place : new double[][] {{2500, 15}, {4000, 25}, {6000, 40}}) {
            double delayS = found.delayS(place[0], flow.gramsPerSecond(place[0], place[1]));
            assertEquals(MADE.delayS(place[0], place[1]), delayS, 0.5 / HZ, place[0] + " rpm");
        }
        assertEquals(MadeUpRide.SENSOR.lagS(), found.lagS(), 0.5 / HZ);
        assertTrue(BOTH.sensor().identified(), BOTH.sensor().words().toString());
        assertTrue(
                BOTH.sensor().words().toString().endsWith("both found from the rides"),
                BOTH.sensor().words().toString());
    }

    @Test
    void aLoggerThatHoldsBackAndSmoothsIsFoundOut() {
        SensorModel late = new SensorModel(0.62, 1, 0.5, 0.4);
        MadeUpRide made = new MadeUpRide((rpm, load) -> 1.05 - 0.0008 * load, HZ, late);
        ScreenedRide ride = made.made("late", 240, MadeUpRide.wandering(1800, 6800, 41), MadeUpRide.lively(1, 75, 2.1));
        List<Estimator.Source> source = List.of(new Estimator.Source(ride, made.old));
        SensorModel found = new Estimator(made.old, made.target, source, Machine.unknown(), 0)
                .run(() -> {})
                .sensor()
                .model();
        double usedS = found.delayS(DelayProfile.SPEED_RPM, DelayProfile.FLOW_G_PER_S);
        assertEquals(late.delayS(DelayProfile.SPEED_RPM, DelayProfile.FLOW_G_PER_S), usedS, 0.5 / HZ);
        assertEquals(late.lagS(), found.lagS(), 1 / HZ);
    }

    @Test
    void aRideThatHardlyMovesKeepsTheUsualSensorAndSaysSo() {
        ScreenedRide dull = MADE.made("dull", 60, t -> 3500, t -> 20);
        SensorFit sensor = estimate(MADE.old, Machine.unknown(), dull).sensor();
        String words = sensor.words().toString();
        assertTrue(!sensor.identified(), words);
        assertTrue(words.contains("can't tell"), words);
    }

    @Test
    void splittingARideChangesTheEstimateByLessThanAThirdOfItsUncertainty() {
        Ride whole = FIRST.ride();
        Estimate one = estimate(MADE.old, Machine.unknown(), FIRST);
        Estimate two = estimate(
                MADE.old, Machine.unknown(), counted(rows(whole, 0, 3000)), counted(rows(whole, 3000, whole.size())));
        // Each part has its own noise level and loses its first half second.
        for (int c = 0; c < MADE.old.cells(); c++) {
            assertEquals(one.logFactor(c), two.logFactor(c), 0.33 * one.logUncertainty(c), "cell " + c);
        }
    }

    private static ScreenedRide counted(Ride ride) {
        return MadeUpRide.counting(ride, row -> true);
    }

    private static Ride rows(Ride ride, int from, int to) {
        return MadeUpRide.ride(
                ride.name() + from,
                Arrays.copyOfRange(ride.timeS().toArray(), from, to),
                Arrays.copyOfRange(column(ride, Role.ENGINE_SPEED), from, to),
                Arrays.copyOfRange(column(ride, Role.THROTTLE), from, to),
                Arrays.copyOfRange(column(ride, Role.LAMBDA), from, to));
    }

    private static double[] column(Ride ride, Role role) {
        return ride.column(role).orElseThrow().toArray();
    }

    @Test
    void rowsThatAreScreenedOutChangeNothing() {
        Ride ride = SECOND.ride();
        int n = ride.size();
        double[][] longer = {
            ride.timeS().toArray(),
            column(ride, Role.ENGINE_SPEED),
            column(ride, Role.THROTTLE),
            column(ride, Role.LAMBDA)
        };
        for (int k = 0; k < longer.length; k++) {
            longer[k] = Arrays.copyOf(longer[k], n + 500);
        }
        for (int i = n; i < n + 500; i++) {
            longer[0][i] = longer[0][i - 1] + 1 / HZ;
            longer[1][i] = 7000;
            longer[2][i] = 90;
            longer[3][i] = 1.3;
        }
        ScreenedRide more = MadeUpRide.counting(
                MadeUpRide.ride(ride.name(), longer[0], longer[1], longer[2], longer[3]), row -> row < n);
        assertSame(estimate(MADE.old, Machine.unknown(), SECOND), estimate(MADE.old, Machine.unknown(), more), 1e-12);
    }

    /** Sums of floating-point numbers in another order. */
    @Test
    void theOrderOfTheRidesDoesNotMatter() {
        assertSame(BOTH, estimate(MADE.old, Machine.unknown(), SECOND, FIRST), 1e-6);
    }

    @Test
    void theOrientationOfTheTablesFileDoesNotMatter() {
        Table across = MADE.old.withOrientation(Table.Orientation.SPEED_ACROSS);
        assertSame(BOTH, estimate(across, Machine.unknown(), FIRST, SECOND), 0);
    }

    @Test
    void theSameRidesGiveTheSameEstimate() {
        assertSame(BOTH, estimate(MADE.old, Machine.unknown(), FIRST, SECOND), 0);
    }

    private static void assertSame(Estimate expected, Estimate got, double tolerance) {
        for (int c = 0; c < expected.table().cells(); c++) {
            assertEquals(expected.logFactor(c), got.logFactor(c), tolerance, "cell " + c);
            assertEquals(expected.logUncertainty(c), got.logUncertainty(c), tolerance, "uncertainty of cell " + c);
            assertEquals(
                    expected.independentReadings(c),
                    got.independentReadings(c),
                    tolerance * 1000,
                    "readings of cell " + c);
        }
    }

    @Test
    void aCellThatNobodyRodeIsInferredAndWide() {
        ScreenedRide low = MADE.made("low", 90, MadeUpRide.wandering(2000, 4000, 19), MadeUpRide.lively(7, 30, 1.9));
        Estimate estimate = estimate(MADE.old, Machine.unknown(), low);
        int corner = MADE.old.cell(MadeUpRide.LOAD.size() - 1, MadeUpRide.SPEED.size() - 1);
        assertEquals(0, estimate.independentReadings(corner), 0.0);
        assertEquals(Standing.INFERRED, estimate.standing(corner));
        assertTrue(estimate.uncertaintyPercent(corner) > 3, "± " + estimate.uncertaintyPercent(corner));
        for (int c = 0; c < MADE.old.cells(); c++) {
            assertTrue(
                    Math.abs(estimate.logFactor(c) - truth(c)) < 3 * estimate.logUncertainty(c) + 0.002,
                    "cell " + c + ": " + estimate.logFactor(c) + " ± " + estimate.logUncertainty(c) + ", right is "
                            + truth(c));
        }
    }

    @Test
    void aWrongForecastDoesNoHarmWhereThereAreReadings() {
        for (double[] bores : new double[][] {{44, 38}, {15, 90}, {90, 15}}) {
            Estimate estimate = estimate(MADE.old, machine(bores[0], bores[1]), FIRST, SECOND);
            double squares = 0;
            int measured = 0;
            for (int c = 0; c < MADE.old.cells(); c++) {
                if (BOTH.standing(c) == Standing.MEASURED) {
                    double off = estimate.logFactor(c) - truth(c);
                    squares += off * off;
                    measured++;
                }
            }
            double rms = Math.sqrt(squares / measured);
            assertTrue(rms < 0.006, bores[0] + " to " + bores[1] + " mm: " + rms);
            assertTrue(estimate.forecastContradicted(), bores[0] + " to " + bores[1] + " mm");
        }
    }

    @Test
    void aForecastThatTheRidesBearOutIsNotCalledContradicted() {
        assertFalse(estimate(MADE.old, machine(40, 41), FIRST, SECOND).forecastContradicted());
        assertFalse(BOTH.forecastContradicted());
    }

    private static Machine machine(double beforeMm, double afterMm) {
        return new Machine(
                OptionalDouble.of(720),
                2,
                Optional.of(new ThrottleBody(beforeMm, 6, 5, 85)),
                Optional.of(new ThrottleBody(afterMm, 6, 5, 85)),
                Fuel.PETROL,
                OptionalDouble.of(8500));
    }

    @Test
    void readingsThatTheFitHasNotSeenAreNearerWithTheFittedTable() {
        Estimator estimator = estimator(MADE.old, Machine.unknown(), FIRST, SECOND);
        estimator.run(() -> {});
        Validation validation = estimator.validate();
        assertEquals(8, validation.blocks());
        assertTrue(validation.errorBeforePercent() > 5, "before " + validation.errorBeforePercent());
        assertTrue(
                validation.errorAfterPercent() < 0.2 * validation.errorBeforePercent(),
                "after " + validation.errorAfterPercent());
    }

    /** Before is what was planted, after is what is left of it; a cell that nobody rode isn't judged. */
    @Test
    void eachCellIsJudgedByReadingsThatItsFigureHasNotSeen() {
        Estimator estimator = estimator(MADE.old, Machine.unknown(), FIRST, SECOND);
        estimator.run(() -> {});
        Validation validation = estimator.validate();
        assertTrue(validation.cells().size() >= 15, validation.cells().size() + " cells");
        assertTrue(validation.worse() <= 2, validation.worse() + " cells worse");
        validation.cells().forEach((cell, judged) -> {
            assertTrue(BOTH.independentReadings(cell) >= judged.independentReadings() - 1e-6, "cell " + cell);
            double planted = 100 * Math.abs(truth(cell));
            // Readings lie between cells, so a cell's mean takes some of its neighbours' error.
            assertEquals(planted, judged.errorBeforePercent(), 2.5, "cell " + cell);
            assertTrue(judged.errorAfterPercent() < 1.5, "cell " + cell + " " + judged);
        });
        assertTrue(validation.at(MADE.old.cells() - 1).isEmpty());
    }

    /** A closed loop that adds just what is missing: its trim is the shortfall. */
    @Test
    void aRideWithTrimsAndNoWidebandIsEvidenceToo() {
        int rows = 6000;
        double[] time = new double[rows];
        double[] speed = new double[rows];
        double[] throttle = new double[rows];
        double[] trim = new double[rows];
        Random random = new Random(11);
        for (int i = 0; i < rows; i++) {
            time[i] = i / 10.0;
            speed[i] = MadeUpRide.wandering(2300, 4700, 97).applyAsDouble(time[i]);
            throttle[i] = 22 + 17 * Math.sin(time[i] / 13);
            double factor = MADE.needed.value(speed[i], throttle[i]) / MADE.old.value(speed[i], throttle[i]);
            trim[i] = 100 * (factor - 1) + 0.3 * random.nextGaussian();
        }
        Ride ride = new Ride(
                "trims",
                Column.of(time),
                List.of(
                        MadeUpRide.channel(Role.ENGINE_SPEED, speed),
                        MadeUpRide.channel(Role.THROTTLE, throttle),
                        MadeUpRide.channel(Role.SHORT_TRIM, trim)),
                List.of(0),
                List.of());
        ScreenedRide screened = Screens.apply(ride, ScreenSettings.defaults(), MADE.old.speed(), MADE.old.load());
        assertTrue(screened.kept() > 0.9 * rows, screened.kept() + " rows count");
        Estimate estimate = estimate(MADE.old, Machine.unknown(), screened);
        int known = 0;
        for (int c = 0; c < MADE.old.cells(); c++) {
            if (estimate.standing(c) != Standing.INFERRED) {
                assertEquals(truth(c), estimate.logFactor(c), 0.01, "cell " + c);
                known++;
            }
        }
        assertTrue(known >= 8, known + " cells");
    }

    @Test
    void theWorkCanBeEndedBetweenRounds() {
        IllegalStateException stop = new IllegalStateException("stop");
        try {
            estimator(MADE.old, Machine.unknown(), SECOND).run(() -> {
                throw stop;
            });
        } catch (IllegalStateException caught) {
            assertEquals(stop, caught);
            return;
        }
        throw new AssertionError("it went on");
    }
}
