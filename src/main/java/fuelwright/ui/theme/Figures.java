package fuelwright.ui.theme;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers as the window writes them: a real minus sign, never a negative nothing, thin gaps in thousands. */
public final class Figures {

    private Figures() {}

    /** A figure with so many decimals. */
    public static String plain(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return "–";
        }
        // The same as a format's "%.nf", without its parsing: every cell of every map comes through here.
        String text = BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
        boolean nothing = text.chars().noneMatch(c -> c >= '1' && c <= '9');
        return nothing ? text.replace("-", "") : text.replace('-', '−');
    }

    /** A figure with its sign, nothing without. */
    public static String signed(double value, int decimals) {
        String text = plain(value, decimals);
        boolean nothing = text.chars().noneMatch(c -> c >= '1' && c <= '9');
        return nothing || text.startsWith("−") ? text : "+" + text;
    }

    /** An uncertainty. */
    public static String plusMinus(double value, int decimals) {
        return "±" + plain(value, decimals);
    }

    /** A count, in groups of three. */
    public static String count(long value) {
        return String.format(Locale.ROOT, "%,d", value).replace(',', '\u202f');
    }

    /** A breakpoint or a setting: as few decimals as it needs, at most three. */
    public static String shortest(double value) {
        return plain(value, decimals(value));
    }

    /** How many decimals {@link #shortest} gives a figure, 0 to 3. */
    public static int decimals(double value) {
        double scale = 1;
        for (int decimals = 0; decimals < 3; decimals++) {
            if (Math.abs(value - Math.rint(value * scale) / scale) < 5e-7) {
                return decimals;
            }
            scale *= 10;
        }
        return Double.isFinite(value) ? 3 : 0;
    }

    /** A time of a ride as minutes and seconds, from one hour on as hours, minutes and seconds. */
    public static String clock(double timeS, int decimals) {
        double rounded = Math.round(timeS * Math.pow(10, decimals)) / Math.pow(10, decimals);
        long minutes = (long) Math.floor(rounded / 60);
        double seconds = rounded - 60 * minutes;
        int width = decimals > 0 ? 3 + decimals : 2;
        String rest = String.format(Locale.ROOT, "%0" + width + "." + decimals + "f", seconds);
        return minutes < 60
                ? minutes + ":" + rest
                : String.format(Locale.ROOT, "%d:%02d:%s", minutes / 60, minutes % 60, rest);
    }

    /** A length of time in words: seconds below two minutes, minutes above. */
    public static String span(double timeS) {
        return timeS < 120 ? plain(timeS, timeS < 10 ? 1 : 0) + " s" : plain(timeS / 60, 0) + " min";
    }
}
