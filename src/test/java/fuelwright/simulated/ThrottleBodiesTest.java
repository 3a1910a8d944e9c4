package fuelwright.simulated;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ThrottleBodiesTest {

    private static ThrottleBodies one(double boreMm, double shaftMm, double closedDeg) {
        return new ThrottleBodies(1, boreMm, shaftMm, closedDeg, 85);
    }

    /** Derived, and checked by numeric integration of the circle less ellipse and shaft strip; closed angle 5° (60 mm: 0°). */
    @ParameterizedTest
    @CsvSource({
        "38, 8, 5, 10, 12.910",
        "38, 8, 5, 20, 64.042",
        "38, 8, 5, 45, 326.854",
        "38, 8, 5, 75, 804.001",
        "38, 8, 5, 80, 832.376",
        "42, 8, 5, 30, 180.366",
        "45, 10, 5, 60, 780.742",
        "46, 8, 5, 80, 1295.728",
        "50, 8, 5, 20, 111.152",
        "50, 8, 5, 80, 1555.663",
        "50, 8, 5, 84, 1565.209",
        "60, 0, 0, 10, 42.955",
        "60, 0, 0, 45, 828.136",
        "60, 0, 0, 90, 2827.433"
    })
    void openAreaHasItsKnownValues(double bore, double shaft, double closed, double angle, double areaMm2) {
        assertEquals(areaMm2, one(bore, shaft, closed).areaOfOneMm2(angle), 6e-4);
    }

    @ParameterizedTest
    @CsvSource({"44, 8, 12", "44, 8, 40", "44, 8, 70", "34, 7, 78"})
    void openAreaEqualsNumericIntegration(double bore, double shaft, double angle) {
        double radius = bore / 2;
        double q = Math.cos(Math.toRadians(angle)) / Math.cos(Math.toRadians(5));
        int slices = 200_000;
        double sum = 0;
        for (int i = 0; i < slices; i++) {
            double x = -radius + bore * (i + 0.5) / slices;
            double circle = Math.sqrt(radius * radius - x * x);
            sum += 2 * (circle - Math.min(circle, Math.max(q * circle, shaft / 2))) * bore / slices;
        }
        assertEquals(sum, one(bore, shaft, 5).areaOfOneMm2(angle), 1e-3);
    }

    @Test
    void aClosedPlateLeavesNothingOpen() {
        assertEquals(0, one(44, 8, 5).areaOfOneMm2(5), 1e-9);
    }

    @Test
    void withAScaledShaftTheAreaGrowsWithTheSquareOfTheBoreAtEveryAngle() {
        for (double angle = 6; angle < 90; angle += 3) {
            double ratio = one(44, 8 * 44 / 38.0, 5).areaOfOneMm2(angle)
                    / one(38, 8, 5).areaOfOneMm2(angle);
            assertEquals(Math.pow(44 / 38.0, 2), ratio, 1e-9);
        }
    }

    @Test
    void areaGrowsWithThrottle() {
        ThrottleBodies bodies = new ThrottleBodies(2, 44, 8, 5, 85);
        for (int throttle = 1; throttle <= 80; throttle++) {
            assertTrue(bodies.effectiveAreaM2(throttle) > bodies.effectiveAreaM2(throttle - 1), throttle + " %");
        }
    }
}
