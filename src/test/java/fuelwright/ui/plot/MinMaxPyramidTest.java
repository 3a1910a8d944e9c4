package fuelwright.ui.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class MinMaxPyramidTest {

    @Test
    void everyStretchGivesWhatLookingAtEveryRowGives() {
        Random random = new Random(7);
        double[] values = new double[5000];
        for (int i = 0; i < values.length; i++) {
            values[i] = random.nextInt(10) == 0 ? Double.NaN : random.nextGaussian();
        }
        MinMaxPyramid pyramid = new MinMaxPyramid(values.length, i -> values[i]);
        for (int trial = 0; trial < 3000; trial++) {
            int from = random.nextInt(values.length);
            int to = from + random.nextInt(trial % 3 == 0 ? 40 : values.length - from + 1);
            assertEquals(slow(values, from, Math.min(to, values.length)), pyramid.extent(from, to));
        }
    }

    private static MinMaxPyramid.Extent slow(double[] values, int from, int to) {
        double first = Double.NaN;
        double min = Double.NaN;
        double max = Double.NaN;
        double last = Double.NaN;
        for (int i = from; i < to; i++) {
            if (!Double.isNaN(values[i])) {
                first = Double.isNaN(first) ? values[i] : first;
                min = Double.isNaN(min) ? values[i] : Math.min(min, values[i]);
                max = Double.isNaN(max) ? values[i] : Math.max(max, values[i]);
                last = values[i];
            }
        }
        return new MinMaxPyramid.Extent(first, min, max, last);
    }

    @Test
    void aSpikeOfOneSampleIsSeenInTheWhole() {
        MinMaxPyramid pyramid = new MinMaxPyramid(1_000_000, i -> i == 654_321 ? 99 : 1);
        assertEquals(99, pyramid.extent(0, 1_000_000).max());
        assertEquals(1, pyramid.extent(0, 1_000_000).min());
    }

    @Test
    void nothingIsThereWhereAllIsMissing() {
        MinMaxPyramid pyramid = new MinMaxPyramid(100, i -> Double.NaN);
        assertTrue(pyramid.extent(0, 100).isEmpty());
        assertTrue(pyramid.extent(50, 50).isEmpty());
        assertTrue(new MinMaxPyramid(0, i -> 1).extent(0, 10).isEmpty());
    }

    @Test
    void emptyStretchesArePassedOverWithoutLookingAtEachRow() {
        int rows = 1_000_000;
        int[] looked = new int[1];
        MinMaxPyramid pyramid = new MinMaxPyramid(rows, row -> {
            looked[0]++;
            return row == 400_003 || row == 700_001 ? row : Double.NaN;
        });
        looked[0] = 0;
        MinMaxPyramid.Extent all = pyramid.extent(1, rows - 1);
        assertEquals(new MinMaxPyramid.Extent(400_003, 400_003, 700_001, 700_001), all);
        assertTrue(pyramid.extent(400_004, 700_001).isEmpty());
        assertTrue(looked[0] < 1000, "rows looked at: " + looked[0]);
    }
}
