package fuelwright.simulated;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class EngineTest {
    private static final Machine TWIN = SimulatedMachines.vTwin720();
    private static final AirMap BEFORE = TWIN.airBefore();
    private static final AirMap AFTER = TWIN.airAfter();

    /** Derived: speed density, 600 cc, efficiency 0.90, 100 kPa, 25 °C, 10 000 rpm. */
    @Test
    void speedDensityGivesTheKnownFlow() {
        double chargeG = new Engine(600, 4, 1300, 13000, 8).fullChargeG(new Ambient(100_000, 298.15));
        assertEquals(52.580, 0.90 * chargeG * 10_000 / 120, 2e-3);
    }

    @Test
    void whatThePlatesLetInIsWhatTheCylindersTake() {
        for (double rpm = 1500; rpm <= 8000; rpm += 1300) {
            double pressure = AFTER.pressurePa(rpm, 100);
            assertTrue(pressure > 0.93 * 101325 && pressure < 101325, rpm + " rpm at full throttle: " + pressure);
            assertTrue(AFTER.pressurePa(rpm, 6) < AFTER.pressurePa(rpm, 12));
        }
    }

    /** The engine, no longer the plate, sets the flow at full throttle: common practice, no source. */
    @Test
    void aBiggerBoreGivesMuchAtSmallOpeningsAndAlmostNothingAtFullThrottle() {
        double areaRatio =
                TWIN.bodiesAfter().effectiveAreaM2(15) / TWIN.bodiesBefore().effectiveAreaM2(15);
        assertEquals(1.34, areaRatio, 0.01);
        double small = gain(8000, 15);
        assertTrue(small > 1.24 && small < areaRatio, "small opening: " + small);
        double full = gain(4000, 100);
        assertTrue(full > 1.0 && full < 1.02, "full throttle: " + full);
        assertEquals(1.0, gain(4000, 0), 1e-3);
    }

    private static double gain(double rpm, double throttle) {
        return AFTER.charge(rpm, AFTER.pressurePa(rpm, throttle))
                / BEFORE.charge(rpm, BEFORE.pressurePa(rpm, throttle));
    }

    /** Naturally aspirated, full throttle: 80–90 % usual peak, 95 % excellent, up to 110 % best: common practice, no source. */
    @Test
    void efficiencyAtFullThrottleIsThatOfARealEngine() {
        double best = 0;
        for (double rpm = 2000; rpm <= 8500; rpm += 100) {
            best = Math.max(best, AFTER.charge(rpm, AFTER.pressurePa(rpm, 100)));
        }
        assertTrue(best > 0.85 && best < 1.05, "best " + best);
    }
}
