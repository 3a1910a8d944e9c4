package fuelwright.handover;

import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.Locale;
import java.util.function.IntFunction;

/**
 * A table as an SVG picture: engine speed left to right, load bottom to top. Each cell has a fill, a figure and, if wanted, a smaller one
 * below it; hatching where it is inferred; a thick dark frame with a marked corner for a Stop caution, never colour alone.
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
    private static final int HIGH = 34;
    private static final int LEFT = 58;
    private static final int BOTTOM = 40;
    private static final int MARK = 12;
    /** How big the figure below is. */
    private static final int BELOW_SIZE = 10;
    /** How wide a character is at most, of its size. */
    private static final double DIGIT_WIDE = 0.62;

    /** The size of a sure figure. */
    static final double FULL_SIZE = 13;

    private final StringBuilder svg = new StringBuilder();

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

    private void draw(Table axes, String id, String label, IntFunction<Cell> cells) {
        int speeds = axes.speed().size();
        int loads = axes.load().size();
        int width = LEFT + speeds * WIDE + 4;
        int height = 4 + loads * HIGH + BOTTOM;
        add(
                "<svg class=\"map\" role=\"img\" aria-label=\"%s\" viewBox=\"0 0 %d %d\" preserveAspectRatio=\"xMinYMin\" style=\"max-width:%dpx\" text-anchor=\"middle\" font-family=\"Sheet\" fill=\"#1b1b1f\" xmlns=\"http://www.w3.org/2000/svg\">",
                escape(label), width, height, width);
        add(
                "<defs><pattern id=\"%s-hatch\" width=\"7\" height=\"7\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\">"
                        + "<rect width=\"1.3\" height=\"7\" fill=\"#000\" fill-opacity=\".28\"/></pattern></defs>",
                id);
        for (int load = 0; load < loads; load++) {
            for (int speed = 0; speed < speeds; speed++) {
                Cell cell = cells.apply(axes.cell(load, speed));
                drawCell(cell, LEFT + speed * WIDE, 4 + (loads - 1 - load) * HIGH, id);
            }
        }
        for (int load = 0; load < loads; load++) {
            for (int speed = 0; speed < speeds; speed++) {
                if (cells.apply(axes.cell(load, speed)).framed()) {
                    drawFrame(LEFT + speed * WIDE, 4 + (loads - 1 - load) * HIGH);
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
                escape(cell.tip()), x, y, WIDE, HIGH, Palette.hex(cell.fill()));
        if (cell.hatched()) {
            add("<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"url(#%s-hatch)\"/>", x, y, WIDE, HIGH, id);
        }
        boolean two = !cell.below().isEmpty();
        if (cell.hatched()) {
            drawHalo(cell, cell.figure(), cell.size(), x, y + (two ? 16 : 22));
            drawHalo(cell, cell.below(), BELOW_SIZE, x, y + 29);
        }
        add(
                "<text x=\"%d\" y=\"%d\" font-size=\"%s\" fill=\"%s\">%s</text>",
                x + WIDE / 2, y + (two ? 16 : 22), Figures.trimmed(cell.size(), 1), ink, escape(cell.figure()));
        if (two) {
            add(
                    "<text x=\"%d\" y=\"%d\" font-size=\"%s\" fill=\"%s\">%s</text>",
                    x + WIDE / 2, y + 29, BELOW_SIZE, ink, escape(cell.below()));
        }
        svg.append("</g>");
    }

    /** A patch without hatching behind a figure. */
    private void drawHalo(Cell cell, String text, double size, int x, int baseline) {
        if (text.isEmpty()) {
            return;
        }
        int wide = Math.min(WIDE - 2, (int) Math.ceil(text.length() * size * DIGIT_WIDE) + 4);
        int high = (int) Math.ceil(size);
        add(
                "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"%s\"/>",
                x + (WIDE - wide) / 2, baseline - high + 1, wide, high + 1, Palette.hex(cell.fill()));
    }

    private void drawFrame(int x, int y) {
        add(
                "<rect x=\"%s\" y=\"%s\" width=\"%d\" height=\"%d\" fill=\"none\" stroke=\"#111\" stroke-width=\"3\"/>",
                x + 1.5, y + 1.5, WIDE - 3, HIGH - 3);
        add("<path d=\"M%d %dh%dv%dz\" fill=\"#111\"/>", x + WIDE - MARK, y, MARK, MARK);
    }

    private void drawAxes(Table axes, int loads, int speeds, int width) {
        for (int load = 0; load < loads; load++) {
            add(
                    "<text class=\"axis end\" text-anchor=\"end\" x=\"%d\" y=\"%d\" font-size=\"12\">%s</text>",
                    LEFT - 6, 4 + (loads - 1 - load) * HIGH + HIGH / 2 + 4, tick(axes.load(), load));
        }
        for (int speed = 0; speed < speeds; speed++) {
            add(
                    "<text class=\"axis\" x=\"%d\" y=\"%d\" font-size=\"12\">%s</text>",
                    LEFT + speed * WIDE + WIDE / 2, 4 + loads * HIGH + 16, tick(axes.speed(), speed));
        }
        add(
                "<text class=\"axis\" x=\"%d\" y=\"%d\" font-size=\"12\">engine speed, rpm</text>",
                LEFT + (width - LEFT) / 2, 4 + loads * HIGH + 34);
        add(
                "<text class=\"axis\" transform=\"translate(12 %d) rotate(-90)\" font-size=\"12\">%s, %s</text>",
                4 + loads * HIGH / 2,
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
