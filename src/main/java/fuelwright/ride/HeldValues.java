package fuelwright.ride;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * Which rows of a column are new readings. A logger that asks for its channels in turn writes the last answer of each into every row:
 * a value that is only held isn't another reading and must be counted once. The column itself stays as it is, every row of it.
 *
 * <p>How often the column is renewed is the lower quartile of the lengths of its runs of equal values (a column that is sampled in every
 * row has many runs of one row, however slowly it moves). A row is a new reading when its value differs from the row before, or when
 * as many rows as that have passed since the last new one. Missing values are never readings, and don't interrupt a run. Complexity: n
 * log n.
 */
public final class HeldValues {

    private static final int RUNS_TO_JUDGE = 8;

    private final BitSet fresh;
    private final int periodRows;

    private HeldValues(BitSet fresh, int periodRows) {
        this.fresh = fresh;
        this.periodRows = periodRows;
    }

    /**
     * Looks at a column.
     *
     * @param segmentStarts as {@link Ride#segmentStarts()}: nothing is held over a restart
     */
    public static HeldValues of(Column column, List<Integer> segmentStarts) {
        int period = period(column, segmentStarts);
        BitSet fresh = new BitSet(column.size());
        int segment = 0;
        double held = Double.NaN;
        int since = 0;
        for (int i = 0; i < column.size(); i++) {
            if (segment < segmentStarts.size() && segmentStarts.get(segment) == i) {
                segment++;
                held = Double.NaN;
            }
            since++;
            if (column.has(i) && (column.at(i) != held || since >= period)) {
                fresh.set(i);
                held = column.at(i);
                since = 0;
            }
        }
        return new HeldValues(fresh, period);
    }

    private static int period(Column column, List<Integer> segmentStarts) {
        int[] lengths = new int[column.size()];
        int runs = 0;
        int length = 0;
        boolean whole = false;
        double value = Double.NaN;
        int segment = 0;
        for (int i = 0; i < column.size(); i++) {
            if (segment < segmentStarts.size() && segmentStarts.get(segment) == i) {
                segment++;
                whole = false;
                length = 0;
                value = Double.NaN;
            }
            if (column.has(i)) {
                if (column.at(i) != value) {
                    if (whole) {
                        lengths[runs++] = length;
                    }
                    whole = !Double.isNaN(value);
                    value = column.at(i);
                    length = 0;
                }
                length++;
            }
        }
        if (runs < RUNS_TO_JUDGE) {
            return 1;
        }
        Arrays.sort(lengths, 0, runs);
        return lengths[runs / 4];
    }

    /** Rows from one renewal of the column to the next; 1 where every row is a new reading, or where too few changes tell. */
    public int periodRows() {
        return periodRows;
    }

    /** Whether the row holds a new reading. */
    public boolean isNew(int row) {
        return fresh.get(row);
    }

    /** How many rows hold a new reading. */
    public int newCount() {
        return fresh.cardinality();
    }
}
