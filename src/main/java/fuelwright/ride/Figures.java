package fuelwright.ride;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Figures for sentences. */
final class Figures {

    private Figures() {}

    /** A figure to four significant digits, without trailing zeros. */
    static String plain(double value) {
        if (Double.isNaN(value) || Double.isInfinite(value)) {
            return "?";
        }
        if (value == 0) {
            return "0";
        }
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(4, RoundingMode.HALF_UP));
        return rounded.stripTrailingZeros().toPlainString();
    }
}
