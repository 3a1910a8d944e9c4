package fuelwright.estimate;

/**
 * Cholesky factor L of a symmetric positive definite band matrix A = L·Lᵀ, with the parts of the inverse inside the band.
 *
 * <p>Selected inversion by the recursion of Takahashi, Fagan and Chin (1973): with Z = A⁻¹ and L = (unit lower) · D^½, Z(i,j) for j ≥ i
 * follows from the already known elements further down. Factor and inverse cost O(n·w²), a solve O(n·w), for order n and half-bandwidth
 * w. Immutable once made.
 */
final class BandedCholesky {

    private final int order;
    private final int halfBandwidth;
    private final double[] factor;

    private BandedCholesky(int order, int halfBandwidth, double[] factor) {
        this.order = order;
        this.halfBandwidth = halfBandwidth;
        this.factor = factor;
    }

    /**
     * Factors a matrix.
     *
     * @param matrix symmetric positive definite; not modified
     * @throws IllegalArgumentException if a pivot isn't positive
     */
    static BandedCholesky of(SymmetricBand matrix) {
        int n = matrix.order();
        int w = matrix.halfBandwidth();
        int stride = w + 1;
        double[] l = matrix.copyOfBand();
        for (int i = 0; i < n; i++) {
            int firstI = Math.max(0, i - w);
            int rowI = i * stride + w - i;
            for (int j = firstI; j <= i; j++) {
                int rowJ = j * stride + w - j;
                int from = Math.max(firstI, j - w);
                double sum = l[rowI + j] - dot(l, rowI + from, rowJ + from, j - from);
                if (i == j) {
                    if (!(sum > 0)) {
                        throw new IllegalArgumentException(
                                "matrix is not positive definite: pivot " + sum + " at " + i);
                    }
                    l[rowI + i] = Math.sqrt(sum);
                } else {
                    l[rowI + j] = sum / l[rowJ + j];
                }
            }
        }
        return new BandedCholesky(n, w, l);
    }

    /** Four running sums let the processor work on them side by side: this loop is where a fit spends its time. */
    private static double dot(double[] l, int a, int b, int length) {
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double s3 = 0;
        int k = 0;
        for (; k + 3 < length; k += 4) {
            s0 += l[a + k] * l[b + k];
            s1 += l[a + k + 1] * l[b + k + 1];
            s2 += l[a + k + 2] * l[b + k + 2];
            s3 += l[a + k + 3] * l[b + k + 3];
        }
        for (; k < length; k++) {
            s0 += l[a + k] * l[b + k];
        }
        return s0 + s1 + (s2 + s3);
    }

    /** Element (row, column) of L, column ≤ row. */
    double factorAt(int row, int column) {
        return row - column > halfBandwidth ? 0 : factor[row * (halfBandwidth + 1) + halfBandwidth - row + column];
    }

    /** Natural log of the determinant of A. */
    double logDeterminant() {
        double sum = 0;
        for (int i = 0; i < order; i++) {
            sum += Math.log(factor[i * (halfBandwidth + 1) + halfBandwidth]);
        }
        return 2 * sum;
    }

    /**
     * Solves A·x = b.
     *
     * @param b length n; not modified
     * @return x, length n
     */
    double[] solve(double[] b) {
        double[] x = b.clone();
        int stride = halfBandwidth + 1;
        for (int i = 0; i < order; i++) {
            int row = i * stride + halfBandwidth - i;
            double sum = x[i];
            for (int k = Math.max(0, i - halfBandwidth); k < i; k++) {
                sum -= factor[row + k] * x[k];
            }
            x[i] = sum / factor[row + i];
        }
        for (int i = order - 1; i >= 0; i--) {
            int row = i * stride + halfBandwidth - i;
            x[i] /= factor[row + i];
            for (int k = Math.max(0, i - halfBandwidth); k < i; k++) {
                x[k] -= factor[row + k] * x[i];
            }
        }
        return x;
    }

    /** The elements of A⁻¹ inside the band. */
    SymmetricBand inverseInBand() {
        int n = order;
        int w = halfBandwidth;
        SymmetricBand z = new SymmetricBand(n, w);
        for (int i = n - 1; i >= 0; i--) {
            double pivot = factorAt(i, i);
            int last = Math.min(n - 1, i + w);
            for (int j = last; j >= i; j--) {
                double sum = i == j ? 1 / pivot : 0;
                for (int k = i + 1; k <= last; k++) {
                    sum -= factorAt(k, i) * z.at(Math.max(k, j), Math.min(k, j));
                }
                z.set(j, i, sum / pivot);
            }
        }
        return z;
    }
}
