package fuelwright.table;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** Numbers as files write them: decimal point, no exponent, the fewest digits that give the same double again. */
public final class Numerals {

    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d{1,3})?");

    private Numerals() {}

    /**
     * The shortest decimal that reads back as {@code value}, without exponent.
     *
     * @throws IllegalArgumentException if the value isn't finite
     */
    public static String shortest(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("value " + value + " must be finite");
        }
        if (value == 0) {
            return "0";
        }
        BigDecimal exact = new BigDecimal(value);
        // Double.toString isn't always the shortest before Java 19, so the digits are counted up.
        for (int digits = 1; digits < 17; digits++) {
            BigDecimal rounded = exact.round(new MathContext(digits, RoundingMode.HALF_EVEN));
            if (rounded.doubleValue() == value) {
                return plain(rounded);
            }
        }
        return plain(exact.round(new MathContext(17, RoundingMode.HALF_EVEN)));
    }

    /** How many decimals {@link #shortest} gives a figure. */
    static int decimals(double value) {
        String text = shortest(value);
        int point = text.indexOf('.');
        return point < 0 ? 0 : text.length() - point - 1;
    }

    private static String plain(BigDecimal number) {
        return number.stripTrailingZeros().toPlainString();
    }

    /** The value with at most 12 significant digits: what a unit conversion leaves behind its rounding noise. */
    static double tidy(double value) {
        return Double.isFinite(value)
                ? new BigDecimal(value)
                        .round(new MathContext(12, RoundingMode.HALF_EVEN))
                        .doubleValue()
                : value;
    }

    /**
     * Reads one number; a typographic minus and blanks around it are allowed, separators of thousands aren't.
     *
     * @param decimalComma whether the decimal separator is a comma rather than a point
     * @return empty where the text is no finite number
     */
    public static OptionalDouble parse(String text, boolean decimalComma) {
        String stripped = strip(text).replace('\u2212', '-');
        if (decimalComma) {
            if (stripped.indexOf('.') >= 0) {
                return OptionalDouble.empty();
            }
            stripped = stripped.replace(',', '.');
        }
        if (!NUMBER.matcher(stripped).matches()) {
            return OptionalDouble.empty();
        }
        double value = Double.parseDouble(stripped);
        return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }

    /** Strips blanks of every kind, no-break spaces included. */
    static String strip(String text) {
        return text.replace('\u00A0', ' ').replace('\u202F', ' ').strip();
    }
}
