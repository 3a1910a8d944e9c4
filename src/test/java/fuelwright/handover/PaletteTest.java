package fuelwright.handover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
    void palette03_no_change_is_nearly_white_more_is_orange_less_is_purple() {
        assertEquals(0xf8f8f8, Palette.change(0, 1));
        assertEquals(0xb35806, Palette.change(1, 1));
        assertEquals(0x542788, Palette.change(-1, 1));
        assertEquals(Palette.change(1, 1), Palette.change(7, 1), "beyond the range the end colour stays");
    }

    /** So that it can be read in black and white too. */
    @Test
    void palette04_amounts_get_darker_all_the_way() {
        double before = 2;
        for (double share = 0; share <= 1; share += 0.01) {
            double now = Palette.luminance(Palette.amount(share));
            assertTrue(now < before, "at " + share);
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

    /** The owner's paper and the workshop's window show the same colours. */
    @Test
    void palette06_is_the_windows_palette_in_daylight() throws Exception {
        String css;
        try (InputStream in = PaletteTest.class.getResourceAsStream("/fuelwright/ui/theme-light.css")) {
            css = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        assertEquals(role(css, "same"), Palette.change(0, 1));
        for (int i = 0; i < 4; i++) {
            assertEquals(role(css, "more-" + i), Palette.change((i + 1) / 4.0, 1));
            assertEquals(role(css, "less-" + i), Palette.change(-(i + 1) / 4.0, 1));
        }
        for (int i = 0; i < 7; i++) {
            assertEquals(role(css, "amount-" + i), Palette.amount(i / 6.0));
        }
    }

    private static int role(String css, String name) {
        Matcher found = Pattern.compile("-fw-" + name + ": #([0-9a-f]{6})").matcher(css);
        assertTrue(found.find(), name);
        return Integer.parseInt(found.group(1), 16);
    }
}
