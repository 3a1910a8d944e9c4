package fuelwright.handover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class PaletteTest {

    /** WCAG 2.1, success criterion 1.4.3 (level AA): text needs a contrast of at least 4.5:1. */
    private static final double LEAST_CONTRAST = 4.5;

    @Test
    void palette01_every_figure_can_be_read_on_every_fill() {
        for (double share = -1; share <= 1; share += 0.01) {
            for (double certainty = 0; certainty <= 1; certainty += 0.1) {
                readable(Palette.change(share, certainty));
            }
            readable(Palette.amount((share + 1) / 2));
        }
    }

    /** WCAG 2.1, definitions of relative luminance and contrast ratio: black on white is 21:1. */
    @Test
    void palette02_contrast_is_that_of_the_guideline() {
        assertEquals(21, contrast(0xffffff, 0x000000), 1e-9);
        assertEquals(0.2126, Palette.luminance(0xff0000), 1e-9);
        assertEquals(0.7152, Palette.luminance(0x00ff00), 1e-9);
        assertEquals(0.0722, Palette.luminance(0x0000ff), 1e-9);
        assertEquals(4.48, contrast(0x777777, 0xffffff), 0.005, "the guideline's well-known grey that just fails");
    }

    @Test
    void palette03_no_change_is_white_more_is_orange_less_is_purple() {
        assertEquals(0xffffff, Palette.change(0, 1));
        assertEquals(0xb35806, Palette.change(1, 1));
        assertEquals(0x542788, Palette.change(-1, 1));
        assertEquals(Palette.change(1, 1), Palette.change(7, 1), "beyond the range the end colour stays");
    }

    /** A perceptual palette of amounts gets lighter all the way. */
    @Test
    void palette04_amounts_get_lighter_all_the_way() {
        double before = -1;
        for (double share = 0; share <= 1; share += 0.01) {
            double now = Palette.luminance(Palette.amount(share));
            assertTrue(now > before, "at " + share);
            before = now;
        }
    }

    @Test
    void palette05_the_less_certain_the_paler() {
        double before = -1;
        for (double certainty = 1; certainty >= 0; certainty -= 0.1) {
            double now = Palette.luminance(Palette.change(0.8, certainty));
            assertTrue(now > before, "at " + certainty);
            before = now;
        }
    }

    private static void readable(int fill) {
        int ink = Integer.parseInt(Palette.ink(fill).substring(1), 16);
        assertTrue(contrast(fill, ink) >= LEAST_CONTRAST, Palette.hex(fill));
    }

    private static double contrast(int one, int other) {
        double a = Palette.luminance(one);
        double b = Palette.luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }
}
