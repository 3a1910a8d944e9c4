package fuelwright.table;

import java.util.Collection;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;

/**
 * Editing operations on the cells of a table. Pure: each gives a new table, cells that aren't named stay as they are. Cells are numbered
 * as in {@link Table}; values in the table's own unit.
 *
 * <p>{@link #betweenCorners}: bilinear between the four corners of the block, at the breakpoints' own distances, so a surface that is a
 * plane over both axes comes out as that plane. {@link #betweenEdges}: the patch that takes over all four edges (Coons' patch, S. A. Coons,
 * Surfaces for computer-aided design of space forms, MIT 1967, from memory): the sum of both linear blends between opposite edges less the
 * bilinear blend of the corners. {@link #soften}: half the cell itself and half the mean, over the axes on which it has two neighbours, of
 * the straight line between those two at the cell's own breakpoint; neighbours weigh by nearness, and a plane stays as it is.
 */
public final class TableEdit {

    private TableEdit() {}

    /** Every named cell through a function of its value. */
    public static Table each(Table table, Collection<Integer> cells, DoubleUnaryOperator change) {
        double[] values = table.toArray();
        for (int cell : cells) {
            values[cell] = Numerals.tidy(change.applyAsDouble(values[cell]));
        }
        return table.withValues(values);
    }

    /** All of them at this value. */
    public static Table fill(Table table, Collection<Integer> cells, double value) {
        return each(table, cells, v -> value);
    }

    /** All of them times a factor. */
    public static Table scale(Table table, Collection<Integer> cells, double factor) {
        return each(table, cells, v -> v * factor);
    }

    /** This much more in all of them. */
    public static Table add(Table table, Collection<Integer> cells, double amount) {
        return each(table, cells, v -> v + amount);
    }

    /** The rectangle around the named cells. */
    public static SortedSet<Integer> block(Table table, Collection<Integer> cells) {
        Span span = Span.around(table, cells);
        SortedSet<Integer> all = new TreeSet<>();
        for (int load = span.lowLoad; load <= span.highLoad; load++) {
            for (int speed = span.lowSpeed; speed <= span.highSpeed; speed++) {
                all.add(table.cell(load, speed));
            }
        }
        return all;
    }

    /** The rectangle around the named cells, drawn anew from its corners. */
    public static Table betweenCorners(Table table, Collection<Integer> cells) {
        Span span = Span.around(table, cells);
        double[] values = table.toArray();
        for (int cell : block(table, cells)) {
            values[cell] = Numerals.tidy(span.corners(table, cell));
        }
        return table.withValues(values);
    }

    /** The inside of the rectangle around the named cells, drawn anew from its edges. */
    public static Table betweenEdges(Table table, Collection<Integer> cells) {
        Span span = Span.around(table, cells);
        double[] values = table.toArray();
        for (int cell : block(table, cells)) {
            int load = table.loadIndex(cell);
            int speed = table.speedIndex(cell);
            double f = span.speedShare(table, speed);
            double g = span.loadShare(table, load);
            double along = (1 - f) * table.at(table.cell(load, span.lowSpeed))
                    + f * table.at(table.cell(load, span.highSpeed));
            double up = (1 - g) * table.at(table.cell(span.lowLoad, speed))
                    + g * table.at(table.cell(span.highLoad, speed));
            values[cell] = Numerals.tidy(along + up - span.corners(table, cell));
        }
        return table.withValues(values);
    }

    /** The named cells moved halfway to what their neighbours say. */
    public static Table soften(Table table, Collection<Integer> cells) {
        double[] values = table.toArray();
        for (int cell : cells) {
            int load = table.loadIndex(cell);
            int speed = table.speedIndex(cell);
            double sum = 0;
            int lines = 0;
            if (speed > 0 && speed < table.speed().size() - 1) {
                sum += straight(
                        table.speed(),
                        speed,
                        table.at(table.cell(load, speed - 1)),
                        table.at(table.cell(load, speed + 1)));
                lines++;
            }
            if (load > 0 && load < table.load().size() - 1) {
                sum += straight(
                        table.load(),
                        load,
                        table.at(table.cell(load - 1, speed)),
                        table.at(table.cell(load + 1, speed)));
                lines++;
            }
            if (lines > 0) {
                values[cell] = Numerals.tidy((table.at(cell) + sum / lines) / 2);
            }
        }
        return table.withValues(values);
    }

    private static double straight(Axis axis, int index, double low, double high) {
        double share = (axis.at(index) - axis.at(index - 1)) / (axis.at(index + 1) - axis.at(index - 1));
        return (1 - share) * low + share * high;
    }

    /** A block by its first and last breakpoints, both included. */
    private record Span(int lowSpeed, int highSpeed, int lowLoad, int highLoad) {

        static Span around(Table table, Collection<Integer> cells) {
            if (cells.isEmpty()) {
                throw new IllegalArgumentException("cells must not be empty");
            }
            return new Span(
                    cells.stream().mapToInt(table::speedIndex).min().orElseThrow(),
                    cells.stream().mapToInt(table::speedIndex).max().orElseThrow(),
                    cells.stream().mapToInt(table::loadIndex).min().orElseThrow(),
                    cells.stream().mapToInt(table::loadIndex).max().orElseThrow());
        }

        double speedShare(Table table, int speed) {
            return share(table.speed(), speed, lowSpeed, highSpeed);
        }

        double loadShare(Table table, int load) {
            return share(table.load(), load, lowLoad, highLoad);
        }

        private static double share(Axis axis, int index, int low, int high) {
            return low == high ? 0 : (axis.at(index) - axis.at(low)) / (axis.at(high) - axis.at(low));
        }

        double corners(Table table, int cell) {
            double f = speedShare(table, table.speedIndex(cell));
            double g = loadShare(table, table.loadIndex(cell));
            return (1 - g)
                            * ((1 - f) * table.at(table.cell(lowLoad, lowSpeed))
                                    + f * table.at(table.cell(lowLoad, highSpeed)))
                    + g
                            * ((1 - f) * table.at(table.cell(highLoad, lowSpeed))
                                    + f * table.at(table.cell(highLoad, highSpeed)));
        }
    }
}
