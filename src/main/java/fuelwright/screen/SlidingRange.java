package fuelwright.screen;

/**
 * Greatest less least value within the last moment, row by row, in O(1) a row on average (two queues of candidates, each row enters and
 * leaves once; Lemire, Nordic J. Computing 13 (2006) 328). Missing values are passed over. Rows must be asked for in order.
 */
final class SlidingRange {

    private final double[] timeS;
    private final double[] values;
    private final double spanS;
    private final int[] least;
    private final int[] most;
    private int leastHead;
    private int leastTail;
    private int mostHead;
    private int mostTail;

    SlidingRange(double[] timeS, double[] values, double spanS) {
        this.timeS = timeS;
        this.values = values;
        this.spanS = spanS;
        this.least = new int[values.length];
        this.most = new int[values.length];
    }

    /** The range over the rows from {@code spanS} before this row, but not before {@code from}; 0 where nothing is known. */
    double next(int row, int from) {
        if (!Double.isNaN(values[row])) {
            while (leastTail > leastHead && values[least[leastTail - 1]] >= values[row]) {
                leastTail--;
            }
            least[leastTail++] = row;
            while (mostTail > mostHead && values[most[mostTail - 1]] <= values[row]) {
                mostTail--;
            }
            most[mostTail++] = row;
        }
        while (leastHead < leastTail && isOld(least[leastHead], row, from)) {
            leastHead++;
        }
        while (mostHead < mostTail && isOld(most[mostHead], row, from)) {
            mostHead++;
        }
        return leastHead == leastTail ? 0 : values[most[mostHead]] - values[least[leastHead]];
    }

    private boolean isOld(int candidate, int row, int from) {
        return candidate < from || timeS[row] - timeS[candidate] > spanS + 1e-9;
    }
}
