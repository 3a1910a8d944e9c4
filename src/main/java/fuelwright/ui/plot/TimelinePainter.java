package fuelwright.ui.plot;

import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Words;
import java.util.ArrayList;
import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/**
 * Draws a {@link Trace}: marks of what is warned of on top, one lane below the other, behind them what doesn't count in the pattern of its
 * reason, and time below.
 */
final class TimelinePainter {

    static final double RIGHT = 12;
    static final double TOP = 16;
    static final double BOTTOM = 26;
    private static final double BAND = 8;
    private static final double LANE_GAP = 14;
    /** A lower lane has no line in its middle. */
    private static final double ROOM_FOR_MIDDLE = 48;

    /** A line of a lane's names, at the usual text size. */
    private static final double NAME_HEIGHT = 15;

    private final Ink g;
    private final Trace trace;
    private final TimeWindow window;
    private final Palette palette;
    private final double width;
    private final double plotWidth;
    /** Where the lanes end and the band of reasons starts. */
    private final double plotBottom;

    private final LanePainter lines;

    /** Where the plot begins: right of the lanes' names. */
    static double left() {
        return Fonts.grown(104);
    }

    TimelinePainter(Ink g, Trace trace, TimeWindow window, Palette palette, double width, double height) {
        this.g = g;
        this.trace = trace;
        this.window = window;
        this.palette = palette;
        this.width = width;
        this.plotWidth = width - left() - RIGHT;
        this.plotBottom = height - BOTTOM - BAND;
        this.lines = new LanePainter(g, trace.clock(), window, left(), plotWidth);
    }

    /** @param marking what the stretch that is talked about is painted in */
    void paint(double fromS, double toS, Color marking) {
        screenedOut();
        times();
        marked(fromS, toS, marking);
        double shares = trace.lanes().stream().mapToDouble(Lane::height).sum();
        double share = (plotBottom - TOP - LANE_GAP * trace.lanes().size()) / shares;
        double top = TOP + LANE_GAP / 2;
        for (Lane lane : trace.lanes()) {
            lane(lane, top, share * lane.height());
            top += share * lane.height() + LANE_GAP;
        }
        new MarkStrip(trace, window, left(), plotWidth).paint(g, palette, TOP);
        marks();
    }

    /** What the marks above the lanes mean, where there are any. */
    private void marks() {
        g.setFont(Fonts.text(11, false));
        g.setTextAlign(TextAlignment.LEFT);
        g.setTextBaseline(VPos.CENTER);
        double at = 5;
        for (boolean stop : new boolean[] {true, false}) {
            if (trace.marks().stream().anyMatch(m -> m.stop() == stop)) {
                MarkStrip.sign(g, palette, at, TOP, stop);
                String words = Words.of(stop ? "timeline.stop" : "timeline.check");
                g.setFill(palette.muted());
                g.fillText(words, at + 9, TOP / 2);
                at += Fonts.width(words, Fonts.text(11, false)) + 22;
            }
        }
    }

    private void times() {
        double tick = window.tickS((int) Math.max(2, plotWidth / 90));
        g.setFont(Fonts.figure(12, false));
        g.setTextBaseline(VPos.CENTER);
        g.setTextAlign(TextAlignment.CENTER);
        g.setLineWidth(1);
        for (double t = Math.ceil(window.fromS() / tick) * tick; t <= window.toS() + 1e-9; t += tick) {
            double x = Math.round(window.xOf(t, left(), plotWidth)) + 0.5;
            g.setStroke(palette.line());
            g.strokeLine(x, TOP, x, plotBottom);
            g.setFill(palette.muted());
            String text = Figures.clock(t, tick < 1 ? 1 : 0);
            g.fillText(text, Math.min(x, width - Math.max(18, 3.5 * text.length())), plotBottom + BAND + BOTTOM / 2);
        }
    }

    /** The stretch that is talked about. */
    private void marked(double fromS, double toS, Color marking) {
        if (Double.isNaN(fromS)) {
            return;
        }
        double x1 = clip(window.xOf(fromS, left(), plotWidth));
        double x2 = clip(window.xOf(toS, left(), plotWidth));
        if (x2 <= left() || x1 >= left() + plotWidth) {
            return;
        }
        g.setFill(Color.color(marking.getRed(), marking.getGreen(), marking.getBlue(), 0.14));
        g.fillRect(x1, TOP, Math.max(3, x2 - x1), plotBottom - TOP);
        g.setFill(marking);
        g.fillRect(x1, TOP, Math.max(3, x2 - x1), 3);
    }

    private double clip(double x) {
        return Math.max(left(), Math.min(left() + plotWidth, x));
    }

    private void screenedOut() {
        int from = 0;
        int reason = reason(0);
        for (int px = 1; px <= lines.columns(); px++) {
            int now = px < lines.columns() ? reason(px) : Integer.MIN_VALUE;
            if (now != reason) {
                if (reason >= 0) {
                    OutKind kind = trace.kinds().get(reason);
                    kind.paint(g, palette, left() + from, TOP, px - from, plotBottom - TOP, 0.55);
                    g.setFill(kind.colour(palette));
                    g.fillRect(left() + from, plotBottom, px - from, BAND - 2);
                }
                from = px;
                reason = now;
            }
        }
        g.setStroke(palette.line());
        g.setLineWidth(1);
        g.strokeLine(left(), plotBottom + 0.5, left() + plotWidth, plotBottom + 0.5);
    }

    private int reason(int px) {
        int a = lines.row(px);
        return trace.shading().most(a, Math.max(a + 1, lines.row(px + 1)));
    }

    private void lane(Lane lane, double top, double laneHeight) {
        double bottom = Math.round(top + laneHeight + LANE_GAP / 2) + 0.5;
        g.setStroke(palette.line());
        g.setLineWidth(1);
        g.strokeLine(left(), bottom, left() + plotWidth, bottom);
        if (laneHeight >= ROOM_FOR_MIDDLE) {
            double middle = Math.round(top + laneHeight / 2) + 0.5;
            g.strokeLine(left(), middle, left() + plotWidth, middle);
        }
        names(lane, top, laneHeight);
        g.save();
        g.beginPath();
        g.rect(left(), top - 3, plotWidth, laneHeight + 6);
        g.clip();
        lane.target().ifPresent(t -> lines.line(t, lane, top, laneHeight, palette.role("target"), 1.5, 5, 3));
        lane.limit().ifPresent(limit -> lines.steps(limit, lane, top, laneHeight, palette.stop()));
        // What was measured lies over what is only expected.
        lane.expected().ifPresent(e -> lines.line(e, lane, top, laneHeight, palette.ink(), 1, 2, 4));
        lines.line(lane.values(), lane, top, laneHeight, palette.role(lane.colour()), 1.5);
        g.restore();
    }

    /** A line of a lane's names. */
    private record Name(String words, Color color, boolean bold) {}

    private void names(Lane lane, double top, double laneHeight) {
        List<Name> names = new ArrayList<>();
        names.add(new Name(lane.name(), palette.role(lane.colour()), true));
        names.add(new Name(lane.unit(), palette.muted(), false));
        lane.target().ifPresent(t -> names.add(new Name(Words.of("timeline.target"), palette.role("target"), false)));
        lane.expected().ifPresent(e -> names.add(new Name(Words.of("timeline.expected"), palette.ink(), false)));
        lane.limit().ifPresent(l -> names.add(new Name(Words.of("timeline.limit"), palette.stop(), true)));
        double height = Fonts.grown(NAME_HEIGHT);
        if (names.size() * height > laneHeight + LANE_GAP && names.size() > 2) {
            // The unit is told by the figures beside it.
            names.remove(1);
        }
        g.setTextAlign(TextAlignment.LEFT);
        g.setTextBaseline(VPos.CENTER);
        double y = top + laneHeight / 2 - (names.size() - 1) * height / 2;
        for (Name name : names) {
            g.setFill(name.color);
            g.setFont(Fonts.text(12, name.bold));
            g.fillText(name.words, 0, y);
            y += height;
        }
        g.setFill(palette.muted());
        g.setTextAlign(TextAlignment.RIGHT);
        g.setFont(Fonts.figure(12, false));
        double middle = (lane.low() + lane.high()) / 2;
        g.fillText(Figures.plain(lane.high(), lane.decimals()), left() - 6, top + 3);
        g.fillText(Figures.plain(lane.low(), lane.decimals()), left() - 6, top + laneHeight - 3);
        if (laneHeight >= ROOM_FOR_MIDDLE) {
            g.fillText(Figures.plain(middle, lane.decimals()), left() - 6, top + laneHeight / 2);
        }
    }
}
