package fuelwright.safety;

import fuelwright.mixture.Fuel;
import fuelwright.unit.Measured;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * The figures that the cautions are judged by. Each has bounds: a user may make one stricter or a little wider for an engine, but none
 * can be switched off. Origins are named beside each; most are common practice without a source.
 */
public enum Limit {
    LEAN_EXCESS(
            "lean excess", "lambda", 0.05, 0.01, 0.08, "above the target at high load", "common practice, no source"),
    LEAN_CEILING(
            "lean ceiling",
            "lambda",
            0.95,
            0.80,
            1.00,
            "never leaner than this at high load, whatever the target",
            Sentence.of(
                    "common practice, no source; power is best at %s to %s",
                    Measured.of(0.85, Unit.LAMBDA, 2),
                    Measured.of(0.90, Unit.LAMBDA, 2).alone())),
    LEAN_FOR("lean for", "s", 0.5, 0.1, 1.0, "shorter than this is a moment", "common practice, no source"),
    LIGHT_LOAD_EXCESS(
            "light-load excess",
            "lambda",
            0.15,
            0.05,
            0.30,
            "above the target at light load",
            "common practice, no source"),
    FUEL_CUT_CLEARING(
            "clearing after fuel cut",
            "s",
            1.0,
            0.3,
            2.0,
            "the exhaust is clearing of air",
            "common practice, no source"),
    DUTY_CHECK(
            "injector duty, Check",
            "%",
            85,
            60,
            90,
            "share of the cycle that the injector is open",
            "80 to 85 % is usual practice, no source"),
    DUTY_STOP(
            "injector duty, Stop",
            "%",
            95,
            70,
            98,
            "beyond this the injector hardly closes",
            "common practice, no source"),
    INJECTIONS_PER_CYCLE(
            "injections a cycle",
            "1",
            1,
            1,
            4,
            "pulses in two turns of the engine",
            "one is usual; ask the unit's maker"),
    LEFT_LEAN(
            "left lean",
            "%",
            1,
            0.2,
            5,
            "fuel still missing at high load with the proposal",
            "common practice, no source"),
    CLIFF("cliff", "%", 20, 5, 60, "difference of change between neighbours", "common practice, no source"),
    LARGE_ADDITION("large addition", "%", 60, 30, 100, "more than parts alone explain", "common practice, no source"),
    LARGE_CUT("large cut", "%", 40, 20, 60, "more than parts alone explain", "common practice, no source"),
    SENSOR_FROZEN(
            "frozen for",
            "s",
            2.0,
            0.5,
            5.0,
            "the reading doesn't move though the engine does",
            "common practice, no source"),
    SENSOR_SLOW(
            "sensor slow",
            "s",
            0.30,
            0.15,
            0.60,
            "time constant",
            "50 to 100 ms is usual for production sensors (published abstract); three times that is slow"),
    SENSOR_TOP(
            "sensor top",
            "lambda",
            1.30,
            1.10,
            1.60,
            "from here on a reading is at the sensor's end",
            "common practice, no source"),
    SENSORS_APART("sensors apart", "%", 4, 1, 10, "two sensors differ by more", "common practice, no source"),
    DRIFT("drift", "%", 4, 2, 10, "same cells, early and late in the ride", "common practice, no source"),
    COOLANT_LEAST("coolant at least", "°C", 70, 40, 90, "below is warm-up", "common practice, no source"),
    COOLANT_MOST(
            "coolant at most", "°C", 110, 95, 130, "above the engine is heat-soaked", "common practice, no source"),
    INTAKE_MOST(
            "intake air at most", "°C", 60, 40, 80, "above the intake is heat-soaked", "common practice, no source"),
    INTAKE_APART("intake air apart", "K", 20, 5, 40, "rides differ by more", "common practice, no source"),
    BAROMETER_APART(
            "barometer apart",
            "kPa",
            4,
            1,
            10,
            "rides differ by more",
            Sentence.of("about %s of height (ISO 2533)", Measured.of(350, Unit.METRE, -1))),
    BATTERY_LEAST("battery at least", "V", 12.5, 11, 13.5, "below, injectors open late", "common practice, no source"),
    RIDE_LEAST("evidence at least", "s", 120, 30, 600, "time that counts as evidence", "common practice, no source"),
    EXHAUST_CHECK("exhaust temperature, Check", "°C", 850, 600, 950, "hot", "common practice, no source"),
    EXHAUST_STOP("exhaust temperature, Stop", "°C", 930, 700, 1000, "too hot", "common practice, no source");

    private final String words;
    private final String unit;
    private final double usual;
    private final double least;
    private final double most;
    private final String meaning;
    private final Sentence origin;

    Limit(String words, String unit, double usual, double least, double most, String meaning, String origin) {
        this(words, unit, usual, least, most, meaning, Sentence.text(origin));
    }

    Limit(String words, String unit, double usual, double least, double most, String meaning, Sentence origin) {
        this.words = words;
        this.unit = unit;
        this.usual = usual;
        this.least = least;
        this.most = most;
        this.meaning = meaning;
        this.origin = origin;
    }

    /** The name as screens show it. */
    public String words() {
        return words;
    }

    /** The unit's symbol. */
    public String unit() {
        return unit;
    }

    /** A value of it as a figure that may be read in other units; of mixture its unit stands behind. */
    public Measured measured(double value) {
        boolean apart =
                this == LEAN_EXCESS || this == LIGHT_LOAD_EXCESS || this == INTAKE_APART || this == BAROMETER_APART;
        return new Measured(value, measure(), 0, apart, true);
    }

    /** The canonical unit; one that is the same everywhere for times, shares and volts. */
    private Unit measure() {
        return switch (unit) {
            case "lambda" -> Unit.LAMBDA;
            case "°C", "K" -> Unit.CELSIUS;
            case "kPa" -> Unit.KILOPASCAL;
            case "%" -> Unit.PERCENT;
            case "s" -> Unit.SECOND;
            case "V" -> Unit.VOLT;
            default -> Unit.ONE;
        };
    }

    /** What it means, a few words. */
    public String meaning() {
        return meaning;
    }

    /** Where the usual figure comes from. */
    public Sentence origin() {
        return origin;
    }

    /** The least value that may be chosen. */
    public double least() {
        return least;
    }

    /** The greatest value that may be chosen. */
    public double most() {
        return most;
    }

    /** The figure taken for a fuel until the user chooses another. Alcohols burn rich by habit: their ceiling is lower. */
    public double usual(Fuel fuel) {
        if (this == LEAN_CEILING) {
            switch (fuel) {
                case E85:
                    return 0.93;
                case ETHANOL:
                    return 0.92;
                case METHANOL:
                    return 0.90;
                default:
                    return usual;
            }
        }
        return usual;
    }

    /** Whether a value lets more pass than the usual one does. */
    public boolean isWider(double value, Fuel fuel) {
        boolean fromBelow = this == COOLANT_LEAST || this == BATTERY_LEAST || this == RIDE_LEAST;
        double usualValue = usual(fuel);
        return fromBelow || this == INJECTIONS_PER_CYCLE ? value < usualValue : value > usualValue;
    }

    /** The fixed key as files write it, for instance {@code lean-excess}. */
    public String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The limit with that key. */
    public static Optional<Limit> ofKey(String key) {
        return Arrays.stream(values()).filter(l -> l.key().equals(key)).findFirst();
    }

    /** The limit that a person means: by its key or by its words, in whatever case. */
    public static Optional<Limit> ofName(String name) {
        String wanted = name.strip();
        return Arrays.stream(values())
                .filter(l -> l.key().equalsIgnoreCase(wanted) || l.words.equalsIgnoreCase(wanted))
                .findFirst();
    }
}
