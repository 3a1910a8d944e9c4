package fuelwright.ui.plot;

import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Palette;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;

/** Draws {@link Curves}: grid lines at round figures, quiet lines first, the bold one with a dot at each breakpoint. */
final class CurvesPainter {

    static final double LEFT = 58;
    static final double TOP = 26;
    static final double BOTTOM = 46;
    private static final double NAME_HEIGHT = 13;
    /** Up to so many curves can be named on themselves. */
    private static final int FEW = 6;

    private final Ink ink;
    private final Curves curves;
    private final Palette palette;
    private final double right;
    private final double bottom;
    private final double low;
    private final double high;
    private final double step;

    CurvesPainter(Ink ink, Curves curves, Palette palette, double width, double height) {
        this.ink = ink;
        this.curves = curves;
        this.palette = palette;
        this.right = width - margin(curves);
        this.bottom = height - BOTTOM;
        double span = curves.highest() - curves.lowest();
        double wide = span > 0 ? span : Math.max(1, Math.abs(curves.highest()));
        this.step = Curves.step(wide, (int) Math.max(2, Math.min(7, height / 45)));
        double first = Math.floor(curves.lowest() / step + 1e-9) * step;
        double last = Math.ceil(curves.highest() / step - 1e-9) * step;
        this.low = first;
        this.high = last > first ? last : first + step;
    }

    /** Room for the names at the right. */
    static double margin(Curves curves) {
        double most = curves.lines().stream()
                .mapToDouble(l -> l.name().isEmpty() ? 0 : Fonts.width(l.name(), Fonts.figure(11, true)))
                .max()
                .orElse(0);
        return most + 20;
    }

    private double x(double value) {
        double first = curves.xs().get(0);
        double last = curves.xs().get(curves.xs().size() - 1);
        return LEFT + (value - first) / (last - first) * (right - LEFT);
    }

    private double y(double value) {
        return bottom - (value - low) / (high - low) * (bottom - TOP);
    }

    void paint(int selected) {
        grid();
        List<Curves.Line> named = new ArrayList<>();
        for (Curves.Weight weight : Curves.Weight.values()) {
            for (Curves.Line line : curves.lines()) {
                if (line.weight() == weight) {
                    line(line, selected);
                    if (!line.name().isEmpty()) {
                        named.add(line);
                    }
                }
            }
        }
        names(named);
    }

    private void grid() {
        int decimals = (int) Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
        ink.setFont(Fonts.figure(11, false));
        ink.setTextBaseline(VPos.CENTER);
        ink.setLineWidth(1);
        for (double at = low; at <= high + step / 2; at += step) {
            boolean nothing = Math.abs(at) < step / 1e6;
            ink.setStroke(nothing && low < 0 ? palette.muted() : palette.line());
            ink.strokeLine(LEFT, y(at), right, y(at));
            ink.setFill(palette.muted());
            ink.setTextAlign(TextAlignment.RIGHT);
            ink.fillText(Figures.plain(at, decimals), LEFT - 8, y(at));
        }
        ink.setTextAlign(TextAlignment.CENTER);
        List<Double> ticks = ticks();
        double before = Double.NEGATIVE_INFINITY;
        double end = x(ticks.get(ticks.size() - 1));
        for (double tick : ticks) {
            double at = x(tick);
            ink.setStroke(palette.line());
            ink.strokeLine(at, bottom, at, bottom + 4);
            if (at - before >= Fonts.grown(38) && (at == end || end - at >= Fonts.grown(38))) {
                ink.setFill(palette.muted());
                ink.fillText(Figures.shortest(tick), at, bottom + 14);
                before = at;
            }
        }
        ink.setFill(palette.muted());
        ink.setFont(Fonts.text(12, false));
        ink.fillText(curves.xTitle(), (LEFT + right) / 2, bottom + 34);
        ink.setTextAlign(TextAlignment.LEFT);
        ink.fillText(curves.yTitle(), 4, 9);
    }

    /** The table's breakpoints; where the curves are of no table, round figures. */
    private List<Double> ticks() {
        if (!curves.cells().isEmpty()) {
            return curves.xs();
        }
        double first = curves.xs().get(0);
        double last = curves.xs().get(curves.xs().size() - 1);
        double each = Curves.step(last - first, 5);
        List<Double> round = new ArrayList<>();
        for (double at = Math.ceil(first / each - 1e-9) * each; at <= last + each * 1e-9; at += each) {
            round.add(at);
        }
        return round;
    }

    private Color colour(Curves.Weight weight) {
        switch (weight) {
            case BOLD:
                return palette.accent();
            case CHOSEN:
                return palette.ink();
            default:
                return palette.hatch();
        }
    }

    private void line(Curves.Line line, int selected) {
        double[] xs = curves.xs().stream().mapToDouble(this::x).toArray();
        double[] ys = line.ys().stream().mapToDouble(this::y).toArray();
        boolean bold = line.weight() == Curves.Weight.BOLD;
        ink.setStroke(colour(line.weight()));
        ink.setLineWidth(bold ? 3 : line.weight() == Curves.Weight.CHOSEN ? 1.75 : 1);
        ink.strokePolyline(xs, ys, xs.length);
        if (bold && !curves.cells().isEmpty()) {
            for (int i = 0; i < xs.length; i++) {
                boolean here = i == selected;
                double size = here ? 6 : 3.5;
                ink.setFill(here ? palette.selection() : palette.accent());
                ink.fillOval(xs[i] - size, ys[i] - size, 2 * size, 2 * size);
                if (here) {
                    ink.setStroke(palette.accent());
                    ink.setLineWidth(2);
                    ink.strokeOval(xs[i] - size, ys[i] - size, 2 * size, 2 * size);
                }
            }
        }
    }

    /** Names at the right ends, or, where few curves run together there, on the curves where these are furthest apart. */
    private void names(List<Curves.Line> named) {
        int end = curves.xs().size() - 1;
        if (named.size() <= FEW && apart(named, end) < Fonts.grown(NAME_HEIGHT)) {
            int widest = 0;
            for (int i = 1; i < end; i++) {
                widest = apart(named, i) > apart(named, widest) ? i : widest;
            }
            for (Curves.Line line : named) {
                nameOn(line, widest);
            }
        } else {
            namesAtEnds(named);
        }
    }

    /** Least distance between two of the lines at a breakpoint, pixels. */
    private double apart(List<Curves.Line> lines, int at) {
        double[] ys =
                lines.stream().mapToDouble(l -> y(l.ys().get(at))).sorted().toArray();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < ys.length; i++) {
            least = Math.min(least, ys[i] - ys[i - 1]);
        }
        return least;
    }

    private void nameOn(Curves.Line line, int at) {
        Font font = setNameFont(line);
        double width = Fonts.width(line.name(), font) + 6;
        double height = Fonts.grown(NAME_HEIGHT);
        double x = x(curves.xs().get(at));
        double y = y(line.ys().get(at));
        ink.setFill(palette.card());
        ink.fillRect(x - width / 2, y - height / 2, width, height);
        ink.setFill(nameColour(line));
        ink.setTextAlign(TextAlignment.CENTER);
        ink.fillText(line.name(), x, y);
    }

    /** Each beside its curve's end, moved no more than keeps them apart; a thin line leads to those that were moved far. */
    private void namesAtEnds(List<Curves.Line> named) {
        List<Curves.Line> down = named.stream()
                .sorted(Comparator.comparingDouble(l -> y(end(l))))
                .toList();
        double[] ends = down.stream().mapToDouble(l -> y(end(l))).toArray();
        double[] places = apart(ends, Fonts.grown(NAME_HEIGHT), TOP, bottom);
        ink.setTextAlign(TextAlignment.LEFT);
        for (int i = 0; i < ends.length; i++) {
            Curves.Line line = down.get(i);
            if (Math.abs(places[i] - ends[i]) > 2) {
                ink.setStroke(nameColour(line));
                ink.setLineWidth(0.5);
                ink.strokeLine(right + 1, ends[i], right + 7, places[i]);
            }
            setNameFont(line);
            ink.setFill(nameColour(line));
            ink.fillText(line.name(), right + 8, places[i]);
        }
    }

    private static double end(Curves.Line line) {
        return line.ys().get(line.ys().size() - 1);
    }

    /**
     * Places from top to bottom, apart from each other, near where each would like to be: those that would overlap are spread around their
     * middle. Where there is too little room for all they share it evenly.
     *
     * @param wanted ascending; not modified
     */
    static double[] apart(double[] wanted, double least, double top, double bottom) {
        int n = wanted.length;
        double each = n > 1 ? Math.min(least, (bottom - top) / (n - 1)) : least;
        double[] places = new double[n];
        int[] starts = new int[n];
        int groups = 0;
        for (int i = 0; i < n; i++) {
            starts[groups++] = i;
            // A group that reaches into the one above is spread together with it.
            while (true) {
                int start = starts[groups - 1];
                spread(wanted, places, start, i + 1, each, top, bottom);
                if (groups < 2 || places[start] - places[start - 1] >= each - 1e-9) {
                    break;
                }
                groups--;
            }
        }
        return places;
    }

    private static void spread(
            double[] wanted, double[] places, int from, int to, double each, double top, double bottom) {
        double middle = 0;
        for (int i = from; i < to; i++) {
            middle += wanted[i] / (to - from);
        }
        double span = each * (to - from - 1);
        double first = Math.max(top, Math.min(bottom - span, middle - span / 2));
        for (int i = from; i < to; i++) {
            places[i] = first + each * (i - from);
        }
    }

    private Font setNameFont(Curves.Line line) {
        Font font = Fonts.figure(11, line.weight() == Curves.Weight.BOLD);
        ink.setFont(font);
        return font;
    }

    private Color nameColour(Curves.Line line) {
        return line.weight() == Curves.Weight.QUIET ? palette.muted() : colour(line.weight());
    }
}
