package fuelwright.estimate;

import java.util.ArrayList;
import java.util.List;

/**
 * Rows of one ride without a restart between them: what one core works on at a time.
 *
 * @param ride number of the ride
 * @param from first row
 * @param to one past the last row
 */
record Stretch(int ride, int from, int to) {

    /** Longer segments are cut, so that cores can share them; what a cut loses is the sensor's settling, half a second. */
    private static final int LONGEST_ROWS = 1 << 16;
    /** Length of the samples taken of long rides. */
    private static final int SAMPLE_ROWS = 1 << 12;

    int rows() {
        return to - from;
    }

    /** All rows of all rides. */
    static List<Stretch> all(List<Readings> rides) {
        return cut(rides, LONGEST_ROWS);
    }

    /** All rows where there are at most {@code most}; otherwise samples of about that many in all, spread evenly over the rides. */
    static List<Stretch> some(List<Readings> rides, int most) {
        long rows = rides.stream().mapToLong(Readings::size).sum();
        if (rows <= most) {
            return all(rides);
        }
        List<Stretch> pieces = cut(rides, SAMPLE_ROWS);
        int wanted = Math.max(1, most / SAMPLE_ROWS);
        List<Stretch> some = new ArrayList<>();
        for (int i = 0; i < wanted; i++) {
            some.add(pieces.get((int) ((long) i * pieces.size() / wanted)));
        }
        return List.copyOf(some);
    }

    private static List<Stretch> cut(List<Readings> rides, int longest) {
        List<Stretch> pieces = new ArrayList<>();
        for (int ride = 0; ride < rides.size(); ride++) {
            int[] starts = rides.get(ride).track.segmentStarts;
            for (int s = 0; s + 1 < starts.length; s++) {
                for (int from = starts[s]; from < starts[s + 1]; from += longest) {
                    pieces.add(new Stretch(ride, from, Math.min(starts[s + 1], from + longest)));
                }
            }
        }
        return pieces;
    }
}
