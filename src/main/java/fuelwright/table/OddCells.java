package fuelwright.table;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Cells that stand alone among their neighbours, as a slipped decimal sign leaves them: farther from the median of the up to eight cells
 * around than {@value #FUEL_FACTOR} times, for a trim {@value #TRIM_DISTANCE} points, for a mixture {@value #MIXTURE_FACTOR} times
 * (judgement, no source; the steepest cells of the sample's and the simulator's tables differ by up to 1.8 times). At an edge that median
 * lies to one side, so there a cell must also stand away from its neighbours along the edge, half as far.
 */
public final class OddCells {

    private static final double FUEL_FACTOR = 3;
    private static final double MIXTURE_FACTOR = 1.5;
    private static final double TRIM_DISTANCE = 25;

    private OddCells() {}

    /**
     * A cell that stands alone.
     *
     * @param around the median of the cells around it
     */
    public record Odd(int cell, double around) {

        /** What is odd, without its place. */
        public String words(Table table) {
            return Numerals.shortest(table.at(cell)) + " stands alone among cells of about " + rounded(around);
        }

        private static String rounded(double value) {
            double size = Math.abs(value);
            return String.format(Locale.ROOT, size >= 10 ? "%.0f" : size >= 1 ? "%.1f" : "%.2f", value);
        }
    }

    /** Those of a table of fuel or mixture, in cell order; none of any other. */
    public static List<Odd> of(Table table) {
        List<Odd> all = new ArrayList<>();
        if (!table.quantity().isFuel() && !table.quantity().isMixture()) {
            return all;
        }
        for (int cell = 0; cell < table.cells(); cell++) {
            double around = around(table, cell);
            double away = away(table.quantity(), table.at(cell), around);
            if (Math.abs(away) > 1 && standsOutAlongItsEdges(table, cell, away)) {
                all.add(new Odd(cell, around));
            }
        }
        return all;
    }

    /** How far a value lies from another, as a share of what is let pass: 1 is just at its limit, negative is below. */
    private static double away(Quantity quantity, double value, double from) {
        if (quantity == Quantity.FUEL_TRIM) {
            return (value - from) / TRIM_DISTANCE;
        }
        return Math.log(value / from) / Math.log(quantity.isMixture() ? MIXTURE_FACTOR : FUEL_FACTOR);
    }

    private static double around(Table table, int cell) {
        int load = table.loadIndex(cell);
        int speed = table.speedIndex(cell);
        double[] all = new double[8];
        int count = 0;
        for (int j = Math.max(0, load - 1); j <= Math.min(table.load().size() - 1, load + 1); j++) {
            for (int i = Math.max(0, speed - 1); i <= Math.min(table.speed().size() - 1, speed + 1); i++) {
                if (j != load || i != speed) {
                    all[count++] = table.at(table.cell(j, i));
                }
            }
        }
        Arrays.sort(all, 0, count);
        return (all[(count - 1) / 2] + all[count / 2]) / 2;
    }

    private static boolean standsOutAlongItsEdges(Table table, int cell, double away) {
        int load = table.loadIndex(cell);
        int speed = table.speedIndex(cell);
        boolean out = true;
        if (load == 0 || load == table.load().size() - 1) {
            out = standsOut(table, cell, away, load, speed - 1) && standsOut(table, cell, away, load, speed + 1);
        }
        if (speed == 0 || speed == table.speed().size() - 1) {
            out = out && standsOut(table, cell, away, load - 1, speed) && standsOut(table, cell, away, load + 1, speed);
        }
        return out;
    }

    /** To the same side as it is of the median, half as far at least; true beyond the table. */
    private static boolean standsOut(Table table, int cell, double away, int load, int speed) {
        if (load < 0
                || load >= table.load().size()
                || speed < 0
                || speed >= table.speed().size()) {
            return true;
        }
        return away(table.quantity(), table.at(cell), table.at(table.cell(load, speed))) * Math.signum(away) > 0.5;
    }
}
