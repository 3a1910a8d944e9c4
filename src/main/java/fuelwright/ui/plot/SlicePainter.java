package fuelwright.ui.plot;

import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Words;
import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** Draws a {@link Slice}. */
final class SlicePainter {

    static final double LEFT = 64;
    static final double RIGHT = 16;
    private static final double TOP = 44;
    private static final double BOTTOM = 48;
    private static final double LEAST_LABEL = 34;

    private final Ink ink;
    private final Slice slice;
    private final Palette palette;
    private final double width;
    private final double height;
    private final double reach;

    SlicePainter(Ink ink, Slice slice, Palette palette, double width, double height) {
        this.ink = ink;
        this.slice = slice;
        this.palette = palette;
        this.width = width;
        this.height = height;
        this.reach = slice.reach();
    }

    /** @param selected the chosen point, −1 for none */
    void paint(int selected) {
        ink.setFill(palette.card());
        ink.fillRect(LEFT, TOP, width - LEFT - RIGHT, height - TOP - BOTTOM);
        if (selected >= 0) {
            ink.setFill(Colour.seeThrough(palette.accent(), 0.16));
            double step = step();
            ink.fillRect(x(selected) - step / 2, TOP, step, height - TOP - BOTTOM);
        }
        axis(selected);
        ink.save();
        ink.beginPath();
        ink.rect(LEFT, TOP, width - LEFT - RIGHT, height - TOP - BOTTOM);
        ink.clip();
        dots();
        band();
        fitted();
        proposed();
        ink.restore();
        key();
    }

    private double step() {
        return (width - LEFT - RIGHT) / slice.points().size();
    }

    double x(double position) {
        return LEFT + (position + 0.5) * step();
    }

    private double y(double percent) {
        double middle = (TOP + height - BOTTOM) / 2;
        return middle - percent / reach * (height - TOP - BOTTOM) / 2;
    }

    private void axis(int selected) {
        ink.setLineWidth(1);
        ink.setTextBaseline(VPos.CENTER);
        ink.setTextAlign(TextAlignment.RIGHT);
        ink.setFont(Fonts.figure(12, false));
        for (int i = -4; i <= 4; i++) {
            double percent = reach * i / 4;
            double at = Math.round(y(percent)) + 0.5;
            ink.setStroke(i == 0 ? palette.role("line-strong") : palette.line());
            ink.strokeLine(LEFT, at, width - RIGHT, at);
            if (i % 2 == 0) {
                ink.setFill(palette.muted());
                ink.fillText(Figures.signed(percent, 0) + " %", LEFT - 8, at);
            }
        }
        ink.setTextAlign(TextAlignment.CENTER);
        int every = (int) Math.max(1, Math.ceil(LEAST_LABEL / step()));
        for (int i = 0; i < slice.marks().size(); i++) {
            if (i == selected || i % every == 0) {
                ink.setFill(i == selected ? palette.ink() : palette.muted());
                ink.setFont(Fonts.figure(12, i == selected));
                ink.fillText(slice.marks().get(i), x(i), height - BOTTOM + 14);
            }
        }
        ink.setFont(Fonts.text(12, false));
        ink.setFill(palette.muted());
        ink.fillText(slice.axisTitle(), (LEFT + width - RIGHT) / 2, height - 12);
    }

    private void dots() {
        ink.setFill(Colour.seeThrough(palette.role("lane-0"), 0.45));
        for (Slice.Dot dot : slice.dots()) {
            double inside = Math.max(-reach, Math.min(reach, dot.percent()));
            ink.fillRect(x(dot.position()) - 1, y(inside) - 1, 2, 2);
        }
    }

    private void band() {
        List<Slice.Point> points = slice.points();
        int n = points.size();
        double[] xs = new double[2 * n];
        double[] ys = new double[2 * n];
        for (int i = 0; i < n; i++) {
            Slice.Point p = points.get(i);
            xs[i] = x(i);
            ys[i] = y(p.fitted() + 2 * p.uncertainty());
            xs[2 * n - 1 - i] = x(i);
            ys[2 * n - 1 - i] = y(p.fitted() - 2 * p.uncertainty());
        }
        ink.setFill(Colour.seeThrough(palette.role("lane-2"), 0.22));
        ink.fillPolygon(xs, ys, 2 * n);
    }

    /** Dashed where either end rests on neighbours or physics only. */
    private void fitted() {
        ink.setStroke(palette.role("lane-2"));
        ink.setLineWidth(2);
        for (int i = 1; i < slice.points().size(); i++) {
            Slice.Point a = slice.points().get(i - 1);
            Slice.Point b = slice.points().get(i);
            ink.setLineDashes(a.inferred() || b.inferred() ? new double[] {5, 4} : new double[0]);
            ink.strokeLine(x(i - 1), y(a.fitted()), x(i), y(b.fitted()));
        }
        ink.setLineDashes();
    }

    private void proposed() {
        ink.setStroke(palette.ink());
        ink.setLineWidth(2);
        double half = Math.min(14, step() * 0.32);
        for (int i = 0; i < slice.points().size(); i++) {
            double at = y(slice.points().get(i).proposed());
            ink.strokeLine(x(i) - half, at, x(i) + half, at);
        }
    }

    private void key() {
        ink.setTextBaseline(VPos.CENTER);
        ink.setTextAlign(TextAlignment.LEFT);
        ink.setFont(Fonts.text(13, true));
        ink.setFill(palette.ink());
        ink.fillText(slice.title(), LEFT, 14);
        double at = LEFT;
        ink.setFont(Fonts.text(12, false));
        ink.setLineWidth(2);
        ink.setStroke(palette.ink());
        ink.strokeLine(at, 32, at + 18, 32);
        at = word(Words.of("slice.proposed"), at + 24);
        ink.setFill(Colour.seeThrough(palette.role("lane-2"), 0.22));
        ink.fillRect(at, 26, 18, 12);
        ink.setStroke(palette.role("lane-2"));
        ink.strokeLine(at, 32, at + 18, 32);
        at = word(Words.of("slice.fitted"), at + 24);
        ink.setFill(palette.role("lane-0"));
        ink.fillRect(at, 29, 3, 3);
        ink.fillRect(at + 6, 33, 3, 3);
        word(Words.of("slice.dots"), at + 16);
    }

    private double word(String words, double at) {
        ink.setFill(palette.muted());
        ink.fillText(words, at, 32);
        return at + Fonts.width(words, Fonts.text(12, false)) + 24;
    }

    /** Colours that let shine through what lies behind. */
    private static final class Colour {
        static Color seeThrough(Color c, double opacity) {
            return Color.color(c.getRed(), c.getGreen(), c.getBlue(), opacity);
        }
    }
}
