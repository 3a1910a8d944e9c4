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
    private static final Pattern GLUED = Pattern.compile("(.*?[0-9][.,]?)\\s*([^0-9.,\\s][^0-9]*(?:[0-9]-[0-9])?)");

    private Cells() {}

    static boolean isMissing(String field) {
        return field.length() <= 4 && MISSING.contains(field.toLowerCase(Locale.ROOT));
    }

    /**
     * Whether a field is a decimal number and nothing else. An exponent needs a sign, or a decimal sign before it: {@code 7E8} is a
     * bus address in a raw frame, not seven hundred million.
     */
    static boolean isNumber(String field, char decimalSign) {
        int end = field.length();
        int p = end > 0 && isSign(field.charAt(0)) ? 1 : 0;
        int whole = digitsFrom(field, p);
        p += whole;
        boolean point = p < end && field.charAt(p) == decimalSign;
        int decimals = point ? digitsFrom(field, p + 1) : 0;
        p += point ? decimals + 1 : 0;
        if (whole + decimals == 0) {
            return false;
        }
        if (p == end) {
            return true;
        }
        if (field.charAt(p) != 'e' && field.charAt(p) != 'E') {
            return false;
        }
        p++;
        boolean signed = p < end && isSign(field.charAt(p));
        p += signed ? 1 : 0;
        int exponent = digitsFrom(field, p);
        return (signed || point) && exponent >= 1 && exponent <= 3 && p + exponent == end;
    }

    private static boolean isSign(char c) {
        return c == '-' || c == '+';
    }

    private static int digitsFrom(String field, int from) {
        int p = from;
        while (p < field.length() && field.charAt(p) >= '0' && field.charAt(p) <= '9') {
            p++;
        }
        return p - from;
    }

    /** The figure that {@code field} writes; it must be a number by {@link #isNumber}. NaN where it is too great for a double. */
    static double number(String field, char decimalSign) {
        double value = Double.parseDouble(decimalSign == ',' ? field.replace(',', '.') : field);
        return Double.isInfinite(value) ? Double.NaN : value;
    }

    /** The unit that is glued to a figure, or empty. */
    static String suffix(String field, char decimalSign) {
        if (field.isEmpty()
                || !hasDigit(field)
                || Character.isDigit(field.charAt(field.length() - 1)) && !field.endsWith("0-1")) {
            return "";
        }
        var matcher = GLUED.matcher(field);
        if (field.length() <= 40
                && matcher.matches()
                && matcher.group(2).length() <= 8
                && isNumber(matcher.group(1), decimalSign)) {
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
