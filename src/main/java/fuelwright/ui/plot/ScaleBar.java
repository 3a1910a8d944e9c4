package fuelwright.ui.plot;

import fuelwright.handover.RoundEnds;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Theme;
import java.util.List;
import java.util.function.Function;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** The key of a map: its colours from end to end, with words below. */
public final class ScaleBar extends Canvas {

    private static final double BAR = 10;

    private final double width;

    public ScaleBar(double width) {
        super(width, 32);
        this.width = width;
    }

    /** Draws the colours of amounts between round ends, with their unit. */
    public void amounts(Theme theme, RoundEnds ends, String unit) {
        show(theme, t -> theme.palette().sequential().at(t), ends.labels(unit));
    }

    /** Draws the colours of uncertainties, %. */
    public void uncertainties(Theme theme, RoundEnds ends) {
        List<String> labels = ends.labels("%");
        show(
                theme,
                t -> theme.palette().sequential().at(t),
                List.of(labels.get(0), "±" + labels.get(1), "±" + labels.get(2)));
    }

    /** Draws the colours of two directions, so many per cent either way. */
    public void directions(Theme theme, int range, String less, String more) {
        show(
                theme,
                t -> theme.palette().diverging().at(2 * t - 1),
                List.of("−" + range + "\u202f%", less, "0", more, "+" + range + "\u202f%"));
    }

    /**
     * Draws it.
     *
     * @param colourAt the colour of 0 (left) to 1 (right)
     * @param labels words at even distances from left to right, at least two
     */
    public void show(Theme theme, Function<Double, Color> colourAt, List<String> labels) {
        setWidth(Math.round(Fonts.grown(width)));
        setHeight(Math.round(BAR + Fonts.grown(22)));
        Ink g = CanvasInk.on(this);
        for (int x = 0; x < getWidth(); x++) {
            g.setFill(colourAt.apply(x / (getWidth() - 1)));
            g.fillRect(x, 2, 1, BAR);
        }
        g.setStroke(theme.palette().line());
        g.setLineWidth(1);
        g.strokeRect(0.5, 2.5, getWidth() - 1, BAR - 1);
        g.setFill(theme.palette().muted());
        g.setFont(Fonts.figure(12, false));
        g.setTextBaseline(VPos.CENTER);
        for (int i = 0; i < labels.size(); i++) {
            double share = i / (labels.size() - 1.0);
            g.setTextAlign(share == 0 ? TextAlignment.LEFT : share == 1 ? TextAlignment.RIGHT : TextAlignment.CENTER);
            g.fillText(labels.get(i), share * getWidth(), BAR + Fonts.grown(12));
        }
        setAccessibleText(String.join(", ", labels));
    }
}
