package fuelwright.handover;

/**
 * Fills of the report's maps: those of the window in daylight. Changes: in the manner of ColorBrewer's diverging PuOr (Harrower and Brewer,
 * The Cartographic Journal 40 (2003) 27), purple for less fuel and orange for more. Amounts: from pale to dark. Both can be told apart with the
 * usual colour blindnesses, and in black and white.
 */
final class Palette {

    private static final int[] PURPLE_TO_ORANGE = {
        0x542788, 0x8575b3, 0xb5add6, 0xdcdcee, 0xf8f8f8, 0xfee3bd, 0xfdb863, 0xe08214, 0xb35806
    };
    private static final int[] AMOUNTS = {0xf7f8dc, 0xd5eeb8, 0x93d5ba, 0x4cb6c3, 0x2a8cbc, 0x275ca5, 0x26327f};
    private static final int PAPER = 0xffffff;
    /** Luminance above which black ink reads better than white (WCAG 2.1: where both have the same contrast). */
    private static final double BRIGHT = 0.179;

    private Palette() {}

    /** The fill of a change: {@code share} from −1 (least fuel) to 1 (most); {@code strength} from 0 to 1, less is paler. */
    static int change(double share, double strength) {
        int full = between(PURPLE_TO_ORANGE, (clamp(share, -1) + 1) / 2);
        return mix(PAPER, full, clamp(strength, 0));
    }

    /** The fill of an amount, {@code share} from 0 to 1. */
    static int amount(double share) {
        return between(AMOUNTS, clamp(share, 0));
    }

    /** Black or white, whichever reads better on a fill. */
    static String ink(int fill) {
        return luminance(fill) > BRIGHT ? "#000000" : "#ffffff";
    }

    static String hex(int colour) {
        return String.format("#%06x", colour);
    }

    /** Relative luminance (WCAG 2.1). */
    static double luminance(int colour) {
        return 0.2126 * linear(colour >> 16) + 0.7152 * linear(colour >> 8) + 0.0722 * linear(colour);
    }

    private static double linear(int channel) {
        double v = (channel & 0xff) / 255.0;
        return v <= 0.03928 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
    }

    private static double clamp(double share, double least) {
        return Double.isNaN(share) ? least : Math.min(1, Math.max(least, share));
    }

    private static int between(int[] stops, double share) {
        double at = share * (stops.length - 1);
        int low = Math.min((int) at, stops.length - 2);
        return mix(stops[low], stops[low + 1], at - low);
    }

    private static int mix(int from, int to, double share) {
        int colour = 0;
        for (int shift = 16; shift >= 0; shift -= 8) {
            int a = from >> shift & 0xff;
            int b = to >> shift & 0xff;
            colour |= (int) Math.round(a + (b - a) * share) << shift;
        }
        return colour;
    }
}
