package fuelwright.ui.plot;

import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** Readings as dots over an axis of shortfall, stacked where they are many, with the fitted figure and its uncertainty. */
public final class ReadingStrip extends Canvas {

    private static final double DOT = 3;
    private static final double TALLEST_DOT = 6;
    private static final double AXIS = 20;
    private static final double PLOT = 56;

    public ReadingStrip(double width) {
        super(width, PLOT + AXIS);
    }

    /**
     * Draws them.
     *
     * @param values the readings' shortfalls, %
     * @param fitted the fitted shortfall, %
     * @param uncertainty its standard error, %
     */
    public void show(Theme theme, List<Double> values, double fitted, double uncertainty) {
        Palette palette = theme.palette();
        Ink g = CanvasInk.on(this);
        double reach = reach(values, fitted, uncertainty);
        band(g, palette, fitted, uncertainty, reach);
        dots(g, palette, values, reach);
        axis(g, palette, reach);
        setAccessibleText(
                Words.of("strip.words", values.size(), Figures.signed(fitted, 1), Figures.plain(uncertainty, 1)));
    }

    /** Half the axis: 5, 10, 20 or 40 %, whatever holds nine in ten of the readings and the fitted figure. */
    static double reach(List<Double> values, double fitted, double uncertainty) {
        double[] sizes = values.stream().mapToDouble(Math::abs).sorted().toArray();
        double most = sizes.length == 0 ? 0 : sizes[(int) (0.9 * (sizes.length - 1))];
        double needed = Math.max(most, Math.abs(fitted) + uncertainty);
        return needed <= 5 ? 5 : needed <= 10 ? 10 : needed <= 20 ? 20 : 40;
    }

    private double x(double percent, double reach) {
        double inside = Math.max(-reach, Math.min(reach, percent));
        return getWidth() / 2 + inside / reach * (getWidth() / 2 - 8);
    }

    private void band(Ink g, Palette palette, double fitted, double uncertainty, double reach) {
        Color mixture = palette.role("lane-2");
        double left = x(fitted - 2 * uncertainty, reach);
        double right = x(fitted + 2 * uncertainty, reach);
        g.setFill(Color.color(mixture.getRed(), mixture.getGreen(), mixture.getBlue(), 0.18));
        g.fillRect(left, 0, Math.max(2, right - left), PLOT);
        g.setFill(mixture);
        g.fillRect(x(fitted, reach) - 1, 0, 2, PLOT);
    }

    private void dots(Ink g, Palette palette, List<Double> values, double reach) {
        int columns = (int) (getWidth() / DOT) + 1;
        int[] heights = new int[columns];
        int tallest = 1;
        for (double value : values) {
            int column = (int) (x(value, reach) / DOT);
            heights[column]++;
            tallest = Math.max(tallest, heights[column]);
        }
        double step = Math.min(TALLEST_DOT, (PLOT - 4) / tallest);
        g.setFill(palette.role("lane-0"));
        for (int column = 0; column < columns; column++) {
            for (int i = 0; i < heights[column]; i++) {
                g.fillRect(column * DOT, PLOT - 1 - (i + 1) * step, DOT - 0.6, Math.max(0.5, step - 0.4));
            }
        }
    }

    private void axis(Ink g, Palette palette, double reach) {
        g.setStroke(palette.role("line-strong"));
        g.setLineWidth(1);
        g.strokeLine(0, PLOT + 0.5, getWidth(), PLOT + 0.5);
        g.setFill(palette.muted());
        g.setFont(Fonts.figure(12, false));
        g.setTextBaseline(VPos.CENTER);
        for (double share : new double[] {-1, -0.5, 0, 0.5, 1}) {
            double at = x(share * reach, reach);
            g.strokeLine(at, PLOT, at, PLOT + 4);
            g.setTextAlign(share == -1 ? TextAlignment.LEFT : share == 1 ? TextAlignment.RIGHT : TextAlignment.CENTER);
            double shifted = share == -1 ? 0 : share == 1 ? getWidth() : at;
            g.fillText(
                    Figures.signed(share * reach, reach == 5 && share * share == 0.25 ? 1 : 0) + " %",
                    shifted,
                    PLOT + 12);
        }
    }
}
