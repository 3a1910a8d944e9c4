package fuelwright.power;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Local quadratic regression with tricube weights (Cleveland, JASA 74 (1979) 829; value from memory): at x0 the parabola
 * y = b0 + b1·u + b2·u², u = (x − x0)/h, that fits the points within the half-width h best, weighted by (1 − |u|³)³. Standard errors take the
 * departures from the parabola as independent.
 */
final class LocalQuadratic {

    /** What the fit gives at a place: value and slope with standard errors; NaN where too few points are near. */
    record At(double value, double valueError, double slope, double slopeError) {
        static final At NOTHING = new At(Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    }

    private static final int LEAST_POINTS = 6;

    private final double[] xs;
    private final double[] ys;

    /** Points; those without y are left out. */
    LocalQuadratic(double[] xs, double[] ys) {
        this.xs = xs;
        this.ys = ys;
    }

    At at(double x0, double halfWidth) {
        double[][] normal = new double[3][3];
        double[][] squared = new double[3][3];
        double[] right = new double[3];
        double weights = 0;
        int count = 0;
        for (int i = 0; i < xs.length; i++) {
            double w = weight(i, x0, halfWidth);
            if (w > 0) {
                double[] row = row(i, x0, halfWidth);
                count++;
                weights += w;
                for (int a = 0; a < 3; a++) {
                    right[a] += w * row[a] * ys[i];
                    for (int b = 0; b < 3; b++) {
                        normal[a][b] += w * row[a] * row[b];
                        squared[a][b] += w * w * row[a] * row[b];
                    }
                }
            }
        }
        LUDecomposition lu = new LUDecomposition(new Array2DRowRealMatrix(normal, false), 1e-9);
        if (count < LEAST_POINTS || !lu.getSolver().isNonSingular()) {
            return At.NOTHING;
        }
        RealMatrix inverse = lu.getSolver().getInverse();
        RealMatrix middle = new Array2DRowRealMatrix(squared, false);
        double[] b = inverse.operate(right);
        double departure = 0;
        for (int i = 0; i < xs.length; i++) {
            double w = weight(i, x0, halfWidth);
            if (w > 0) {
                double[] row = row(i, x0, halfWidth);
                double left = ys[i] - b[0] - b[1] * row[1] - b[2] * row[2];
                departure += w * left * left;
            }
        }
        double freedom = weights - inverse.multiply(middle).getTrace();
        double variance = freedom > 0 ? departure / freedom : Double.NaN;
        RealMatrix covariance = inverse.multiply(middle).multiply(inverse).scalarMultiply(variance);
        return new At(
                b[0],
                Math.sqrt(covariance.getEntry(0, 0)),
                b[1] / halfWidth,
                Math.sqrt(covariance.getEntry(1, 1)) / halfWidth);
    }

    private double weight(int i, double x0, double halfWidth) {
        double u = Math.abs(xs[i] - x0) / halfWidth;
        if (!(u < 1) || Double.isNaN(ys[i])) {
            return 0;
        }
        double rest = 1 - u * u * u;
        return rest * rest * rest;
    }

    private double[] row(int i, double x0, double halfWidth) {
        double u = (xs[i] - x0) / halfWidth;
        return new double[] {1, u, u * u};
    }
}
