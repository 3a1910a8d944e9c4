package fuelwright.safety;

import fuelwright.table.Axis;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.IntPredicate;

/** What some of the readings say of each cell: the mean of ln(lambda / target). */
final class CellMeans {

    private static final int LEAST_IN_CELL = 5;
    private static final int LEAST_CELLS = 4;
    private static final double AGREEING_SHARE = 0.75;

    /** Readings nearer than this hang together: sensor, wall film and road, s. */
    private static final double TOGETHER_S = 0.5;
    /** Cells are never better known than this, ln(lambda). */
    private static final double LEAST_SCATTER = 0.01;

    private static final int LEAST_CELLS_APART = 2;
    private static final double SURE = 2;

    private final double[] sums;
    private final double[] squares;
    private final double[] seconds;
    private final int[] counts;

    CellMeans(int cells) {
        sums = new double[cells];
        squares = new double[cells];
        seconds = new double[cells];
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
                means.squares[cell] += y * y;
                means.seconds[cell] += rows.stepS(i);
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
            squares[c] += other.squares[c];
            seconds[c] += other.seconds[c];
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

    /**
     * Where two sets of readings disagree by more than their noise allows.
     *
     * @param leanerPercent how much leaner the one reads over the cells that both have, %
     * @param surelyPercent by how much they differ at least, %
     * @param cells those that differ by more than asked
     */
    record Apart(double leanerPercent, double surelyPercent, SortedSet<Integer> cells) {

        /** How much leaner the leaner of both reads, %. */
        double apartPercent() {
            double share = leanerPercent / 100;
            return 100 * (share > 0 ? share : 1 / (1 + share) - 1);
        }
    }

    /** How far these readings and others lie apart in some cells; empty where they don't by more than a figure, %, and their noise. */
    Optional<Apart> apart(CellMeans than, IntPredicate which, double percent) {
        double sum = 0;
        double weights = 0;
        int up = 0;
        int compared = 0;
        SortedSet<Integer> cells = new TreeSet<>();
        for (int c = 0; c < sums.length; c++) {
            if (which.test(c) && counts[c] >= LEAST_IN_CELL && than.counts[c] >= LEAST_IN_CELL) {
                double difference = sums[c] / counts[c] - than.sums[c] / than.counts[c];
                double own = variance(c) + than.variance(c);
                sum += difference / own;
                weights += 1 / own;
                compared++;
                up += difference > 0 ? 1 : 0;
                if (100 * Math.expm1(Math.abs(difference)) > percent) {
                    cells.add(c);
                }
            }
        }
        double mean = sum / weights;
        double surely = Math.abs(mean) - SURE / Math.sqrt(weights);
        boolean agreed = compared >= LEAST_CELLS_APART && Math.max(up, compared - up) >= AGREEING_SHARE * compared;
        double surelyPercent = 100 * Math.expm1(surely);
        return agreed && surelyPercent > percent && !cells.isEmpty()
                ? Optional.of(new Apart(100 * Math.expm1(mean), surelyPercent, cells))
                : Optional.empty();
    }

    /** Of a cell's mean. */
    private double variance(int c) {
        double mean = sums[c] / counts[c];
        double scatter = Math.max(squares[c] / counts[c] - mean * mean, LEAST_SCATTER * LEAST_SCATTER);
        double independent = Math.min(counts[c], Math.max(1, seconds[c] / TOGETHER_S));
        return scatter / independent;
    }
}
