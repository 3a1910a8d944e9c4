package fuelwright.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PowerCorrectionTest {

    /** From the formulas of the standards (J1349, J607, DIN 70020 seen in public copies; exponents of ISO 1585 from memory). */
    @ParameterizedTest
    @CsvSource({
        "990, 25, 1.00000, 1.00000, 1.00000, 1.03193",
        "1013, 20, 0.96349, 0.96360, 0.96299, 1.00000",
        "1013.25, 15, 0.95341, 0.95355, 0.95281, 0.99119",
        "1000, 30, 0.99796, 0.99797, 0.99793, 1.03014",
        "950, 35, 1.07015, 1.06994, 1.07175, 1.09327",
        "980, 10, 0.98165, 0.98171, 0.98137, 1.01588",
        "898.75, 8.5, 1.08331, 1.08306, 1.08531, 1.10478"
    })
    void theStandardsFactorsAreMet(double hpa, double celsius, double j1990, double j2004, double iso, double din) {
        assertEquals(j1990, PowerCorrection.SAE_J1349_1990.factor(hpa, celsius), 6e-6);
        assertEquals(j2004, PowerCorrection.SAE_J1349_2004.factor(hpa, celsius), 6e-6);
        assertEquals(iso, PowerCorrection.ISO_1585.factor(hpa, celsius), 6e-6);
        assertEquals(din, PowerCorrection.DIN_70020.factor(hpa, celsius), 6e-6);
    }

    /** Saturation pressure of water by the IAPWS equation, computed with an independent implementation (NumPy 2.4.6). */
    @ParameterizedTest
    @CsvSource({"0.01, 611.7", "10, 1228.1", "20, 2339.2", "25, 3169.8", "30, 4246.9", "40, 7385.1"})
    void vapourPressureIsThatOfWater(double celsius, double pascal) {
        assertEquals(pascal, PowerCorrection.saturationPressurePa(celsius), 0.15);
    }

    @Test
    void humidAirIsCorrectedByItsDryPart() {
        double dry = PowerCorrection.dryPressureHpa(1000, 30, 50);
        assertEquals(978.765, dry, 0.002);
        assertEquals(1.02352, PowerCorrection.SAE_J1349_1990.factor(dry, 30), 1e-5);
        assertEquals(1.02396, PowerCorrection.ISO_1585.factor(dry, 30), 1e-5);
    }

    /** Nebraska tractor test no. 520 (1954), printed observed and corrected power, SAE J607 without humidity; seen. */
    @ParameterizedTest
    @CsvSource({"48.38, 65, 28.868, 50.38", "42.90, 76, 28.690, 45.43"})
    void aPrintedTractorTestIsMet(double observedHp, double fahrenheit, double inchesOfMercury, double printedHp) {
        double hpa = inchesOfMercury * PowerCorrection.HPA_PER_INHG;
        double factor = PowerCorrection.SAE_J607.factor(hpa, (fahrenheit - 32) / 1.8);
        assertEquals(printedHp, observedHp * factor, 0.01);
    }
}
