package fuelwright.simulated;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OrificeTest {

    /** Derived from first principles: Πc = (2/(γ+1))^(γ/(γ−1)), Ψ = √γ·(2/(γ+1))^((γ+1)/(2(γ−1))). */
    @ParameterizedTest
    @CsvSource({
        "1.40, 0.528282, 0.684731",
        "1.35, 0.536851, 0.676145",
        "1.33, 0.540364, 0.672628",
        "1.30, 0.545728, 0.667262"
    })
    void chokedFlowFollowsTheClosedForm(double gamma, double critical, double psi) {
        assertEquals(critical, Orifice.criticalRatio(gamma), 1e-6);
        assertEquals(psi, Orifice.psi(0.3, gamma), 1e-6);
    }

    /** Derived from first principles with γ = 1.4. */
    @ParameterizedTest
    @CsvSource({
        "0.99, 0.140662",
        "0.95, 0.307641",
        "0.90, 0.422581",
        "0.80, 0.560661",
        "0.70, 0.638317",
        "0.60, 0.676915"
    })
    void theFlowFunctionHasItsKnownValues(double ratio, double psi) {
        assertEquals(psi, Orifice.psi(ratio, 1.4), 1e-6);
    }

    /** Derived from first principles, R = 287.05 J/(kg·K), Cd 1 unless said. */
    @ParameterizedTest
    @CsvSource({
        "1.0, 101325, 288.15, 0.3, 24.1240",
        "0.8, 100000, 298.15, 0.3, 18.7247",
        "1.0, 101325, 293.15, 0.8, 19.5836"
    })
    void flowThroughASquareCentimetre(double cd, double upstreamPa, double temperatureK, double ratio, double gPerS) {
        double flow = 1000 * Orifice.massFlowKgPerS(cd * 1e-4, upstreamPa, temperatureK, ratio * upstreamPa);
        assertEquals(gPerS, flow, 1e-4);
    }

    /** Derived from first principles: a 50 mm bore without a plate, Cd 0.85, Π 0.95. */
    @Test
    void flowThroughAnOpenBore() {
        double area = 0.85 * Math.PI * 0.025 * 0.025;
        // The given value rests on the upstream pressure of the standard atmosphere, ISO 2533.
        assertEquals(179.344, 1000 * Orifice.massFlowKgPerS(area, 101325, 293.15, 0.95 * 101325), 1e-3);
    }
}
