package fuelwright.ui.plot;

import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Words;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** Draws a {@link Trace}: hatched where readings don't count, one lane below the other, time below, what is under the crosshair. */
final class TimelinePainter {

    static final double LEFT = 104;
    static final double RIGHT = 12;
    private static final double BOTTOM = 26;
    private static final double LANE_GAP = 14;

    private final GraphicsContext g;
    private final Trace trace;
    private final TimeWindow window;
    private final Palette palette;
    private final double width;
    private final double height;
    private final double plotWidth;
    private final double plotHeight;

    TimelinePainter(GraphicsContext g, Trace trace, TimeWindow window, Palette palette, double width, double height) {
        this.g = g;
        this.trace = trace;
        this.window = window;
        this.palette = palette;
        this.width = width;
        this.height = height;
        this.plotWidth = width - LEFT - RIGHT;
        this.plotHeight = height - BOTTOM;
    }

    void paint(double crossX, double fromS, double toS) {
        times();
        marked(fromS, toS);
        screenedOut();
        double shares = trace.lanes().stream().mapToDouble(Lane::height).sum();
        double share = (plotHeight - LANE_GAP * trace.lanes().size()) / shares;
        double top = LANE_GAP / 2;
        for (Lane lane : trace.lanes()) {
            lane(lane, top, share * lane.height());
            top += share * lane.height() + LANE_GAP;
        }
        if (crossX >= LEFT && crossX <= LEFT + plotWidth) {
            cross(crossX);
        }
    }

    private void times() {
        double tick = window.tickS((int) Math.max(2, plotWidth / 90));
        g.setFont(Fonts.figure(12, false));
        g.setTextBaseline(VPos.CENTER);
        g.setTextAlign(TextAlignment.CENTER);
        g.setLineWidth(1);
        for (double t = Math.ceil(window.fromS() / tick) * tick; t <= window.toS() + 1e-9; t += tick) {
            double x = Math.round(window.xOf(t, LEFT, plotWidth)) + 0.5;
            g.setStroke(palette.line());
            g.strokeLine(x, 0, x, plotHeight);
            g.setFill(palette.muted());
            String text = Figures.clock(t, tick < 1 ? 1 : 0);
            g.fillText(text, Math.min(x, width - 18), plotHeight + BOTTOM / 2);
        }
    }

    /** The stretch that is talked about. */
    private void marked(double fromS, double toS) {
        if (Double.isNaN(fromS)) {
            return;
        }
        double x1 = clip(window.xOf(fromS, LEFT, plotWidth));
        double x2 = clip(window.xOf(toS, LEFT, plotWidth));
        if (x2 <= LEFT || x1 >= LEFT + plotWidth) {
            return;
        }
        Color stop = palette.stop();
        g.setFill(Color.color(stop.getRed(), stop.getGreen(), stop.getBlue(), 0.14));
        g.fillRect(x1, 0, Math.max(3, x2 - x1), plotHeight);
        g.setFill(stop);
        g.fillRect(x1, 0, Math.max(3, x2 - x1), 4);
    }

    private double clip(double x) {
        return Math.max(LEFT, Math.min(LEFT + plotWidth, x));
    }

    private void screenedOut() {
        int from = -1;
        int columns = (int) plotWidth;
        for (int px = 0; px <= columns; px++) {
            boolean out = px < columns && isOut(px);
            if (out && from < 0) {
                from = px;
            } else if (!out && from >= 0) {
                out(LEFT + from, px - from);
                from = -1;
            }
        }
    }

    /** Too narrow for slanted lines: a pale stripe. */
    private void out(double x, double wide) {
        Color hatch = palette.hatch();
        if (wide < 5) {
            g.setFill(Color.color(hatch.getRed(), hatch.getGreen(), hatch.getBlue(), 0.14));
            g.fillRect(x, 0, wide, plotHeight);
        } else {
            Hatch.paint(g, x, 0, wide, plotHeight, 8, hatch.deriveColor(0, 1, 1, 0.45));
        }
    }

    private boolean isOut(int px) {
        int a = row(px);
        int b = Math.max(a + 1, row(px + 1));
        if (a >= trace.clock().size()) {
            return false;
        }
        int end = Math.min(b, trace.clock().size());
        return 2 * trace.screenedIn(a, end) >= end - a && end > a;
    }

    private int row(double px) {
        return trace.clock().rowAtOrAfter(window.timeAt(LEFT + px, LEFT, plotWidth));
    }

    private void lane(Lane lane, double top, double laneHeight) {
        g.setStroke(palette.line());
        g.setLineWidth(1);
        g.strokeLine(LEFT, Math.round(top + laneHeight) + 0.5, LEFT + plotWidth, Math.round(top + laneHeight) + 0.5);
        g.setTextAlign(TextAlignment.LEFT);
        g.setTextBaseline(VPos.CENTER);
        g.setFill(palette.role(lane.colour()));
        g.setFont(Fonts.text(12, true));
        g.fillText(lane.name(), 0, top + laneHeight / 2 - 8, LEFT - 40);
        g.setFill(palette.muted());
        g.setFont(Fonts.text(12, false));
        g.fillText(lane.unit(), 0, top + laneHeight / 2 + 8, LEFT - 40);
        g.setTextAlign(TextAlignment.RIGHT);
        g.setFont(Fonts.figure(12, false));
        g.fillText(Figures.plain(lane.most(), lane.decimals()), LEFT - 6, y(lane.most(), lane, top, laneHeight));
        g.fillText(Figures.plain(lane.least(), lane.decimals()), LEFT - 6, y(lane.least(), lane, top, laneHeight));
        g.save();
        g.beginPath();
        g.rect(LEFT, top - 3, plotWidth, laneHeight + 6);
        g.clip();
        lane.target().ifPresent(target -> line(target, lane, top, laneHeight, palette.role("target"), 1.5, true));
        lane.limit().ifPresent(limit -> steps(limit, lane, top, laneHeight));
        line(lane.values(), lane, top, laneHeight, palette.role(lane.colour()), 1.5, false);
        g.restore();
        if (lane.target().isPresent()) {
            g.setTextAlign(TextAlignment.LEFT);
            g.setFill(palette.role("target"));
            g.setFont(Fonts.text(12, false));
            g.fillText(Words.of("timeline.target"), 0, top + laneHeight / 2 + 24, LEFT - 40);
        }
        if (lane.limit().isPresent()) {
            g.setFill(palette.stop());
            g.setFont(Fonts.text(12, true));
            g.fillText(Words.of("timeline.limit"), 0, top + laneHeight / 2 + 40, LEFT - 40);
        }
    }

    /** The limit, only where there is one. */
    private void steps(MinMaxPyramid limit, Lane lane, double top, double laneHeight) {
        g.setStroke(palette.stop());
        g.setLineWidth(2);
        int from = row(0);
        double before = Double.NaN;
        for (int px = 0; px < plotWidth; px++) {
            int to = Math.max(from + 1, row(px + 1));
            MinMaxPyramid.Extent e = from < limit.size() ? limit.extent(from, Math.min(to, limit.size())) : null;
            double now = e == null || e.isEmpty() ? Double.NaN : y(e.first(), lane, top, laneHeight);
            if (!Double.isNaN(now) && !Double.isNaN(before)) {
                g.strokeLine(LEFT + px - 0.5, before, LEFT + px + 0.5, now);
            }
            before = now;
            from = row(px + 1);
        }
    }

    private void line(
            MinMaxPyramid values, Lane lane, double top, double laneHeight, Color color, double thick, boolean dashed) {
        g.setStroke(color);
        g.setLineWidth(thick);
        g.setLineDashes(dashed ? new double[] {5, 3} : null);
        int a = Math.max(0, row(0) - 1);
        int b = Math.min(values.size(), row(plotWidth) + 1);
        if (b - a <= 2 * plotWidth) {
            rows(values, lane, top, laneHeight, a, b);
        } else {
            g.setLineWidth(thick * 0.6);
            columns(values, lane, top, laneHeight);
        }
        g.setLineDashes((double[]) null);
    }

    private void rows(MinMaxPyramid values, Lane lane, double top, double laneHeight, int a, int b) {
        g.beginPath();
        boolean down = false;
        for (int row = a; row < b; row++) {
            double value = values.extent(row, row + 1).first();
            if (Double.isNaN(value)) {
                continue;
            }
            double x = window.xOf(trace.clock().at(row), LEFT, plotWidth);
            double y = y(value, lane, top, laneHeight);
            if (down) {
                g.lineTo(x, y);
            } else {
                g.moveTo(x, y);
                down = true;
            }
        }
        g.stroke();
    }

    private void columns(MinMaxPyramid values, Lane lane, double top, double laneHeight) {
        g.beginPath();
        boolean down = false;
        int from = row(0);
        for (int px = 0; px < plotWidth; px++) {
            int to = row(px + 1);
            MinMaxPyramid.Extent e = values.extent(from, to);
            from = to;
            if (e.isEmpty()) {
                continue;
            }
            double x = LEFT + px + 0.5;
            if (down) {
                g.lineTo(x, y(e.first(), lane, top, laneHeight));
            } else {
                g.moveTo(x, y(e.first(), lane, top, laneHeight));
                down = true;
            }
            g.lineTo(x, y(e.min(), lane, top, laneHeight));
            g.lineTo(x, y(e.max(), lane, top, laneHeight));
            g.lineTo(x, y(e.last(), lane, top, laneHeight));
        }
        g.stroke();
    }

    private static double y(double value, Lane lane, double top, double laneHeight) {
        double share = (value - lane.low()) / (lane.high() - lane.low());
        return top + (1 - Math.max(-0.02, Math.min(1.02, share))) * laneHeight;
    }

    private void cross(double x) {
        int row = trace.clock().nearest(window.timeAt(x, LEFT, plotWidth));
        if (row >= 0) {
            new ReadOut(g, trace, palette, width, plotHeight).paint(x, row);
        }
    }
}
