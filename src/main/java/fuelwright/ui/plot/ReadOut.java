package fuelwright.ui.plot;

import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Words;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** The crosshair of a timeline with the figures that are under it. */
final class ReadOut {

    private final GraphicsContext g;
    private final Trace trace;
    private final Palette palette;
    private final double width;
    private final double plotHeight;

    ReadOut(GraphicsContext g, Trace trace, Palette palette, double width, double plotHeight) {
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
        g.strokeLine(Math.round(x) + 0.5, 0, Math.round(x) + 0.5, plotHeight);
        g.setLineDashes((double[]) null);
        String why = trace.reason().apply(row);
        int lines = trace.lanes().size() + (why.isEmpty() ? 1 : 2);
        double boxWidth = 200;
        double boxHeight = lines * 18 + 12;
        double left = x + 14 + boxWidth > width ? x - 14 - boxWidth : x + 14;
        double top = 10;
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
            y += 18;
            boxLine(left, boxWidth, y, lane.name(), figure(lane, row), palette.ink());
        }
        if (!why.isEmpty()) {
            boxLine(left, boxWidth, y + 18, Words.of("timeline.out"), why, palette.ink());
        }
    }

    private String figure(Lane lane, int row) {
        double value = lane.values().extent(row, row + 1).first();
        String text = Figures.plain(value, lane.decimals());
        if (lane.target().isPresent()) {
            double target = lane.target().get().extent(row, row + 1).first();
            text += " (" + Words.of("timeline.target") + " " + Figures.plain(target, lane.decimals()) + ")";
        } else {
            text += " " + lane.unit();
        }
        return text;
    }

    private void boxLine(double left, double boxWidth, double y, String name, String figure, Color ink) {
        g.setFont(Fonts.figure(12, false));
        g.setTextAlign(TextAlignment.LEFT);
        g.setFill(palette.muted());
        g.fillText(name, left + 10, y, boxWidth / 2);
        g.setTextAlign(TextAlignment.RIGHT);
        g.setFill(ink);
        g.fillText(figure, left + boxWidth - 10, y, boxWidth * 0.7);
    }
}
