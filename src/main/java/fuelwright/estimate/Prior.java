package fuelwright.estimate;

import fuelwright.airflow.BoreForecast;
import fuelwright.table.Table;
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

    /** The old table may be off by this for reasons of its own, however sure the forecast is (common practice, no source). */
    private static final double LEAST_SPREAD = 0.05;

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

    /** The bore forecast, for a throttle-indexed table; its own uncertainty says how far the truth may lie from it. */
    static Prior of(BoreForecast forecast, Table table) {
        double[] mean = new double[table.cells()];
        double[] spread = new double[table.cells()];
        for (int c = 0; c < mean.length; c++) {
            mean[c] = forecast.logFactor(table.speedAt(c), table.loadAt(c));
            spread[c] = Math.max(LEAST_SPREAD, forecast.logUncertainty(table.speedAt(c), table.loadAt(c)));
        }
        return new Prior(new Cells(mean), new Cells(spread), true);
    }
}
