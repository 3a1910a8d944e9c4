package fuelwright.ui.theme;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fuelwright.unit.Dimension;
import fuelwright.unit.Unit;
import org.junit.jupiter.api.Test;

class MeasuresTest {

    @Test
    void metricIsWhatColumnsHold() {
        assertEquals("85 °C", Measures.METRIC.figure(Unit.CELSIUS, 85, 0));
        assertEquals(Unit.KILOPASCAL, Measures.METRIC.of(Unit.KILOPASCAL));
    }

    /** Boiling water and the standard atmosphere, 101.325 kPa = 14.696 psi (NIST SP 811, appendix B); the international mile, 1.609344 km. */
    @Test
    void imperialFiguresAreThoseOfTheHandbook() {
        assertEquals("212 °F", Measures.IMPERIAL.figure(Unit.CELSIUS, 100, 0));
        assertEquals("14.696 psi", Measures.IMPERIAL.figure(Unit.KILOPASCAL, 101.325, 3));
        assertEquals("100.0 mph", Measures.IMPERIAL.figure(Unit.KILOMETRE_PER_HOUR, 160.9344, 1));
    }

    @Test
    void aUnitIsShownAsOneOfTheSameDimension() {
        for (Unit unit : Unit.values()) {
            Dimension shown = Measures.IMPERIAL.of(unit).dimension();
            assertEquals(unit.dimension(), shown, unit.symbol());
        }
    }
}
