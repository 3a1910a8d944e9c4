package fuelwright.safety;

import fuelwright.ride.Ride;

/**
 * How far the sensors of one ride read from the mixture of their gases ({@link Ride#mixture}) at high load, in each cell and on the whole; of evidence that
 * all of them have. Immutable.
 */
final class SensorSpread {

    private static final int LEAST_ROWS = 60;
    private static final int LEAST_IN_CELL = 10;

    private final int sensors;
    private final int cells;
    private final double[] sums;
    private final int[] counts;
    private final int leanest;
    private final int richest;
    private final double apartLog;

    private SensorSpread(int sensors, int cells, double[] sums, int[] counts) {
        this.sensors = sensors;
        this.cells = cells;
        this.sums = sums;
        this.counts = counts;
        double[] means = new double[sensors];
        int all = 0;
        for (int c = 0; c < cells; c++) {
            all += counts[c];
            for (int s = 0; s < sensors; s++) {
                means[s] += sums[s * cells + c];
            }
        }
        int high = 0;
        int low = 0;
        for (int s = 1; s < sensors; s++) {
            high = means[s] > means[high] ? s : high;
            low = means[s] < means[low] ? s : low;
        }
        leanest = high;
        richest = low;
        apartLog = all < LEAST_ROWS ? 0 : (means[high] - means[low]) / all;
    }

    static SensorSpread of(Dossier d, int r) {
        RideRows rows = d.rows(r);
        Ride ride = rows.ride;
        int sensors = ride.mixtures().size();
        int cells = d.fuel.cells();
        double[] sums = new double[sensors * cells];
        int[] counts = new int[cells];
        double[] logs = new double[sensors];
        for (int i = 0; i < rows.size; i++) {
            if (!rows.isEvidence(i)
                    || !d.isHighLoad(r, rows.speedRpm[i], rows.throttlePercent[i], rows.pressureKpa[i])) {
                continue;
            }
            double inverse = 0;
            for (int s = 0; s < sensors; s++) {
                double lambda = rows.mixture(s)[i];
                logs[s] = Math.log(lambda);
                inverse += 1 / lambda / sensors;
            }
            double mean = -Math.log(inverse);
            if (Double.isFinite(mean)) {
                int cell = d.nearestCell(rows.speedRpm[i], rows.load[i]);
                counts[cell]++;
                for (int s = 0; s < sensors; s++) {
                    sums[s * cells + cell] += logs[s] - mean;
                }
            }
        }
        return new SensorSpread(sensors, cells, sums, counts);
    }

    int sensors() {
        return sensors;
    }

    /** The sensor that reads leanest at high load on the whole. */
    int leanest() {
        return leanest;
    }

    int richest() {
        return richest;
    }

    /** ln of how much leaner the leanest reads than the richest; 0 where there is too little to go by. */
    double apartLog() {
        return apartLog;
    }

    /** ln of how much leaner a sensor reads in a cell than the mean of all; NaN where there is too little. */
    double log(int sensor, int cell) {
        return counts[cell] < LEAST_IN_CELL ? Double.NaN : sums[sensor * cells + cell] / counts[cell];
    }
}
