package fuelwright.ui.theme;

import javafx.scene.paint.Color;

/**
 * Colour arithmetic. Luminance and contrast: WCAG 2.1, definitions of relative luminance and contrast ratio. Mixing is done in CIE L*a*b*
 * (CIE 15, D65 white), where halfway looks halfway.
 */
public final class Colours {

    /** Least contrast of any text (WCAG 2.1, success criterion 1.4.3). */
    public static final double TEXT_CONTRAST = 4.5;

    private static final Color DARK_INK = Color.web("#14171c");
    private static final double WHITE_X = 0.95047;
    private static final double WHITE_Z = 1.08883;

    private Colours() {}

    /** Relative luminance, 0 to 1. */
    public static double luminance(Color c) {
        return 0.2126 * linear(c.getRed()) + 0.7152 * linear(c.getGreen()) + 0.0722 * linear(c.getBlue());
    }

    /** Contrast ratio, 1 to 21. */
    public static double contrast(Color a, Color b) {
        double la = luminance(a);
        double lb = luminance(b);
        return (Math.max(la, lb) + 0.05) / (Math.min(la, lb) + 0.05);
    }

    /** Ink that can be read on the fill: soft black, else white, else full black. Black or white always reaches 4.58. */
    public static Color inkOn(Color fill) {
        if (contrast(DARK_INK, fill) >= TEXT_CONTRAST + 1) {
            return DARK_INK;
        }
        return contrast(Color.WHITE, fill) >= contrast(Color.BLACK, fill) ? Color.WHITE : Color.BLACK;
    }

    /** {@code t} of the way from a to b. */
    public static Color mix(Color a, Color b, double t) {
        if (t <= 0) {
            return a;
        }
        if (t >= 1) {
            return b;
        }
        double[] p = lab(a);
        double[] q = lab(b);
        return fromLab(p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1]), p[2] + t * (q[2] - p[2]));
    }

    /** Lightness and the two colour axes of CIE L*a*b*. */
    public static double[] lab(Color c) {
        double r = linear(c.getRed());
        double g = linear(c.getGreen());
        double b = linear(c.getBlue());
        double x = bend((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / WHITE_X);
        double y = bend(0.2126729 * r + 0.7151522 * g + 0.0721750 * b);
        double z = bend((0.0193339 * r + 0.1191920 * g + 0.9503041 * b) / WHITE_Z);
        return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
    }

    /** Distance in CIE L*a*b* (CIE 1976): about 2.3 is just noticeable. */
    public static double distance(Color a, Color b) {
        double[] p = lab(a);
        double[] q = lab(b);
        return Math.sqrt(Math.pow(p[0] - q[0], 2) + Math.pow(p[1] - q[1], 2) + Math.pow(p[2] - q[2], 2));
    }

    private static Color fromLab(double lightness, double a, double b) {
        double y = (lightness + 16) / 116;
        double x = WHITE_X * unbend(y + a / 500);
        double z = WHITE_Z * unbend(y - b / 200);
        double yy = unbend(y);
        return Color.color(
                gamma(3.2404542 * x - 1.5371385 * yy - 0.4985314 * z),
                gamma(-0.9692660 * x + 1.8760108 * yy + 0.0415560 * z),
                gamma(0.0556434 * x - 0.2040259 * yy + 1.0572252 * z));
    }

    static double linear(double channel) {
        return channel <= 0.04045 ? channel / 12.92 : Math.pow((channel + 0.055) / 1.055, 2.4);
    }

    static double gamma(double linear) {
        double v = linear <= 0.0031308 ? linear * 12.92 : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
        return Math.min(1, Math.max(0, v));
    }

    private static double bend(double t) {
        return t > 216.0 / 24389 ? Math.cbrt(t) : (24389.0 / 27 * t + 16) / 116;
    }

    private static double unbend(double t) {
        return t > 6.0 / 29 ? t * t * t : (116 * t - 16) * 27 / 24389;
    }
}
