package fuelwright.ui.theme;

import fuelwright.unit.Unit;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * The units that measured figures are shown in. Tables keep the units of their file, since what is typed into the hardware must not be
 * converted on the way; the machine keeps millimetres, as bores are named.
 */
public enum Measures {
    METRIC,
    IMPERIAL;

    private static final Pattern ROAD_SPEED = Pattern.compile("\\b(\\d+(?:\\.\\d+)?) km/h\\b");

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
            default -> canonical;
        };
    }

    /** A figure of a canonical unit, with the unit that it is shown in. */
    public String figure(Unit canonical, double value, int decimals) {
        Unit shown = of(canonical);
        return Figures.plain(shown.fromCanonical(value), decimals) + " " + shown.symbol();
    }

    /** A sentence of the layers below with its road speeds in the unit that they are shown in. */
    public String roadSpeeds(String sentence) {
        return this == METRIC
                ? sentence
                : ROAD_SPEED
                        .matcher(sentence)
                        .replaceAll(m -> figure(Unit.KILOMETRE_PER_HOUR, Double.parseDouble(m.group(1)), 0));
    }
}
