package fuelwright.ui.theme;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import javafx.scene.paint.Color;
import org.junit.jupiter.api.Test;

class ColoursTest {

    /** WCAG 2.1: black on white is 21:1; #767676 is the well-known lightest grey that passes 4.5:1 on white, 4.54:1 (from memory). */
    @Test
    void contrastMatchesPublishedPairs() {
        assertEquals(21, Colours.contrast(Color.BLACK, Color.WHITE), 1e-9);
        assertEquals(4.54, Colours.contrast(Color.web("#767676"), Color.WHITE), 0.005);
        assertEquals(1, Colours.contrast(Color.RED, Color.RED), 1e-9);
    }

    /** L*a*b* of the sRGB primaries under D65, as published in colour-science tables (from memory). */
    @Test
    void labMatchesPublishedPrimaries() {
        assertNear(new double[] {53.24, 80.09, 67.20}, Colours.lab(Color.RED));
        assertNear(new double[] {87.73, -86.18, 83.18}, Colours.lab(Color.LIME));
        assertNear(new double[] {32.30, 79.19, -107.86}, Colours.lab(Color.BLUE));
        assertNear(new double[] {100, 0, 0}, Colours.lab(Color.WHITE));
    }

    private static void assertNear(double[] wanted, double[] found) {
        for (int i = 0; i < 3; i++) {
            assertEquals(wanted[i], found[i], 0.05);
        }
    }

    @Test
    void mixingKeepsItsEndsAndGoesThroughTheMiddle() {
        Color a = Color.web("#102030");
        Color b = Color.web("#f0c040");
        assertEquals(a, Colours.mix(a, b, 0));
        assertEquals(b, Colours.mix(a, b, 1));
        double middle = Colours.lab(Colours.mix(a, b, 0.5))[0];
        assertEquals((Colours.lab(a)[0] + Colours.lab(b)[0]) / 2, middle, 0.1);
    }

    @Test
    void inkCanBeReadOnEveryGrey() {
        for (int grey = 0; grey < 256; grey++) {
            Color fill = Color.grayRgb(grey);
            assertTrue(Colours.contrast(Colours.inkOn(fill), fill) >= Colours.TEXT_CONTRAST, "grey " + grey);
        }
    }
}
