package fuelwright.screen;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Objects;
import java.util.Set;
import java.util.function.Consumer;

/**
 * Thresholds of the screens and which are on. Defaults are common practice, no source, chosen careful.
 *
 * @param off screens that the user has switched off; only those that {@link Screen#canBeOff() can be}
 * @param coolantAtLeastC working temperature, °C
 * @param speedAtLeastRpm below this the engine isn't running by itself, rpm
 * @param lambdaFrom least reading that the sensor can be trusted with
 * @param lambdaTo greatest reading that the sensor can be trusted with
 * @param throttleRateAtMost % of throttle a second
 * @param speedRateAtMost relative change of engine speed a second (1 is doubling in 0.7 s)
 * @param afterFuelCutS time after a fuel cut that doesn't count, s
 * @param frozenS time without any movement of the reading after which the sensor is called frozen, s
 */
public record ScreenSettings(
        Set<Screen> off,
        double coolantAtLeastC,
        double speedAtLeastRpm,
        double lambdaFrom,
        double lambdaTo,
        double throttleRateAtMost,
        double speedRateAtMost,
        double afterFuelCutS,
        double frozenS) {

    public ScreenSettings {
        Objects.requireNonNull(off, "off");
        for (Screen screen : off) {
            if (!screen.canBeOff()) {
                throw new IllegalArgumentException("off: " + screen + " can't be switched off");
            }
        }
        off = Collections.unmodifiableSet(off.isEmpty() ? EnumSet.noneOf(Screen.class) : EnumSet.copyOf(off));
        if (!(lambdaFrom < lambdaTo)) {
            throw new IllegalArgumentException("lambdaFrom " + lambdaFrom + " must be below lambdaTo " + lambdaTo);
        }
    }

    public static ScreenSettings defaults() {
        return new ScreenSettings(Set.of(), 70, 500, 0.66, 1.35, 40, 0.5, 1.0, 2.0);
    }

    public boolean isOn(Screen screen) {
        return !off.contains(screen);
    }

    /** The same with one screen switched on or off. */
    public ScreenSettings with(Screen screen, boolean on) {
        EnumSet<Screen> set = off.isEmpty() ? EnumSet.noneOf(Screen.class) : EnumSet.copyOf(off);
        if (on) {
            set.remove(screen);
        } else {
            set.add(screen);
        }
        return with(d -> d.off = set);
    }

    public ScreenSettings withCoolantAtLeast(double atLeastC) {
        return with(d -> d.coolantAtLeastC = atLeastC);
    }

    public ScreenSettings withSpeedAtLeast(double atLeastRpm) {
        return with(d -> d.speedAtLeastRpm = atLeastRpm);
    }

    public ScreenSettings withLambda(double from, double to) {
        return with(d -> {
            d.lambdaFrom = from;
            d.lambdaTo = to;
        });
    }

    public ScreenSettings withThrottleRate(double atMost) {
        return with(d -> d.throttleRateAtMost = atMost);
    }

    public ScreenSettings withSpeedRate(double atMost) {
        return with(d -> d.speedRateAtMost = atMost);
    }

    public ScreenSettings withAfterFuelCut(double s) {
        return with(d -> d.afterFuelCutS = s);
    }

    public ScreenSettings withFrozen(double s) {
        return with(d -> d.frozenS = s);
    }

    /** The same with something changed. */
    private ScreenSettings with(Consumer<Draft> change) {
        Draft draft = new Draft(this);
        change.accept(draft);
        return draft.done();
    }

    /** The parts while some of them are changed. */
    private static final class Draft {
        private Set<Screen> off;
        private double coolantAtLeastC;
        private double speedAtLeastRpm;
        private double lambdaFrom;
        private double lambdaTo;
        private double throttleRateAtMost;
        private double speedRateAtMost;
        private double afterFuelCutS;
        private double frozenS;

        Draft(ScreenSettings from) {
            off = from.off;
            coolantAtLeastC = from.coolantAtLeastC;
            speedAtLeastRpm = from.speedAtLeastRpm;
            lambdaFrom = from.lambdaFrom;
            lambdaTo = from.lambdaTo;
            throttleRateAtMost = from.throttleRateAtMost;
            speedRateAtMost = from.speedRateAtMost;
            afterFuelCutS = from.afterFuelCutS;
            frozenS = from.frozenS;
        }

        ScreenSettings done() {
            return new ScreenSettings(
                    off,
                    coolantAtLeastC,
                    speedAtLeastRpm,
                    lambdaFrom,
                    lambdaTo,
                    throttleRateAtMost,
                    speedRateAtMost,
                    afterFuelCutS,
                    frozenS);
        }
    }
}
