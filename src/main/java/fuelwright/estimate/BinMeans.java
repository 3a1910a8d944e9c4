package fuelwright.estimate;

import java.util.Arrays;

/**
 * The plain two-dimensional cell mean that a pivot table gives: every value falls into the one bin between two edges, bins closed on the
 * left, the last one also on the right; values outside are left out. For comparison only: it knows neither weights nor neighbours.
 * Mutable, not thread-safe. O(log n) a value.
 */
public final class BinMeans {

    private final double[] xEdges;
    private final double[] yEdges;
    private final double[] sums;
    private final int[] counts;

    /**
     * @param xEdges ascending, one more than bins; copied
     * @param yEdges the same for the other axis
     */
    public BinMeans(double[] xEdges, double[] yEdges) {
        this.xEdges = xEdges.clone();
        this.yEdges = yEdges.clone();
        int bins = (xEdges.length - 1) * (yEdges.length - 1);
        this.sums = new double[bins];
        this.counts = new int[bins];
    }

    /** Adds a value at a place; a value or place that is NaN or outside the edges is left out. */
    public void add(double x, double y, double value) {
        int i = bin(xEdges, x);
        int j = bin(yEdges, y);
        if (i >= 0 && j >= 0 && !Double.isNaN(value)) {
            sums[i * (yEdges.length - 1) + j] += value;
            counts[i * (yEdges.length - 1) + j]++;
        }
    }

    private static int bin(double[] edges, double value) {
        int last = edges.length - 1;
        if (!(value >= edges[0] && value <= edges[last])) {
            return -1;
        }
        int found = Arrays.binarySearch(edges, value);
        return Math.min(found >= 0 ? found : -found - 2, last - 1);
    }

    /** Values in bin (i along x, j along y). */
    public int count(int i, int j) {
        return counts[i * (yEdges.length - 1) + j];
    }

    /** Mean of the values in bin (i along x, j along y); NaN where it has none. */
    public double mean(int i, int j) {
        int bin = i * (yEdges.length - 1) + j;
        return counts[bin] == 0 ? Double.NaN : sums[bin] / counts[bin];
    }
}
