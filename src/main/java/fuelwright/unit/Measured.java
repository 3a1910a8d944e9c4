package fuelwright.unit;

import java.util.Locale;
import java.util.Objects;

/**
 * A physical figure of a sentence, before it is written: in which unit it is read is chosen where the sentence is shown. Immutable.
 *
 * @param value in the canonical unit
 * @param unit a canonical unit
 * @param decimals so many where it is written in that unit; −1 where it is good to tens
 * @param difference whether it is a step rather than a place on the scale: 20 °C apart are 36 °F, not 68
 * @param named whether its unit is written with it
 */
public record Measured(double value, Unit unit, int decimals, boolean difference, boolean named) {

    private static final int COARSEST = -3;

    public Measured {
        Objects.requireNonNull(unit, "unit");
        if (decimals < COARSEST) {
            throw new IllegalArgumentException("decimals " + decimals + " must be at least " + COARSEST);
        }
    }

    /** A figure with its unit. */
    public static Measured of(double value, Unit unit, int decimals) {
        return new Measured(value, unit, decimals, false, true);
    }

    /** A step from one figure to another, with its unit. */
    public static Measured step(double value, Unit unit, int decimals) {
        return new Measured(value, unit, decimals, true, true);
    }

    /** Another figure of the same kind. */
    public Measured with(double other) {
        return new Measured(other, unit, decimals, difference, named);
    }

    /** The same without its unit, where another figure beside it has it. */
    public Measured alone() {
        return new Measured(value, unit, decimals, difference, false);
    }

    /** As command line, files and report write it: {@code 98 kPa}, {@code 20 K}, {@code lambda 0.98}. */
    public String canonical() {
        String figure = String.format(Locale.ROOT, "%." + Math.max(0, decimals) + "f", value);
        if (!named) {
            return figure;
        }
        if (unit == Unit.LAMBDA) {
            return difference ? figure + " lambda" : "lambda " + figure;
        }
        return figure + " " + (difference && unit == Unit.CELSIUS ? Unit.KELVIN : unit).symbol();
    }

    @Override
    public String toString() {
        return canonical();
    }
}
