package fuelwright.ui.plot;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/**
 * Rows on one axis of time that never goes back: where a log restarted, its new segment is set two seconds behind the old one.
 * Immutable.
 */
public final class RideClock {

    private static final double BETWEEN_SEGMENTS_S = 2;

    private final int size;
    private final IntToDoubleFunction timeS;
    private final int[] starts;
    /** What is added to the times of each segment. */
    private final double[] shiftS;

    /**
     * @param timeS each row's time, non-decreasing within a segment; must not change afterwards
     * @param segmentStarts ascending rows, the first is 0
     */
    public RideClock(int size, IntToDoubleFunction timeS, List<Integer> segmentStarts) {
        this.size = size;
        this.timeS = timeS;
        starts = segmentStarts.stream().mapToInt(Integer::intValue).toArray();
        shiftS = new double[starts.length];
        for (int s = 1; s < starts.length && starts[s] < size; s++) {
            double end = timeS.applyAsDouble(starts[s] - 1) + shiftS[s - 1];
            double time = timeS.applyAsDouble(starts[s]);
            shiftS[s] = time >= end ? 0 : end + BETWEEN_SEGMENTS_S - time;
        }
    }

    public int size() {
        return size;
    }

    /** The shown time of a row. */
    public double at(int row) {
        int segment = Arrays.binarySearch(starts, row);
        return timeS.applyAsDouble(row) + shiftS[segment >= 0 ? segment : -segment - 2];
    }

    /** Where a time of the ride's own clock is shown: in the first segment that has it. */
    public double shown(double ownS) {
        for (int s = 0; s < starts.length && starts[s] < size; s++) {
            int last = (s + 1 < starts.length ? starts[s + 1] : size) - 1;
            if (ownS >= timeS.applyAsDouble(starts[s]) && ownS <= timeS.applyAsDouble(last)) {
                return ownS + shiftS[s];
            }
        }
        return ownS;
    }

    public double first() {
        return size == 0 ? 0 : at(0);
    }

    public double last() {
        return size == 0 ? 0 : at(size - 1);
    }

    /** The first row at or after a shown time; the number of rows where there is none. */
    public int rowAtOrAfter(double shownS) {
        int low = 0;
        int high = size;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (at(middle) < shownS) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** The row nearest to a shown time; −1 where there is no row. */
    public int nearest(double shownS) {
        int row = rowAtOrAfter(shownS);
        if (row == size) {
            return row - 1;
        }
        return row > 0 && shownS - at(row - 1) < at(row) - shownS ? row - 1 : row;
    }
}
