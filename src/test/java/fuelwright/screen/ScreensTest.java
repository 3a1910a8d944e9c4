package fuelwright.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.table.Axis;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/**
 * Each screen: a case that fires, one just below it, one with the channel missing. The log is 20 s at 20 Hz, steady but for two idling
 * seconds at its start; every row from {@link #FROM} on counts until a test plants something.
 */
class ScreensTest {

    private static final Axis SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 1000, 3000, 8000);
    private static final Axis THROTTLE = new Axis(Axis.Kind.THROTTLE, 0, 20, 100);
    private static final Axis PRESSURE = new Axis(Axis.Kind.MANIFOLD_PRESSURE, 30, 60, 100);
    private static final int ROWS = 400;
    private static final int FROM = 60;
    private static final double HZ = 20;
    private static final ScreenSettings USUAL = ScreenSettings.defaults();

    private final double[] timeS = new double[ROWS];
    private final Map<Role, double[]> columns = new EnumMap<>(Role.class);
    private List<Integer> segments = List.of(0);
    private Axis load = THROTTLE;

    ScreensTest() {
        Arrays.setAll(timeS, i -> i / HZ);
        put(Role.ENGINE_SPEED, i -> 3000);
        put(Role.THROTTLE, i -> i < 40 ? 0 : 20);
        put(Role.LAMBDA, i -> 0.95 + (i % 2 == 0 ? 0.001 : 0));
        put(Role.COOLANT, i -> 85);
    }

    private void put(Role role, IntToDoubleFunction value) {
        double[] values = new double[ROWS];
        Arrays.setAll(values, value);
        columns.put(role, values);
    }

    private void put(Role role, int from, int to, IntToDoubleFunction value) {
        for (int i = from; i < to; i++) {
            columns.get(role)[i] = value.applyAsDouble(i);
        }
    }

    private ScreenedRide screened(ScreenSettings settings) {
        List<Channel> channels = new ArrayList<>();
        columns.forEach((role, values) -> channels.add(
                new Channel(role.words(), role, Unit.ONE, Column.of(values), Channel.Confidence.SURE, "")));
        Ride ride = new Ride("ride", Column.of(timeS), channels, segments, List.of());
        return Screens.apply(ride, settings, SPEED, load);
    }

    /** That rows {@code from} to {@code to} exclusive, and no others after the start, are kept out for this reason. */
    private void assertOut(Screen screen, int from, int to) {
        assertReasons(screened(USUAL), screen, from, to);
        if (screen.canBeOff()) {
            assertEquals(0, screened(USUAL.with(screen, false)).count(screen), screen + " is off");
        }
    }

    private static void assertReasons(ScreenedRide screened, Screen screen, int from, int to) {
        for (int row = FROM; row < ROWS; row++) {
            Optional<Screen> expected = row >= from && row < to ? Optional.of(screen) : Optional.empty();
            assertEquals(expected, screened.reason(row), "row " + row);
            assertEquals(expected.isEmpty(), screened.counts(row));
        }
    }

    private void assertAllCount() {
        assertReasons(screened(USUAL), Screen.NO_READING, 0, 0);
    }

    @Test
    void aSteadyRideCounts() {
        assertAllCount();
    }

    @Test
    void withoutReadingSpeedOrLoadARowSaysNothing() {
        put(Role.LAMBDA, 100, 101, i -> Double.NaN);
        put(Role.LAMBDA, 101, 102, i -> 0);
        put(Role.ENGINE_SPEED, 102, 103, i -> Double.NaN);
        put(Role.THROTTLE, 103, 104, i -> Double.NaN);
        assertOut(Screen.NO_READING, 100, 104);
        columns.remove(Role.THROTTLE);
        assertEquals(ROWS, screened(USUAL).count(Screen.NO_READING));
    }

    @Test
    void whereThereIsNoMixtureATrimIsAReading() {
        columns.remove(Role.LAMBDA);
        assertEquals(ROWS, screened(USUAL).count(Screen.NO_READING));
        put(Role.SHORT_TRIM, i -> i == 200 ? Double.NaN : 3);
        put(Role.ENGINE_SPEED, i -> 3000 + i);
        assertOut(Screen.NO_READING, 200, 201);
        columns.remove(Role.SHORT_TRIM);
        put(Role.LONG_TRIM, i -> 2);
        assertAllCount();
    }

    @Test
    void aReadingThatTheLoggerRepeatsCountsOnce() {
        put(Role.LAMBDA, i -> 0.95 + 0.001 * (i / 4 % 2));
        ScreenedRide screened = screened(USUAL);
        for (int row = FROM; row < ROWS; row++) {
            assertEquals(
                    row % 4 == 0 ? Optional.empty() : Optional.of(Screen.HELD_VALUE),
                    screened.reason(row),
                    "row " + row);
        }
        put(Role.COOLANT, i -> 20);
        assertEquals(0, screened(USUAL).count(Screen.HELD_VALUE), "every other reason comes first");
    }

    @Test
    void afterAGapTheClockIsNotTrustedForHalfASecond() {
        for (int i = 100; i < ROWS; i++) {
            timeS[i] += 1.5;
        }
        assertOut(Screen.TIME_BASE, 100, 110);
        for (int i = 100; i < ROWS; i++) {
            timeS[i] -= 0.56;
        }
        assertAllCount();
    }

    @Test
    void aRestartIsNoGap() {
        segments = List.of(0, 100);
        for (int i = 100; i < ROWS; i++) {
            timeS[i] += 50;
        }
        assertAllCount();
    }

    @Test
    void aClockThatRunsBackwardsIsNotTrusted() {
        timeS[100] = timeS[98];
        assertOut(Screen.TIME_BASE, 100, 101);
    }

    @Test
    void belowIdleTheEngineIsNotRunning() {
        put(Role.ENGINE_SPEED, i -> 499);
        ScreenedRide screened = screened(USUAL);
        assertEquals(ROWS, screened.count(Screen.NOT_RUNNING));
        put(Role.ENGINE_SPEED, i -> 500);
        assertEquals(0, screened(USUAL).count(Screen.NOT_RUNNING));
        put(Role.ENGINE_SPEED, i -> 499);
        assertEquals(0, screened(USUAL.with(Screen.NOT_RUNNING, false)).count(Screen.NOT_RUNNING));
    }

    @Test
    void aColdEngineDoesNotCount() {
        put(Role.COOLANT, 100, 200, i -> 69.9);
        assertOut(Screen.TOO_COLD, 100, 200);
        put(Role.COOLANT, i -> 70);
        assertAllCount();
        columns.remove(Role.COOLANT);
        assertAllCount();
    }

    @Test
    void aLoggedFuelCutAndTheSecondAfterItDoNotCount() {
        put(Role.FUEL_CUT, i -> i >= 100 && i < 120 ? 1 : 0);
        ScreenedRide screened = screened(USUAL);
        for (int row = FROM; row < ROWS; row++) {
            Optional<Screen> expected = row < 100 || row >= 139
                    ? Optional.empty()
                    : Optional.of(row < 120 ? Screen.FUEL_CUT : Screen.AFTER_FUEL_CUT);
            assertEquals(expected, screened.reason(row), "row " + row);
        }
        ScreenedRide off = screened(USUAL.with(Screen.FUEL_CUT, false).with(Screen.AFTER_FUEL_CUT, false));
        assertEquals(0, off.count(Screen.FUEL_CUT) + off.count(Screen.AFTER_FUEL_CUT));
        put(Role.FUEL_CUT, i -> 0.5);
        assertAllCount();
        columns.remove(Role.FUEL_CUT);
        assertAllCount();
    }

    @Test
    void theTimeAfterAFuelCutCanBeChosen() {
        put(Role.FUEL_CUT, i -> i >= 100 && i < 120 ? 1 : 0);
        ScreenSettings longer = new ScreenSettings(Set.of(), 70, 500, 0.66, 1.35, 40, 0.5, 2.0, 2.0);
        assertEquals(39, screened(longer).count(Screen.AFTER_FUEL_CUT));
    }

    @Test
    void aPulseOfZeroAboveIdleIsAFuelCut() {
        put(Role.INJECTOR_PULSE, i -> i == 100 ? 0 : 0.004);
        assertEquals(Optional.of(Screen.FUEL_CUT), screened(USUAL).reason(100));
        put(Role.ENGINE_SPEED, i -> 1200);
        assertAllCount();
    }

    @Test
    void aLeanReadingWithClosedThrottleIsAFuelCutBackToTheClosing() {
        put(Role.THROTTLE, 100, 160, i -> 0);
        put(Role.LAMBDA, 110, 150, i -> 1.36 + 0.001 * (i % 2));
        ScreenedRide screened = screened(USUAL);
        for (int row = 100; row < 150; row++) {
            assertEquals(Optional.of(Screen.FUEL_CUT), screened.reason(row), "row " + row);
        }
        assertEquals(Optional.of(Screen.AFTER_FUEL_CUT), screened.reason(150));
        assertTrue(screened.counts(99));
        // With the throttle open the same reading is only at the sensor's end.
        put(Role.THROTTLE, 100, 160, i -> 20);
        assertOut(Screen.SENSOR_LIMIT, 110, 150);
        // And closed at idle as well.
        put(Role.THROTTLE, 100, 160, i -> 0);
        put(Role.ENGINE_SPEED, i -> 1150);
        assertEquals(0, screened(USUAL).count(Screen.FUEL_CUT));
    }

    @Test
    void aRideThatNeverClosesItsThrottleHasNoOverrun() {
        put(Role.THROTTLE, i -> 100);
        put(Role.LAMBDA, 110, 150, i -> 1.36 + 0.001 * (i % 2));
        assertOut(Screen.SENSOR_LIMIT, 110, 150);
    }

    @Test
    void withoutThrottleAnEmptyManifoldIsTheOverrun() {
        columns.remove(Role.THROTTLE);
        load = PRESSURE;
        put(Role.MANIFOLD_PRESSURE, i -> i >= 100 && i < 150 ? 39 : 60);
        put(Role.LAMBDA, 110, 150, i -> 1.36 + 0.001 * (i % 2));
        assertEquals(50, screened(USUAL).count(Screen.FUEL_CUT));
        put(Role.MANIFOLD_PRESSURE, i -> i >= 100 && i < 150 ? 40 : 60);
        assertOut(Screen.SENSOR_LIMIT, 110, 150);
    }

    @Test
    void readingsAtTheSensorsEndDoNotCount() {
        put(Role.LAMBDA, 100, 200, i -> 1.35 + 0.001 * (i % 2));
        assertOut(Screen.SENSOR_LIMIT, 100, 200);
        put(Role.LAMBDA, 100, 200, i -> 0.66 - 0.001 * (i % 2));
        assertOut(Screen.SENSOR_LIMIT, 100, 200);
        put(Role.LAMBDA, 100, 200, i -> 1.349 - 0.001 * (i % 2));
        assertAllCount();
        put(Role.LAMBDA, 100, 200, i -> 0.661 + 0.001 * (i % 2));
        assertAllCount();
    }

    @Test
    void aReadingThatStandsStillWhileTheEngineMovesIsFrozen() {
        put(Role.ENGINE_SPEED, i -> 3000 + 5 * i);
        put(Role.LAMBDA, 100, 142, i -> 0.97);
        assertOut(Screen.SENSOR_FROZEN, 100, 142);
        put(Role.LAMBDA, 140, 142, i -> 0.95 + 0.001 * (i % 2));
        assertAllCount();
    }

    @Test
    void aReadingThatStandsStillWithTheEngineMayFourTimesAsLong() {
        put(Role.LAMBDA, 100, 262, i -> 0.97);
        assertOut(Screen.SENSOR_FROZEN, 100, 262);
        put(Role.LAMBDA, 260, 262, i -> 0.95 + 0.001 * (i % 2));
        assertAllCount();
    }

    @Test
    void aFrozenReadingWithHolesIsFrozenAllTheSame() {
        put(Role.ENGINE_SPEED, i -> 3000 + 5 * i);
        put(Role.LAMBDA, 100, 145, i -> i % 3 == 0 ? Double.NaN : 0.97);
        ScreenedRide screened = screened(USUAL);
        assertEquals(Optional.of(Screen.SENSOR_FROZEN), screened.reason(101));
        assertEquals(Optional.of(Screen.NO_READING), screened.reason(102));
    }

    @Test
    void aMisfireSpikeIsTakenOut() {
        put(Role.LAMBDA, 100, 106, i -> 0.951 + 0.125);
        assertOut(Screen.SPIKE, 100, 106);
        put(Role.LAMBDA, 100, 106, i -> 0.95 + 0.12);
        assertAllCount();
    }

    @Test
    void aLeanStretchThatStaysIsNoSpike() {
        put(Role.LAMBDA, 100, 112, i -> 1.1 + 0.001 * (i % 2));
        assertAllCount();
        put(Role.LAMBDA, 100, ROWS, i -> 1.1 + 0.001 * (i % 2));
        assertAllCount();
        put(Role.LAMBDA, 100, 106, i -> 0.75);
        put(Role.LAMBDA, 106, ROWS, i -> 0.95 + 0.001 * (i % 2));
        assertAllCount();
    }

    @Test
    void theHalfSecondAfterAGearChangeDoesNotCount() {
        put(Role.GEAR, i -> i < 100 ? 2 : 3);
        assertOut(Screen.GEAR_CHANGE, 100, 111);
        put(Role.GEAR, i -> i < 100 ? 2 : Double.NaN);
        assertAllCount();
    }

    @Test
    void aQuickThrottleDoesNotCount() {
        put(Role.THROTTLE, i -> i < 40 ? 0 : i < 100 ? 40 : Math.min(60.5, 40 + 41 / HZ * (i - 100)));
        ScreenedRide screened = screened(USUAL);
        assertTrue(screened.counts(104));
        for (int row = 105; row <= 120; row++) {
            assertEquals(Optional.of(Screen.THROTTLE_MOVING), screened.reason(row), "row " + row);
        }
        assertTrue(screened.counts(125));
        assertEquals(0, screened(USUAL.with(Screen.THROTTLE_MOVING, false)).count(Screen.THROTTLE_MOVING));
        put(Role.THROTTLE, i -> i < 40 ? 0 : i < 100 ? 40 : Math.min(60.5, 40 + 39 / HZ * (i - 100)));
        assertAllCount();
    }

    @Test
    void atSmallOpeningsTheLogarithmCounts() {
        put(Role.THROTTLE, i -> i < 40 ? 0 : i < 100 ? 5 : 8);
        assertOut(Screen.THROTTLE_MOVING, 100, 115);
        put(Role.THROTTLE, i -> i < 40 ? 0 : i < 100 ? 5 : 7.2);
        assertAllCount();
    }

    @Test
    void aClosedThrottlesChatterIsNoMovement() {
        put(Role.THROTTLE, i -> i % 3 == 0 ? 0.4 : 0);
        put(Role.ENGINE_SPEED, i -> 1100 + i % 2);
        assertAllCount();
    }

    @Test
    void withoutThrottleNothingIsSaidAboutIt() {
        columns.remove(Role.THROTTLE);
        load = PRESSURE;
        put(Role.MANIFOLD_PRESSURE, i -> i < 100 ? 50 : 95);
        assertAllCount();
    }

    @Test
    void aQuickEngineSpeedDoesNotCount() {
        put(Role.ENGINE_SPEED, i -> 3000 * Math.exp(0.51 / HZ * Math.max(0, Math.min(10, i - 100))));
        assertOut(Screen.SPEED_MOVING, 105, 121);
        put(Role.ENGINE_SPEED, i -> 3000 * Math.exp(0.49 / HZ * Math.max(0, Math.min(10, i - 100))));
        assertAllCount();
    }

    @Test
    void farOutsideTheTableTheEdgeCellIsNotBlamed() {
        put(Role.ENGINE_SPEED, i -> 849);
        assertOut(Screen.OUTSIDE_TABLE, 0, ROWS);
        put(Role.ENGINE_SPEED, i -> 851);
        assertAllCount();
        put(Role.ENGINE_SPEED, i -> 9201);
        assertOut(Screen.OUTSIDE_TABLE, 0, ROWS);
        put(Role.ENGINE_SPEED, i -> 9199);
        assertAllCount();
        load = PRESSURE;
        put(Role.MANIFOLD_PRESSURE, i -> 116);
        assertOut(Screen.OUTSIDE_TABLE, 0, ROWS);
        put(Role.MANIFOLD_PRESSURE, i -> 114);
        assertAllCount();
    }

    @Test
    void ofSeveralReasonsTheFirstInTheirOrderIsGiven() {
        put(Role.COOLANT, 100, 200, i -> 20);
        put(Role.LAMBDA, 100, 200, i -> 1.4 + 0.001 * (i % 2));
        put(Role.ENGINE_SPEED, 100, 200, i -> 400);
        put(Role.GEAR, i -> i < 150 ? 1 : 2);
        assertEquals(Optional.of(Screen.NOT_RUNNING), screened(USUAL).reason(150));
        ScreenSettings settings = USUAL.with(Screen.NOT_RUNNING, false);
        assertEquals(Optional.of(Screen.TOO_COLD), screened(settings).reason(150));
        settings = settings.with(Screen.TOO_COLD, false);
        assertEquals(Optional.of(Screen.SENSOR_LIMIT), screened(settings).reason(150));
        settings = settings.with(Screen.SENSOR_LIMIT, false);
        assertEquals(Optional.of(Screen.GEAR_CHANGE), screened(settings).reason(150));
        ScreenedRide screened = screened(USUAL);
        int out = Arrays.stream(Screen.values()).mapToInt(screened::count).sum();
        assertEquals(ROWS, screened.kept() + out);
    }

    @Test
    void nothingIsCarriedOverARestart() {
        segments = List.of(0, 120);
        put(Role.FUEL_CUT, i -> i >= 100 && i < 120 ? 1 : 0);
        put(Role.GEAR, i -> i < 120 ? 2 : 3);
        assertOut(Screen.FUEL_CUT, 100, 120);
    }

    @Test
    void whatProtectsTheSumsCannotBeSwitchedOff() {
        for (Screen screen : Screen.values()) {
            if (screen.canBeOff()) {
                assertTrue(!USUAL.with(screen, false).isOn(screen));
                assertTrue(USUAL.with(screen, false).with(screen, true).isOn(screen));
            } else {
                assertThrows(IllegalArgumentException.class, () -> USUAL.with(screen, false));
            }
        }
        assertThrows(
                IllegalArgumentException.class,
                () -> new ScreenSettings(Set.of(), 70, 500, 1.35, 0.66, 40, 0.5, 1.0, 2.0));
    }

    @Test
    void a_stamp_that_stands_still_is_an_unstable_time_base() {
        timeS[200] = timeS[199];
        assertOut(Screen.TIME_BASE, 200, 201);
        timeS[200] = timeS[199] + 1e-6;
        assertEquals(0, screened(USUAL).count(Screen.TIME_BASE));
    }

    @Test
    void gears_with_nothing_shown_between_them_are_being_changed() {
        put(Role.GEAR, i -> i < 200 ? 3 : i < 210 ? Double.NaN : 4);
        assertOut(Screen.GEAR_CHANGE, 200, 221);
        put(Role.GEAR, i -> i < 200 ? 3 : i < 210 ? Double.NaN : 3);
        assertEquals(0, screened(USUAL).count(Screen.GEAR_CHANGE));
        // Nothing shown for longer than a change takes: only what follows it is kept out.
        put(Role.GEAR, i -> i < 200 ? 3 : i < 270 ? Double.NaN : 4);
        assertOut(Screen.GEAR_CHANGE, 270, 281);
    }
}
