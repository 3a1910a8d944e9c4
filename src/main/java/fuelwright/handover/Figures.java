package fuelwright.handover;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers as people read them: a true minus sign, no exponent, never '−0'. */
final class Figures {

    private Figures() {}

    /** With exactly so many decimals. */
    static String plain(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return "–";
        }
        BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP);
        return (rounded.signum() < 0 ? "−" : "") + rounded.abs().toPlainString();
    }

    /** A time of a ride as sentences have it: minutes and seconds, from one hour on hours too. */
    static String moment(double timeS) {
        if (!Double.isFinite(timeS)) {
            return "–";
        }
        long tenths = Math.round(timeS * 10);
        long whole = tenths / 10;
        String seconds = String.format(Locale.ROOT, "%02d.%d", whole % 60, tenths % 10);
        return whole < 3600
                ? whole / 60 + ":" + seconds
                : String.format(Locale.ROOT, "%d:%02d:%s", whole / 3600, whole / 60 % 60, seconds);
    }

    /** With a sign in front unless it rounds to zero. */
    static String signed(double value, int decimals) {
        String text = plain(value, decimals);
        boolean zero = text.chars().noneMatch(c -> c >= '1' && c <= '9');
        return zero || value < 0 || !Double.isFinite(value) ? text : "+" + text;
    }

    /** With at most so many decimals, trailing zeros left out. */
    static String trimmed(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return "–";
        }
        BigDecimal rounded =
                new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP).stripTrailingZeros();
        return (rounded.signum() < 0 ? "−" : "") + rounded.abs().toPlainString();
    }

    /** Rounded to so many decimals, as a number. */
    static double rounded(double value, int decimals) {
        return new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP).doubleValue();
    }
}
