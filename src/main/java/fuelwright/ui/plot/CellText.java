package fuelwright.ui.plot;

import fuelwright.ui.theme.Fonts;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Where a text stands in its cell, and how large: between the frames, and beside the corner that marks a Stop. Measured from the cell's left
 * upper corner.
 *
 * @param middle its middle, pixels from the left
 * @param size of its font, pixels
 * @param width that it takes, pixels
 */
record CellText(double middle, double size, double width) {

    /** What a frame and a little air take at either side. */
    static final double EDGE = 3;

    private static final double AIR = 1;
    /** Lower cells have no room for a text that goes around the corner. */
    private static final double LOW = 32;
    /** How far digits reach from their middle, of their size. */
    private static final double HALF_DIGIT = 0.37;

    private static final double LEAST = 5.5;
    private static final double MEASURED_AT = 100;
    private static final Map<Integer, Double> PLAIN = new ConcurrentHashMap<>();
    private static final Map<Integer, Double> BOLD = new ConcurrentHashMap<>();

    /**
     * @param size wanted
     * @param middleY its middle, from the cell's upper edge
     * @param corner size of the mark in the lower right corner; 0 without
     */
    static CellText of(
            String text,
            double size,
            boolean bold,
            double middleY,
            double cellWidth,
            double cellHeight,
            double corner) {
        double each = width(text, bold);
        double reach = corner <= 0 ? 0 : corner - (cellHeight - middleY - HALF_DIGIT * size) + AIR;
        double right = cellWidth - Math.max(EDGE, reach);
        double fitted = Math.max(LEAST, Math.min(size, (right - EDGE) / each));
        double width = fitted * each;
        double middle = corner > 0 && cellHeight < LOW
                ? (EDGE + right) / 2
                : Math.min(cellWidth / 2, Math.max(EDGE + width / 2, right - width / 2));
        return new CellText(middle, fitted, width);
    }

    /** How wide a text is, of its size. Measured once for each character: thousands of figures are drawn at every change. */
    private static double width(String text, boolean bold) {
        return Math.max(
                0.1,
                text.chars()
                        .mapToDouble(c -> (bold ? BOLD : PLAIN)
                                .computeIfAbsent(
                                        c,
                                        one -> Fonts.width(Character.toString(one), Fonts.fitted(MEASURED_AT, bold))
                                                / MEASURED_AT))
                        .sum());
    }
}
