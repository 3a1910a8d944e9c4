package fuelwright.ui.plot;

import javafx.scene.paint.Color;

/**
 * Draws the lines of a lane. Where rows lie closer than pixels, each pixel column is one upright bar from the least to the greatest value
 * there, so that a single spike is seen at every zoom; otherwise rows are joined by straight lines.
 */
final class LanePainter {

    private final Ink g;
    private final RideClock clock;
    private final TimeWindow window;
    private final double left;
    private final double plotWidth;
    /** The first row of each pixel column, one more at the end. */
    private final int[] rows;

    LanePainter(Ink g, RideClock clock, TimeWindow window, double left, double plotWidth) {
        this.g = g;
        this.clock = clock;
        this.window = window;
        this.left = left;
        this.plotWidth = plotWidth;
        rows = new int[(int) Math.ceil(plotWidth) + 1];
        int shown = clock.rowAtOrAfter(window.toS()) - clock.rowAtOrAfter(window.fromS());
        int whole = wholeBlocks(shown / plotWidth);
        for (int px = 0; px < rows.length; px++) {
            int row = clock.rowAtOrAfter(window.timeAt(left + px, left, plotWidth));
            rows[px] = row == clock.size() ? row : row / whole * whole;
        }
    }

    /**
     * Where very many rows share a pixel, columns begin at whole blocks of the pyramid, at most a sixteenth of a pixel away: each row still
     * belongs to one column, and single rows need not be looked at.
     */
    private static int wholeBlocks(double rowsPerPixel) {
        if (rowsPerPixel >= 4096) {
            return 256;
        }
        return rowsPerPixel >= 256 ? 16 : 1;
    }

    /** The first row of a pixel column. */
    int row(int px) {
        return rows[px];
    }

    int columns() {
        return rows.length - 1;
    }

    void line(MinMaxPyramid values, Lane lane, double top, double height, Color color, double thick, double... dashes) {
        int from = Math.max(0, rows[0] - 1);
        int to = Math.min(values.size(), rows[rows.length - 1] + 1);
        if (to - from <= 2 * plotWidth) {
            g.setStroke(color);
            g.setLineWidth(thick);
            g.setLineDashes(dashes);
            rows(values, lane, top, height, from, to);
            g.setLineDashes();
        } else {
            g.setFill(color);
            bars(values, lane, top, height, thick, dashes);
        }
    }

    private void rows(MinMaxPyramid values, Lane lane, double top, double height, int from, int to) {
        g.beginPath();
        boolean down = false;
        for (int row = from; row < to; row++) {
            double value = values.at(row);
            if (Double.isNaN(value)) {
                continue;
            }
            double x = window.xOf(clock.at(row), left, plotWidth);
            double y = y(value, lane, top, height);
            if (down) {
                g.lineTo(x, y);
            } else {
                g.moveTo(x, y);
                down = true;
            }
        }
        g.stroke();
    }

    /** @param dashes where there are any, only every so many columns are drawn, as many as in a line of rows */
    private void bars(MinMaxPyramid values, Lane lane, double top, double height, double thick, double... dashes) {
        double on = dashes.length == 0 ? 1 : dashes[0];
        double period = dashes.length == 0 ? 1 : dashes[0] + dashes[1];
        double before = Double.NaN;
        for (int px = 0; px + 1 < rows.length; px++) {
            MinMaxPyramid.Extent e = values.extent(rows[px], rows[px + 1]);
            if (e.isEmpty()) {
                continue;
            }
            double high = y(e.max(), lane, top, height);
            double low = y(e.min(), lane, top, height);
            // Joined with the column before, so that a steep line has no holes.
            double first = Double.isNaN(before) ? high : before;
            double from = Math.min(high, first);
            double to = Math.max(low, first);
            if (px % period < on) {
                g.fillRect(left + px, from - thick / 2, 1, to - from + thick);
            }
            before = y(e.last(), lane, top, height);
        }
    }

    /** A line only where there are values, in steps. */
    void steps(MinMaxPyramid values, Lane lane, double top, double height, Color color) {
        g.setStroke(color);
        g.setLineWidth(2);
        double before = Double.NaN;
        for (int px = 0; px + 1 < rows.length; px++) {
            int from = rows[px];
            int to = Math.min(values.size(), Math.max(from + 1, rows[px + 1]));
            MinMaxPyramid.Extent e = from < values.size() ? values.extent(from, to) : null;
            double now = e == null || e.isEmpty() ? Double.NaN : y(e.first(), lane, top, height);
            if (!Double.isNaN(now) && !Double.isNaN(before)) {
                g.strokeLine(left + px - 0.5, before, left + px + 0.5, now);
            }
            before = now;
        }
    }

    static double y(double value, Lane lane, double top, double height) {
        double share = (value - lane.low()) / (lane.high() - lane.low());
        return top + (1 - Math.max(-0.02, Math.min(1.02, share))) * height;
    }
}
