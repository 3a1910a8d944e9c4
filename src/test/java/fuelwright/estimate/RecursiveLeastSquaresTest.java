package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import fuelwright.table.Axis;
import fuelwright.table.Bilinear;
import org.junit.jupiter.api.Test;

/**
 * Ridge regression of scattered points on the nodes of a bilinear grid, a worked case computed with NumPy 2.4.6 / SciPy 1.17.1
 * ({@code numpy.linalg.lstsq} on the stacked system): nodes {0, 1, 2}², prior 1, four points. The sums and the band solver must give it,
 * and so must recursive least squares, point by point, written out here.
 */
class RecursiveLeastSquaresTest {

    private static final double LAST_DIGIT = 6e-11;
    private static final int NODES = 9;
    private static final Axis X = new Axis(Axis.Kind.ENGINE_SPEED, 0, 1, 2);
    private static final Axis Y = new Axis(Axis.Kind.THROTTLE, 0, 1, 2);
    private static final double[][] POINTS = {{0.5, 0.5, 1.10}, {0.25, 0.75, 1.05}, {1.5, 0.5, 0.95}, {1, 1, 1.02}};

    private static Sums evidence() {
        Sums sums = new Sums(NODES, NODES - 1);
        int[] cells = new int[4];
        double[] weights = new double[4];
        for (double[] point : POINTS) {
            Bilinear.locate(X, Y, point[0], point[1], cells, weights);
            sums.add(cells, weights, 4, new double[Nuisance.COUNT], point[2] - 1, 1, 1);
        }
        return sums;
    }

    private static SymmetricBand normal(Sums sums, double ridge) {
        SymmetricBand normal = new SymmetricBand(NODES, NODES - 1);
        normal.add(sums.cellCell, 1);
        for (int c = 0; c < NODES; c++) {
            normal.add(c, c, ridge);
        }
        return normal;
    }

    /** Figures by [x][y] in cell order, x running fastest. */
    private static double[] inCellOrder(double[][] byXThenY) {
        double[] cells = new double[NODES];
        for (int x = 0; x < 3; x++) {
            for (int y = 0; y < 3; y++) {
                cells[3 * y + x] = byXThenY[x][y];
            }
        }
        return cells;
    }

    private static double[] plusOne(double[] values) {
        double[] plus = values.clone();
        for (int c = 0; c < plus.length; c++) {
            plus[c] += 1;
        }
        return plus;
    }

    @Test
    void theRidgeSolutionOfAWorkedCaseIsMet() {
        double[] expected = inCellOrder(new double[][] {
            {1.0970451390, 1.0621336894, 1}, {1.0371212362, 1.0204985533, 1}, {0.9284389474, 0.9284389474, 1}
        });
        double[] deviations = inCellOrder(new double[][] {
            {2.783093843, 1.7553383579, 3.1622776602},
            {2.5001033332, 0.938220752, 3.1622776602},
            {2.7794260616, 2.7794260616, 3.1622776602}
        });
        Sums sums = evidence();
        BandedCholesky factor = BandedCholesky.of(normal(sums, 0.1));
        assertArrayEquals(expected, plusOne(factor.solve(sums.cellResidual)), LAST_DIGIT);
        SymmetricBand inverse = factor.inverseInBand();
        for (int c = 0; c < NODES; c++) {
            // One of the figures is printed to nine digits only.
            assertEquals(deviations[c], Math.sqrt(inverse.at(c, c)), 6e-10);
        }
    }

    @Test
    void recursiveLeastSquaresPointByPointGivesTheSame() {
        double[] theta = new double[NODES];
        double[][] covariance = new double[NODES][NODES];
        for (int c = 0; c < NODES; c++) {
            covariance[c][c] = 1 / 0.1;
        }
        int[] cells = new int[4];
        double[] weights = new double[4];
        for (double[] point : POINTS) {
            Bilinear.locate(X, Y, point[0], point[1], cells, weights);
            double[] phi = new double[NODES];
            for (int k = 0; k < 4; k++) {
                phi[cells[k]] += weights[k];
            }
            update(theta, covariance, phi, point[2] - 1);
        }
        Sums sums = evidence();
        assertArrayEquals(theta, BandedCholesky.of(normal(sums, 0.1)).solve(sums.cellResidual), 1e-12);
    }

    private static void update(double[] theta, double[][] p, double[] phi, double y) {
        double[] gain = new double[NODES];
        double scale = 1;
        double error = y;
        for (int i = 0; i < NODES; i++) {
            for (int j = 0; j < NODES; j++) {
                gain[i] += p[i][j] * phi[j];
            }
            scale += phi[i] * gain[i];
            error -= phi[i] * theta[i];
        }
        for (int i = 0; i < NODES; i++) {
            theta[i] += gain[i] / scale * error;
            for (int j = 0; j < NODES; j++) {
                p[i][j] -= gain[i] * gain[j] / scale;
            }
        }
    }

    /** It runs away into corners that no point touched; that is why the program's own prior isn't this one. */
    @Test
    void secondDifferencesExtrapolateAsInTheWorkedCase() {
        double[] expected = inCellOrder(new double[][] {
            {1.2069204106, 1.0524211917, 0.8996023790},
            {1.0276882140, 1.0103287568, 0.9916994453},
            {0.8470055614, 0.9651402070, 1.0831200816}
        });
        Sums sums = evidence();
        SymmetricBand normal = normal(sums, 0.01);
        double[] difference = {1, -2, 1};
        for (int line = 0; line < 3; line++) {
            for (int i = 0; i < 3; i++) {
                for (int j = 0; j <= i; j++) {
                    double product = difference[i] * difference[j];
                    normal.add(3 * line + i, 3 * line + j, product);
                    normal.add(line + 3 * i, line + 3 * j, product);
                }
            }
        }
        assertArrayEquals(expected, plusOne(BandedCholesky.of(normal).solve(sums.cellResidual)), LAST_DIGIT);
    }
}
