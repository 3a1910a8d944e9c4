package fuelwright.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The reference model reproduces what is known of it (figures computed with SciPy 1.17.1), and the program's intake agrees with it. */
class CrossleyCookTest {

    @ParameterizedTest
    @CsvSource({
        "0, 2.8210",
        "8.97, 10.1838",
        "10, 11.9669",
        "11.93, 15.7853",
        "20, 37.9308",
        "30, 76.9327",
        "45, 151.6130",
        "60, 234.3664",
        "80, 335.2122",
        "90, 373.0621"
    })
    void throttleInfluenceIsReproduced(double thetaDeg, double gPerS) {
        assertEquals(gPerS, CrossleyCook.throttleInfluence(thetaDeg), 6e-5);
    }

    @ParameterizedTest
    @CsvSource({"0.5, 1", "0.543, 0.996295", "0.6, 0.979796", "0.8, 0.8", "0.9, 0.6", "1, 0"})
    void pressureInfluenceIsReproduced(double bar, double expected) {
        assertEquals(expected, CrossleyCook.pressureInfluence(bar, 1), 6e-7);
    }

    @ParameterizedTest
    @CsvSource({"209.48, 0.543, 10.1487", "314.16, 0.6, 18.6695", "314.16, 0.9, 25.3286"})
    void pumpingIsReproduced(double speed, double bar, double gPerS) {
        assertEquals(gPerS, CrossleyCook.airOut(speed, bar), 6e-5);
    }

    @Test
    void torqueIsReproduced() {
        assertEquals(44.41086, CrossleyCook.torque(0.2, 14.6, 15, 209.48), 6e-6);
    }

    @Test
    void theBalanceAtOneThrottleIsReproduced() {
        double bar = CrossleyCook.steadyBar(8.97, 209.48, 1);
        double air = CrossleyCook.airPerHalfTurnG(209.48, bar);
        assertEquals(0.542845, bar, 1e-6);
        assertEquals(0.152165, air, 1e-6);
        assertEquals(24.9726, CrossleyCook.torque(air, 14.6, 15, 209.48), 1e-4);
    }

    @ParameterizedTest
    @CsvSource({"8.97, 25, 1999.4", "11.93, 25, 3000.0", "11.93, 20, 3211.1", "8.97, 20, 2174.6"})
    void steadyStatesAreReproduced(double thetaDeg, double loadNm, double rpm) {
        assertEquals(rpm, CrossleyCook.steadySpeed(thetaDeg, loadNm) * 30 / Math.PI, 0.06);
    }

    /**
     * A fifth more area at equal engine speed: how much more air each cycle gets, by the reference and by the program's intake at the
     * same manifold pressure. Neither knows the other's engine, so this compares shapes: within 0.035 in the logarithm of air.
     */
    @ParameterizedTest
    @CsvSource({"6, 1500", "8.97, 2000", "8.97, 3000", "11.93, 3000", "15, 4000", "20, 4000", "25, 4500"})
    void aBiggerPlateGivesAsMuchMoreAirAsInTheReference(double thetaDeg, double rpm) {
        double speed = rpm * Math.PI / 30;
        double before = CrossleyCook.steadyBar(thetaDeg, speed, 1);
        double after = CrossleyCook.steadyBar(thetaDeg, speed, 1.2);
        double reference = Math.log(CrossleyCook.airOut(speed, after) / CrossleyCook.airOut(speed, before));
        IntakeModel small = intake(40, rpm);
        double throttle = throttleFor(small, rpm, before);
        IntakeModel big = intake(40 * Math.sqrt(1.2), rpm);
        double own = Math.log(big.fillingShare(rpm, throttle) / small.fillingShare(rpm, throttle));
        assertEquals(reference, own, 0.035, "at a pressure ratio of " + before);
    }

    private static IntakeModel intake(double boreMm, double rpm) {
        ThrottleBody body = new ThrottleBody(boreMm, 0.2 * boreMm, 5, 85);
        return new IntakeModel(body, 1, CylinderFilling.of(1300, OptionalDouble.of(rpm)), 0.8, 0, 1);
    }

    private static double throttleFor(IntakeModel model, double rpm, double pressureRatio) {
        double low = 0.01;
        double high = 100;
        for (int i = 0; i < 80; i++) {
            double middle = (low + high) / 2;
            if (model.pressureRatio(rpm, middle) < pressureRatio) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
