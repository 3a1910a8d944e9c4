package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import fuelwright.table.Axis;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The bordered band solution against the same least squares written out densely, surface, cells and nuisances in one stacked system, and
 * solved by two libraries: Householder QR of Commons Math 3.6.1, dense Cholesky of EJML 0.46.1 (both run beside it).
 */
class PosteriorTest {

    private static final double TOLERANCE = 1e-8;
    private static final Axis SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 1000, 2500, 4000, 7000);
    private static final Axis LOAD = new Axis(Axis.Kind.THROTTLE, 0, 8, 30, 100);
    private static final int CELLS = SPEED.size() * LOAD.size();

    /** Solution and standard deviations of a stacked least-squares system. */
    private record Solved(RealVector x, RealVector sd) {}

    private enum Reference {
        QR {
            @Override
            Solved solve(RealMatrix a, RealVector b) {
                QRDecomposition qr = new QRDecomposition(a);
                int n = a.getColumnDimension();
                RealMatrix r = qr.getR().getSubMatrix(0, n - 1, 0, n - 1);
                RealMatrix inverse = new LUDecomposition(r).getSolver().getInverse();
                return solved(qr.getSolver().solve(b), inverse.multiply(inverse.transpose()));
            }
        },
        DENSE_CHOLESKY {
            @Override
            Solved solve(RealMatrix a, RealVector b) {
                int n = a.getColumnDimension();
                DMatrixRMaj normal = new DMatrixRMaj(a.transpose().multiply(a).getData());
                DMatrixRMaj rhs =
                        new DMatrixRMaj(n, 1, true, a.transpose().operate(b).toArray());
                LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.chol(n);
                if (!solver.setA(normal)) {
                    throw new IllegalStateException("not positive definite");
                }
                DMatrixRMaj x = new DMatrixRMaj(n, 1);
                DMatrixRMaj inverse = new DMatrixRMaj(n, n);
                solver.solve(rhs, x);
                solver.invert(inverse);
                RealMatrix covariance = new Array2DRowRealMatrix(n, n);
                for (int i = 0; i < n; i++) {
                    covariance.setEntry(i, i, inverse.get(i, i));
                }
                return solved(new ArrayRealVector(x.getData()), covariance);
            }
        };

        abstract Solved solve(RealMatrix a, RealVector b);

        private static Solved solved(RealVector x, RealMatrix covariance) {
            RealVector sd = new ArrayRealVector(x.getDimension());
            for (int i = 0; i < x.getDimension(); i++) {
                sd.setEntry(i, Math.sqrt(covariance.getEntry(i, i)));
            }
            return new Solved(x, sd);
        }
    }

    /** A random fit: its rows, its sums, the point that it is made around and its prior. */
    private static final class Case {
        final List<Row> rows = new ArrayList<>();
        final Sums sums = new Sums(CELLS, CELLS - 1);
        final double[] pointCells;
        final double[] pointNuisances = Nuisance.starts();
        final double[] mean;
        final double[] own;
        final double[] common;
        final SymmetricBand precision;

        Case(long seed, int readings) {
            Random random = new Random(seed);
            pointCells = random.doubles(CELLS, -0.2, 0.2).toArray();
            mean = random.doubles(CELLS, -0.1, 0.1).toArray();
            for (int q = 0; q < Nuisance.COUNT; q++) {
                pointNuisances[q] += 0.5 * Nuisance.values()[q].spread * random.nextGaussian();
            }
            precision = SmoothPrior.precision(
                    SPEED, LOAD, 1, 1.2, random.doubles(CELLS, 0.05, 0.2).toArray());
            own = random.doubles(CELLS, 0.01, 0.03).toArray();
            common = random.doubles(CELLS, -0.1, 0.1).toArray();
            for (int i = 0; i < readings; i++) {
                Row row = new Row(random);
                rows.add(row);
                row.addTo(sums);
            }
        }

        Posterior posterior() {
            return posterior(sums, pointCells, pointNuisances);
        }

        Posterior posterior(Sums around, double[] cells, double[] nuisances) {
            return new Posterior(around, cells, nuisances, precision, own, mean, Nuisance.spreads(), common);
        }

        /** Surface, cells, nuisances and the common departure stacked in one vector of unknowns. */
        Solved dense(Reference reference) {
            int p = Nuisance.COUNT;
            int unknowns = 2 * CELLS + p + 1;
            RealMatrix a = new Array2DRowRealMatrix(rows.size() + unknowns, unknowns);
            RealVector b = new ArrayRealVector(rows.size() + unknowns);
            int at = 0;
            for (Row row : rows) {
                double root = Math.sqrt(row.weight);
                double right = row.residual;
                for (int k = 0; k < row.nodes.length; k++) {
                    a.addToEntry(at, CELLS + row.nodes[k], root * row.shares[k]);
                    right += row.shares[k] * pointCells[row.nodes[k]];
                }
                for (int q = 0; q < p; q++) {
                    a.setEntry(at, 2 * CELLS + q, root * row.byNuisance[q]);
                    right += row.byNuisance[q] * pointNuisances[q];
                }
                b.setEntry(at++, root * right);
            }
            RealMatrix upper = new CholeskyDecomposition(full(precision)).getLT();
            for (int c = 0; c < CELLS; c++, at++) {
                for (int d = 0; d < CELLS; d++) {
                    a.setEntry(at, d, upper.getEntry(c, d));
                }
            }
            for (int c = 0; c < CELLS; c++, at++) {
                a.setEntry(at, CELLS + c, 1 / own[c]);
                a.setEntry(at, c, -1 / own[c]);
                a.setEntry(at, 2 * CELLS + p, -common[c] / own[c]);
                b.setEntry(at, mean[c] / own[c]);
            }
            for (int q = 0; q < p; q++, at++) {
                Nuisance nuisance = Nuisance.values()[q];
                a.setEntry(at, 2 * CELLS + q, 1 / nuisance.spread);
                b.setEntry(at, nuisance.start / nuisance.spread);
            }
            a.setEntry(at, 2 * CELLS + p, 1);
            return reference.solve(a, b);
        }

        /** Twice the negative log likelihood of the readings as one Gaussian vector, but for what the prior doesn't touch. */
        double deviance() {
            int m = rows.size();
            RealMatrix cells = new Array2DRowRealMatrix(m, CELLS);
            RealMatrix nuisances = new Array2DRowRealMatrix(m, Nuisance.COUNT);
            RealVector off = new ArrayRealVector(m);
            RealMatrix noise = new Array2DRowRealMatrix(m, m);
            for (int i = 0; i < m; i++) {
                Row row = rows.get(i);
                double value = row.residual;
                for (int k = 0; k < row.nodes.length; k++) {
                    cells.addToEntry(i, row.nodes[k], row.shares[k]);
                    value += row.shares[k] * (pointCells[row.nodes[k]] - mean[row.nodes[k]]);
                }
                for (int q = 0; q < Nuisance.COUNT; q++) {
                    Nuisance nuisance = Nuisance.values()[q];
                    nuisances.setEntry(i, q, row.byNuisance[q] * nuisance.spread);
                    value += row.byNuisance[q] * (pointNuisances[q] - nuisance.start);
                }
                off.setEntry(i, value);
                noise.setEntry(i, i, 1 / row.weight);
            }
            RealMatrix prior = MatrixUtils.inverse(full(precision))
                    .add(MatrixUtils.createRealDiagonalMatrix(
                            Arrays.stream(own).map(v -> v * v).toArray()))
                    .add(new ArrayRealVector(common).outerProduct(new ArrayRealVector(common)));
            RealMatrix all = cells.multiply(prior)
                    .multiply(cells.transpose())
                    .add(nuisances.multiply(nuisances.transpose()))
                    .add(noise);
            CholeskyDecomposition factor = new CholeskyDecomposition(all, 1e-9, 1e-12);
            double logDeterminant = 0;
            for (int i = 0; i < m; i++) {
                logDeterminant += 2 * Math.log(factor.getL().getEntry(i, i));
            }
            return off.dotProduct(factor.getSolver().solve(off)) + logDeterminant;
        }
    }

    private static final class Row {
        final int[] nodes;
        final double[] shares;
        final double[] byNuisance = new double[Nuisance.COUNT];
        final double residual;
        final double weight;

        Row(Random random) {
            int count = 1 + random.nextInt(6);
            nodes = random.ints(0, CELLS).distinct().limit(count).toArray();
            shares = random.doubles(count, 0, 1).toArray();
            for (int q = 0; q < byNuisance.length; q++) {
                byNuisance[q] = random.nextGaussian() * 0.3;
            }
            residual = 0.1 * random.nextGaussian();
            weight = 100 + 1000 * random.nextDouble();
        }

        void addTo(Sums sums) {
            sums.add(nodes, shares, nodes.length, byNuisance, residual, weight, 0.5);
        }

        double after(double[] cells, double[] nuisances) {
            double left = residual;
            for (int k = 0; k < nodes.length; k++) {
                left -= shares[k] * cells[nodes[k]];
            }
            for (int q = 0; q < byNuisance.length; q++) {
                left -= byNuisance[q] * nuisances[q];
            }
            return weight * left * left;
        }
    }

    private static RealMatrix full(SymmetricBand band) {
        RealMatrix full = new Array2DRowRealMatrix(band.order(), band.order());
        for (int i = 0; i < band.order(); i++) {
            for (int j = 0; j <= i; j++) {
                full.setEntry(i, j, band.at(i, j));
                full.setEntry(j, i, band.at(i, j));
            }
        }
        return full;
    }

    @ParameterizedTest
    @EnumSource
    void cellsNuisancesAndUncertaintiesAreThoseOfADenseSolver(Reference reference) {
        for (int readings : new int[] {0, 1, 5, 60, 200}) {
            Case fit = new Case(17 + readings, readings);
            Posterior posterior = fit.posterior();
            Solved dense = fit.dense(reference);
            String which = readings + " readings";
            assertArrayEquals(dense.x().getSubVector(CELLS, CELLS).toArray(), posterior.cells(), TOLERANCE, which);
            assertArrayEquals(
                    dense.x().getSubVector(2 * CELLS, Nuisance.COUNT).toArray(),
                    posterior.nuisances(),
                    TOLERANCE,
                    which);
            assertArrayEquals(
                    dense.sd().getSubVector(CELLS, CELLS).toArray(), posterior.cellUncertainties(), TOLERANCE, which);
            assertArrayEquals(
                    dense.sd().getSubVector(2 * CELLS, Nuisance.COUNT).toArray(),
                    posterior.nuisanceUncertainties(),
                    TOLERANCE,
                    which);
            int common = 2 * CELLS + Nuisance.COUNT;
            assertEquals(dense.x().getEntry(common), posterior.common(), TOLERANCE, which);
            assertEquals(dense.sd().getEntry(common), posterior.commonUncertainty(), TOLERANCE, which);
        }
    }

    @Test
    void withoutReadingsThePriorRemains() {
        Case fit = new Case(3, 0);
        Posterior posterior = fit.posterior();
        assertArrayEquals(fit.mean, posterior.cells(), TOLERANCE);
        for (Nuisance nuisance : Nuisance.values()) {
            assertEquals(nuisance.start, posterior.nuisances()[nuisance.ordinal()], TOLERANCE);
            assertEquals(nuisance.spread, posterior.nuisanceUncertainties()[nuisance.ordinal()], TOLERANCE);
        }
    }

    /** Differences, because a constant that the prior doesn't touch is left out. */
    @Test
    void theDevianceDiffersBetweenPriorsAsTheReadingsLikelihoodDoes() {
        Case one = new Case(8, 40);
        Case other = new Case(8, 40);
        for (int c = 0; c < CELLS; c++) {
            other.mean[c] = 0.5 * one.mean[c];
            other.precision.set(c, c, other.precision.at(c, c) * 1.7);
        }
        assertEquals(
                one.deviance() - other.deviance(),
                one.posterior().deviance() - other.posterior().deviance(),
                1e-7);
    }

    @Test
    void thePointAroundWhichTheEvidenceIsGatheredDoesNotMatterToALinearModel() {
        Case fit = new Case(21, 80);
        double[] moved = fit.pointCells.clone();
        double[] movedNuisances = fit.pointNuisances.clone();
        Sums around = new Sums(CELLS, CELLS - 1);
        Random random = new Random(4);
        for (int c = 0; c < CELLS; c++) {
            moved[c] += 0.1 * random.nextGaussian();
        }
        movedNuisances[0] += 0.01;
        for (Row row : fit.rows) {
            double residual = row.residual + row.byNuisance[0] * (fit.pointNuisances[0] - movedNuisances[0]);
            for (int k = 0; k < row.nodes.length; k++) {
                residual += row.shares[k] * (fit.pointCells[row.nodes[k]] - moved[row.nodes[k]]);
            }
            around.add(row.nodes, row.shares, row.nodes.length, row.byNuisance, residual, row.weight, 0.5);
        }
        Posterior other = fit.posterior(around, moved, movedNuisances);
        assertArrayEquals(fit.posterior().cells(), other.cells(), TOLERANCE);
        assertArrayEquals(fit.posterior().nuisances(), other.nuisances(), TOLERANCE);
        assertEquals(fit.posterior().deviance(), other.deviance(), 1e-6);
    }

    @Test
    void evidenceAddsUpAndCanBeTakenAwayAgain() {
        Case whole = new Case(5, 50);
        Sums first = new Sums(CELLS, CELLS - 1);
        Sums second = new Sums(CELLS, CELLS - 1);
        for (int i = 0; i < 50; i++) {
            whole.rows.get(i).addTo(i % 3 == 0 ? first : second);
        }
        Sums total = new Sums(CELLS, CELLS - 1);
        total.add(first, 1);
        total.add(second, 1);
        assertSame(whole.sums, total);
        total.add(first, -1);
        assertSame(second, total);
    }

    private static void assertSame(Sums expected, Sums got) {
        assertEquals(expected.readings, got.readings);
        assertEquals(expected.weight, got.weight, 1e-7);
        assertEquals(expected.residualResidual, got.residualResidual, TOLERANCE);
        assertArrayEquals(expected.cellResidual, got.cellResidual, TOLERANCE);
        assertArrayEquals(expected.nuisanceResidual, got.nuisanceResidual, TOLERANCE);
        assertArrayEquals(expected.independentReadings, got.independentReadings, TOLERANCE);
        assertArrayEquals(expected.cellCell.copyOfBand(), got.cellCell.copyOfBand(), TOLERANCE);
        for (int c = 0; c < CELLS; c++) {
            assertArrayEquals(expected.cellNuisance[c], got.cellNuisance[c], TOLERANCE);
        }
        for (int q = 0; q < Nuisance.COUNT; q++) {
            assertArrayEquals(expected.nuisanceNuisance[q], got.nuisanceNuisance[q], TOLERANCE);
        }
    }

    @Test
    void whatIsLeftAfterAStepIsWhatRecomputingEveryResidualGives() {
        Case fit = new Case(12, 70);
        Random random = new Random(1);
        for (int run = 0; run < 10; run++) {
            double[] cells = random.doubles(CELLS, -0.1, 0.1).toArray();
            double[] nuisances = random.doubles(Nuisance.COUNT, -0.1, 0.1).toArray();
            double again = fit.rows.stream()
                    .mapToDouble(r -> r.after(cells, nuisances))
                    .sum();
            assertEquals(again, fit.sums.residualAfter(cells, nuisances), TOLERANCE * Math.max(1, again));
        }
        assertEquals(
                fit.sums.residualResidual,
                fit.sums.residualAfter(new double[CELLS], new double[Nuisance.COUNT]),
                TOLERANCE);
    }

    @Test
    void aReadingOverCellsFurtherApartThanTheBandIsLeftOut() {
        Sums sums = new Sums(CELLS, 3);
        double[] none = new double[Nuisance.COUNT];
        sums.add(new int[] {0, 4}, new double[] {0.5, 0.5}, 2, none, 0.1, 1, 1);
        assertEquals(0, sums.readings);
        assertEquals(0, sums.weight, 0.0);
        sums.add(new int[] {1, 4}, new double[] {0.5, 0.5}, 2, none, 0.1, 1, 1);
        assertEquals(1, sums.readings);
    }

    @Test
    void columnsOfTheCovarianceAreSymmetricWithTheVariancesOnTheDiagonalAndAReadingMoreTakesWhatTheySay() {
        Case fit = new Case(5, 60);
        Posterior posterior = fit.posterior();
        double[] sd = posterior.cellUncertainties();
        double[] first = posterior.covariance(3);
        assertEquals(sd[3] * sd[3], first[3], TOLERANCE);
        assertEquals(first[9], posterior.covariance(9)[3], TOLERANCE);
        double weight = 2500;
        fit.sums.add(new int[] {3}, new double[] {1}, 1, new double[Nuisance.COUNT], 0, weight, 1);
        double[] after = fit.posterior().cellUncertainties();
        for (int c = 0; c < CELLS; c++) {
            double expected = sd[c] * sd[c] - first[c] * first[c] / (first[3] + 1 / weight);
            assertEquals(expected, after[c] * after[c], TOLERANCE, "cell " + c);
        }
    }
}
