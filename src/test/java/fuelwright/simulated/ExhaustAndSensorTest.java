package fuelwright.simulated;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ExhaustAndSensorTest {

    /** Derived: a four-stroke cycle is 720° of crank; 540° and 720° in ms. */
    @ParameterizedTest
    @CsvSource({"1000, 90, 120", "1500, 60, 80", "3000, 30, 40", "6000, 15, 20", "12000, 7.5, 10"})
    void theCyclePartOfTheDelayIsTheTimeOfTheCrank(double rpm, double ms540, double ms720) {
        assertEquals(ms540, 1000 * new Exhaust(0, 0.75, 0, 0).delayS(rpm, 5), 1e-9);
        assertEquals(ms720, 1000 * new Exhaust(0, 1.0, 0, 0).delayS(rpm, 5), 1e-9);
    }

    /** Derived from the ideal gas law: pipe 0.8 m × 40 mm, 100 kPa, R 287 J/(kg·K). */
    @ParameterizedTest
    @CsvSource({"1, 700, 500.4", "3, 800, 145.95", "10, 900, 38.92", "30, 1050, 11.12", "60, 1100, 5.31"})
    void theGasTakesItsTimeThroughThePipe(double gPerS, double temperatureK, double ms) {
        Exhaust pipe = new Exhaust(0, 0, Exhaust.gasInPipeG(0.8, 0.04, temperatureK), 0);
        assertEquals(ms, 1000 * pipe.delayS(3000, gPerS), 0.006 * Math.max(1, ms / 100));
    }

    /** The step response of a first-order lag, 1 − e^(−t/τ). */
    @ParameterizedTest
    @CsvSource({"1, 0.632121", "2, 0.864665", "4, 0.981684"})
    void theSensorAnswersAStepAsAFirstOrderLag(double timeConstants, double share) {
        double state = 1;
        for (int i = 0; i < timeConstants * 20; i++) {
            state = Sensor.step(state, 1.2, 0.004, 0.08, true);
        }
        assertEquals(share, (state - 1) / 0.2, 1e-6);
        double inverse = 1;
        for (int i = 0; i < timeConstants * 20; i++) {
            inverse = Sensor.step(inverse, 1.2, 0.004, 0.08, false);
        }
        assertEquals(share, (1 - 1 / inverse) / (1 - 1 / 1.2), 1e-6);
    }

    /** Leaks read lean, worst at low flow: common practice, no source. */
    @Test
    void aLeakReadsLeanMostAtLowFlow() {
        Exhaust leaking = new Exhaust(0, 1, 0.2, 0.05);
        double idle = leaking.diluted(1, 1.5);
        double cruise = leaking.diluted(1, 8);
        double full = leaking.diluted(1, 60);
        assertTrue(idle < 0.98 && idle < cruise && cruise < full);
        assertEquals(1, full, 1e-4);
    }
}
