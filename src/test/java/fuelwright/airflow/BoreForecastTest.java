package fuelwright.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.mixture.Fuel;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BoreForecastTest {

    private static BoreForecast forecast(double before, double after) {
        return forecast(before, after, 2);
    }

    private static BoreForecast forecast(double before, double after, int bodies) {
        return BoreForecast.of(new Machine(
                        OptionalDouble.of(720),
                        bodies,
                        Optional.of(new ThrottleBody(before, 0.2 * before, 5, 85)),
                        Optional.of(new ThrottleBody(after, 0.2 * after, 5, 85)),
                        Fuel.PETROL,
                        OptionalDouble.of(9500)))
                .orElseThrow();
    }

    /**
     * Where the flow is choked the plate's air gains by the ratio of areas (figures of common practice for usual pairs of bores, no
     * source); the idle bypass, which stays as it was, dilutes that. A single body at high speed is choked up to a fifth of its throttle.
     */
    @ParameterizedTest
    @CsvSource({"33.5, 36, 1.155", "36, 40, 1.235", "33.5, 40, 1.426"})
    void whileThePlateChokesTheGainIsTheRatioOfAreas(double before, double after, double areaRatio) {
        CylinderFilling filling = CylinderFilling.of(720, OptionalDouble.of(9500));
        IntakeModel small = new IntakeModel(new ThrottleBody(before, 0.2 * before, 5, 85), 1, filling, 0.8, 0, 1);
        IntakeModel big = small.withBody(new ThrottleBody(after, 0.2 * after, 5, 85));
        double plateAlone = big.fillingShare(9000, 18) / small.fillingShare(9000, 18);
        assertEquals(areaRatio, plateAlone, 6e-4);

        double bypass = BypassAir.areaMm2(filling, 1);
        double diluted =
                (PlateArea.atThrottle(big.body(), 18) + bypass) / (PlateArea.atThrottle(small.body(), 18) + bypass);
        double gain = Math.exp(forecast(before, after, 1).logFactor(9000, 18));
        assertEquals(diluted, gain, 1e-9);
        assertTrue(gain > 1 && gain < areaRatio);
    }

    @Test
    void towardsFullThrottleAndLowSpeedItTendsToNothing() {
        BoreForecast forecast = forecast(38, 44);
        assertEquals(0, forecast.logFactor(1500, 100), 1e-3);
        assertEquals(0, forecast.logFactor(9000, 100), 0.01);
        for (double speed = 1500; speed < 9000; speed += 1500) {
            assertTrue(forecast.logFactor(speed, 100) < forecast.logFactor(speed, 12));
            assertTrue(forecast.logFactor(speed, 20) <= forecast.logFactor(speed + 1000, 20));
        }
    }

    @Test
    void theForecastLiesBetweenNothingAndTheRatioOfAreas() {
        BoreForecast forecast = forecast(38, 44);
        double most = 2 * Math.log(44.0 / 38);
        for (double speed = 800; speed <= 9500; speed += 300) {
            for (double throttle = 0; throttle <= 100; throttle += 2.5) {
                double factor = forecast.logFactor(speed, throttle);
                assertTrue(factor >= -1e-9 && factor <= most + 1e-9, speed + " rpm " + throttle + " %: " + factor);
            }
        }
    }

    @Test
    void theSameBodyForecastsNothingAndTheWayBackIsTheNegative() {
        BoreForecast same = forecast(40, 40);
        BoreForecast there = forecast(38, 44);
        BoreForecast back = forecast(44, 38);
        for (double throttle = 1; throttle <= 100; throttle += 9) {
            assertEquals(0, same.logFactor(4000, throttle), 1e-9);
            assertEquals(-there.logFactor(4000, throttle), back.logFactor(4000, throttle), 1e-9);
        }
    }

    /** Bypass air equals plate air at about 12 % and fades beyond 25 % (Indian J. Eng. Mater. Sci. 20, 2013, 350; seen in its abstract). */
    @Test
    void doubtIsWideAtSmallOpeningsAndSmallAtFullThrottle() {
        BoreForecast forecast = forecast(38, 44);
        for (double speed = 2000; speed <= 9000; speed += 1000) {
            assertTrue(forecast.logUncertainty(speed, 3) > 0.15, "at " + speed);
            assertTrue(forecast.logUncertainty(speed, 100) < 0.03, "at " + speed);
            assertTrue(forecast.logUncertainty(speed, 3) > 3 * forecast.logUncertainty(speed, 60));
            assertTrue(forecast.logUncertainty(speed, 100) >= BoreForecast.MODEL_ERROR);
        }
    }

    /** Engines drawn from within all stated ranges at once: 95 % intervals cover at least 90 % of them at every point. */
    @Test
    void theStatedDoubtCoversEnginesDrawnFromTheStatedRanges() {
        ThrottleBody old = new ThrottleBody(38, 8, 5, 85);
        ThrottleBody bigger = new ThrottleBody(44, 8, 5, 85);
        Machine machine = new Machine(
                OptionalDouble.of(720), 2, Optional.of(old), Optional.of(bigger), Fuel.PETROL, OptionalDouble.of(9500));
        BoreForecast forecast = BoreForecast.of(machine).orElseThrow();
        java.util.Random random = new java.util.Random(17);
        double[][] points = {{2000, 2}, {2000, 5}, {3500, 8}, {5000, 12}, {5000, 25}, {8000, 20}, {8000, 40}};
        for (double[] at : points) {
            int within = 0;
            int engines = 1000;
            double middle = forecast.logFactor(at[0], at[1]);
            double sigma = forecast.logUncertainty(at[0], at[1]);
            for (int i = 0; i < engines; i++) {
                double closed = 2 * range(random);
                IntakeModel a = BypassAir.intake(machine, drawn(old, closed, random))
                        .withConcentration(1 + 1.5 * random.nextDouble());
                double efficiency = 1 + 0.3 * range(random);
                a = a.withFilling(a.filling().scaled(efficiency))
                        .withBypassMm2(a.bypassMm2() * Math.pow(4, range(random)));
                IntakeModel b = a.withBody(drawn(bigger, closed, random))
                        .withBypassMm2(a.bypassMm2() * Math.pow(1.5, range(random)))
                        .withDischargeCoefficient(0.8 * (1 + 0.06 * range(random)));
                double truth = Math.log(b.fillingShare(at[0], at[1]) / a.fillingShare(at[0], at[1]));
                within += Math.abs(truth - middle) <= 1.96 * sigma ? 1 : 0;
            }
            assertTrue(within >= 0.90 * engines, at[0] + " rpm " + at[1] + " %: " + within);
        }
    }

    private static double range(java.util.Random random) {
        return 2 * random.nextDouble() - 1;
    }

    private static ThrottleBody drawn(ThrottleBody body, double closedDeg, java.util.Random random) {
        return new ThrottleBody(
                body.boreMm(),
                body.shaftMm(),
                Math.max(0, body.closedAngleDeg() + closedDeg + 1.5 * range(random)),
                body.openAngleDeg() + 4 * range(random));
    }

    @Test
    void theFlowGridAgreesWithTheModel() {
        BoreForecast forecast = forecast(38, 44);
        IntakeModel model = BypassAir.intake(
                new Machine(
                        OptionalDouble.of(720),
                        2,
                        Optional.empty(),
                        Optional.empty(),
                        Fuel.PETROL,
                        OptionalDouble.of(9500)),
                new ThrottleBody(44, 0.2 * 44, 5, 85));
        for (double speed = 1110; speed < 9000; speed += 777) {
            for (double throttle = 2.5; throttle < 100; throttle += 7) {
                double exact = model.airGPerS(speed, throttle, Atmosphere.SEA_LEVEL_PRESSURE_PA);
                assertEquals(exact, forecast.air(speed, throttle), 0.02 * exact, speed + " " + throttle);
            }
        }
        assertTrue(Double.isNaN(forecast.air(Double.NaN, 5)));
        assertEquals(forecast.air(16_000, 100), forecast.air(99_000, 400));
    }

    @Test
    void withoutBodiesOrDisplacementThereIsNoForecast() {
        assertFalse(BoreForecast.of(Machine.unknown()).isPresent());
    }

    @Test
    void whatThePhysicsSaysCanBeRead() {
        String sentence = forecast(38, 44).sentence(2500, 4.5);
        assertTrue(sentence.startsWith("At 2500 rpm and 4.5 % throttle the plate opens "), sentence);
        assertTrue(sentence.contains("mm² instead of"), sentence);
        assertTrue(forecast(38, 44).sentence(2500, 100).endsWith("in doubt mostly for the kind of model"));
    }
}
