package fuelwright.ui.plot;

import fuelwright.ui.theme.Colours;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Palette;
import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** Draws a {@link Surface}: the floor with its axes, the patches far to near, the chosen cells as dots on top. */
final class SurfacePainter {

    private static final double FLOOR = -Surface.HEIGHT;

    private final Ink ink;
    private final Surface surface;
    private final Projection projection;
    private final Palette palette;
    private final double middleX;
    private final double middleY;
    private final double scale;

    SurfacePainter(Ink ink, Surface surface, Projection projection, Palette palette, double width, double height) {
        this.ink = ink;
        this.surface = surface;
        this.projection = projection;
        this.palette = palette;
        this.middleX = width / 2;
        this.middleY = middle(height);
        this.scale = scale(width, height);
    }

    /** Pixels for one unit of {@link Projection.Seen}. */
    static double scale(double width, double height) {
        return Math.min(width / 3.9, height / 3.1);
    }

    /** Where the box's middle lies: a little high, because its titles stand below. */
    static double middle(double height) {
        return 0.45 * height;
    }

    private double x(Projection.Seen seen) {
        return middleX + scale * seen.x();
    }

    private double y(Projection.Seen seen) {
        return middleY + scale * seen.y();
    }

    void paint(int selected) {
        box();
        ink.setLineWidth(0.75);
        for (Surface.Patch patch : surface.patches(projection)) {
            patch(patch);
        }
        ceiling();
        surface.chosen().stream().sorted().filter(c -> c != selected).forEach(c -> dot(c, 3, palette.accent()));
        if (selected >= 0 && selected < surface.heights().size()) {
            dot(selected, 5, palette.selection());
        }
    }

    private void patch(Surface.Patch patch) {
        double[] xs = patch.corners().stream().mapToDouble(this::x).toArray();
        double[] ys = patch.corners().stream().mapToDouble(this::y).toArray();
        int n = surface.speeds().size();
        Color low =
                Colours.mix(surface.fills().get(patch.cell()), surface.fills().get(patch.cell() + n + 1), 0.5);
        ink.setFill(low);
        ink.fillPolygon(xs, ys, 4);
        boolean chosen = surface.chosen()
                .containsAll(List.of(patch.cell(), patch.cell() + 1, patch.cell() + n, patch.cell() + n + 1));
        ink.setStroke(chosen ? palette.accent() : Colours.mix(low, palette.ink(), 0.35));
        ink.setLineWidth(chosen ? 2 : 0.75);
        ink.strokePolygon(xs, ys, 4);
    }

    private void dot(int cell, double size, Color color) {
        Projection.Seen seen = surface.see(projection, cell);
        ink.setFill(palette.surface());
        ink.fillOval(x(seen) - size - 2, y(seen) - size - 2, 2 * size + 4, 2 * size + 4);
        ink.setFill(color);
        ink.fillOval(x(seen) - size, y(seen) - size, 2 * size, 2 * size);
    }

    private void box() {
        ink.setStroke(palette.line());
        ink.setLineWidth(1);
        line(-1, -1, FLOOR, 1, -1, FLOOR);
        line(1, -1, FLOOR, 1, 1, FLOOR);
        line(1, 1, FLOOR, -1, 1, FLOOR);
        line(-1, 1, FLOOR, -1, -1, FLOOR);
        // The axes stand on the two sides of the floor that are nearest to the eye.
        double nearLoad = projection.see(0, -1, FLOOR).depth()
                        < projection.see(0, 1, FLOOR).depth()
                ? -1
                : 1;
        double nearSpeed = projection.see(-1, 0, FLOOR).depth()
                        < projection.see(1, 0, FLOOR).depth()
                ? -1
                : 1;
        axis(surface.speeds(), surface.speedTitle(), true, nearLoad);
        axis(surface.loads(), surface.loadTitle(), false, nearSpeed);
    }

    private void axis(List<Double> marks, String title, boolean speed, double side) {
        double out = side * 1.14;
        double outer = side * 1.42;
        ink.setFont(Fonts.figure(11, false));
        ink.setTextAlign(TextAlignment.CENTER);
        ink.setTextBaseline(VPos.CENTER);
        ink.setFill(palette.muted());
        double first = marks.get(0);
        double last = marks.get(marks.size() - 1);
        double before = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < marks.size(); i++) {
            double at = 2 * (marks.get(i) - first) / (last - first) - 1;
            boolean room = at - before >= 0.24 && (1 - at >= 0.24 || i == marks.size() - 1);
            if (room || i == 0) {
                text(fuelwright.ui.theme.Figures.shortest(marks.get(i)), speed ? at : out, speed ? out : at);
                before = at;
            }
        }
        ink.setFont(Fonts.text(12, false));
        text(title, speed ? 0 : outer, speed ? outer : 0);
    }

    private void text(String words, double x, double y) {
        Projection.Seen seen = projection.see(x, y, FLOOR);
        ink.fillText(words, x(seen), y(seen));
    }

    /** What floor and ceiling mean, beside the corner that is furthest to the left. */
    private void ceiling() {
        double[][] corners = {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}};
        double[] left = corners[0];
        for (double[] corner : corners) {
            if (projection.see(corner[0], corner[1], 0).x()
                    < projection.see(left[0], left[1], 0).x()) {
                left = corner;
            }
        }
        ink.setStroke(palette.line());
        line(left[0], left[1], FLOOR, left[0], left[1], -FLOOR);
        Projection.Seen top = projection.see(left[0], left[1], -FLOOR);
        Projection.Seen bottom = projection.see(left[0], left[1], FLOOR);
        ink.setFill(palette.muted());
        ink.setFont(Fonts.figure(12, false));
        ink.setTextAlign(TextAlignment.RIGHT);
        ink.fillText(surface.high(), x(top) - 6, y(top));
        ink.setTextAlign(TextAlignment.LEFT);
        ink.fillText(surface.title(), 4, 9);
        ink.setTextAlign(TextAlignment.RIGHT);
        ink.fillText(surface.low(), x(bottom) - 6, y(bottom) - 8);
    }

    private void line(double x1, double y1, double z1, double x2, double y2, double z2) {
        Projection.Seen a = projection.see(x1, y1, z1);
        Projection.Seen b = projection.see(x2, y2, z2);
        ink.strokeLine(x(a), y(a), x(b), y(b));
    }
}
