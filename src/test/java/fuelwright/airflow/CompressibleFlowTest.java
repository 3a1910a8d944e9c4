package fuelwright.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CompressibleFlowTest {

    /** Derived from the closed forms (the choked one seen in gas-dynamics texts; 0.528 for air is in any, from memory). */
    @ParameterizedTest
    @CsvSource({
        "1.40, 0.528282, 0.684731",
        "1.35, 0.536851, 0.676145",
        "1.33, 0.540364, 0.672628",
        "1.30, 0.545728, 0.667262"
    })
    void chokingIsMet(double gamma, double criticalRatio, double choked) {
        assertEquals(criticalRatio, CompressibleFlow.criticalRatio(gamma), 6e-7);
        assertEquals(choked, CompressibleFlow.flowFunction(0.2, gamma), 6e-7);
        double closedForm = Math.sqrt(gamma) * Math.pow(2 / (gamma + 1), (gamma + 1) / (2 * (gamma - 1)));
        assertEquals(closedForm, CompressibleFlow.flowFunction(0, gamma), 1e-12);
    }

    /** Derived; γ = 1.135 is the usual exponent of saturated steam and 0.577 its usual critical ratio (from memory). */
    @Test
    void steamsCriticalRatioIsMet() {
        assertEquals(0.577430, CompressibleFlow.criticalRatio(1.135), 6e-7);
    }

    @ParameterizedTest
    @CsvSource({
        "0.99, 0.140662",
        "0.95, 0.307641",
        "0.90, 0.422581",
        "0.80, 0.560661",
        "0.70, 0.638317",
        "0.60, 0.676915",
        "1, 0",
        "1.1, 0"
    })
    void theFlowFunctionOfAirIsMet(double ratio, double expected) {
        assertEquals(expected, CompressibleFlow.flowFunction(ratio, 1.4), 6e-7);
    }

    /** Derived with R = 287.05 J/(kg·K), hence 1e-5. */
    @Test
    void massFlowsAreMet() {
        assertEquals(24.1240, CompressibleFlow.airGPerS(1, 100, 101325, 288.15, 0.4), 3e-4);
        assertEquals(18.7247, CompressibleFlow.airGPerS(0.8, 100, 100000, 298.15, 0.4), 3e-4);
        assertEquals(19.5836, CompressibleFlow.airGPerS(1, 100, 101325, 293.15, 0.8), 3e-4);
        assertEquals(179.344, CompressibleFlow.airGPerS(0.85, Math.PI / 4 * 2500, 101325, 293.15, 0.95), 2e-3);
    }

    @Test
    void aPlateAtTwentyDegreesPassesWhatWasDerived() {
        double area = PlateArea.atAngle(new ThrottleBody(50, 8, 5, 90), 20);
        assertEquals(19.8261, CompressibleFlow.airGPerS(0.8, area, 101325, 293.15, 0.7), 3e-4);
        assertEquals(21.2677, CompressibleFlow.airGPerS(0.8, area, 101325, 293.15, 0.5), 3e-4);
    }

    /**
     * The published engine model of {@link CrossleyCook} uses 2·√(Π − Π²), choked below one half, in place of the isentropic
     * function: the two shapes agree within 3 % down to Π = 0.9.
     */
    @Test
    void theShapeIsThatOfAPublishedEngineModel() {
        for (double ratio = 0.3; ratio <= 0.9; ratio += 0.02) {
            double own = CompressibleFlow.flowFunction(ratio, 1.4) / CompressibleFlow.flowFunction(0, 1.4);
            assertEquals(CrossleyCook.pressureInfluence(ratio, 1), own, 0.03, "at " + ratio);
        }
    }

    @Test
    void nearEqualPressuresTheFlowFallsToNothing() {
        assertTrue(CompressibleFlow.flowFunction(1 - 1e-9, 1.4) < 1e-4);
    }
}
