package fuelwright.unit;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A unit as data: {@code canonical = value * scale + offset}. Canonical units are rpm, %, kPa, °C, s, km/h, lambda, V, g/s, °, N·m,
 * kW, m, cm³, kg, m², kg/m³, rpm per km/h. Exact factors by definition (NIST SP 811, appendix B, for psi, inHg, mph, horsepower, lb·ft, lb, ft, in).
 */
public enum Unit {
    RPM("rpm", Dimension.ENGINE_SPEED, 1, 0, "1/min", "r/min", "min-1", "u/min", "/min", "rev/min"),
    PERCENT("%", Dimension.PERCENTAGE, 1, 0, "pct", "percent"),
    FRACTION("0-1", Dimension.PERCENTAGE, 100, 0),
    KILOPASCAL("kPa", Dimension.PRESSURE, 1, 0, "kpaa", "kpa abs"),
    PASCAL("Pa", Dimension.PRESSURE, 1e-3, 0),
    HECTOPASCAL("hPa", Dimension.PRESSURE, 0.1, 0),
    MILLIBAR("mbar", Dimension.PRESSURE, 0.1, 0, "mb"),
    BAR("bar", Dimension.PRESSURE, 100, 0),
    // No gauge pressures: without a barometer they are no absolute ones.
    PSI("psi", Dimension.PRESSURE, 6.894757293168361, 0, "psia"),
    INCH_OF_MERCURY("inHg", Dimension.PRESSURE, 3.386389, 0, "\"hg", "in hg"),
    CELSIUS("°C", Dimension.TEMPERATURE, 1, 0, "c", "degc", "deg c", "celsius"),
    FAHRENHEIT("°F", Dimension.TEMPERATURE, 5.0 / 9.0, -160.0 / 9.0, "f", "degf", "deg f", "fahrenheit"),
    KELVIN("K", Dimension.TEMPERATURE, 1, -273.15, "kelvin"),
    SECOND("s", Dimension.TIME, 1, 0, "sec", "seconds"),
    MILLISECOND("ms", Dimension.TIME, 1e-3, 0, "msec", "milliseconds"),
    MICROSECOND("µs", Dimension.TIME, 1e-6, 0, "us", "μs", "microseconds"),
    MINUTE("min", Dimension.TIME, 60, 0, "minutes"),
    KILOMETRE_PER_HOUR("km/h", Dimension.ROAD_SPEED, 1, 0, "kmh", "kph"),
    MILE_PER_HOUR("mph", Dimension.ROAD_SPEED, 1.609344, 0, "mi/h"),
    METRE_PER_SECOND("m/s", Dimension.ROAD_SPEED, 3.6, 0),
    LAMBDA("λ", Dimension.MIXTURE, 1, 0, "lambda"),
    AIR_FUEL_RATIO("AFR", Dimension.MIXTURE, Double.NaN, 0, "a/f", ":1"),
    EQUIVALENCE_RATIO("φ", Dimension.MIXTURE, Double.NaN, 0, "phi"),
    VOLT("V", Dimension.VOLTAGE, 1, 0, "volts", "volt"),
    MILLIVOLT("mV", Dimension.VOLTAGE, 1e-3, 0),
    GRAM_PER_SECOND("g/s", Dimension.MASS_FLOW, 1, 0),
    POUND_PER_MINUTE("lb/min", Dimension.MASS_FLOW, 453.59237 / 60, 0),
    KILOGRAM_PER_HOUR("kg/h", Dimension.MASS_FLOW, 1 / 3.6, 0),
    DEGREE("°", Dimension.ANGLE, 1, 0, "deg", "degrees"),
    NEWTON_METRE("N·m", Dimension.TORQUE, 1, 0, "nm", "n.m"),
    POUND_FOOT(
            "lb·ft",
            Dimension.TORQUE,
            1.3558179483314004,
            0,
            "lbft",
            "lb-ft",
            "ft-lb",
            "ftlb",
            "lb ft",
            "ft lb",
            "lb.ft",
            "ft.lb",
            "ft·lb",
            "lbs-ft",
            "ft-lbs",
            "lbs ft",
            "ft lbs",
            "lbf·ft",
            "lbf-ft",
            "lbf ft",
            "ft-lbf",
            "ft·lbf"),
    KILOWATT("kW", Dimension.POWER, 1, 0),
    HORSEPOWER("hp", Dimension.POWER, 0.7456998715822702, 0, "bhp", "whp", "rwhp"),
    METRIC_HORSEPOWER("PS", Dimension.POWER, 0.73549875, 0, "cv"),
    METRE("m", Dimension.LENGTH, 1, 0),
    MILLIMETRE("mm", Dimension.LENGTH, 1e-3, 0),
    FOOT("ft", Dimension.LENGTH, 0.3048, 0),
    INCH("in", Dimension.LENGTH, 0.0254, 0),
    CUBIC_CENTIMETRE("cm³", Dimension.VOLUME, 1, 0),
    CUBIC_INCH("in³", Dimension.VOLUME, 16.387064, 0),
    KILOGRAM("kg", Dimension.MASS, 1, 0),
    POUND("lb", Dimension.MASS, 0.45359237, 0),
    SQUARE_METRE("m²", Dimension.AREA, 1, 0),
    SQUARE_FOOT("ft²", Dimension.AREA, 0.09290304, 0),
    KILOGRAM_PER_CUBIC_METRE("kg/m³", Dimension.DENSITY, 1, 0),
    POUND_PER_CUBIC_FOOT("lb/ft³", Dimension.DENSITY, 16.018463373960142, 0),
    RPM_PER_KILOMETRE_PER_HOUR("rpm per km/h", Dimension.GEARING, 1, 0),
    RPM_PER_MILE_PER_HOUR("rpm per mph", Dimension.GEARING, 1 / 1.609344, 0),
    ONE("1", Dimension.NUMBER, 1, 0, "");

    private static final Map<String, Unit> BY_SYMBOL = new HashMap<>();
    /** Symbols and aliases in lower case; of two alike the one declared first. */
    private static final Map<String, Unit> BY_WORD = new HashMap<>();

    static {
        for (Unit unit : values()) {
            if (!unit.dimension.isLogged()) {
                continue;
            }
            BY_SYMBOL.put(unit.symbol, unit);
            BY_WORD.putIfAbsent(unit.symbol.toLowerCase(Locale.ROOT), unit);
            unit.aliases.forEach(alias -> BY_WORD.putIfAbsent(alias, unit));
        }
    }

    private final String symbol;
    private final Dimension dimension;
    private final double scale;
    private final double offset;
    private final List<String> aliases;

    Unit(String symbol, Dimension dimension, double scale, double offset, String... aliases) {
        this.symbol = symbol;
        this.dimension = dimension;
        this.scale = scale;
        this.offset = offset;
        this.aliases = List.of(aliases);
    }

    public String symbol() {
        return symbol;
    }

    public Dimension dimension() {
        return dimension;
    }

    /**
     * The value in the dimension's canonical unit.
     *
     * @throws IllegalStateException for mixture units other than lambda: they need a ratio, see {@code mixture}
     */
    public double toCanonical(double value) {
        return value * linearScale() + offset;
    }

    /** The inverse of {@link #toCanonical}. */
    public double fromCanonical(double canonical) {
        return (canonical - offset) / linearScale();
    }

    private double linearScale() {
        if (Double.isNaN(scale)) {
            throw new IllegalStateException(symbol + " has no fixed scale to lambda");
        }
        return scale;
    }

    /** The unit of a log or table written as {@code text}: its symbol exactly, or symbol or alias in any case. */
    public static Optional<Unit> parse(String text) {
        String trimmed = text.strip();
        Unit exact = BY_SYMBOL.get(trimmed);
        return Optional.ofNullable(exact != null ? exact : BY_WORD.get(trimmed.toLowerCase(Locale.ROOT)));
    }
}
