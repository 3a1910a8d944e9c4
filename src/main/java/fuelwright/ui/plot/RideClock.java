package fuelwright.ui.plot;

import java.util.List;
import java.util.function.IntToDoubleFunction;

/**
 * Rows on one axis of time that never goes back: where a log restarted, its new segment is set two seconds behind the old one.
 * Immutable.
 */
public final class RideClock {

    private static final double BETWEEN_SEGMENTS_S = 2;

    private final double[] shownS;

    /**
     * @param timeS each row's time, non-decreasing within a segment
     * @param segmentStarts ascending rows, the first is 0
     */
    public RideClock(int size, IntToDoubleFunction timeS, List<Integer> segmentStarts) {
        shownS = new double[size];
        double shift = 0;
        int segment = 1;
        for (int row = 0; row < size; row++) {
            double time = timeS.applyAsDouble(row);
            if (segment < segmentStarts.size() && segmentStarts.get(segment) == row) {
                segment++;
                double least = shownS[row - 1] + BETWEEN_SEGMENTS_S;
                shift = time >= shownS[row - 1] ? 0 : least - time;
            }
            shownS[row] = time + shift;
        }
    }

    public int size() {
        return shownS.length;
    }

    public double at(int row) {
        return shownS[row];
    }

    public double first() {
        return shownS.length == 0 ? 0 : shownS[0];
    }

    public double last() {
        return shownS.length == 0 ? 0 : shownS[shownS.length - 1];
    }

    /** The first row at or after a shown time; the number of rows where there is none. */
    public int rowAtOrAfter(double timeS) {
        int low = 0;
        int high = shownS.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (shownS[middle] < timeS) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** The row nearest to a shown time; −1 where there is no row. */
    public int nearest(double timeS) {
        int row = rowAtOrAfter(timeS);
        if (row == shownS.length) {
            return row - 1;
        }
        return row > 0 && timeS - shownS[row - 1] < shownS[row] - timeS ? row - 1 : row;
    }
}
