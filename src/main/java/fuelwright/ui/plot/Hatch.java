package fuelwright.ui.plot;

import javafx.scene.paint.Color;

/** Slanted lines inside a rectangle. */
final class Hatch {

    private Hatch() {}

    static void paint(Ink g, double x, double y, double w, double h, double step, Color color) {
        g.save();
        g.beginPath();
        g.rect(x, y, w, h);
        g.clip();
        g.setStroke(color);
        g.setLineWidth(1);
        // Lines lie on one raster for the whole canvas, so that neighbours join.
        double first = Math.floor((x + y) / step) * step;
        for (double s = first; s <= x + w + y + h; s += step) {
            g.strokeLine(s - y, y, s - y - h, y + h);
        }
        g.restore();
    }

    /** The same, slanted the other way. */
    static void back(Ink g, double x, double y, double w, double h, double step, Color color) {
        g.save();
        g.beginPath();
        g.rect(x, y, w, h);
        g.clip();
        g.setStroke(color);
        g.setLineWidth(1);
        double first = Math.floor((x - y - h) / step) * step;
        for (double s = first; s <= x + w - y; s += step) {
            g.strokeLine(s + y, y, s + y + h, y + h);
        }
        g.restore();
    }
}
