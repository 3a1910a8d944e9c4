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

    /** For rows {@code from} to {@code to} exclusive. */
    SlidingRange(double[] timeS, double[] values, double spanS, int from, int to) {
        this.timeS = timeS;
        this.values = values;
        this.spanS = spanS;
        this.least = new int[to - from];
        this.most = new int[to - from];
    }

    /** The range over the rows from {@code spanS} before this row; 0 where nothing is known. */
    double next(int row) {
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
        while (leastHead < leastTail && isOld(least[leastHead], row)) {
            leastHead++;
        }
        while (mostHead < mostTail && isOld(most[mostHead], row)) {
            mostHead++;
        }
        return leastHead == leastTail ? 0 : values[most[mostHead]] - values[least[leastHead]];
    }

    private boolean isOld(int candidate, int row) {
        return timeS[row] - timeS[candidate] > spanS + 1e-9;
    }
}
