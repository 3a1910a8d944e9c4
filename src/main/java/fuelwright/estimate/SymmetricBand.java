package fuelwright.estimate;

/** A symmetric band matrix; only the lower triangle inside the band is kept. Mutable, not thread-safe. */
final class SymmetricBand {

    private final int order;
    private final int halfBandwidth;
    /** Row by row, element (i, j) at {@code i * (w + 1) + w - i + j}. */
    private final double[] band;

    SymmetricBand(int order, int halfBandwidth) {
        if (order < 1 || halfBandwidth < 0) {
            throw new IllegalArgumentException("order " + order + ", halfBandwidth " + halfBandwidth);
        }
        this.order = order;
        this.halfBandwidth = Math.min(halfBandwidth, order - 1);
        this.band = new double[order * (this.halfBandwidth + 1)];
    }

    int order() {
        return order;
    }

    int halfBandwidth() {
        return halfBandwidth;
    }

    /** Element (row, column) with column ≤ row; 0 outside the band. */
    double at(int row, int column) {
        return row - column > halfBandwidth ? 0 : band[row * (halfBandwidth + 1) + halfBandwidth - row + column];
    }

    /** Sets element (row, column) and its mirror, 0 ≤ row − column ≤ half-bandwidth. */
    void set(int row, int column, double value) {
        band[row * (halfBandwidth + 1) + halfBandwidth - row + column] = value;
    }

    /** Adds to element (row, column) and its mirror, 0 ≤ row − column ≤ half-bandwidth. */
    void add(int row, int column, double value) {
        band[row * (halfBandwidth + 1) + halfBandwidth - row + column] += value;
    }

    /**
     * Adds {@code weight} · s·sᵀ for a sparse vector s.
     *
     * @param places where s isn't 0, the first {@code count}, in any order, no further apart than the half-bandwidth
     * @param values s there
     */
    void addOuter(int[] places, double[] values, int count, double weight) {
        double[] a = band;
        int w = halfBandwidth;
        for (int i = 0; i < count; i++) {
            int row = places[i];
            double wi = weight * values[i];
            int atRow = row * (w + 1) + w - row;
            for (int j = 0; j <= i; j++) {
                int column = places[j];
                a[column <= row ? atRow + column : column * (w + 1) + w - column + row] += wi * values[j];
            }
        }
    }

    /** Adds {@code factor} times another matrix of the same shape. */
    void add(SymmetricBand other, double factor) {
        if (other.order != order || other.halfBandwidth != halfBandwidth) {
            throw new IllegalArgumentException("shapes differ");
        }
        for (int i = 0; i < band.length; i++) {
            band[i] += factor * other.band[i];
        }
    }

    double[] copyOfBand() {
        return band.clone();
    }

    /** The half-bandwidth that is really used: no element further from the diagonal differs from 0. */
    int reach() {
        for (int d = halfBandwidth; d > 0; d--) {
            for (int i = d; i < order; i++) {
                if (at(i, i - d) != 0) {
                    return d;
                }
            }
        }
        return 0;
    }

    /** The product with a vector of length n, which isn't modified. */
    double[] times(double[] x) {
        double[] y = new double[order];
        for (int i = 0; i < order; i++) {
            for (int j = Math.max(0, i - halfBandwidth); j < i; j++) {
                double a = at(i, j);
                y[i] += a * x[j];
                y[j] += a * x[i];
            }
            y[i] += at(i, i) * x[i];
        }
        return y;
    }
}
