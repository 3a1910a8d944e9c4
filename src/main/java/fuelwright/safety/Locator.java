package fuelwright.safety;

import fuelwright.table.Table;

/**
 * Looks a table up at places that follow one another closely, as the readings of a ride do: it begins where it left off. The same results
 * as {@link Table#value}, bilinear and clamped at the edges. Holds a cursor: not thread-safe.
 */
final class Locator {

    private final double[] speeds;
    private final double[] loads;
    private final double[] values;
    private int i;
    private int j;

    Locator(Table table) {
        speeds = table.speed().toArray();
        loads = table.load().toArray();
        values = table.toArray();
    }

    /** The interpolated figure; NaN where the load is NaN. */
    double value(double speedRpm, double load) {
        seek(speedRpm, load);
        double f = fraction(speeds, i, speedRpm);
        double g = fraction(loads, j, load);
        int cell = j * speeds.length + i;
        int above = cell + speeds.length;
        return (1 - g) * ((1 - f) * values[cell] + f * values[cell + 1])
                + g * ((1 - f) * values[above] + f * values[above + 1]);
    }

    /** The nearest cell by index; where the load is NaN, that of the highest load. */
    int nearest(double speedRpm, double load) {
        seek(speedRpm, load);
        int x = fraction(speeds, i, speedRpm) < 0.5 ? i : i + 1;
        int y = fraction(loads, j, load) < 0.5 ? j : j + 1;
        return y * speeds.length + x;
    }

    private void seek(double speedRpm, double load) {
        i = seek(speeds, i, speedRpm);
        j = seek(loads, j, load);
    }

    private static int seek(double[] breakpoints, int from, double x) {
        int k = from;
        while (k > 0 && x < breakpoints[k]) {
            k--;
        }
        while (k < breakpoints.length - 2 && !(x < breakpoints[k + 1])) {
            k++;
        }
        return k;
    }

    private static double fraction(double[] breakpoints, int k, double x) {
        double f = (x - breakpoints[k]) / (breakpoints[k + 1] - breakpoints[k]);
        return f < 0 ? 0 : f > 1 ? 1 : f;
    }
}
