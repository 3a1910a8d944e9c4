package fuelwright.screen;

import java.util.Arrays;
import java.util.function.IntPredicate;
import org.apache.commons.math3.util.ResizableDoubleArray;

/**
 * How the mixture's departure from its target shrinks as it is averaged over longer moments. What a table leaves over stays: the mean of four seconds is as far off as the mean of a half.
 * Control takes it away: its limit cycle and its integral action make the long means far smaller than the short ones, more so than noise by itself would (which gives 0.35 for four seconds
 * against a half). The medians pass over the moments in which the loop was catching up.
 * The shares were set on simulated rides (decision 0160).
 *
 * @param stretches stretches of four seconds
 * @param fourLog median size of the mean of four seconds, ln
 * @param twoLog the same of two seconds
 * @param halfLog the same of half a second, from the same stretches
 */
record Pinned(int stretches, double fourLog, double twoLog, double halfLog) {

    private static final double FOUR_S = 4;
    private static final double TWO_S = 2;
    private static final double HALF_S = 0.5;
    /** Readings further apart than this aren't one stretch, s. */
    private static final double GAP_S = 0.55;

    private static final int SOME_ROWS = 1024;
    private static final int LEAST_STRETCHES = 16;
    private static final double NEAR_LOG = 0.006;
    private static final double FOUR_SHARE = 0.55;
    private static final double TWO_SHARE = 0.62;
    private static final double PLAIN_FOUR_SHARE = 0.28;
    private static final double PLAIN_TWO_SHARE = 0.42;

    static Pinned of(double[] timeS, double[] off, IntPredicate counts) {
        Means four = new Means();
        Means two = new Means();
        Means half = new Means();
        int[] row = new int[SOME_ROWS];
        int n = 0;
        for (int i = 0; i <= off.length; i++) {
            boolean there = i < off.length && counts.test(i) && !Double.isNaN(off[i]);
            boolean ends = i == off.length || there && n > 0 && !follows(timeS[row[n - 1]], timeS[i]);
            if (ends) {
                whole(timeS, off, row, n, four, two, half);
                n = 0;
            }
            if (there) {
                row = n == row.length ? Arrays.copyOf(row, 2 * n) : row;
                row[n++] = i;
            }
        }
        return new Pinned(four.sizes.getNumElements(), four.median(), two.median(), half.median());
    }

    static boolean follows(double beforeS, double timeS) {
        return timeS >= beforeS && timeS - beforeS <= GAP_S;
    }

    /** Cuts a stretch into fours of seconds; what is left over at its end isn't looked at. */
    private static void whole(double[] timeS, double[] off, int[] row, int n, Means... means) {
        if (n < 2) {
            return;
        }
        double start = timeS[row[0]];
        double usedS = Math.floor((timeS[row[n - 1]] - start) / FOUR_S) * FOUR_S;
        double[] lengths = {FOUR_S, TWO_S, HALF_S};
        for (int m = 0; m < means.length; m++) {
            int i = 0;
            while (i < n && timeS[row[i]] - start < usedS) {
                double slot = Math.floor((timeS[row[i]] - start) / lengths[m]);
                double sum = 0;
                int from = i;
                while (i < n
                        && timeS[row[i]] - start < usedS
                        && Math.floor((timeS[row[i]] - start) / lengths[m]) == slot) {
                    sum += off[row[i++]];
                }
                means[m].add(sum / (i - from));
            }
        }
    }

    /** Whether something takes the departures away, as no table does. */
    boolean isControlled() {
        return shrinks(FOUR_SHARE, TWO_SHARE);
    }

    /** The same where the stretches were chosen for being on target: more than the choice gives by itself. */
    boolean isPlainlyControlled() {
        return shrinks(PLAIN_FOUR_SHARE, PLAIN_TWO_SHARE);
    }

    private boolean shrinks(double fourShare, double twoShare) {
        return stretches >= LEAST_STRETCHES
                && fourLog < NEAR_LOG
                && fourLog < fourShare * halfLog
                && twoLog < twoShare * halfLog;
    }

    private static final class Means {
        private final ResizableDoubleArray sizes = new ResizableDoubleArray();

        void add(double mean) {
            sizes.addElement(Math.abs(mean));
        }

        double median() {
            double[] sorted = sizes.getElements();
            Arrays.sort(sorted);
            return sorted.length == 0 ? Double.NaN : sorted[sorted.length / 2];
        }
    }
}
