package fuelwright.ui.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Theme;
import java.util.List;
import java.util.Optional;
import javafx.scene.paint.Color;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.framework.junit5.ApplicationExtension;

@ExtendWith(ApplicationExtension.class)
class TimelinePainterTest {

    private static final int ROWS = 200;
    private static final Palette PALETTE = Theme.LIGHT.palette();

    private static String drawn(Trace.Mark... marks) {
        Lane lane = Lane.fitted("Mixture", "λ", "lane-2", ROWS, i -> 1.1, Optional.empty(), 0.7, 1.4, 2, 1)
                .expecting(i -> 0.9);
        Trace trace = new Trace(
                new RideClock(ROWS, i -> i / 20.0, List.of(0)),
                List.of(lane),
                Shading.none(ROWS),
                List.of(OutKind.DATA),
                row -> "",
                List.of(marks));
        SvgInk ink = new SvgInk(900, 300, Color.WHITE);
        new TimelinePainter(ink, trace, TimeWindow.all(0, ROWS / 20.0), PALETTE, 900, 300)
                .paint(Double.NaN, Double.NaN, PALETTE.stop());
        return ink.document();
    }

    private static String hex(Color c) {
        return String.format(
                "#%02x%02x%02x",
                Math.round(255 * c.getRed()), Math.round(255 * c.getGreen()), Math.round(255 * c.getBlue()));
    }

    @Test
    void marksAreExplainedWhereThereAreAny() {
        assertTrue(!drawn().contains(">Stop<") && !drawn().contains(">Check<"));
        String both = drawn(new Trace.Mark(2, 3, true, "lean"), new Trace.Mark(6, 7, false, "spike"));
        assertTrue(both.contains(">Stop<") && both.contains(">Check<"), both);
        assertTrue(!drawn(new Trace.Mark(6, 7, false, "spike")).contains(">Stop<"));
    }

    @Test
    void whatWasMeasuredLiesOverWhatIsExpected() {
        String all = drawn();
        int expected = all.lastIndexOf("stroke=\"" + hex(PALETTE.ink()));
        int measured = all.lastIndexOf("stroke=\"" + hex(PALETTE.role("lane-2")));
        assertTrue(expected > 0 && measured > expected, expected + " " + measured + "\n" + all);
        assertEquals(expected, all.indexOf("stroke=\"" + hex(PALETTE.ink())));
    }
}
