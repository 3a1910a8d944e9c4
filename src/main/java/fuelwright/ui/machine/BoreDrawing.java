package fuelwright.ui.machine;

import fuelwright.airflow.PlateArea;
import fuelwright.airflow.ThrottleBody;
import fuelwright.ui.plot.Ink;
import fuelwright.ui.plot.PlotPane;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import javafx.geometry.VPos;
import javafx.scene.text.TextAlignment;

/**
 * Both bores at the same scale: each from the side, with its plate, and from the end, with what is open. From the end the plate is an
 * ellipse: as wide as the bore along the shaft and, across it, the bore times cos ψ / cos ψ0, as {@link PlateArea} has it.
 */
final class BoreDrawing extends PlotPane {

    private static final double HEADING = 24;
    private static final double FOOT = 26;
    /** Between the two where one stands above the other. */
    private static final double APART = 12;

    private static final int STEPS = 72;

    private ThrottleBody before;
    private ThrottleBody after;
    private double throttlePercent;
    private Theme theme = Theme.LIGHT;

    BoreDrawing() {
        super(120, 0);
        setMinSize(240, 300);
        setPrefSize(290, 322);
    }

    /** Shows both; null for nothing. */
    void show(ThrottleBody before, ThrottleBody after, double throttlePercent, Theme theme) {
        this.before = before;
        this.after = after;
        this.throttlePercent = throttlePercent;
        this.theme = theme;
        setAccessibleText(
                before == null
                        ? Words.of("machine.bores.empty")
                        : Words.of(
                                "machine.bores.words",
                                Figures.plain(throttlePercent, 0),
                                Figures.plain(PlateArea.atThrottle(before, throttlePercent), 0),
                                Figures.plain(PlateArea.atThrottle(after, throttlePercent), 0)));
        redraw();
    }

    @Override
    public void paint(Ink ink, double width, double height) {
        if (before == null || after == null) {
            return;
        }
        double largest = Math.max(before.boreMm(), after.boreMm());
        boolean stacked = width < 1.8 * height;
        double w = stacked ? width : width / 2;
        double h = stacked ? (height - APART) / 2 : height;
        // Each place holds a side view, 1.5 bores long, a gap and an end view.
        double scale = Math.min((h - HEADING - FOOT) / largest, (w - 24) / (2.75 * largest));
        body(ink, before, Words.of("machine.before"), 0, w, h, scale);
        ink.save();
        ink.translate(stacked ? 0 : w, stacked ? h + APART : 0);
        body(ink, after, Words.of("machine.after"), 0, w, h, scale);
        ink.restore();
    }

    private void body(Ink ink, ThrottleBody body, String name, double left, double width, double height, double scale) {
        Palette palette = theme.palette();
        double bore = body.boreMm() * scale;
        double middleY = HEADING + (height - HEADING - FOOT) / 2;
        double length = 1.5 * bore;
        double start = left + (width - length - 0.25 * bore - bore) / 2;
        side(ink, body, palette, start, middleY, bore, length, scale);
        end(ink, body, palette, start + length + 0.75 * bore, middleY, bore, scale);
        ink.setTextBaseline(VPos.CENTER);
        ink.setTextAlign(TextAlignment.CENTER);
        ink.setFill(palette.ink());
        ink.setFont(Fonts.text(13, true));
        ink.fillText(name + ", " + Figures.shortest(body.boreMm()) + " mm", left + width / 2, 10);
        ink.setFill(palette.muted());
        ink.setFont(Fonts.figure(12, false));
        ink.fillText(
                Words.of(
                        "machine.bores.area",
                        Figures.plain(PlateArea.atThrottle(body, throttlePercent), 0),
                        Figures.plain(PlateArea.angleDeg(body, throttlePercent), 0)),
                left + width / 2,
                height - 10);
    }

    private void side(
            Ink ink, ThrottleBody body, Palette palette, double x, double y, double bore, double length, double scale) {
        ink.setFill(palette.accent().interpolate(palette.card(), 0.85));
        ink.fillRect(x, y - bore / 2, length, bore);
        ink.setStroke(palette.ink());
        ink.setLineWidth(3);
        ink.strokeLine(x, y - bore / 2, x + length, y - bore / 2);
        ink.strokeLine(x, y + bore / 2, x + length, y + bore / 2);
        double angle = Math.toRadians(PlateArea.angleDeg(body, throttlePercent));
        // The plate is as long as it must be to close the bore at the closed angle.
        double half = bore / 2 / Math.cos(Math.toRadians(body.closedAngleDeg()));
        double middle = x + length / 2;
        ink.setStroke(palette.accent());
        ink.setLineWidth(Math.max(3, 1.5 * scale));
        ink.strokeLine(
                middle - half * Math.sin(angle),
                y - half * Math.cos(angle),
                middle + half * Math.sin(angle),
                y + half * Math.cos(angle));
        double shaft = body.shaftMm() * scale;
        ink.setFill(palette.muted());
        ink.fillOval(middle - shaft / 2, y - shaft / 2, shaft, shaft);
    }

    private void end(Ink ink, ThrottleBody body, Palette palette, double x, double y, double bore, double scale) {
        double radius = bore / 2;
        ink.setFill(palette.accent());
        ink.fillOval(x - radius, y - radius, bore, bore);
        double angle = Math.toRadians(PlateArea.angleDeg(body, throttlePercent));
        double share = Math.min(1, Math.cos(angle) / Math.cos(Math.toRadians(body.closedAngleDeg())));
        ink.setFill(palette.hatch());
        ink.fillOval(x - radius, y - radius * share, bore, bore * share);
        shaft(ink, palette, x, y, radius, body.shaftMm() * scale / 2);
        ink.setStroke(palette.ink());
        ink.setLineWidth(3);
        ink.strokeOval(x - radius, y - radius, bore, bore);
    }

    /** The strip of the shaft within the bore. */
    private static void shaft(Ink ink, Palette palette, double x, double y, double radius, double half) {
        double[] xs = new double[2 * STEPS + 2];
        double[] ys = new double[2 * STEPS + 2];
        double reach = Math.asin(half / radius);
        for (int i = 0; i <= STEPS; i++) {
            double angle = -reach + 2 * reach * i / STEPS;
            xs[i] = x + radius * Math.cos(angle);
            ys[i] = y + radius * Math.sin(angle);
            xs[STEPS + 1 + i] = x - radius * Math.cos(angle);
            ys[STEPS + 1 + i] = y - radius * Math.sin(angle);
        }
        ink.setFill(palette.muted());
        ink.fillPolygon(xs, ys, xs.length);
    }
}
