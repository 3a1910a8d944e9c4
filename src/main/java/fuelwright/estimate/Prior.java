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

    /** Standard deviation of the share of what stands out in the old table that is its own fault: 0 none, 1 all of it (common practice, no source). */
    static final double UNEVEN_FAULT = 0.7;
    /** How far a cell's share may be from the common one (common practice, no source). */
    private static final double OWN_FAULT = 0.25;

    private final double[] base;
    private final double[] mean;
    private final double[] spread;
    private final boolean forecast;
    private final double[] nuisanceSpreads;
    private final double[] common;

    private Prior(
            double[] base,
            double[] mean,
            double[] spread,
            boolean forecast,
            double[] nuisanceSpreads,
            double[] common) {
        this.base = base;
        this.mean = mean;
        this.spread = spread;
        this.forecast = forecast;
        this.nuisanceSpreads = nuisanceSpreads;
        this.common = common;
    }

    /** Nothing known but that tables are seldom wholly wrong. */
    static Prior unknown(Table table) {
        double[] spread = new double[table.cells()];
        Arrays.fill(spread, UNKNOWN_SPREAD);
        return new Prior(
                new double[table.cells()], new double[table.cells()], spread, false, Nuisance.spreads(), fault(table));
    }

    /**
     * The bore forecast, for a throttle-indexed table; its own uncertainty says how far the truth may lie from it.
     *
     * @param table delivered fuel in the table that is to be corrected
     * @param first delivered fuel in the table of the first ride: the one that the old bodies were fuelled by, which the forecast is about
     */
    static Prior of(BoreForecast forecast, Table table, Table first) {
        CellOrder order = new CellOrder(table);
        double[] base = new double[table.cells()];
        double[] mean = new double[table.cells()];
        double[] spread = new double[table.cells()];
        for (int c = 0; c < mean.length; c++) {
            base[c] = Math.log(first.value(table.speedAt(c), table.loadAt(c)) / table.at(c));
            mean[c] = forecast.logFactor(table.speedAt(c), table.loadAt(c));
            spread[c] = Math.max(LEAST_SPREAD, forecast.logUncertainty(table.speedAt(c), table.loadAt(c)));
        }
        return new Prior(
                order.fromTable(base),
                order.fromTable(mean),
                order.fromTable(spread),
                true,
                Nuisance.spreads(),
                fault(first.sameAxes(table) ? first : first.sampledAt(table.speed(), table.load())));
    }

    /** Mean ln factor of each cell, with the forecast trusted {@code trust} times. */
    double[] means(double trust) {
        double[] means = scaled(mean, trust);
        for (int c = 0; c < means.length; c++) {
            means[c] += base[c];
        }
        return means;
    }

    /** Standard deviation of each cell around its mean, times {@code factor}. */
    double[] spreads(double factor) {
        return scaled(spread, factor);
    }

    /** The same of the cells, with other standard deviations of the nuisances. */
    Prior withNuisances(double[] spreads) {
        return new Prior(base, mean, spread, forecast, spreads, common);
    }

    /** The same if nothing were known of the change. */
    Prior withoutForecast() {
        double[] unknown = new double[spread.length];
        Arrays.fill(unknown, UNKNOWN_SPREAD);
        return new Prior(base, new double[mean.length], unknown, false, nuisanceSpreads, common);
    }

    /** The same if the old table's unevenness said nothing. */
    Prior withoutUnevenness() {
        return new Prior(base, mean, spread, forecast, nuisanceSpreads, new double[common.length]);
    }

    /** Standard deviation of each nuisance around its start. */
    double[] nuisanceSpreads() {
        return nuisanceSpreads.clone();
    }

    /**
     * What all cells need together if as much of the old table's unevenness is its own fault as is usual: one standard deviation of a
     * common departure from the means.
     */
    double[] common() {
        return common.clone();
    }

    /** Standard deviation of each cell's own departure: {@code usual}, and more where the old table stands out. */
    double[] own(double usual) {
        return Arrays.stream(common)
                .map(f -> Math.hypot(usual, OWN_FAULT * f / UNEVEN_FAULT))
                .toArray();
    }

    private static double[] fault(Table table) {
        return scaled(Unevenness.of(table), -UNEVEN_FAULT);
    }

    /** How far cells stand out in the old table, root mean square of ln. */
    double unevenness() {
        return Math.sqrt(Arrays.stream(common).map(f -> f * f).average().orElse(0)) / UNEVEN_FAULT;
    }

    /** Whether the mean comes from the bore forecast. */
    boolean isForecast() {
        return forecast;
    }

    private static double[] scaled(double[] values, double factor) {
        return Arrays.stream(values).map(v -> v * factor).toArray();
    }
}
