package fuelwright.safety;

import fuelwright.table.Axis;

/** What some of the readings say of each cell: the mean of ln(lambda / target). */
final class CellMeans {

    private static final int LEAST_IN_CELL = 5;
    private static final int LEAST_CELLS = 4;
    private static final double AGREEING_SHARE = 0.75;

    private final double[] sums;
    private final int[] counts;

    CellMeans(int cells) {
        sums = new double[cells];
        counts = new int[cells];
    }

    /** Those rows of a ride's first sensor that count as evidence, each into the means that are chosen for it; null for none. */
    static void read(Dossier d, int ride, java.util.function.IntFunction<CellMeans> into) {
        RideRows rows = d.rows(ride);
        if (rows.ride.mixtures().isEmpty()) {
            return;
        }
        double[] lambda = rows.mixture(rows.ride.firstEvidence());
        boolean byThrottle = d.target.load().kind() == Axis.Kind.THROTTLE;
        Locator targets = new Locator(d.target);
        for (int i = 0; i < rows.size; i++) {
            CellMeans means = rows.isEvidence(i) ? into.apply(i) : null;
            if (means == null) {
                continue;
            }
            double target = targets.value(rows.speedRpm[i], byThrottle ? rows.throttlePercent[i] : rows.pressureKpa[i]);
            double y = Math.log(lambda[i] / target);
            if (!Double.isNaN(y)) {
                int cell = d.nearestCell(rows.speedRpm[i], rows.load[i]);
                means.sums[cell] += y;
                means.counts[cell]++;
            }
        }
    }

    /** The first third of a ride and the last one. */
    record Thirds(CellMeans early, CellMeans late) {

        /** How much leaner the last third reads, %. */
        double leanerPercent() {
            return late.leanerPercent(early);
        }
    }

    /** @param ride of one row at least */
    static Thirds thirds(Dossier d, int ride) {
        RideRows rows = d.rows(ride);
        Thirds thirds = new Thirds(new CellMeans(d.fuel.cells()), new CellMeans(d.fuel.cells()));
        double start = rows.timeS[0];
        double length = rows.timeS[rows.size - 1] - start;
        read(d, ride, row -> {
            double share = (rows.timeS[row] - start) / length;
            return share <= 1 / 3.0 ? thirds.early : share >= 2 / 3.0 ? thirds.late : null;
        });
        return thirds;
    }

    void add(CellMeans other) {
        for (int c = 0; c < sums.length; c++) {
            sums[c] += other.sums[c];
            counts[c] += other.counts[c];
        }
    }

    /**
     * How much leaner these readings are than others in the cells that both have, %, weighted by readings; 0 where too few cells can be
     * compared, or where they don't agree on which way.
     */
    double leanerPercent(CellMeans than) {
        double sum = 0;
        double weights = 0;
        int compared = 0;
        int up = 0;
        for (int c = 0; c < sums.length; c++) {
            if (counts[c] >= LEAST_IN_CELL && than.counts[c] >= LEAST_IN_CELL) {
                double difference = sums[c] / counts[c] - than.sums[c] / than.counts[c];
                double weight = Math.min(counts[c], than.counts[c]);
                sum += weight * difference;
                weights += weight;
                compared++;
                up += difference > 0 ? 1 : 0;
            }
        }
        boolean agreed = compared >= LEAST_CELLS && Math.max(up, compared - up) >= AGREEING_SHARE * compared;
        return agreed ? 100 * Math.expm1(sum / weights) : 0;
    }
}
