package fuelwright.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlateAreaTest {

    private static final double[] ANGLES = {10, 20, 30, 45, 60, 75, 80, 90};

    /** Derived and checked by numerical integration outside the program; closed angle 5°, the last body 0°. */
    @ParameterizedTest
    @CsvSource({
        "38, 8, 5, 12.910, 64.042, 147.454, 326.854, 557.987, 804.001, 832.376, 832.376",
        "42, 8, 5, 15.788, 78.325, 180.366, 400.010, 683.869, 994.364, 1051.485, 1051.485",
        "45, 10, 5, 18.092, 89.740, 206.598, 457.799, 780.742, 1117.470, 1144.163, 1144.163",
        "46, 8, 5, 18.953, 94.028, 216.549, 480.419, 822.138, 1202.278, 1295.728, 1295.766",
        "50, 8, 5, 22.404, 111.152, 256.007, 568.091, 972.829, 1428.114, 1555.663, 1565.209",
        "60, 0, 0, 42.955, 170.515, 378.804, 828.136, 1413.717, 2095.640, 2336.455, 2827.433"
    })
    void areasAreMet(
            double bore,
            double shaft,
            double closed,
            double a10,
            double a20,
            double a30,
            double a45,
            double a60,
            double a75,
            double a80,
            double full) {
        ThrottleBody body = new ThrottleBody(bore, shaft, closed, 90);
        double[] expected = {a10, a20, a30, a45, a60, a75, a80, full};
        for (int i = 0; i < ANGLES.length; i++) {
            assertEquals(expected[i], PlateArea.atAngle(body, ANGLES[i]), 0.0006, "at " + ANGLES[i] + "°");
        }
    }

    /** What is open is the bore's circle less the plate's ellipse and the shaft's strip: integrated strip by strip. */
    @Test
    void theFormulaIsTheAreaThatPlateAndShaftLeaveOpen() {
        ThrottleBody body = new ThrottleBody(50, 8, 5, 90);
        for (double angle = 6; angle <= 90; angle += 3) {
            assertEquals(integrated(body, angle), PlateArea.atAngle(body, angle), 2e-3, "at " + angle + "°");
        }
    }

    private static double integrated(ThrottleBody body, double angleDeg) {
        double radius = body.boreMm() / 2;
        double q = Math.cos(Math.toRadians(angleDeg)) / Math.cos(Math.toRadians(body.closedAngleDeg()));
        int strips = 200_000;
        double width = 2 * radius / strips;
        double sum = 0;
        for (int i = 0; i < strips; i++) {
            double x = -radius + (i + 0.5) * width;
            double half = Math.sqrt(radius * radius - x * x);
            sum += 2 * Math.max(0, half - Math.max(q * half, body.shaftMm() / 2)) * width;
        }
        return sum;
    }

    /** Angle at which the plate hides behind its shaft: cos ψ = (d/D)·cos ψ0; derived. */
    @ParameterizedTest
    @CsvSource({"38, 8, 77.894", "42, 8, 79.062", "45, 10, 77.210", "46, 8, 80.023", "50, 8, 80.828"})
    void beyondTheShaftsAngleNothingMoreOpens(double bore, double shaft, double angle) {
        ThrottleBody body = new ThrottleBody(bore, shaft, 5, 90);
        double full = PlateArea.atAngle(body, 90);
        assertEquals(full, PlateArea.atAngle(body, angle + 0.001), 1e-9);
        assertTrue(PlateArea.atAngle(body, angle - 0.05) < full);
    }

    @Test
    void theRatioOfTwoBodiesIsThatOfTheirBoresSquaredWhenTheShaftIsScaledToo() {
        ThrottleBody old = new ThrottleBody(38, 8, 5, 85);
        ThrottleBody bigger = new ThrottleBody(44, 8 * 44 / 38.0, 5, 85);
        for (double throttle = 1; throttle <= 100; throttle += 1) {
            double ratio = PlateArea.atThrottle(bigger, throttle) / PlateArea.atThrottle(old, throttle);
            assertEquals(44 * 44 / (38.0 * 38.0), ratio, 1e-9);
        }
    }

    /** Derived figures for one shaft in two bores. */
    @Test
    void theRatioOfTwoBodiesWithOneShaftGrowsWithTheAngle() {
        ThrottleBody d46 = new ThrottleBody(46, 8, 5, 90);
        ThrottleBody d50 = new ThrottleBody(50, 8, 5, 90);
        assertEquals(1.1821, PlateArea.atAngle(d50, 10) / PlateArea.atAngle(d46, 10), 6e-5);
        assertEquals(1.1833, PlateArea.atAngle(d50, 60) / PlateArea.atAngle(d46, 60), 6e-5);
        assertEquals(1.2006, PlateArea.atAngle(d50, 80) / PlateArea.atAngle(d46, 80), 6e-5);
        assertEquals(1.2079, PlateArea.atAngle(d50, 90) / PlateArea.atAngle(d46, 90), 6e-5);
    }

    @Test
    void closedIsNothingAndItOnlyEverOpens() {
        ThrottleBody body = new ThrottleBody(44, 8, 6, 84);
        double previous = 0;
        assertEquals(0, PlateArea.atThrottle(body, 0), 1e-9);
        for (double throttle = 0.5; throttle <= 100; throttle += 0.5) {
            double area = PlateArea.atThrottle(body, throttle);
            assertTrue(area >= previous);
            previous = area;
        }
        assertEquals(previous, PlateArea.atThrottle(body, 130));
    }
}
