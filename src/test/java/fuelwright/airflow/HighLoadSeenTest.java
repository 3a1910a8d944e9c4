package fuelwright.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.mixture.Fuel;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class HighLoadSeenTest {

    private static final double NAN = Double.NaN;

    private final Machine machine = new Machine(
            OptionalDouble.of(720),
            2,
            Optional.empty(),
            Optional.of(new ThrottleBody(44, 8, 5, 85)),
            Fuel.PETROL,
            OptionalDouble.of(9500));
    private final IntakeModel engine = BypassAir.intake(machine, machine.after().orElseThrow());
    private final HighLoadSeen seen = new HighLoadSeen();

    private void ride(double fromRpm, double toRpm, double most) {
        for (double rpm = fromRpm; rpm <= toRpm; rpm += 170) {
            for (double throttle = 1; throttle <= most; throttle += 1.5) {
                seen.add(rpm, throttle, 101.325 * engine.pressureRatio(rpm, throttle), NAN);
            }
        }
    }

    @Test
    void thePressureOfARideDrawsTheLineOfAnEngineThatNobodyDescribed() {
        ride(2000, 6000, 60);
        DoubleUnaryOperator line = seen.line().orElseThrow();
        ModelledHighLoad described = new ModelledHighLoad(engine);
        for (double rpm = 2000; rpm <= 8500; rpm += 500) {
            assertEquals(described.thresholdPercent(rpm), line.applyAsDouble(rpm), 5, "at " + rpm);
        }
    }

    @Test
    void whereASpeedHasMomentsOfItsOwnTheyCountAgainstTheModel() {
        ride(2000, 6000, 60);
        for (int i = 0; i < 30; i++) {
            seen.add(7000, 12, 97, NAN);
            seen.add(7000, 8, 60, NAN);
        }
        assertTrue(seen.line().orElseThrow().applyAsDouble(7000) <= 12);
    }

    @Test
    void neverMoreThanTheThrottleOfNothingKnown() {
        for (double throttle = 1; throttle <= 100; throttle += 0.5) {
            seen.add(8000, throttle, throttle >= 80 ? 90 : 70, NAN);
        }
        assertEquals(60, seen.line().orElseThrow().applyAsDouble(8000), 0);
    }

    @Test
    void aRideThatNeverGotThereTellsNothing() {
        ride(2000, 6000, 6);
        assertTrue(seen.line().isEmpty());
    }

    @Test
    void aPressureThatDoesNotGoWithTheThrottleTellsNothing() {
        for (int i = 0; i < 500; i++) {
            seen.add(2000 + 7 * i, i % 100, i % 7 < 3 ? 100 : 40, NAN);
        }
        assertTrue(seen.line().isEmpty());
    }
}
