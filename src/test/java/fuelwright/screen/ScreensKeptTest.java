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
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Screens that keep what they marked give, after any changes, what they give for each settings by themselves. */
class ScreensKeptTest {

    private static final Axis SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 1000, 3000, 8000);
    private static final Axis LOAD = new Axis(Axis.Kind.THROTTLE, 0, 20, 100);
    private static final Table TARGET =
            Table.of(Quantity.LAMBDA, SPEED, LOAD, new double[] {1, 1, 1, 1, 1, 1, 0.88, 0.88, 0.88});
    private static final int ROWS = 12_345;

    private final Random random = new Random(4711);

    /** A ride in which everything happens that screens look for, without sense. */
    private Ride lively() {
        double[] timeS = new double[ROWS];
        double[] rpm = new double[ROWS];
        double[] throttle = new double[ROWS];
        double[] lambda = new double[ROWS];
        double[] coolant = new double[ROWS];
        double[] gear = new double[ROWS];
        double[] cut = new double[ROWS];
        for (int i = 1; i < ROWS; i++) {
            boolean calm = i / 400 % 3 == 0;
            timeS[i] = timeS[i - 1] + (random.nextInt(500) == 0 ? 2 : random.nextInt(500) == 0 ? 0 : 0.05);
            rpm[i] = Math.max(300, calm ? rpm[i - 1] : rpm[i - 1] + 150 * random.nextGaussian());
            throttle[i] = random.nextInt(30) == 0 && !calm ? 90 * random.nextDouble() : throttle[i - 1];
            boolean held = random.nextInt(3) == 0 || i % 1000 < 70;
            lambda[i] = held ? lambda[i - 1] : 0.9 + 0.05 * random.nextGaussian() + (random.nextInt(60) == 0 ? 0.3 : 0);
            coolant[i] = Math.min(95, 60 + i / 100.0);
            gear[i] = i / 300 % 2 == 0 ? 3 : i % 300 < 9 ? Double.NaN : 4;
            cut[i] = random.nextInt(200) == 0 ? 1 : 0;
            if (random.nextInt(100) == 0) {
                lambda[i] = Double.NaN;
            }
        }
        List<Channel> channels = List.of(
                channel(Role.ENGINE_SPEED, rpm),
                channel(Role.THROTTLE, throttle),
                channel(Role.LAMBDA, lambda),
                channel(Role.COOLANT, coolant),
                channel(Role.GEAR, gear),
                channel(Role.FUEL_CUT, cut));
        return new Ride("lively", Column.of(timeS), channels, List.of(0, 5000), List.of());
    }

    private static Channel channel(Role role, double[] values) {
        return new Channel(role.words(), role, Unit.ONE, Column.of(values), Channel.Confidence.SURE, "");
    }

    private ScreenSettings changed(ScreenSettings settings) {
        Screen[] screens = Screen.values();
        return switch (random.nextInt(9)) {
            case 0 -> settings.withCoolantAtLeast(60 + 40 * random.nextDouble());
            case 1 -> settings.withSpeedAtLeast(2000 * random.nextDouble());
            case 2 -> settings.withLambda(0.6 + 0.2 * random.nextDouble(), 1.1 + 0.3 * random.nextDouble());
            case 3 -> settings.withThrottleRate(100 * random.nextDouble());
            case 4 -> settings.withSpeedRate(2 * random.nextDouble());
            case 5 -> settings.withAfterFuelCut(2 * random.nextDouble());
            case 6 -> settings.withFrozen(0.3 + 3 * random.nextDouble());
            default -> {
                Screen screen = screens[random.nextInt(screens.length)];
                yield screen.canBeOff() ? settings.with(screen, !settings.isOn(screen)) : settings;
            }
        };
    }

    @Test
    void one_change_after_another_gives_what_the_settings_give_by_themselves() {
        Ride ride = lively();
        Screens kept = Screens.of(ride, SPEED, LOAD, Optional.of(TARGET));
        ScreenSettings settings = ScreenSettings.defaults();
        Set<Screen> seen = EnumSet.noneOf(Screen.class);
        for (int step = 0; step < 150; step++) {
            ScreenedRide now = kept.screened(settings, () -> {});
            ScreenedRide alone = Screens.apply(ride, settings, SPEED, LOAD, Optional.of(TARGET), () -> {});
            List<Optional<Screen>> reasons = new ArrayList<>();
            List<Optional<Screen>> expected = new ArrayList<>();
            for (int row = 0; row < ROWS; row++) {
                reasons.add(now.reason(row));
                expected.add(alone.reason(row));
            }
            assertEquals(expected, reasons, "step " + step + ", " + settings);
            for (Screen screen : Screen.values()) {
                assertEquals(alone.count(screen), now.count(screen));
                if (now.count(screen) > 0) {
                    seen.add(screen);
                }
            }
            settings = changed(settings);
        }
        assertTrue(seen.size() >= 12, "marked something: " + seen);
    }
}
