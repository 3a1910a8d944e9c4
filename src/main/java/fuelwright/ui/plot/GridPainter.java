package fuelwright.ui.plot;

import fuelwright.ui.theme.Colours;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Palette;
import java.util.Set;
import java.util.function.IntPredicate;
import javafx.geometry.VPos;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** Draws a {@link HeatMap}: fills, hatching, figures, the line around high load, Stop frames, the selection, the axes. */
final class GridPainter {

    static final double LEFT = 62;
    static final double BOTTOM = 44;
    static final double TOP = 4;
    static final double RIGHT = 4;
    private static final double GAP = 1;
    /** Smaller cells have no gaps: there would be little left of their colour. */
    private static final double LEAST_PARTED = 8;
    /** A Stop frame lies in the gap between cells and takes this from either side of their border. */
    private static final double FRAME = 3;

    private static final double CORNER = 9;
    /** How much of a cell a figure may fill where there is room, and how large it gets. */
    private static final double ROOMY_HEIGHT = 0.36;

    private static final double ROOMY_WIDTH = 0.24;
    private static final double LARGEST = 22;
    /** The small figure of the one above it. */
    private static final double BELOW_OF_FIGURE = 0.7;

    private static final double HATCH_INK = 0.15;
    /** The most that a figure, and the small one below it, take of a cell's height. */
    private static final double FIGURE_SHARE = 0.46;

    private static final double BELOW_SHARE = 0.36;
    private static final double LEAST_SIZE = 8;
    /** In narrower cells no figure could be read: then the map shows only where. */
    private static final double LEAST_WIDTH = 26;

    private final Ink g;
    private final HeatMap map;
    private final GridShape shape;
    private final Palette palette;
    private final double cellWidth;
    private final double cellHeight;

    GridPainter(Ink g, HeatMap map, GridShape shape, Palette palette, double cellWidth, double cellHeight) {
        this.g = g;
        this.map = map;
        this.shape = shape;
        this.palette = palette;
        this.cellWidth = cellWidth;
        this.cellHeight = cellHeight;
    }

    void paint(int selected, Set<Integer> block, int hovered, boolean focused) {
        for (int cell = 0; cell < map.cells().size(); cell++) {
            fill(cell);
        }
        for (int cell = 0; cell < map.cells().size(); cell++) {
            figures(cell);
        }
        axes(selected);
        if (hovered >= 0 && hovered != selected) {
            frame(hovered, palette.muted(), 1, 0.5);
        }
        if (!block.isEmpty()) {
            outline(block, palette.surface(), 6);
            outline(block, palette.accent(), 3);
        }
        for (int cell = 0; cell < map.cells().size(); cell++) {
            stopFrame(cell);
        }
        // Thin, in the gap between cells: it is seen between Stop frames, and they beside it.
        highLoadLine();
        if (selected >= 0 && block.isEmpty()) {
            selection(selected, focused);
            stopFrame(selected);
        }
    }

    private double x(int cell) {
        return LEFT + shape.column(cell) * cellWidth;
    }

    private double y(int cell) {
        return TOP + shape.row(cell) * cellHeight;
    }

    private void fill(int cell) {
        HeatCell c = map.cells().get(cell);
        boolean tiny = Math.min(cellWidth, cellHeight) < LEAST_PARTED;
        double gap = tiny ? 0 : GAP;
        double x = x(cell) + gap;
        double y = y(cell) + gap;
        double w = cellWidth - 2 * gap;
        double h = cellHeight - 2 * gap;
        g.setFill(c.fill());
        g.fillRoundRect(x, y, w, h, tiny ? 0 : 5, tiny ? 0 : 5);
        if (c.hatched()) {
            Color ink = Colours.inkOn(c.fill());
            Hatch.paint(g, x, y, w, h, 7, Colours.mix(c.fill(), ink, HATCH_INK));
        }
    }

    private void figures(int cell) {
        HeatCell c = map.cells().get(cell);
        if (c.figure().isEmpty() || cellWidth < LEAST_WIDTH) {
            return;
        }
        g.setTextAlign(TextAlignment.CENTER);
        g.setTextBaseline(VPos.CENTER);
        g.setFill(Colours.inkOn(c.fill()));
        text(c.figure(), cell, figure(c, cellWidth, cellHeight), figureY(c, cellWidth, cellHeight), isStrong(c));
        if (hasRoomBelow(c, cellHeight)) {
            text(c.below(), cell, below(c, cellWidth, cellHeight), belowY(c, cellWidth, cellHeight), false);
        }
        mark(c, x(cell), y(cell));
    }

    private void text(String text, int cell, CellText place, double middleY, boolean bold) {
        g.setFont(Fonts.fitted(place.size(), bold));
        g.fillText(text, x(cell) + place.middle(), y(cell) + middleY);
    }

    /** Where a cell's figure stands. */
    static CellText figure(HeatCell c, double cellWidth, double cellHeight) {
        return CellText.of(
                c.figure(),
                figureSize(c, cellWidth, cellHeight),
                isStrong(c),
                figureY(c, cellWidth, cellHeight),
                cellWidth,
                cellHeight,
                c.stop() ? cornerSize(cellWidth, cellHeight) : 0);
    }

    /** Where the small figure below it stands. */
    static CellText below(HeatCell c, double cellWidth, double cellHeight) {
        return CellText.of(
                c.below(),
                belowSize(c, cellWidth, cellHeight),
                false,
                belowY(c, cellWidth, cellHeight),
                cellWidth,
                cellHeight,
                c.stop() ? cornerSize(cellWidth, cellHeight) : 0);
    }

    private static boolean isStrong(HeatCell c) {
        return c.weight() == HeatCell.Weight.STRONG;
    }

    /** The middle of a cell's figure, from its upper edge. */
    static double figureY(HeatCell c, double cellWidth, double cellHeight) {
        return hasRoomBelow(c, cellHeight)
                ? cellHeight / 2 - Math.min(belowSize(c, cellWidth, cellHeight) * 0.62, cellHeight / 5)
                : cellHeight / 2;
    }

    /** The middle of the small figure, from the cell's upper edge. */
    static double belowY(HeatCell c, double cellWidth, double cellHeight) {
        double inside = cellHeight / 2 - belowSize(c, cellWidth, cellHeight) / 2 - FRAME;
        double wanted = Math.min(figureSize(c, cellWidth, cellHeight) * 0.6, cellHeight / 3.6);
        return cellHeight / 2 + Math.min(wanted, inside);
    }

    /** Whether the small figure is drawn too. */
    static boolean hasRoomBelow(HeatCell c, double cellHeight) {
        return !c.below().isEmpty() && cellHeight >= 25;
    }

    /** The size of a cell's figure, pixels: that of text where cells are small, more where they have room. */
    static double figureSize(HeatCell c, double cellWidth, double cellHeight) {
        double weight = sizeOf(c.weight());
        double size = Math.min(Fonts.grown(weight), cellWidth / 3.8);
        double plain = hasRoomBelow(c, cellHeight) ? Math.min(size, FIGURE_SHARE * cellHeight) : size;
        double roomy = Math.min(Fonts.grown(LARGEST), Math.min(ROOMY_HEIGHT * cellHeight, ROOMY_WIDTH * cellWidth));
        return Math.max(LEAST_SIZE, Math.max(plain, roomy * weight / sizeOf(HeatCell.Weight.STRONG)));
    }

    /** The size of the small figure below, pixels. */
    static double belowSize(HeatCell c, double cellWidth, double cellHeight) {
        double size = Math.min(Fonts.grown(11), cellWidth / 4.3);
        double plain = Math.min(size, BELOW_SHARE * cellHeight);
        return Math.max(LEAST_SIZE, Math.max(plain, BELOW_OF_FIGURE * figureSize(c, cellWidth, cellHeight)));
    }

    private static double sizeOf(HeatCell.Weight weight) {
        switch (weight) {
            case STRONG:
                return 14;
            case NORMAL:
                return 13;
            default:
                return 11.5;
        }
    }

    /** A square in the upper left corner: filled for held, open for set, with a mark of exclamation where the figure is far from all that is known. */
    private void mark(HeatCell c, double x, double y) {
        if (c.mark() == HeatCell.Mark.NONE) {
            return;
        }
        g.setFill(Colours.inkOn(c.fill()));
        g.setStroke(Colours.inkOn(c.fill()));
        g.setLineWidth(1.5);
        if (c.mark() == HeatCell.Mark.HELD) {
            g.fillRect(x + 3, y + 3, 6, 6);
        } else {
            g.strokeRect(x + 3.5, y + 3.5, 5, 5);
        }
        if (c.mark() == HeatCell.Mark.FAR) {
            g.setFont(Fonts.fitted(Math.max(LEAST_SIZE, Math.min(13, cellHeight / 2.4)), true));
            g.setTextAlign(TextAlignment.LEFT);
            g.setTextBaseline(VPos.TOP);
            g.fillText("!", x + 11, y + 1);
        }
    }

    /** Drawn last, where a Stop concerns the cell: nothing but the thin line around high load may lie over it. */
    private void stopFrame(int cell) {
        if (!map.cells().get(cell).stop()) {
            return;
        }
        frame(cell, palette.stop(), 3, 0.5);
        // Low in the cell, where figures leave the corner free.
        double x = x(cell) + cellWidth;
        double y = y(cell) + cellHeight;
        double size = cornerSize(cellWidth, cellHeight);
        g.setFill(palette.stop());
        g.fillPolygon(new double[] {x - size, x, x}, new double[] {y, y, y - size}, 3);
    }

    /** What the mark of a Stop takes of a cell's corner, pixels. */
    static double cornerSize(double cellWidth, double cellHeight) {
        return Math.min(CORNER, Math.min(cellWidth / 4, cellHeight / 2.5)) + 1;
    }

    /** Around the cell rather than in it, so that it is seen around a Stop frame too. */
    private void selection(int cell, boolean focused) {
        frame(cell, palette.surface(), 5, -2.5);
        frame(cell, focused ? palette.accent() : palette.selection(), 3, -2.5);
    }

    /** One line around all of them. */
    private void outline(Set<Integer> block, Color color, double width) {
        g.setStroke(color);
        g.setLineWidth(width);
        for (int cell : block) {
            if (cell < map.cells().size()) {
                edges(cell, block::contains, true);
            }
        }
    }

    private void frame(int cell, Color color, double width, double inset) {
        g.setStroke(color);
        g.setLineWidth(width);
        g.strokeRoundRect(x(cell) + inset, y(cell) + inset, cellWidth - 2 * inset, cellHeight - 2 * inset, 6, 6);
    }

    private void highLoadLine() {
        g.setStroke(palette.ink());
        g.setLineWidth(1.5);
        for (int cell = 0; cell < map.cells().size(); cell++) {
            if (!map.cells().get(cell).highLoad()) {
                continue;
            }
            edges(cell, c -> map.cells().get(c).highLoad(), false);
        }
    }

    /**
     * The borders between a cell and those that aren't inside with it.
     *
     * @param rim whether the rim of the grid is such a border
     */
    private void edges(int cell, IntPredicate inside, boolean rim) {
        double x = x(cell);
        double y = y(cell);
        edge(cell, -1, 0, inside, rim, x, y, x, y + cellHeight);
        edge(cell, 1, 0, inside, rim, x + cellWidth, y, x + cellWidth, y + cellHeight);
        edge(cell, 0, -1, inside, rim, x, y, x + cellWidth, y);
        edge(cell, 0, 1, inside, rim, x, y + cellHeight, x + cellWidth, y + cellHeight);
    }

    private void edge(
            int cell,
            int right,
            int down,
            IntPredicate inside,
            boolean rim,
            double x1,
            double y1,
            double x2,
            double y2) {
        int next = shape.moved(cell, right, down);
        if (next == cell ? rim : !inside.test(next)) {
            g.strokeLine(x1, y1, x2, y2);
        }
    }

    private void axes(int selected) {
        columnAxis(g, selected, (LEFT + LEFT + shape.columns() * cellWidth) / 2);
        rowAxis(g, selected, (TOP + bottom()) / 2);
    }

    /** Where the cells end, pixels from the top. */
    double bottom() {
        return TOP + shape.rows() * cellHeight;
    }

    /** The colour behind the map. */
    void ground(Ink ink, double width, double height) {
        ink.setFill(palette.surface());
        ink.fillRect(0, 0, width, height);
    }

    /** Breakpoints below the columns, and their title around {@code titleX}. */
    void columnAxis(Ink ink, int selected, double titleX) {
        boolean speedDown = shape.view() == GridShape.View.SPEED_DOWN;
        int step = cellWidth < LEAST_WIDTH ? (int) Math.ceil(38 / cellWidth) : 1;
        ink.setTextBaseline(VPos.CENTER);
        ink.setTextAlign(TextAlignment.CENTER);
        for (int column = 0; column < shape.columns(); column += step) {
            chooseLabel(ink, selected >= 0 && shape.column(selected) == column);
            ink.fillText(
                    (speedDown ? map.loads() : map.speeds()).get(column),
                    LEFT + (column + 0.5) * cellWidth,
                    bottom() + 12);
        }
        chooseTitle(ink);
        ink.fillText(speedDown ? map.loadTitle() : map.speedTitle(), titleX, bottom() + 32);
    }

    /** Breakpoints left of the rows, and their title around {@code titleY}. */
    void rowAxis(Ink ink, int selected, double titleY) {
        boolean speedDown = shape.view() == GridShape.View.SPEED_DOWN;
        int step = (int) Math.max(1, Math.ceil(13 / cellHeight));
        ink.setTextBaseline(VPos.CENTER);
        ink.setTextAlign(TextAlignment.RIGHT);
        for (int row = 0; row < shape.rows(); row += step) {
            int cell = shape.cell(0, row);
            chooseLabel(ink, selected >= 0 && shape.row(selected) == row);
            String label = speedDown
                    ? map.speeds().get(cell % shape.speeds())
                    : map.loads().get(cell / shape.speeds());
            ink.fillText(label, LEFT - 8, TOP + (row + 0.5) * cellHeight);
        }
        chooseTitle(ink);
        ink.save();
        ink.translate(9, titleY);
        ink.rotate(-90);
        ink.fillText(speedDown ? map.speedTitle() : map.loadTitle(), 0, 0);
        ink.restore();
    }

    private void chooseLabel(Ink ink, boolean chosen) {
        double size = cellWidth < LEAST_WIDTH ? 11 : Math.max(9, Math.min(Fonts.grown(12), cellWidth / 3.6));
        ink.setFill(chosen ? palette.ink() : palette.muted());
        ink.setFont(Fonts.fitted(size, chosen));
    }

    private void chooseTitle(Ink ink) {
        ink.setFill(palette.muted());
        ink.setFont(Fonts.text(12, false));
        ink.setTextAlign(TextAlignment.CENTER);
    }
}
