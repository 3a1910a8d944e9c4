package fuelwright.estimate;

import fuelwright.airflow.BoreForecast;
import fuelwright.table.Table;
import java.util.Arrays;

/** What is believed of the cells before any ride: a mean, and how far from it the truth may lie. In {@link CellOrder}. Immutable. */
final class Prior {

    /** Spread where nothing is known of the change: shortfalls beyond two of these are rare (common practice, no source). */
    private static final double UNKNOWN_SPREAD = 0.12;
    /** The old table may be off by this for reasons of its own, however sure the forecast is (common practice, no source). */
    private static final double LEAST_SPREAD = 0.05;

    private final double[] mean;
    private final double[] spread;
    private final boolean forecast;

    private Prior(double[] mean, double[] spread, boolean forecast) {
        this.mean = mean;
        this.spread = spread;
        this.forecast = forecast;
    }

    /** Nothing known but that tables are seldom wholly wrong. */
    static Prior unknown(Table table) {
        double[] spread = new double[table.cells()];
        Arrays.fill(spread, UNKNOWN_SPREAD);
        return new Prior(new double[table.cells()], spread, false);
    }

    /** The bore forecast, for a throttle-indexed table; its own uncertainty says how far the truth may lie from it. */
    static Prior of(BoreForecast forecast, Table table) {
        CellOrder order = new CellOrder(table);
        double[] mean = new double[table.cells()];
        double[] spread = new double[table.cells()];
        for (int c = 0; c < mean.length; c++) {
            mean[c] = forecast.logFactor(table.speedAt(c), table.loadAt(c));
            spread[c] = Math.max(LEAST_SPREAD, forecast.logUncertainty(table.speedAt(c), table.loadAt(c)));
        }
        return new Prior(order.fromTable(mean), order.fromTable(spread), true);
    }

    /** Mean ln factor of each cell, times {@code factor}. */
    double[] means(double factor) {
        return scaled(mean, factor);
    }

    /** Standard deviation of each cell around its mean, times {@code factor}. */
    double[] spreads(double factor) {
        return scaled(spread, factor);
    }

    /** Whether the mean comes from the bore forecast. */
    boolean isForecast() {
        return forecast;
    }

    private static double[] scaled(double[] values, double factor) {
        return Arrays.stream(values).map(v -> v * factor).toArray();
    }
}
