package fuelwright.handover;

import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleFunction;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

/**
 * A table as an SVG picture: engine speed left to right, load bottom to top. Each cell has a fill, a figure and, if wanted, a smaller one
 * below it; hatching where it is inferred; a thick dark frame with a marked corner for a Stop caution, never colour alone. Where no cell has
 * a figure below, rows are lower.
 */
final class HeatMap {

    /**
     * How one cell looks.
     *
     * @param fill 24-bit colour
     * @param figure what stands in it
     * @param size how big it is, in units of which a cell is 46 wide
     * @param below a smaller figure below, may be empty
     * @param hatched whether it is inferred, not measured
     * @param framed whether a Stop caution concerns it
     * @param tip what it says when pointed at
     */
    record Cell(int fill, String figure, double size, String below, boolean hatched, boolean framed, String tip) {}

    private static final int WIDE = 46;
    private static final int HIGH = 30;
    private static final int LOW = 21;
    private static final int LEFT = 58;
    private static final int BOTTOM = 36;
    private static final int MARK = 8;
    private static final double FRAME = 2.6;
    /** What a frame and its corner leave free beside a figure. */
    private static final int EDGE = 4;
    /** How big the figure below is. */
    private static final int BELOW_SIZE = 10;
    /** How wide a character is at most, of its size. */
    private static final double DIGIT_WIDE = 0.62;

    private static final int SCALE_WIDE = 330;
    private static final int SCALE_STEPS = 60;

    /** The size of a sure figure. */
    static final double FULL_SIZE = 13;

    private final StringBuilder svg = new StringBuilder();
    private int high = HIGH;

    private HeatMap() {}

    /**
     * @param id unique in the document, letters and digits
     * @param label what the picture shows, for those who can't see it
     */
    static String of(Table axes, String id, String label, IntFunction<Cell> cells) {
        HeatMap map = new HeatMap();
        map.draw(axes, id, label, cells);
        return map.svg.toString();
    }

    /**
     * A scale of colours from end to end, words below it.
     *
     * @param fill of 0 (left) to 1 (right)
     * @param labels at even distances
     */
    static String scale(DoubleFunction<Integer> fill, List<String> labels) {
        HeatMap scale = new HeatMap();
        scale.add(
                "<svg class=\"scale\" role=\"img\" aria-label=\"%s\" viewBox=\"0 0 %d 30\" preserveAspectRatio=\"xMinYMin\" font-family=\"Sheet\" fill=\"#1b1b1f\" xmlns=\"http://www.w3.org/2000/svg\">",
                escape("Colours: " + String.join(", ", labels)), SCALE_WIDE);
        for (int step = 0; step < SCALE_STEPS; step++) {
            double each = SCALE_WIDE / (double) SCALE_STEPS;
            scale.add(
                    "<rect x=\"%.1f\" y=\"0\" width=\"%.1f\" height=\"12\" fill=\"%s\"/>",
                    step * each, each + 0.5, Palette.hex(fill.apply(step / (SCALE_STEPS - 1.0))));
        }
        scale.add(
                "<rect x=\".5\" y=\".5\" width=\"%d\" height=\"11\" fill=\"none\" stroke=\"#8a8a94\"/>",
                SCALE_WIDE - 1);
        int last = labels.size() - 1;
        for (int i = 0; i <= last; i++) {
            scale.add(
                    "<text class=\"%s\" text-anchor=\"%s\" x=\"%d\" y=\"26\" font-size=\"12\">%s</text>",
                    i == 0 ? "start" : i == last ? "end" : "middle",
                    i == 0 ? "start" : i == last ? "end" : "middle",
                    i * SCALE_WIDE / last,
                    escape(labels.get(i)));
        }
        scale.svg.append("</svg>");
        return scale.svg.toString();
    }

    private void draw(Table axes, String id, String label, IntFunction<Cell> cells) {
        int speeds = axes.speed().size();
        int loads = axes.load().size();
        List<Cell> drawn = IntStream.range(0, axes.cells()).mapToObj(cells).toList();
        high = drawn.stream().allMatch(c -> c.below().isEmpty()) ? LOW : HIGH;
        int width = LEFT + speeds * WIDE + 4;
        int height = 4 + loads * high + BOTTOM;
        add(
                "<svg class=\"map\" role=\"img\" aria-label=\"%s\" viewBox=\"0 0 %d %d\" preserveAspectRatio=\"xMinYMin\" style=\"max-width:%dpx\" text-anchor=\"middle\" font-family=\"Sheet\" fill=\"#1b1b1f\" xmlns=\"http://www.w3.org/2000/svg\">",
                escape(label), width, height, width);
        add(
                "<defs><pattern id=\"%s-hatch\" width=\"7\" height=\"7\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\">"
                        + "<rect width=\"1.6\" height=\"7\" fill=\"#000\" fill-opacity=\".15\"/></pattern></defs>",
                id);
        for (int load = 0; load < loads; load++) {
            for (int speed = 0; speed < speeds; speed++) {
                drawCell(drawn.get(axes.cell(load, speed)), LEFT + speed * WIDE, 4 + (loads - 1 - load) * high, id);
            }
        }
        for (int load = 0; load < loads; load++) {
            for (int speed = 0; speed < speeds; speed++) {
                if (drawn.get(axes.cell(load, speed)).framed()) {
                    drawFrame(LEFT + speed * WIDE, 4 + (loads - 1 - load) * high);
                }
            }
        }
        drawAxes(axes, loads, speeds, width);
        svg.append("</svg>");
    }

    private void drawCell(Cell cell, int x, int y, String id) {
        String ink = Palette.ink(cell.fill());
        add(
                "<g><title>%s</title><rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"%s\" stroke=\"#c9c9c9\" stroke-width=\".6\"/>",
                escape(cell.tip()), x, y, WIDE, high, Palette.hex(cell.fill()));
        if (cell.hatched()) {
            add("<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"url(#%s-hatch)\"/>", x, y, WIDE, high, id);
        }
        boolean two = !cell.below().isEmpty();
        drawText(cell, cell.figure(), fitted(cell.figure(), cell.size()), x, y + (two ? 15 : high / 2 + 5), ink);
        drawText(cell, cell.below(), fitted(cell.below(), BELOW_SIZE), x, y + 26, ink);
        svg.append("</g>");
    }

    private void drawText(Cell cell, String text, double size, int x, int baseline, String ink) {
        if (text.isEmpty()) {
            return;
        }
        if (cell.hatched()) {
            drawHalo(cell, text, size, x, baseline);
        }
        add(
                "<text x=\"%d\" y=\"%d\" font-size=\"%s\" fill=\"%s\">%s</text>",
                x + WIDE / 2, baseline, Figures.trimmed(size, 1), ink, escape(text));
    }

    /** No larger than goes between the frames. */
    private static double fitted(String text, double size) {
        return Math.min(size, (WIDE - 2 * EDGE) / (Math.max(1, text.length()) * DIGIT_WIDE));
    }

    /** A patch without hatching behind a figure. */
    private void drawHalo(Cell cell, String text, double size, int x, int baseline) {
        int wide = Math.min(WIDE - 2, (int) Math.ceil(text.length() * size * DIGIT_WIDE) + 4);
        int tall = (int) Math.ceil(size);
        add(
                "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"%s\"/>",
                x + (WIDE - wide) / 2, baseline - tall + 1, wide, tall + 1, Palette.hex(cell.fill()));
    }

    /** Around the cell, on the line between it and its neighbours, so that its figures keep their place. */
    private void drawFrame(int x, int y) {
        add(
                "<rect class=\"frame\" x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"none\" stroke=\"#111\" stroke-width=\"%s\"/>",
                x, y, WIDE, high, FRAME);
        add("<path d=\"M%d %dh%dv%dz\" fill=\"#111\"/>", x + WIDE - MARK, y, MARK, MARK);
    }

    private void drawAxes(Table axes, int loads, int speeds, int width) {
        for (int load = 0; load < loads; load++) {
            add(
                    "<text class=\"axis end\" text-anchor=\"end\" x=\"%d\" y=\"%d\" font-size=\"12\">%s</text>",
                    LEFT - 6, 4 + (loads - 1 - load) * high + high / 2 + 4, tick(axes.load(), load));
        }
        for (int speed = 0; speed < speeds; speed++) {
            add(
                    "<text class=\"axis\" x=\"%d\" y=\"%d\" font-size=\"12\">%s</text>",
                    LEFT + speed * WIDE + WIDE / 2, 4 + loads * high + 16, tick(axes.speed(), speed));
        }
        add(
                "<text class=\"axis\" x=\"%d\" y=\"%d\" font-size=\"12\">engine speed, rpm</text>",
                LEFT + (width - LEFT) / 2, 4 + loads * high + 32);
        add(
                "<text class=\"axis\" transform=\"translate(12 %d) rotate(-90)\" font-size=\"12\">%s, %s</text>",
                4 + loads * high / 2,
                axes.load().kind().words(),
                axes.load().kind().unit().symbol());
    }

    private static String tick(Axis axis, int index) {
        return Figures.trimmed(axis.at(index), 2);
    }

    private void add(String format, Object... arguments) {
        svg.append(String.format(Locale.ROOT, format, arguments));
    }

    static String escape(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }
}
