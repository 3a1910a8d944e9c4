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

/** The crosshair of a timeline with the figures that are under it. */
final class ReadOut {

    private final Ink g;
    private final Trace trace;
    private final Palette palette;
    private final double width;
    private final double plotHeight;

    ReadOut(Ink g, Trace trace, Palette palette, double width, double plotHeight) {
        this.g = g;
        this.trace = trace;
        this.palette = palette;
        this.width = width;
        this.plotHeight = plotHeight;
    }

    void paint(double x, int row) {
        g.setStroke(palette.ink());
        g.setLineWidth(1);
        g.setLineDashes(3, 3);
        g.strokeLine(Math.round(x) + 0.5, TimelinePainter.TOP, Math.round(x) + 0.5, plotHeight);
        g.setLineDashes();
        g.setTextBaseline(VPos.CENTER);
        String why = trace.reason().apply(row);
        String warned = warned(row);
        int lines = trace.lanes().stream()
                        .mapToInt(lane -> figures(lane, row).size())
                        .sum()
                + 1
                + (why.isEmpty() ? 0 : 1)
                + (warned.isEmpty() ? 0 : 1);
        double boxWidth = 264;
        double boxHeight = lines * 18 + 12;
        // In the corner that is further away: beside the crosshair it would cover what comes next.
        double begin = TimelinePainter.left() + 6;
        double left = x > (begin + width) / 2 ? begin : width - TimelinePainter.RIGHT - 6 - boxWidth;
        double top = TimelinePainter.TOP + 6;
        g.setFill(palette.role("raised"));
        g.fillRoundRect(left, top, boxWidth, boxHeight, 8, 8);
        g.setStroke(palette.role("line-strong"));
        g.strokeRoundRect(left + 0.5, top + 0.5, boxWidth - 1, boxHeight - 1, 8, 8);
        double y = top + 15;
        boxLine(
                left,
                boxWidth,
                y,
                Words.of("timeline.time"),
                Figures.clock(trace.clock().at(row), 2),
                palette.ink());
        for (Lane lane : trace.lanes()) {
            for (Figure figure : figures(lane, row)) {
                y += 18;
                boxLine(left, boxWidth, y, figure.name(), figure.text(), palette.ink());
            }
        }
        if (!why.isEmpty()) {
            y += 18;
            boxLine(left, boxWidth, y, Words.of("timeline.out"), why, palette.ink());
        }
        if (!warned.isEmpty()) {
            boxLine(left, boxWidth, y + 18, warned, "", palette.stop());
        }
    }

    /** What is warned of at that row. */
    private String warned(int row) {
        double time = trace.clock().at(row);
        return trace.marks().stream()
                .filter(m -> time >= m.fromS() && time <= m.toS())
                .map(Trace.Mark::words)
                .findFirst()
                .orElse("");
    }

    /** The figures of a row in one sentence, for those who can't see them. */
    static String words(Trace trace, int row) {
        StringBuilder words = new StringBuilder(
                Words.of("timeline.time") + " " + Figures.clock(trace.clock().at(row), 2));
        for (Lane lane : trace.lanes()) {
            figures(lane, row)
                    .forEach(
                            f -> words.append(", ").append(f.name()).append(' ').append(f.text()));
        }
        String why = trace.reason().apply(row);
        return why.isEmpty() ? words.toString() : words + ", " + Words.of("timeline.out") + ": " + why;
    }

    /** A figure under the crosshair. */
    private record Figure(String name, String text) {}

    private static List<Figure> figures(Lane lane, int row) {
        boolean more = lane.target().isPresent() || lane.expected().isPresent();
        List<Figure> figures = new ArrayList<>();
        figures.add(new Figure(
                more ? lane.name() + ", " + Words.of("timeline.ridden") : lane.name(),
                text(lane, lane.values(), row) + (lane.target().isPresent() ? "" : " " + lane.unit())));
        lane.target().ifPresent(t -> figures.add(new Figure(Words.of("timeline.target"), text(lane, t, row))));
        lane.expected().ifPresent(e -> figures.add(new Figure(Words.of("timeline.expected"), text(lane, e, row))));
        return figures;
    }

    private static String text(Lane lane, MinMaxPyramid line, int row) {
        return Figures.plain(line.at(row), lane.decimals());
    }

    private void boxLine(double left, double boxWidth, double y, String name, String figure, Color ink) {
        g.setFont(Fonts.figure(12, false));
        g.setTextAlign(TextAlignment.LEFT);
        g.setFill(figure.isEmpty() ? ink : palette.muted());
        g.fillText(name, left + 10, y);
        g.setTextAlign(TextAlignment.RIGHT);
        g.setFill(ink);
        g.fillText(figure, left + boxWidth - 10, y);
    }
}
