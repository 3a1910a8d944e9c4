package fuelwright.ui.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.ui.theme.Theme;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javafx.scene.paint.Color;
import org.junit.jupiter.api.Test;

class CurvesTest {

    @Test
    void stepsAreRoundAndFewEnough() {
        assertEquals(20, Curves.step(100, 5), 1e-12);
        assertEquals(0.05, Curves.step(0.2, 5), 1e-12);
        for (double span = 0.003; span < 5000; span *= 1.37) {
            assertTrue(span / Curves.step(span, 6) <= 6 + 1e-6, "span " + span);
            assertTrue(span / Curves.step(span, 6) > 2, "span " + span);
        }
        assertEquals(1, Curves.step(0, 5));
    }

    @Test
    void aLineOfAnotherLengthIsRefused() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new Curves(
                        List.of(1.0, 2.0),
                        List.of(new Curves.Line("a", List.of(1.0), Curves.Weight.BOLD)),
                        "x",
                        "y",
                        List.of()));
    }

    @Test
    void namesAtTheEndsOfCurvesKeepApartAndNoneIsLeftOut() {
        double[] wanted = {20, 21, 22, 80, 81, 199, 200};
        double[] places = CurvesPainter.apart(wanted, 13, 0, 200);
        for (int i = 0; i < places.length; i++) {
            assertTrue(places[i] >= 0 && places[i] <= 200);
            assertTrue(i == 0 || places[i] - places[i - 1] >= 13 - 1e-9);
            assertEquals(wanted[i], places[i], 13.1);
        }
        assertEquals(187, places[5], 1e-9);
        double[] crowded = CurvesPainter.apart(new double[] {5, 5, 5, 5, 5}, 13, 0, 40);
        assertEquals(0, crowded[0], 1e-9);
        assertEquals(40, crowded[4], 1e-9);
    }

    @Test
    void everyReasonHasAPatternOfItsOwn() {
        Set<String> drawn = new HashSet<>();
        for (OutKind kind : OutKind.values()) {
            SvgInk ink = new SvgInk(16, 12, Color.WHITE);
            kind.paint(ink, Theme.LIGHT.palette(), 0, 0, 16, 9, 1);
            // Not by colour alone.
            drawn.add(ink.document().replaceAll("#[0-9a-fA-F]{6}|rgb[^)]*\\)|opacity=\"[0-9.]*\"", ""));
        }
        assertEquals(OutKind.values().length, drawn.size());
    }

    private static Surface surface() {
        List<Double> heights = new ArrayList<>();
        List<Color> fills = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            heights.add(Math.sin(i));
            fills.add(Color.GRAY);
        }
        return new Surface(
                List.of(1000.0, 2000.0, 3000.0, 5000.0, 8000.0),
                List.of(0.0, 10.0, 50.0, 100.0),
                heights,
                fills,
                Set.of(),
                "speed",
                "load",
                "title",
                "low",
                "high");
    }

    @Test
    void patchesComeFarToNearFromWhereverOneLooks() {
        for (int turn = 0; turn < 360; turn += 15) {
            List<Surface.Patch> patches = surface().patches(new Projection(turn, 35, 1));
            assertEquals(12, patches.size());
            for (int i = 1; i < patches.size(); i++) {
                assertTrue(patches.get(i).depth() <= patches.get(i - 1).depth());
            }
        }
        // Straight from the front the furthest patch lies in the row of highest load.
        assertTrue(surface().patches(new Projection(0, 5, 1)).get(0).cell() >= 10);
    }

    @Test
    void aClickOnACellFindsIt() {
        Projection above = new Projection(0, 90, 1);
        for (int cell = 0; cell < 20; cell++) {
            Projection.Seen seen = surface().see(above, cell);
            assertEquals(cell, surface().nearest(above, seen.x(), seen.y()));
        }
    }
}
