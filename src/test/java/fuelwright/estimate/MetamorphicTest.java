package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import fuelwright.airflow.Machine;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.IntUnaryOperator;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/**
 * Changes of the evidence that must not change what follows from it, and a Monte-Carlo check that the stated uncertainty is right. A ride
 * split in two, rides in another order and rows that are screened out are in {@link EstimatorTest}.
 */
class MetamorphicTest {

    private static final Axis SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 1000, 1600, 2500, 4100, 8000);
    private static final Axis LOAD = new Axis(Axis.Kind.MANIFOLD_PRESSURE, 25, 40, 70, 100);
    private static final int NX = LOAD.size();
    private static final int CELLS = SPEED.size() * NX;
    private static final double OWN = 0.01;
    private static final double TOLERANCE = 1e-9;

    private record Row(int[] nodes, double[] shares, double[] byNuisance, double residual, double weight) {

        static Row random(Random random) {
            int j = random.nextInt(SPEED.size() - 1);
            int i = random.nextInt(NX - 1);
            double across = random.nextDouble();
            double up = random.nextDouble();
            int first = j * NX + i;
            return new Row(
                    new int[] {first, first + 1, first + NX, first + NX + 1},
                    new double[] {(1 - across) * (1 - up), (1 - across) * up, across * (1 - up), across * up},
                    random.doubles(Nuisance.COUNT, -0.3, 0.3).toArray(),
                    0.05 * random.nextGaussian(),
                    2500 * (0.5 + random.nextDouble()));
        }

        Row with(double otherResidual, double otherWeight) {
            return new Row(nodes, shares, byNuisance, otherResidual, otherWeight);
        }

        Row moved(IntUnaryOperator to) {
            return new Row(Arrays.stream(nodes).map(to).toArray(), shares, byNuisance, residual, weight);
        }
    }

    private static List<Row> rows(long seed, int count) {
        Random random = new Random(seed);
        List<Row> rows = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            rows.add(Row.random(random));
        }
        return rows;
    }

    private static SymmetricBand precision(Axis speed, Axis load) {
        double[] scales = new double[CELLS];
        Arrays.fill(scales, 0.06);
        return SmoothPrior.precision(speed, load, 1.2, 1.5, scales);
    }

    private static Posterior posterior(List<Row> rows, SymmetricBand precision) {
        Sums sums = new Sums(CELLS, CELLS - 1);
        for (Row r : rows) {
            sums.add(r.nodes, r.shares, 4, r.byNuisance, r.residual, r.weight, r.weight > 0 ? 1 : 0);
        }
        double[] own = new double[CELLS];
        Arrays.fill(own, OWN);
        return new Posterior(
                sums,
                new double[CELLS],
                Nuisance.starts(),
                precision,
                own,
                new double[CELLS],
                Nuisance.spreads(),
                new double[CELLS]);
    }

    private static void assertSame(Posterior expected, Posterior got) {
        assertArrayEquals(expected.cells(), got.cells(), TOLERANCE);
        assertArrayEquals(expected.cellUncertainties(), got.cellUncertainties(), TOLERANCE);
        assertArrayEquals(expected.nuisances(), got.nuisances(), TOLERANCE);
        assertArrayEquals(expected.nuisanceUncertainties(), got.nuisanceUncertainties(), TOLERANCE);
    }

    @Test
    void readingsInAnotherOrderChangeNothing() {
        List<Row> rows = rows(1, 400);
        List<Row> shuffled = new ArrayList<>(rows);
        Collections.shuffle(shuffled, new Random(5));
        SymmetricBand precision = precision(SPEED, LOAD);
        assertSame(posterior(rows, precision), posterior(shuffled, precision));
    }

    @Test
    void weightlessReadingsChangeNothing() {
        List<Row> rows = rows(2, 300);
        List<Row> more = new ArrayList<>(rows);
        rows(3, 300).forEach(r -> more.add(r.with(7, 0)));
        SymmetricBand precision = precision(SPEED, LOAD);
        assertSame(posterior(rows, precision), posterior(more, precision));
    }

    /** Both axes count by their logarithm, so a breakpoint's mirror image is a constant over it. */
    @Test
    void mirroredAxesGiveTheMirroredEstimate() {
        Axis speed = new Axis(Axis.Kind.ENGINE_SPEED, 1000, 8e6 / 4100, 3200, 5000, 8000);
        Axis load = new Axis(Axis.Kind.MANIFOLD_PRESSURE, 25, 2500 / 70.0, 62.5, 100);
        IntUnaryOperator mirror = c -> (SPEED.size() - 1 - c / NX) * NX + NX - 1 - c % NX;
        List<Row> rows = rows(4, 300);
        Posterior plain = posterior(rows, precision(SPEED, LOAD));
        Posterior mirrored = posterior(rows.stream().map(r -> r.moved(mirror)).toList(), precision(speed, load));
        for (int c = 0; c < CELLS; c++) {
            int there = mirror.applyAsInt(c);
            assertEquals(plain.cells()[c], mirrored.cells()[there], TOLERANCE, "cell " + c);
            assertEquals(plain.cellUncertainties()[c], mirrored.cellUncertainties()[there], TOLERANCE, "cell " + c);
        }
        assertArrayEquals(plain.nuisances(), mirrored.nuisances(), TOLERANCE);
    }

    /** What is needed is a factor: the unit in which the table holds its fuel doesn't matter. */
    @Test
    void theUnitOfTheTablesFuelChangesNothing() {
        MadeUpRide made = new MadeUpRide((rpm, load) -> 1.05 - 0.0005 * load, 25, MadeUpRide.SENSOR);
        ScreenedRide ride = made.made("ride", 90, MadeUpRide.wandering(2000, 5000, 31), MadeUpRide.lively(3, 50, 1.8));
        Estimate one = estimate(made.old, made.target, ride);
        double[] scaled = made.old.toArray();
        for (int c = 0; c < scaled.length; c++) {
            scaled[c] *= 0.01;
        }
        Estimate other = estimate(made.old.with(Quantity.MULTIPLIER, scaled), made.target, ride);
        Estimate same = estimate(made.old.with(Quantity.MULTIPLIER, made.old.toArray()), made.target, ride);
        for (int c = 0; c < scaled.length; c++) {
            assertEquals(same.logFactor(c), other.logFactor(c), 1e-7, "cell " + c);
            assertEquals(same.logUncertainty(c), other.logUncertainty(c), 1e-7, "cell " + c);
            // Air flow, and with it the gas part of the delay, can be told from an efficiency table only.
            assertEquals(one.logFactor(c), other.logFactor(c), one.logUncertainty(c), "cell " + c);
        }
    }

    private static Estimate estimate(Table table, Table target, ScreenedRide ride) {
        return new Estimator(table, target, List.of(new Estimator.Source(ride, table)), Machine.unknown(), 0)
                .run(() -> {});
    }

    /**
     * Truths drawn from the prior and readings from their noise: the standardised error of a cell has variance 1, and its 95 % interval
     * holds the truth in 95 % of the draws. Cells of one draw go together, so the bounds are those of as many draws, not cells: with 400
     * draws the share's standard error is below 1.1 %.
     */
    @Test
    void theStatedUncertaintyIsRightInMonteCarlo() {
        SymmetricBand precision = precision(SPEED, LOAD);
        RealMatrix dense = new Array2DRowRealMatrix(CELLS, CELLS);
        for (int a = 0; a < CELLS; a++) {
            for (int b = 0; b < CELLS; b++) {
                boolean inside = Math.abs(a - b) <= precision.halfBandwidth();
                dense.setEntry(a, b, inside ? precision.at(Math.max(a, b), Math.min(a, b)) : 0);
            }
        }
        RealMatrix covariance = new LUDecomposition(dense).getSolver().getInverse();
        RealMatrix root = new CholeskyDecomposition(covariance, 1e-6, 1e-12).getL();
        Random random = new Random(11);
        int draws = 400;
        int held = 0;
        double squares = 0;
        for (int draw = 0; draw < draws; draw++) {
            double[] truth = root.operate(
                    random.doubles(CELLS).map(u -> random.nextGaussian()).toArray());
            double[] off = new double[Nuisance.COUNT];
            for (int c = 0; c < CELLS; c++) {
                truth[c] += OWN * random.nextGaussian();
            }
            for (Nuisance n : Nuisance.values()) {
                off[n.ordinal()] = n.spread * random.nextGaussian();
            }
            List<Row> rows = new ArrayList<>();
            for (Row r : rows(1000 + draw, 60)) {
                double right = random.nextGaussian() / Math.sqrt(r.weight);
                for (int k = 0; k < 4; k++) {
                    right += r.shares[k] * truth[r.nodes[k]];
                }
                for (int q = 0; q < off.length; q++) {
                    right += r.byNuisance[q] * off[q];
                }
                rows.add(r.with(right, r.weight));
            }
            Posterior fit = posterior(rows, precision);
            double[] cells = fit.cells();
            double[] sd = fit.cellUncertainties();
            for (int c = 0; c < CELLS; c++) {
                double z = (cells[c] - truth[c]) / sd[c];
                squares += z * z;
                held += Math.abs(z) <= 1.96 ? 1 : 0;
            }
        }
        double all = draws * (double) CELLS;
        assertEquals(0.95, held / all, 0.02, "held");
        assertEquals(1, squares / all, 0.08, "variance of the standardised error");
    }
}
