package fuelwright.estimate;

import java.util.Arrays;

/**
 * What is believed of the cells before any ride: a mean, and how far from it the truth may lie. Immutable by convention.
 *
 * @param mean ln factor for each cell
 * @param spread standard deviation around it for each cell
 * @param forecast whether the mean comes from the bore forecast
 */
record Prior(Cells mean, Cells spread, boolean forecast) {

    /** Spread where nothing is known of the change: shortfalls beyond two of these are rare (common practice, no source). */
    private static final double UNKNOWN_SPREAD = 0.12;

    /** A value for each cell, copied in and out. */
    static final class Cells {
        private final double[] values;

        Cells(double[] values) {
            this.values = values.clone();
        }

        double at(int cell) {
            return values[cell];
        }

        double[] times(double factor) {
            double[] all = values.clone();
            for (int c = 0; c < all.length; c++) {
                all[c] *= factor;
            }
            return all;
        }
    }

    /** Nothing known but that tables are seldom wholly wrong. */
    static Prior unknown(int cells) {
        double[] spread = new double[cells];
        Arrays.fill(spread, UNKNOWN_SPREAD);
        return new Prior(new Cells(new double[cells]), new Cells(spread), false);
    }
}
