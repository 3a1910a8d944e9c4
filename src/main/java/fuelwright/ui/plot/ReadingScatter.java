package fuelwright.ui.plot;

import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import java.util.List;
import java.util.function.DoubleFunction;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** Readings of one cell as dots: shortfall upwards, something else to the right, with the fitted figure and its uncertainty as a band. */
public final class ReadingScatter extends Canvas {

    private static final double LEFT = 44;
    private static final double PLOT = 150;
    private static final double AXIS = 34;
    private static final double TOP = 6;

    /**
     * A dot.
     *
     * @param x what it is drawn against
     * @param percent its shortfall, %
     * @param series which ride: told by place of the colour in the palette's lanes
     */
    public record Dot(double x, double percent, int series) {}

    public ReadingScatter(double width) {
        super(width, TOP + PLOT + AXIS);
    }

    /**
     * Draws them.
     *
     * @param fitted the fitted shortfall, %
     * @param uncertainty its standard error, %
     * @param xTitle name and unit of what the dots are drawn against
     * @param ends how the first and the last of it are written
     */
    public void show(
            Theme theme,
            List<Dot> dots,
            double fitted,
            double uncertainty,
            String xTitle,
            DoubleFunction<String> ends) {
        Ink ink = CanvasInk.on(this);
        Palette palette = theme.palette();
        double reach = ReadingStrip.reach(dots.stream().map(Dot::percent).toList(), fitted, uncertainty);
        double low = dots.stream().mapToDouble(Dot::x).min().orElse(0);
        double high = dots.stream().mapToDouble(Dot::x).max().orElse(1);
        double span = high > low ? high - low : 1;
        Color mixture = palette.role("lane-2");
        ink.setFill(Color.color(mixture.getRed(), mixture.getGreen(), mixture.getBlue(), 0.2));
        double top = y(fitted + 2 * uncertainty, reach);
        ink.fillRect(LEFT, top, getWidth() - LEFT, Math.max(2, y(fitted - 2 * uncertainty, reach) - top));
        axis(ink, palette, reach);
        for (Dot dot : dots) {
            ink.setFill(palette.role("lane-" + dot.series() % 4));
            double x = LEFT + 4 + (dot.x() - low) / span * (getWidth() - LEFT - 8);
            ink.fillRect(x - 1, y(dot.percent(), reach) - 1, 2.5, 2.5);
        }
        ink.setFill(mixture);
        ink.fillRect(LEFT, y(fitted, reach) - 1, getWidth() - LEFT, 2);
        ink.setFill(palette.muted());
        ink.setFont(Fonts.figure(12, false));
        ink.setTextAlign(TextAlignment.LEFT);
        ink.fillText(ends.apply(low), LEFT, TOP + PLOT + 10);
        ink.setTextAlign(TextAlignment.RIGHT);
        ink.fillText(ends.apply(high), getWidth(), TOP + PLOT + 10);
        ink.setTextAlign(TextAlignment.CENTER);
        ink.setFont(Fonts.text(12, false));
        ink.fillText(xTitle, (LEFT + getWidth()) / 2, TOP + PLOT + 24);
        setAccessibleText(
                Words.of("strip.words", dots.size(), Figures.signed(fitted, 1), Figures.plain(uncertainty, 1)));
    }

    private static double y(double percent, double reach) {
        double inside = Math.max(-reach, Math.min(reach, percent));
        return TOP + PLOT / 2 - inside / reach * PLOT / 2;
    }

    private void axis(Ink ink, Palette palette, double reach) {
        ink.setLineWidth(1);
        ink.setFont(Fonts.figure(12, false));
        ink.setTextBaseline(VPos.CENTER);
        ink.setTextAlign(TextAlignment.RIGHT);
        for (double share : new double[] {-1, 0, 1}) {
            double at = Math.round(y(share * reach, reach)) + 0.5;
            ink.setStroke(share == 0 ? palette.role("line-strong") : palette.line());
            ink.strokeLine(LEFT, at, getWidth(), at);
            ink.setFill(palette.muted());
            ink.fillText(Figures.signed(share * reach, 0) + " %", LEFT - 6, at);
        }
    }
}
