package fuelwright.ui.power;

import fuelwright.power.PowerCurve;
import fuelwright.power.PowerCurve.Point;
import fuelwright.power.PullComparison;
import fuelwright.ui.plot.Ink;
import fuelwright.ui.plot.PlotPane;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Measures;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import fuelwright.unit.Unit;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import javafx.geometry.VPos;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** Power above, torque below, over engine speed; one or two pulls, each in its colour with a band of twice the standard error, peaks marked. */
final class PowerPlot extends PlotPane {

    private static final double PEAK_WORD = 16;
    private static final double LEFT = 56;
    private static final double RIGHT = 20;
    private static final double TOP = 54;
    private static final double GAP = 34;
    private static final double BOTTOM = 44;
    private static final int LINES = 6;
    private static final String[] COLOURS = {"lane-0", "lane-2"};

    private List<PowerCurve> curves = List.of();
    private Optional<PullComparison> comparison = Optional.empty();
    private Palette palette = Theme.LIGHT.palette();
    private Measures measures = Measures.METRIC;
    private double width;
    private double lowRpm;
    private double highRpm;

    PowerPlot() {
        super(120, 0);
        setMinSize(320, 240);
    }

    void show(List<PowerCurve> shown, Optional<PullComparison> compared, Theme theme, Measures shownIn) {
        curves = shown;
        measures = shownIn;
        comparison = compared;
        palette = theme.palette();
        redraw();
    }

    @Override
    public void paint(Ink ink, double wide, double height) {
        if (curves.isEmpty()) {
            return;
        }
        width = wide;
        lowRpm = Double.POSITIVE_INFINITY;
        highRpm = 0;
        for (PowerCurve curve : curves) {
            lowRpm = Math.min(lowRpm, curve.points().get(0).rpm());
            highRpm = Math.max(
                    highRpm, curve.points().get(curve.points().size() - 1).rpm());
        }
        lowRpm = Math.floor(lowRpm / 500) * 500;
        highRpm = Math.ceil(highRpm / 500) * 500;
        double each = (height - TOP - GAP - BOTTOM) / 2;
        key(ink);
        Unit power = measures.of(Unit.KILOWATT);
        Unit torque = measures.of(Unit.NEWTON_METRE);
        panel(
                ink,
                TOP,
                each,
                Words.of("power.plot.power", power.symbol()),
                p -> power.fromCanonical(p.powerKw()),
                p -> power.fromCanonical(p.errorKw()),
                PowerCurve::peakPower);
        panel(
                ink,
                TOP + each + GAP,
                each,
                Words.of("power.plot.torque", torque.symbol()),
                p -> torque.fromCanonical(p.torqueNm()),
                p -> torque.fromCanonical(p.torqueErrorNm()),
                PowerCurve::peakTorque);
        speeds(ink, height);
    }

    private void panel(
            Ink ink,
            double top,
            double tall,
            String title,
            ToDoubleFunction<Point> value,
            ToDoubleFunction<Point> error,
            java.util.function.Function<PowerCurve, Point> peak) {
        double most = 0;
        for (PowerCurve curve : curves) {
            for (Point p : curve.points()) {
                most = Math.max(most, value.applyAsDouble(p));
            }
        }
        double step = nice(most * 1.08 / LINES);
        double reach = step * Math.ceil(most * 1.08 / step);
        ink.setFill(palette.card());
        ink.fillRect(LEFT, top, width - LEFT - RIGHT, tall);
        comparison.ifPresent(c -> c.pays().forEach(band -> {
            ink.setFill(seeThrough(palette.accent(), 0.13));
            ink.fillRect(x(band.fromRpm()), top, x(band.toRpm()) - x(band.fromRpm()), tall);
        }));
        ink.setTextBaseline(VPos.CENTER);
        ink.setLineWidth(1);
        for (double at = 0; at <= reach + step / 2; at += step) {
            double y = Math.round(top + tall * (1 - at / reach)) + 0.5;
            ink.setStroke(at == 0 ? palette.role("line-strong") : palette.line());
            ink.strokeLine(LEFT, y, width - RIGHT, y);
            ink.setTextAlign(TextAlignment.RIGHT);
            ink.setFont(Fonts.figure(12, false));
            ink.setFill(palette.muted());
            ink.fillText(Figures.plain(at, step < 1 ? 1 : 0), LEFT - 8, y);
        }
        ink.setTextAlign(TextAlignment.LEFT);
        ink.setFont(Fonts.text(12, true));
        ink.setFill(palette.ink());
        ink.fillText(title, LEFT, top - 12);
        ink.save();
        ink.beginPath();
        ink.rect(LEFT, top, width - LEFT - RIGHT, tall);
        ink.clip();
        for (int i = 0; i < curves.size(); i++) {
            curve(
                    ink,
                    curves.get(i),
                    i,
                    p -> top + tall * (1 - value.applyAsDouble(p) / reach),
                    p -> tall * error.applyAsDouble(p) / reach);
        }
        ink.restore();
        for (int i = 0; i < curves.size(); i++) {
            Point p = peak.apply(curves.get(i));
            double y = top + tall * (1 - value.applyAsDouble(p) / reach);
            ink.setFill(palette.card());
            ink.fillOval(x(p.rpm()) - 5, y - 5, 10, 10);
            ink.setStroke(palette.role(COLOURS[i]));
            ink.strokeOval(x(p.rpm()) - 5, y - 5, 10, 10);
            boolean above = isGreatest(i, c -> value.applyAsDouble(peak.apply(c)));
            ink.setFill(palette.role(COLOURS[i]));
            ink.setFont(Fonts.figure(14, true));
            // Away from the edge that a peak at the end of a pull is near to.
            ink.setTextAlign(x(p.rpm()) > width - RIGHT - 40 ? TextAlignment.RIGHT : TextAlignment.CENTER);
            ink.fillText(Figures.plain(value.applyAsDouble(p), 1), x(p.rpm()), y + (above ? -PEAK_WORD : PEAK_WORD));
        }
    }

    /** So that the figures of two peaks at one speed don't lie upon each other. */
    private boolean isGreatest(int curve, ToDoubleFunction<PowerCurve> peak) {
        double own = peak.applyAsDouble(curves.get(curve));
        return curves.stream().mapToDouble(peak).allMatch(other -> own >= other);
    }

    private void curve(
            Ink ink, PowerCurve curve, int i, ToDoubleFunction<Point> y, ToDoubleFunction<Point> heightOfError) {
        List<Point> points = curve.points();
        int n = points.size();
        double[] xs = new double[2 * n];
        double[] ys = new double[2 * n];
        double[] lineXs = new double[n];
        double[] lineYs = new double[n];
        for (int k = 0; k < n; k++) {
            Point p = points.get(k);
            lineXs[k] = x(p.rpm());
            lineYs[k] = y.applyAsDouble(p);
            double half = 2 * heightOfError.applyAsDouble(p);
            xs[k] = lineXs[k];
            xs[2 * n - 1 - k] = lineXs[k];
            ys[k] = lineYs[k] - half;
            ys[2 * n - 1 - k] = lineYs[k] + half;
        }
        ink.setFill(seeThrough(palette.role(COLOURS[i]), 0.22));
        ink.fillPolygon(xs, ys, 2 * n);
        ink.setStroke(palette.role(COLOURS[i]));
        ink.setLineWidth(2);
        dashes(ink, i);
        ink.strokePolyline(lineXs, lineYs, n);
        ink.setLineDashes();
    }

    private void dashes(Ink ink, int i) {
        if (curves.size() > 1 && i == 0) {
            ink.setLineDashes(7, 4);
        } else {
            ink.setLineDashes();
        }
    }

    private void key(Ink ink) {
        double at = LEFT;
        ink.setTextBaseline(VPos.CENTER);
        ink.setTextAlign(TextAlignment.LEFT);
        ink.setFont(Fonts.text(12, false));
        for (int i = 0; i < curves.size(); i++) {
            ink.setStroke(palette.role(COLOURS[i]));
            ink.setLineWidth(2);
            dashes(ink, i);
            ink.strokeLine(at, 14, at + 22, 14);
            ink.setLineDashes();
            at = word(ink, curves.get(i).pull().ride().name(), at + 28);
        }
        if (comparison.filter(c -> !c.pays().isEmpty()).isPresent()) {
            ink.setFill(seeThrough(palette.accent(), 0.2));
            ink.fillRect(at, 7, 22, 14);
            at = word(ink, Words.of("power.plot.pays"), at + 28);
        }
        ink.setStroke(palette.muted());
        ink.strokeOval(at, 9, 10, 10);
        word(ink, Words.of("power.plot.peak"), at + 16);
    }

    private double word(Ink ink, String words, double at) {
        ink.setFill(palette.muted());
        ink.fillText(words, at, 14);
        return at + Fonts.width(words, Fonts.text(12, false)) + 24;
    }

    private void speeds(Ink ink, double height) {
        double step = nice((highRpm - lowRpm) / 8);
        ink.setTextAlign(TextAlignment.CENTER);
        ink.setFont(Fonts.figure(12, false));
        ink.setFill(palette.muted());
        for (double rpm = Math.ceil(lowRpm / step) * step; rpm <= highRpm; rpm += step) {
            ink.fillText(Figures.plain(rpm, 0), x(rpm), height - BOTTOM + 14);
        }
        ink.setFont(Fonts.text(12, false));
        ink.fillText(Words.of("power.plot.speed"), (LEFT + width - RIGHT) / 2, height - 10);
    }

    private double x(double rpm) {
        return LEFT + (rpm - lowRpm) / (highRpm - lowRpm) * (width - LEFT - RIGHT);
    }

    /** The next of 1, 2, 5 times a power of ten. */
    private static double nice(double step) {
        double ten = Math.pow(10, Math.floor(Math.log10(step)));
        double lead = step / ten;
        return ten * (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10);
    }

    private static Color seeThrough(Color c, double opacity) {
        return Color.color(c.getRed(), c.getGreen(), c.getBlue(), opacity);
    }
}
