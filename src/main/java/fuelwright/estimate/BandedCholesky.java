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
        double[] column = new double[n];
        for (int j = 0; j < n; j++) {
            int atPivot = j * stride + w;
            double pivot = l[atPivot];
            if (!(pivot > 0)) {
                throw new IllegalArgumentException("matrix is not positive definite: pivot " + pivot + " at " + j);
            }
            double root = Math.sqrt(pivot);
            l[atPivot] = root;
            int last = Math.min(n - 1, j + w);
            for (int i = j + 1; i <= last; i++) {
                column[i] = l[i * stride + w - i + j] / root;
            }
            for (int i = j + 1; i <= last; i++) {
                int row = i * stride + w - i;
                l[row + j] = column[i];
                if (column[i] != 0) {
                    subtract(l, row, column[i], column, j + 1, i);
                }
            }
        }
        return new BandedCholesky(n, w, l);
    }

    /** Row by row, so that the processor can do several elements at once: this loop is where a fit spends its time. */
    private static void subtract(double[] l, int row, double factor, double[] column, int from, int to) {
        for (int k = from; k <= to; k++) {
            l[row + k] -= factor * column[k];
        }
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
        int stride = w + 1;
        int wide = 2 * w + 1;
        // Both triangles, row by row: element (i, j) at i · wide + w − i + j.
        double[] full = new double[n * wide];
        double[] sums = new double[n];
        for (int i = n - 1; i >= 0; i--) {
            double pivot = factor[i * stride + w];
            int last = Math.min(n - 1, i + w);
            java.util.Arrays.fill(sums, i + 1, last + 1, 0);
            for (int k = i + 1; k <= last; k++) {
                double share = factor[k * stride + w - k + i];
                if (share != 0) {
                    add(sums, share, full, k * wide + w - k, i + 1, last);
                }
            }
            double diagonal = 1 / pivot;
            for (int j = i + 1; j <= last; j++) {
                double value = -sums[j] / pivot;
                full[i * wide + w - i + j] = value;
                full[j * wide + w - j + i] = value;
                diagonal -= factor[j * stride + w - j + i] * value;
            }
            full[i * wide + w] = diagonal / pivot;
        }
        SymmetricBand z = new SymmetricBand(n, w);
        for (int i = 0; i < n; i++) {
            for (int j = Math.max(0, i - w); j <= i; j++) {
                z.set(i, j, full[i * wide + w - i + j]);
            }
        }
        return z;
    }

    private static void add(double[] sums, double share, double[] full, int row, int from, int to) {
        for (int j = from; j <= to; j++) {
            sums[j] += share * full[row + j];
        }
    }
}
