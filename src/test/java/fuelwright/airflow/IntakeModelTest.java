package fuelwright.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class IntakeModelTest {

    private static final double PA = 101_325;
    private static final CylinderFilling FILLING = CylinderFilling.of(720, OptionalDouble.of(9500));
    private static final IntakeModel MODEL = new IntakeModel(new ThrottleBody(38, 8, 5, 85), 2, FILLING, 0.8, 5, 1);

    @Test
    void platesAndBypassPassWhatTheCylindersTake() {
        for (double speed = 600; speed <= 12_000; speed += 600) {
            for (double throttle = 0; throttle <= 100; throttle += 4) {
                double ratio = MODEL.pressureRatio(speed, throttle);
                double area = 2 * (PlateArea.atThrottle(MODEL.body(), throttle) + 5);
                double in = CompressibleFlow.airGPerS(0.8, area, PA, IntakeModel.TEMPERATURE_K, ratio);
                double out = MODEL.airGPerS(speed, throttle, PA);
                // Near Π = 1 the flow function is so steep that the root's own accuracy shows.
                assertEquals(out, in, 1e-4 * out, speed + " rpm, " + throttle + " %");
                assertTrue(ratio > 0 && ratio <= 1);
            }
        }
    }

    @Test
    void moreThrottleGivesMorePressureAndMoreSpeedGivesLess() {
        for (double speed = 1000; speed <= 9000; speed += 500) {
            for (double throttle = 1; throttle <= 60; throttle += 1) {
                double here = MODEL.pressureRatio(speed, throttle);
                assertTrue(MODEL.pressureRatio(speed, throttle + 1) > here);
                assertTrue(MODEL.pressureRatio(speed + 200, throttle) < here);
            }
        }
    }

    @Test
    void anEngineThatStandsHasTheBarometerBehindItsPlate() {
        assertEquals(1, MODEL.pressureRatio(0, 10));
        assertEquals(0, MODEL.airGPerS(0, 10, PA), 1e-12);
    }

    /**
     * Speed density worked by hand: 600 cm³ at 90 % filling, 100 kPa, 25 °C, 10 000 rpm draws 52.580 g/s, 157.740 mg for each of four
     * cylinders' cycles (derived). The model's own temperature is 20 °C, so the density is scaled.
     */
    @Test
    void theFullFlowIsThatOfSpeedDensity() {
        CylinderFilling filling = new CylinderFilling(600, 10_000, 1);
        double kgPerM3 = 100_000 / (CompressibleFlow.GAS_CONSTANT_AIR * 298.15);
        double gPerS = 1000 * kgPerM3 * filling.fullVolumeM3PerS(10_000);
        assertEquals(52.580, gPerS, 1e-3);
        assertEquals(157.740, 1000 * gPerS / (10_000 / 120.0) / 4, 3e-3);
    }

    /** Usual peak of naturally aspirated engines 80–90 %, practical limit about 115 % (common practice, no source). */
    @Test
    void theGuessedFillingStaysWithinTheUsualRange() {
        for (double speed = 500; speed <= 12_000; speed += 100) {
            double efficiency = FILLING.efficiency(speed);
            assertTrue(efficiency >= 0.6 && efficiency <= 0.9, "at " + speed);
        }
        assertEquals(0.9, FILLING.efficiency(0.7 * 9500), 1e-12);
    }

    @Test
    void theBypassAloneKeepsTheEngineAtIdlePressure() {
        IntakeModel idle = MODEL.withBypassMm2(BypassAir.areaMm2(FILLING, 2));
        assertEquals(BypassAir.IDLE_PRESSURE_RATIO, idle.pressureRatio(BypassAir.IDLE_RPM, 0), 1e-9);
        // A few g/s: what idling engines of this size are known to draw (common practice, no source).
        double gPerS = idle.airGPerS(BypassAir.IDLE_RPM, 0, PA);
        assertTrue(gPerS > 1 && gPerS < 4, "g/s " + gPerS);
    }

    @Test
    void fillingAndItsInverseAgree() {
        for (double ratio = 0.1; ratio <= 1; ratio += 0.05) {
            assertEquals(ratio, CylinderFilling.ratioOfShare(CylinderFilling.share(ratio)), 1e-12);
        }
        assertEquals(1, CylinderFilling.share(1), 1e-12);
        assertEquals(0, CylinderFilling.share(CylinderFilling.emptyRatio()), 1e-12);
    }
}
