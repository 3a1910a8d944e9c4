package fuelwright.mixture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ExhaustGasTest {

    /**
     * Measured gases with the lambda that workshops print beside them (common practice, no source; cut to two digits, not rounded), and
     * the formula's own figures for two compositions of petrol, worked out by hand.
     */
    @ParameterizedTest
    @CsvSource({
        "13.78, 0.01, 2.29, 834, 1.07, 1.0773, 1.0758",
        "9.93, 8.49, 0.15, 330, 0.77, 0.7759, 0.7761",
        "15.24, 0.16, 0.86, 72, 1.03, 1.0318, 1.0313"
    })
    void printedExamplesAreMet(
            double co2, double co, double o2, double hc, double printed, double usual, double other) {
        ExhaustGas gas = new ExhaustGas(co2, co, o2, 0, hc);
        assertEquals(usual, gas.lambda(), 0.00006);
        assertEquals(other, gas.lambda(1.8, 0.017), 0.00006);
        assertEquals(printed, Math.floor(gas.lambda() * 100) / 100, 1e-9);
    }

    /**
     * One plug lead grounded: the gas is rich, yet full of oxygen that makes a sensor read lean (common practice, no source).
     */
    @Test
    void aMisfiresGasIsRichDespiteItsOxygen() {
        ExhaustGas gas = new ExhaustGas(13.69, 0.81, 2.18, 0, 2882);
        assertEquals(0.9658, gas.lambda(), 0.00006);
        assertEquals(0.9647, gas.lambda(1.8, 0.017), 0.00006);
    }

    /** Products of CH1.7261O0.0175 balanced by hand, with a water-gas constant of 3.5 on the rich side. */
    @ParameterizedTest
    @CsvSource({
        "1.05, 14.945, 0, 1.063",
        "1.10, 14.225, 0, 2.024",
        "1.20, 12.975, 0, 3.692",
        "0.95, 14.519, 1.835, 0",
        "0.90, 13.259, 3.743, 0",
        "0.85, 11.972, 5.717, 0",
        "0.80, 10.667, 7.749, 0"
    })
    void lambdaComesBackFromBalancedProducts(double lambda, double co2, double co, double o2) {
        assertEquals(lambda, new ExhaustGas(co2, co, o2, 0, 0).lambda(), 5e-5);
    }

    @Test
    void anAnalysisWithoutCarbonDioxideIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new ExhaustGas(0, 1, 1, 0, 0));
    }
}
