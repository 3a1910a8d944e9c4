package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class BinMeansTest {

    private static final double[] SPEEDS = {1000, 2000, 4000, 8000};
    private static final double[] LOADS = {0, 10, 30, 100};

    /** Computed with SciPy 1.17.1 {@code scipy.stats.binned_statistic_2d}: bins closed on the left, the last edge closed too. */
    @Test
    void meansAndCountsAreThoseOfAReferenceLibrary() {
        double[][] points = {
            {1100, 1, 1.00},
            {1200, 9.9, 0.98},
            {1900, 10, 1.02},
            {2500, 29, 0.95},
            {3900, 30, 0.90},
            {4000, 5, 1.05},
            {4100, 99, 0.88},
            {7999, 100, 0.86},
            {8000, 100, 0.84}
        };
        double[][] means = {{0.99, 1.02, Double.NaN}, {Double.NaN, 0.95, 0.90}, {1.05, Double.NaN, 0.86}};
        int[][] counts = {{2, 1, 0}, {0, 1, 1}, {1, 0, 3}};
        BinMeans bins = new BinMeans(SPEEDS, LOADS);
        for (double[] p : points) {
            bins.add(p[0], p[1], p[2]);
        }
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                assertEquals(counts[i][j], bins.count(i, j), "count " + i + ", " + j);
                assertEquals(means[i][j], bins.mean(i, j), 1e-12, "mean " + i + ", " + j);
            }
        }
    }

    @Test
    void whatIsMissingOrOutsideTheEdgesIsLeftOut() {
        BinMeans bins = new BinMeans(SPEEDS, LOADS);
        bins.add(999.9, 5, 1);
        bins.add(8000.1, 5, 1);
        bins.add(1500, -0.1, 1);
        bins.add(1500, 100.1, 1);
        bins.add(Double.NaN, 5, 1);
        bins.add(1500, Double.NaN, 1);
        bins.add(1500, 5, Double.NaN);
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                assertEquals(0, bins.count(i, j));
            }
        }
    }

    @Test
    void changingTheEdgesAfterwardsChangesNothing() {
        double[] edges = {0, 1, 2};
        BinMeans bins = new BinMeans(edges, edges);
        edges[1] = 1.9;
        bins.add(1.5, 0.5, 3);
        assertEquals(3, bins.mean(1, 0), 0.0);
    }
}
