package fuelwright.estimate;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Cholesky factor L of a symmetric positive definite band matrix A = L·Lᵀ, with the parts of the inverse inside the band.
 *
 * <p>Selected inversion by the recursion of Takahashi, Fagan and Chin (1973): with Z = A⁻¹ and L = (unit lower) · D^½, Z(i,j) for j ≥ i
 * follows from the already known elements further down. Factor and inverse cost O(n·w²), a solve O(n·w), for order n and half-bandwidth
 * w. Columns are taken out eight at a time, each element's subtractions in the order in which one at a time would make them: the figures
 * are the same to the last bit. Immutable once made.
 */
final class BandedCholesky {

    /** Columns that are taken out together. */
    private static final int PANEL = 8;
    /** Rows of the inverse that are added up together. */
    private static final int ADDED = 4;
    /** From so many rows on, cores share what a panel does to them. */
    private static final int SHARED_ROWS = 128;
    /** Right-hand sides that are solved together. */
    private static final int SOLVED = 4;

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
        double[][] panel = new double[PANEL][apart(n)];
        // The rows that the panel reaches, each with the whole matrix's columns, in places that are used again and
        // again.
        double[][] places = new double[w + PANEL][apart(n)];
        double[][] rows = new double[n][];
        int fetched = 0;
        for (int j = 0; j < n; j += PANEL) {
            int columns = Math.min(PANEL, n - j);
            int last = Math.min(n - 1, j + columns - 1 + w);
            for (; fetched <= last; fetched++) {
                int from = Math.max(0, fetched - w);
                rows[fetched] = places[fetched % places.length];
                System.arraycopy(l, fetched * stride + w - fetched + from, rows[fetched], from, fetched + 1 - from);
            }
            for (int q = 0; q < columns; q++) {
                eliminate(rows, j, q, columns, panel[q], w, last);
            }
            for (int q = 0; q < PANEL; q++) {
                int i = j + q;
                if (q >= columns) {
                    Arrays.fill(panel[q], 0);
                } else {
                    int from = Math.max(0, i - w);
                    System.arraycopy(rows[i], from, l, i * stride + w - i + from, i + 1 - from);
                }
            }
            subtract(rows, panel, j + columns, last);
        }
        return new BandedCholesky(n, w, l);
    }

    /** Takes the panel's columns out of all rows that they reach: side by side where there is enough to do. */
    private static void subtract(double[][] rows, double[][] panel, int from, int last) {
        IntStream reached = IntStream.rangeClosed(from, last);
        if (last - from >= SHARED_ROWS) {
            reached = reached.parallel();
        }
        reached.forEach(i -> subtract(rows[i], panel, from, i));
    }

    /**
     * Makes column j + q of L, which takes it out of the panel's columns to its right.
     *
     * @param column is filled from row j + q to {@code last}, with 0 beyond the band
     */
    private static void eliminate(double[][] rows, int j, int q, int columns, double[] column, int w, int last) {
        int at = j + q;
        double pivot = rows[at][at];
        if (!(pivot > 0)) {
            throw new IllegalArgumentException("matrix is not positive definite: pivot " + pivot + " at " + at);
        }
        double root = Math.sqrt(pivot);
        rows[at][at] = root;
        int end = Math.min(last, at + w);
        for (int i = at + 1; i <= end; i++) {
            double[] row = rows[i];
            double value = row[at] / root;
            row[at] = value;
            column[i] = value;
            for (int k = at + 1; k < j + columns && k <= i && value != 0; k++) {
                row[k] -= value * column[k];
            }
        }
        Arrays.fill(column, end + 1, last + 1, 0);
    }

    /** A length of at least n with which arrays that are looked at side by side don't drive each other out of the processor's cache. */
    private static int apart(int n) {
        return (n / 512 + 1) * 512 + 6;
    }

    /**
     * Takes the panel's columns out of a row, one after the other in their order. This loop is where a fit spends its time. All arrays have one
     * index: only then does the compiler do several elements at once.
     */
    private static void subtract(double[] x, double[][] panel, int from, int to) {
        double[] c0 = panel[0];
        double[] c1 = panel[1];
        double[] c2 = panel[2];
        double[] c3 = panel[3];
        double[] c4 = panel[4];
        double[] c5 = panel[5];
        double[] c6 = panel[6];
        double[] c7 = panel[7];
        double f0 = c0[to];
        double f1 = c1[to];
        double f2 = c2[to];
        double f3 = c3[to];
        double f4 = c4[to];
        double f5 = c5[to];
        double f6 = c6[to];
        double f7 = c7[to];
        if (f0 == 0 && f1 == 0 && f2 == 0 && f3 == 0 && f4 == 0 && f5 == 0 && f6 == 0 && f7 == 0) {
            return;
        }
        for (int k = from; k <= to; k++) {
            x[k] = x[k]
                    - f0 * c0[k]
                    - f1 * c1[k]
                    - f2 * c2[k]
                    - f3 * c3[k]
                    - f4 * c4[k]
                    - f5 * c5[k]
                    - f6 * c6[k]
                    - f7 * c7[k];
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

    /**
     * Solves for several right-hand sides: the same figures as one by one, but the factor, which is more than the processor keeps at hand, is
     * read once for four of them.
     *
     * @param b each of length n; not modified
     * @return each x, length n
     */
    double[][] solve(double[][] b) {
        double[][] x = new double[b.length][];
        int q = 0;
        for (; q + SOLVED <= b.length; q += SOLVED) {
            for (int r = q; r < q + SOLVED; r++) {
                x[r] = b[r].clone();
            }
            solveInPlace(x[q], x[q + 1], x[q + 2], x[q + 3]);
        }
        for (; q < b.length; q++) {
            x[q] = solve(b[q]);
        }
        return x;
    }

    private void solveInPlace(double[] x0, double[] x1, double[] x2, double[] x3) {
        int stride = halfBandwidth + 1;
        for (int i = 0; i < order; i++) {
            int row = i * stride + halfBandwidth - i;
            double sum0 = x0[i];
            double sum1 = x1[i];
            double sum2 = x2[i];
            double sum3 = x3[i];
            for (int k = Math.max(0, i - halfBandwidth); k < i; k++) {
                double f = factor[row + k];
                sum0 -= f * x0[k];
                sum1 -= f * x1[k];
                sum2 -= f * x2[k];
                sum3 -= f * x3[k];
            }
            double pivot = factor[row + i];
            x0[i] = sum0 / pivot;
            x1[i] = sum1 / pivot;
            x2[i] = sum2 / pivot;
            x3[i] = sum3 / pivot;
        }
        for (int i = order - 1; i >= 0; i--) {
            int row = i * stride + halfBandwidth - i;
            double pivot = factor[row + i];
            double last0 = x0[i] /= pivot;
            double last1 = x1[i] /= pivot;
            double last2 = x2[i] /= pivot;
            double last3 = x3[i] /= pivot;
            for (int k = Math.max(0, i - halfBandwidth); k < i; k++) {
                double f = factor[row + k];
                x0[k] -= f * last0;
                x1[k] -= f * last1;
                x2[k] -= f * last2;
                x3[k] -= f * last3;
            }
        }
    }

    /** The elements of A⁻¹ inside the band. */
    SymmetricBand inverseInBand() {
        int n = order;
        int w = halfBandwidth;
        int stride = w + 1;
        SymmetricBand z = new SymmetricBand(n, w);
        // Only the rows that the band still reaches, both triangles.
        double[][] places = new double[stride][apart(n)];
        double[][] rows = new double[n][];
        double[] sums = new double[apart(n)];
        double[] shares = new double[n];
        for (int i = n - 1; i >= 0; i--) {
            double pivot = factor[i * stride + w];
            int last = Math.min(n - 1, i + w);
            Arrays.fill(sums, i + 1, last + 1, 0);
            for (int k = i + 1; k <= last; k++) {
                shares[k] = factor[k * stride + w - k + i];
            }
            int k = i + 1;
            for (; k + ADDED - 1 <= last; k += ADDED) {
                add(sums, shares, rows, k, i + 1, last);
            }
            for (; k <= last; k++) {
                add(sums, shares[k], rows[k], i + 1, last);
            }
            double[] own = places[i % stride];
            rows[i] = own;
            double diagonal = 1 / pivot;
            for (int j = i + 1; j <= last; j++) {
                double value = -sums[j] / pivot;
                own[j] = value;
                rows[j][i] = value;
                z.set(j, i, value);
                diagonal -= shares[j] * value;
            }
            own[i] = diagonal / pivot;
            z.set(i, i, own[i]);
        }
        return z;
    }

    /** Adds rows k to k + 3, each times its share. */
    private static void add(double[] sums, double[] shares, double[][] rows, int k, int from, int to) {
        double s0 = shares[k];
        double s1 = shares[k + 1];
        double s2 = shares[k + 2];
        double s3 = shares[k + 3];
        if (s0 == 0 && s1 == 0 && s2 == 0 && s3 == 0) {
            return;
        }
        double[] r0 = rows[k];
        double[] r1 = rows[k + 1];
        double[] r2 = rows[k + 2];
        double[] r3 = rows[k + 3];
        for (int j = from; j <= to; j++) {
            sums[j] = sums[j] + s0 * r0[j] + s1 * r1[j] + s2 * r2[j] + s3 * r3[j];
        }
    }

    private static void add(double[] sums, double share, double[] row, int from, int to) {
        for (int j = from; j <= to && share != 0; j++) {
            sums[j] += share * row[j];
        }
    }
}
