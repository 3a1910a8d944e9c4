package fuelwright.ui.plot;

import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Where each cell of a table is drawn.
 *
 * @param speeds number of engine speeds
 * @param loads number of loads
 * @param view which way it lies
 */
public record GridShape(int speeds, int loads, View view) {

    /** Ways in which a table can lie. */
    public enum View {
        /** As on a chart: engine speed left to right, load bottom to top. */
        CHART,
        /** As in a file with one row for each engine speed: load left to right, engine speed top to bottom. */
        SPEED_DOWN,
        /** As in a file with one row for each load: engine speed left to right, load top to bottom. */
        LOAD_DOWN
    }

    public int columns() {
        return view == View.SPEED_DOWN ? loads : speeds;
    }

    public int rows() {
        return view == View.SPEED_DOWN ? speeds : loads;
    }

    /** Column from the left. */
    public int column(int cell) {
        return view == View.SPEED_DOWN ? cell / speeds : cell % speeds;
    }

    /** Row from the top. */
    public int row(int cell) {
        switch (view) {
            case SPEED_DOWN:
                return cell % speeds;
            case LOAD_DOWN:
                return cell / speeds;
            default:
                return loads - 1 - cell / speeds;
        }
    }

    /** The cell there; −1 outside. */
    public int cell(int column, int row) {
        if (column < 0 || row < 0 || column >= columns() || row >= rows()) {
            return -1;
        }
        switch (view) {
            case SPEED_DOWN:
                return column * speeds + row;
            case LOAD_DOWN:
                return row * speeds + column;
            default:
                return (loads - 1 - row) * speeds + column;
        }
    }

    /** Every cell of the rectangle that two cells span. */
    public SortedSet<Integer> between(int one, int other) {
        SortedSet<Integer> cells = new TreeSet<>();
        int right = Math.max(column(one), column(other));
        int bottom = Math.max(row(one), row(other));
        for (int x = Math.min(column(one), column(other)); x <= right; x++) {
            for (int y = Math.min(row(one), row(other)); y <= bottom; y++) {
                cells.add(cell(x, y));
            }
        }
        return cells;
    }

    /** The neighbour in that direction; the cell itself at the edge. */
    public int moved(int cell, int right, int down) {
        int next = cell(column(cell) + right, row(cell) + down);
        return next < 0 ? cell : next;
    }
}
