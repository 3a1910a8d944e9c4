package fuelwright.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Rides with a closed loop at light load that isn't in the log, and rides that only look a little like it. */
class ClosedLoopScreenTest {

    private static final Axis SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 1000, 4000, 8000);
    private static final Axis LOAD = new Axis(Axis.Kind.THROTTLE, 0, 20, 40, 100);
    private static final Table TARGET =
            Table.of(Quantity.LAMBDA, SPEED, LOAD, new double[] {1, 1, 1, 1, 1, 1, 0.9, 0.9, 0.9, 0.88, 0.88, 0.88});
    private static final int HZ = 20;

    /**
     * Sixteen times five seconds at light load, each with its own mean, then high load.
     *
     * @param meanOff standard deviation of a stretch's mean from its target
     * @param cycle amplitude of a limit cycle of one second
     * @param highOff departure at high load
     */
    private static Ride ride(double meanOff, double cycle, double highOff, boolean trims) {
        Random random = new Random(7);
        int rows = 16 * 5 * HZ + 20 * HZ;
        double[] time = new double[rows];
        double[] rpm = new double[rows];
        double[] throttle = new double[rows];
        double[] lambda = new double[rows];
        double[] trim = new double[rows];
        double off = 0;
        for (int i = 0; i < rows; i++) {
            time[i] = i / (double) HZ;
            boolean light = i < 16 * 5 * HZ;
            int stretch = i / (5 * HZ);
            off = i % (5 * HZ) == 0 ? meanOff * random.nextGaussian() : off;
            rpm[i] = light ? 2500 + 250 * (stretch % 5) : 5000;
            throttle[i] = light ? 8 : 80;
            double right = TARGET.value(rpm[i], throttle[i]);
            double wave = cycle * Math.sin(2 * Math.PI * time[i]);
            lambda[i] = right * (1 + (light ? off + wave : highOff) + 0.006 * random.nextGaussian());
        }
        List<Channel> channels = new ArrayList<>(List.of(
                channel(Role.ENGINE_SPEED, rpm), channel(Role.THROTTLE, throttle), channel(Role.LAMBDA, lambda)));
        if (trims) {
            channels.add(channel(Role.SHORT_TRIM, trim));
        }
        return new Ride("ride", Column.of(time), channels, List.of(0), List.of());
    }

    private static Channel channel(Role role, double[] values) {
        return new Channel(role.words(), role, Unit.ONE, Column.of(values), Channel.Confidence.SURE, "");
    }

    private static ScreenedRide screened(Ride ride, ScreenSettings settings) {
        return Screens.apply(ride, settings, SPEED, LOAD, Optional.of(TARGET), () -> {});
    }

    private static int out(Ride ride) {
        return screened(ride, ScreenSettings.defaults()).count(Screen.CLOSED_LOOP_UNLOGGED);
    }

    @Test
    void readingsAtLightLoadOfAHiddenClosedLoopProveNothing() {
        Ride ride = ride(0.001, 0.015, 0.08, false);
        ScreenedRide screened = screened(ride, ScreenSettings.defaults());
        assertTrue(screened.count(Screen.CLOSED_LOOP_UNLOGGED) > 0.8 * 16 * 5 * HZ, "" + out(ride));
        assertTrue(screened.counts(ride.size() - 1), "high load is open loop and counts");
    }

    @Test
    void theScreenCanBeSwitchedOff() {
        ScreenSettings off = ScreenSettings.defaults().with(Screen.CLOSED_LOOP_UNLOGGED, false);
        assertEquals(0, screened(ride(0.001, 0.015, 0.08, false), off).count(Screen.CLOSED_LOOP_UNLOGGED));
    }

    @Test
    void trimsInTheLogTellWhatTheLoopDoes() {
        assertEquals(0, out(ride(0.001, 0.015, 0.08, true)));
    }

    /** Its limit cycle gives it away: nothing but control makes long means so much smaller than short ones. */
    @Test
    void aHiddenLoopIsSeenWhereHighLoadIsRightAsWell() {
        assertTrue(out(ride(0.001, 0.015, 0, false)) > 0.8 * 16 * 5 * HZ);
    }

    @Test
    void aTableThatIsRightEverywhereIsNoClosedLoop() {
        assertEquals(0, out(ride(0.001, 0, 0, false)));
        assertEquals(0, out(ride(0.003, 0, 0.03, false)));
        assertEquals(0, out(ride(0.01, 0.015, 0.03, false)));
    }

    /** A table corrected at light load only: its stretches keep within half a per cent, but with a bias of their own each. */
    @Test
    void aTableThatIsNearlyRightAtLightLoadIsNoClosedLoop() {
        assertEquals(0, out(ride(0.005, 0, 0.08, false)));
        assertEquals(0, out(ride(0.004, 0, 0.08, false)));
    }

    @Test
    void withoutATargetNothingIsSaid() {
        Ride ride = ride(0.001, 0.015, 0.08, false);
        assertEquals(
                0, Screens.apply(ride, ScreenSettings.defaults(), SPEED, LOAD).count(Screen.CLOSED_LOOP_UNLOGGED));
    }
}
