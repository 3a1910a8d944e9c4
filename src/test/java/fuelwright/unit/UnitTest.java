package fuelwright.unit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitTest {

    /** NIST Special Publication 811, appendix B (factors from memory, to the digits shown). */
    @ParameterizedTest
    @CsvSource({
        "PSI, 1, 6.894757, 1e-6",
        "INCH_OF_MERCURY, 1, 3.386389, 1e-6",
        "BAR, 1, 100, 0",
        "MILE_PER_HOUR, 1, 1.609344, 1e-9",
        "POUND_FOOT, 1, 1.355818, 1e-6",
        "HORSEPOWER, 1, 0.7456999, 1e-7",
        "METRIC_HORSEPOWER, 1, 0.7354988, 1e-7",
        "FAHRENHEIT, 212, 100, 1e-9",
        "FAHRENHEIT, 32, 0, 1e-9",
        "KELVIN, 273.15, 0, 1e-9",
        "POUND, 1, 0.4535924, 1e-7",
        "FOOT, 1, 0.3048, 0",
        "SQUARE_FOOT, 1, 0.09290304, 0",
        "CUBIC_INCH, 1, 16.38706, 1e-5",
        "POUND_PER_CUBIC_FOOT, 1, 16.01846, 1e-5",
        "POUND_PER_MINUTE, 1, 7.559873, 1e-6",
        "RPM_PER_MILE_PER_HOUR, 100, 62.13712, 1e-5",
        "MICROSECOND, 2500, 0.0025, 1e-12",
        "FRACTION, 0.25, 25, 0"
    })
    void factorsAreThoseOfTheStandardsBody(Unit unit, double value, double canonical, double within) {
        assertEquals(canonical, unit.toCanonical(value), within);
        assertEquals(value, unit.fromCanonical(unit.toCanonical(value)), 1e-9);
    }

    /** Power from torque: hp = lb·ft·rpm/5252, kW = N·m·rpm/9549 (common practice, no source). */
    @Test
    void powerFollowsFromTorqueAsTheTradeCountsIt() {
        double newtonMetres = Unit.POUND_FOOT.toCanonical(60);
        double kilowatts = newtonMetres * 7000 * Math.PI / 30 / 1000;
        assertEquals(60 * 7000 / 5252.0, Unit.HORSEPOWER.fromCanonical(kilowatts), 0.01);
        assertEquals(newtonMetres * 7000 / 9549, kilowatts, 0.01);
    }

    @Test
    void symbolsAndUsualSpellingsAreRecognised() {
        for (Unit unit : Unit.values()) {
            boolean logged = unit.dimension().isLogged();
            assertEquals(logged ? Optional.of(unit) : Optional.empty(), Unit.parse(unit.symbol()));
        }
        assertEquals(Optional.of(Unit.RPM), Unit.parse(" 1/min "));
        assertEquals(Optional.of(Unit.KILOPASCAL), Unit.parse("KPA"));
        assertEquals(Optional.of(Unit.MILLIVOLT), Unit.parse("mV"));
        assertTrue(Unit.parse("furlong").isEmpty());
    }

    @Test
    void gaugePressureIsNoAbsolutePressure() {
        assertTrue(Unit.parse("psig").isEmpty());
    }

    @Test
    void mixtureUnitsThatNeedARatioHaveNoFixedScale() {
        assertThrows(IllegalStateException.class, () -> Unit.AIR_FUEL_RATIO.toCanonical(14.7));
    }
}
