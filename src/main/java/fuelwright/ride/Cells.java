package fuelwright.ride;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** What a single field can be, as text. The slow, plain meaning that the fast parser has to equal. */
final class Cells {

    /** What a field holds. */
    enum Form {
        NUMBER,
        CLOCK,
        MISSING,
        TEXT
    }

    private static final Set<String> MISSING =
            Set.of("", "nan", "-", "--", "---", "null", "n/a", "na", "#n/a", "none", "-nan", "?");
    private static final Pattern POINT = numbers("\\.");
    private static final Pattern COMMA = numbers(",");
    private static final Pattern GLUED = Pattern.compile("(.*?[0-9][.,]?)\\s*([^0-9.,\\s][^0-9]*(?:[0-9]-[0-9])?)");

    private Cells() {}

    /**
     * An exponent needs a sign or a decimal sign before it: {@code 7E8} is a bus address in a raw frame, not seven hundred million.
     */
    private static Pattern numbers(String sign) {
        return Pattern.compile("[+-]?(?:[0-9]+(?:[eE][+-][0-9]{1,3})?|(?:[0-9]+" + sign + "[0-9]*|" + sign
                + "[0-9]+)(?:[eE][+-]?[0-9]{1,3})?)");
    }

    static boolean isMissing(String field) {
        return field.length() <= 4 && MISSING.contains(field.toLowerCase(Locale.ROOT));
    }

    static boolean isNumber(String field, char decimalSign) {
        return (decimalSign == ',' ? COMMA : POINT).matcher(field).matches();
    }

    /** The figure that {@code field} writes; it must be a number by {@link #isNumber}. NaN where it is too great for a double. */
    static double number(String field, char decimalSign) {
        double value = Double.parseDouble(decimalSign == ',' ? field.replace(',', '.') : field);
        return Double.isInfinite(value) ? Double.NaN : value;
    }

    /** The unit that is glued to a figure, or empty. */
    static String suffix(String field, char decimalSign) {
        var matcher = GLUED.matcher(field);
        if (matcher.matches() && matcher.group(2).length() <= 8 && isNumber(matcher.group(1), decimalSign)) {
            String suffix = matcher.group(2).strip();
            return Heading.unitOf(suffix).isPresent() ? suffix : "";
        }
        return "";
    }

    static boolean hasDigit(String field) {
        for (int i = 0; i < field.length(); i++) {
            if (field.charAt(i) >= '0' && field.charAt(i) <= '9') {
                return true;
            }
        }
        return false;
    }

    static Form form(String field, char decimalSign) {
        if (isMissing(field)) {
            return Form.MISSING;
        }
        if (isNumber(field, decimalSign) || !suffix(field, decimalSign).isEmpty()) {
            return Form.NUMBER;
        }
        return Clock.looksLike(field) ? Form.CLOCK : Form.TEXT;
    }
}
