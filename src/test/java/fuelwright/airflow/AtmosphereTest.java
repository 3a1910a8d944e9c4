package fuelwright.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AtmosphereTest {

    /** ISO 2533:1975, geopotential altitude; derived from its constants. */
    @ParameterizedTest
    @CsvSource({
        "0, 288.150, 101325.0, 1.22500",
        "500, 284.900, 95460.8, 1.16727",
        "1000, 281.650, 89874.6, 1.11164",
        "1500, 278.400, 84556.0, 1.05807",
        "2000, 275.150, 79495.2, 1.00649",
        "3000, 268.650, 70108.5, 0.90912"
    })
    void theStandardAtmosphereIsMet(double altitudeM, double kelvin, double pascal, double density) {
        assertEquals(kelvin, Atmosphere.temperatureK(altitudeM), 1e-9);
        assertEquals(pascal, Atmosphere.pressurePa(altitudeM), 0.06);
        assertEquals(density, Atmosphere.densityKgPerM3(altitudeM), 6e-6);
    }

    /** A public table of the standard atmosphere by geometric height, seen: bar and relative density, printed to four digits. */
    @ParameterizedTest
    @CsvSource({
        "500, 0.9546, 0.9529",
        "1000, 0.8988, 0.9075",
        "1500, 0.8456, 0.8638",
        "2000, 0.7950, 0.8217",
        "3000, 0.7012, 0.7423"
    })
    void aPublicTableByGeometricHeightIsMet(double heightM, double bar, double relativeDensity) {
        double altitudeM = Atmosphere.geopotentialM(heightM);
        assertEquals(bar, Atmosphere.pressurePa(altitudeM) / 1e5, 5.1e-5);
        assertEquals(relativeDensity, Atmosphere.densityKgPerM3(altitudeM) / Atmosphere.densityKgPerM3(0), 6e-5);
    }

    @Test
    void aboveTheTropopauseItIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Atmosphere.pressurePa(12_000));
    }
}
