package fuelwright.estimate;

import fuelwright.table.Bilinear;
import fuelwright.table.Table;

/**
 * Sums readings into {@link CellMeans}: each is spread over the four cells around the row it was logged in, with neither delay nor lag,
 * as a plain look would do it. Mutable, not thread-safe.
 */
final class CellMeansMaker {

    private final Table delivered;
    private final double[] weight;
    private final double[] mean;
    private final double[] squares;
    private final double[] lambda;
    private final double[] commandRicher;
    private final int[] count;
    private final int[] cells = new int[4];
    private final double[] shares = new double[4];

    /** @param delivered delivered fuel in the table that is to be corrected */
    CellMeansMaker(Table delivered) {
        this.delivered = delivered;
        int n = delivered.cells();
        weight = new double[n];
        mean = new double[n];
        squares = new double[n];
        lambda = new double[n];
        commandRicher = new double[n];
        count = new int[n];
    }

    void add(Readings readings) {
        RideTrack track = readings.track;
        TableRatio rebase = new TableRatio(readings.delivered, delivered);
        for (int row = 0; row < readings.size(); row++) {
            if (readings.screened.counts(row)) {
                double rpm = track.speedRpm[row];
                double load = readings.load[row];
                double rebased = rebase.ln(rpm, load);
                double shortfall = 100 * Math.expm1(readings.reading[row] - readings.commanded[row] + rebased);
                add(
                        rpm,
                        load,
                        shortfall,
                        Math.exp(readings.reading[row]),
                        100 * Math.expm1(readings.commandRicher(row)));
            }
        }
    }

    /** Weighted mean and sum of squared departures, updated one value at a time (West, Comm. ACM 22 (1979) 532). */
    private void add(double rpm, double load, double shortfallPercent, double reading, double commandRicherPercent) {
        if (Double.isNaN(shortfallPercent)) {
            return;
        }
        Bilinear.locate(delivered.speed(), delivered.load(), rpm, load, cells, shares);
        for (int k = 0; k < 4; k++) {
            int c = cells[k];
            double w = shares[k];
            if (w > 0) {
                weight[c] += w;
                double step = shortfallPercent - mean[c];
                mean[c] += w / weight[c] * step;
                squares[c] += w * step * (shortfallPercent - mean[c]);
                lambda[c] += w / weight[c] * (reading - lambda[c]);
                commandRicher[c] += w / weight[c] * (commandRicherPercent - commandRicher[c]);
                count[c]++;
            }
        }
    }

    CellMeans made() {
        CellMeans.Mean[] means = new CellMeans.Mean[weight.length];
        for (int c = 0; c < means.length; c++) {
            if (weight[c] > 0) {
                means[c] = new CellMeans.Mean(
                        weight[c], mean[c], Math.sqrt(squares[c] / weight[c]), lambda[c], count[c], commandRicher[c]);
            }
        }
        return new CellMeans(means);
    }
}
