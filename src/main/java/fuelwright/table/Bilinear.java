package fuelwright.table;

/**
 * Bilinear interpolation on a rectilinear grid, clamped at the edges. With position (i + f, j + g) between breakpoints, the four
 * cells (i, j), (i + 1, j), (i, j + 1), (i + 1, j + 1) weigh (1 − f)(1 − g), f(1 − g), (1 − f)g, fg: they are never negative and sum to
 * one. O(log n) per point.
 */
public final class Bilinear {

    private Bilinear() {}

    /**
     * The four cells around a point and their weights.
     *
     * @param cells length 4, modified: cell numbers in {@link Table} order; may repeat at an edge
     * @param weights length 4, modified: non-negative, sum 1
     */
    public static void locate(Axis speed, Axis load, double speedRpm, double loadValue, int[] cells, double[] weights) {
        double p = speed.position(speedRpm);
        double q = load.position(loadValue);
        int i = Math.min((int) p, speed.size() - 2);
        int j = Math.min((int) q, load.size() - 2);
        double f = p - i;
        double g = q - j;
        int first = j * speed.size() + i;
        cells[0] = first;
        cells[1] = first + 1;
        cells[2] = first + speed.size();
        cells[3] = first + speed.size() + 1;
        weights[0] = (1 - f) * (1 - g);
        weights[1] = f * (1 - g);
        weights[2] = (1 - f) * g;
        weights[3] = f * g;
    }

    static double interpolate(Axis speed, Axis load, double[] values, double speedRpm, double loadValue) {
        if (Double.isNaN(speedRpm) || Double.isNaN(loadValue)) {
            return Double.NaN;
        }
        double p = speed.position(speedRpm);
        double q = load.position(loadValue);
        int i = Math.min((int) p, speed.size() - 2);
        int j = Math.min((int) q, load.size() - 2);
        double f = p - i;
        double g = q - j;
        int first = j * speed.size() + i;
        int above = first + speed.size();
        // Nothing is allocated: this is asked for in every row of a ride.
        return (1 - f) * (1 - g) * values[first]
                + f * (1 - g) * values[first + 1]
                + (1 - f) * g * values[above]
                + f * g * values[above + 1];
    }
}
