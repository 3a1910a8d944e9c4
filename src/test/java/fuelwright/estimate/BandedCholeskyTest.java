package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;
import org.ejml.interfaces.linsol.LinearSolverDense;
import org.junit.jupiter.api.Test;

/**
 * Worked cases of SciPy 1.17.1 / NumPy 2.4.6 (computed with): {@code scipy.linalg.cholesky_banded} and the Whittaker smoother
 * (W + λDᵀD)z = Wy of Eilers, Anal. Chem. 75 (2003) 3631, D a difference of order d. Printed to ten digits, so they are met to half of
 * the last one. Random bands are held against the dense Cholesky solver of EJML 0.46.1 (run beside it).
 */
class BandedCholeskyTest {

    private static final double LAST_DIGIT = 6e-11;
    private static final double[] Y = {1, 3, 2, 5, 4};

    /** W + λ·DᵀD for differences of order d. */
    private static SymmetricBand whittaker(double[] weights, double lambda, int d) {
        int n = weights.length;
        double[] difference = d == 1 ? new double[] {-1, 1} : new double[] {1, -2, 1};
        SymmetricBand a = new SymmetricBand(n, d);
        for (int i = 0; i < n; i++) {
            a.add(i, i, weights[i]);
        }
        for (int row = 0; row + d < n; row++) {
            for (int i = 0; i <= d; i++) {
                for (int j = 0; j <= i; j++) {
                    a.add(row + i, row + j, lambda * difference[i] * difference[j]);
                }
            }
        }
        return a;
    }

    private static double[] smooth(double[] y, double[] weights, double lambda, int d) {
        double[] weighted = y.clone();
        for (int i = 0; i < y.length; i++) {
            weighted[i] *= weights[i];
        }
        return BandedCholesky.of(whittaker(weights, lambda, d)).solve(weighted);
    }

    private static double[] ones(int n) {
        double[] ones = new double[n];
        Arrays.fill(ones, 1);
        return ones;
    }

    @Test
    void theFactorOfAWorkedCaseIsMet() {
        BandedCholesky factor = BandedCholesky.of(whittaker(ones(5), 1, 2));
        double[] diagonal = {1.4142135624, 2, 2.0615528128, 1.8068497122, 1.1389895949};
        double[] below = {-1.4142135624, -1.5, -1.5764815627, -0.6836728641};
        double[] further = {0.7071067812, 0.5, 0.4850712501};
        for (int i = 0; i < 5; i++) {
            assertEquals(diagonal[i], factor.factorAt(i, i), LAST_DIGIT, "diagonal " + i);
            if (i >= 1) {
                assertEquals(below[i - 1], factor.factorAt(i, i - 1), LAST_DIGIT, "below " + i);
            }
            if (i >= 2) {
                assertEquals(further[i - 2], factor.factorAt(i, i - 2), LAST_DIGIT, "further below " + i);
            }
            if (i >= 3) {
                assertEquals(0, factor.factorAt(i, i - 3), 0.0);
            }
        }
        assertEquals(4.9698132996, factor.logDeterminant(), LAST_DIGIT);
        double[] expected = {1.2708333333, 2.2916666667, 3.0416666667, 3.9583333333, 4.4375};
        assertArrayEquals(expected, factor.solve(Y), LAST_DIGIT);
    }

    @Test
    void smoothedSeriesOfWorkedCasesAreMet() {
        assertArrayEquals(
                new double[] {1.3749934987, 2.2146460706, 3.0167992927, 3.8224892079, 4.5710719301},
                smooth(Y, ones(5), 10, 2),
                LAST_DIGIT);
        assertArrayEquals(
                new double[] {1.3452380952, 2.7380952381, 3.7857142857, 4.4047619048, 4.5119047619},
                smooth(Y, new double[] {1, 1, 0, 1, 1}, 1, 2),
                LAST_DIGIT);
        assertArrayEquals(
                new double[] {1.7636363636, 2.5272727273, 2.8181818182, 3.9272727273, 3.9636363636},
                smooth(Y, ones(5), 1, 1),
                LAST_DIGIT);
        assertArrayEquals(
                new double[] {0.0384615385, 0.2403846154, 0.4038461538, 0.25, 0.0961538462, 0.0096153846, -0.0384615385
                },
                smooth(new double[] {0, 0, 1, 0, 0, 0, 0}, ones(7), 1, 2),
                LAST_DIGIT);
    }

    @Test
    void withEverMoreSmoothingTheRegressionLineRemains() {
        assertArrayEquals(new double[] {1.4, 2.2, 3.0, 3.8, 4.6}, smooth(Y, ones(5), 1e8, 2), 1e-6);
    }

    @Test
    void theTraceOfTheHatMatrixComesFromTheInverseInsideTheBand() {
        SymmetricBand inverse = BandedCholesky.of(whittaker(ones(5), 1, 2)).inverseInBand();
        double trace = 0;
        for (int i = 0; i < 5; i++) {
            trace += inverse.at(i, i);
        }
        assertEquals(2.7916666667, trace, LAST_DIGIT);
    }

    @Test
    void randomBandsAgreeWithADenseReferenceLibrary() {
        Random random = new Random(5);
        for (int run = 0; run < 61; run++) {
            // The last is wide enough for cores to share it.
            int n = run == 60 ? 300 : 1 + random.nextInt(40);
            int w = run == 60 ? 200 : random.nextInt(Math.min(n, 12));
            SymmetricBand a = positiveDefinite(n, w, random);
            DMatrixRMaj dense = dense(a);
            DMatrixRMaj b = new DMatrixRMaj(n, 1);
            for (int i = 0; i < n; i++) {
                b.set(i, 0, random.nextGaussian());
            }
            DMatrixRMaj x = new DMatrixRMaj(n, 1);
            DMatrixRMaj inverse = new DMatrixRMaj(n, n);
            LinearSolverDense<DMatrixRMaj> reference = LinearSolverFactory_DDRM.chol(n);
            assertTrue(reference.setA(dense.copy()));
            reference.solve(b, x);
            reference.invert(inverse);

            BandedCholesky factor = BandedCholesky.of(a);
            assertArrayEquals(x.getData(), factor.solve(b.getData()), 1e-8, "n " + n + ", w " + w);
            assertEquals(logDeterminant(reference), factor.logDeterminant(), 1e-8);
            SymmetricBand z = factor.inverseInBand();
            for (int i = 0; i < n; i++) {
                for (int j = Math.max(0, i - w); j <= i; j++) {
                    assertEquals(inverse.get(i, j), z.at(i, j), 1e-8, "inverse " + i + ", " + j);
                }
            }
            assertArrayEquals(b.getData(), a.times(factor.solve(b.getData())), 1e-8);
        }
    }

    /** Of a solver by Cholesky; the determinant itself may be more than a double holds. */
    private static double logDeterminant(LinearSolverDense<DMatrixRMaj> solver) {
        CholeskyDecomposition_F64<DMatrixRMaj> decomposition = solver.getDecomposition();
        DMatrixRMaj l = decomposition.getT(null);
        double sum = 0;
        for (int i = 0; i < l.getNumRows(); i++) {
            sum += 2 * Math.log(l.get(i, i));
        }
        return sum;
    }

    @Test
    void severalRightHandSidesGiveTheFiguresOfEachByItselfToTheLastBit() {
        Random random = new Random(6);
        BandedCholesky factor = BandedCholesky.of(positiveDefinite(70, 20, random));
        double[][] b = new double[7][];
        for (int q = 0; q < b.length; q++) {
            b[q] = random.doubles(70, -1, 1).toArray();
        }
        double[][] before = Arrays.stream(b).map(double[]::clone).toArray(double[][]::new);
        double[][] x = factor.solve(b);
        for (int q = 0; q < b.length; q++) {
            assertArrayEquals(factor.solve(b[q]), x[q], 0.0, "right-hand side " + q);
            assertArrayEquals(before[q], b[q], 0.0);
        }
    }

    /** G·Gᵀ + I for a random lower band G. */
    private static SymmetricBand positiveDefinite(int n, int w, Random random) {
        double[][] g = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = Math.max(0, i - w); j <= i; j++) {
                g[i][j] = random.nextGaussian();
            }
        }
        SymmetricBand a = new SymmetricBand(n, w);
        for (int i = 0; i < n; i++) {
            for (int j = Math.max(0, i - w); j <= i; j++) {
                double sum = i == j ? 1 : 0;
                for (int k = 0; k <= j; k++) {
                    sum += g[i][k] * g[j][k];
                }
                a.set(i, j, sum);
            }
        }
        return a;
    }

    private static DMatrixRMaj dense(SymmetricBand a) {
        DMatrixRMaj dense = new DMatrixRMaj(a.order(), a.order());
        for (int i = 0; i < a.order(); i++) {
            for (int j = 0; j <= i; j++) {
                dense.set(i, j, a.at(i, j));
                dense.set(j, i, a.at(i, j));
            }
        }
        return dense;
    }

    @Test
    void aMatrixThatIsNotPositiveDefiniteIsRefused() {
        SymmetricBand indefinite = new SymmetricBand(2, 1);
        indefinite.set(0, 0, 1);
        indefinite.set(1, 0, 2);
        indefinite.set(1, 1, 1);
        String said = assertThrows(IllegalArgumentException.class, () -> BandedCholesky.of(indefinite))
                .getMessage();
        assertTrue(said.contains("pivot -3.0 at 1"), said);
        assertThrows(IllegalArgumentException.class, () -> BandedCholesky.of(new SymmetricBand(3, 1)));
        SymmetricBand missing = new SymmetricBand(1, 0);
        missing.set(0, 0, Double.NaN);
        assertThrows(IllegalArgumentException.class, () -> BandedCholesky.of(missing));
    }

    @Test
    void factoringAndSolvingLeaveTheirInputsAlone() {
        SymmetricBand a = whittaker(ones(5), 1, 2);
        double[] before = a.copyOfBand();
        double[] y = Y.clone();
        BandedCholesky.of(a).solve(y);
        assertArrayEquals(before, a.copyOfBand(), 0.0);
        assertArrayEquals(Y, y, 0.0);
    }

    @Test
    void theReachIsThatOfTheOutermostElement() {
        SymmetricBand a = new SymmetricBand(6, 4);
        assertEquals(0, a.reach());
        a.set(5, 3, -0.5);
        assertEquals(2, a.reach());
        assertEquals(5, new SymmetricBand(6, 99).halfBandwidth());
        assertThrows(IllegalArgumentException.class, () -> a.add(new SymmetricBand(6, 3), 1));
    }
}
