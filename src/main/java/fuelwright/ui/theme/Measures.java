package fuelwright.ui.theme;

import fuelwright.unit.Unit;
import java.util.Locale;

/**
 * The units that measured figures are shown in. Tables keep the units of their file, since what is typed into the hardware must not be
 * converted on the way; the machine keeps millimetres, as bores are named.
 */
public enum Measures {
    METRIC,
    IMPERIAL;

    public String words() {
        return Words.of("measures." + name().toLowerCase(Locale.ROOT));
    }

    public Measures other() {
        return this == METRIC ? IMPERIAL : METRIC;
    }

    /** The unit that stands for a canonical one. */
    public Unit of(Unit canonical) {
        if (this == METRIC) {
            return canonical;
        }
        return switch (canonical) {
            case CELSIUS -> Unit.FAHRENHEIT;
            case KILOPASCAL -> Unit.PSI;
            case KILOMETRE_PER_HOUR -> Unit.MILE_PER_HOUR;
            case NEWTON_METRE -> Unit.POUND_FOOT;
            case KILOWATT -> Unit.HORSEPOWER;
            case GRAM_PER_SECOND -> Unit.POUND_PER_MINUTE;
            case METRE -> Unit.FOOT;
            case KILOGRAM -> Unit.POUND;
            case SQUARE_METRE -> Unit.SQUARE_FOOT;
            case KILOGRAM_PER_CUBIC_METRE -> Unit.POUND_PER_CUBIC_FOOT;
            case RPM_PER_KILOMETRE_PER_HOUR -> Unit.RPM_PER_MILE_PER_HOUR;
            default -> canonical;
        };
    }

    /** A figure of a canonical unit, with the unit that it is shown in. */
    public String figure(Unit canonical, double value, int decimals) {
        Unit shown = of(canonical);
        return Figures.plain(shown.fromCanonical(value), decimals) + " " + shown.symbol();
    }
}
