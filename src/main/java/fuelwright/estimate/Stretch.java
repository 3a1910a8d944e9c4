package fuelwright.estimate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Rows of one ride without a restart between them. Rows before them, in the same segment, are run through first, so that sensor and wall
 * film have settled where the stretch begins: cutting a ride loses no reading.
 *
 * @param ride number of the ride
 * @param lead row at which the run-up starts
 * @param from first row
 * @param to one past the last row
 */
record Stretch(int ride, int lead, int from, int to) {

    /** Parts that all rides together consist of: what is left out in turn, and what cores share. */
    static final int PARTS = 8;
    /** Where all rides together are longer they are cut for the cores; short ones aren't, so that rows more or less move no cut. */
    private static final int WHOLE_ROWS = 60_000;
    /** Length of the samples taken of long rides. */
    private static final int SAMPLE_ROWS = 1 << 12;
    /** Time of the run-up: five times the slowest of what has to settle, s. */
    private static final double RUN_UP_S = 3;

    int rows() {
        return to - from;
    }

    /** All rows of all rides in at most {@link #PARTS} parts, in order; long rides in parts of equal length. */
    static List<List<Stretch>> all(List<Readings> rides) {
        long rows = rows(rides);
        List<List<Stretch>> parts = new ArrayList<>();
        if (rows <= WHOLE_ROWS) {
            List<Stretch> whole = between(rides, 0, rows);
            int count = Math.min(PARTS, whole.size());
            for (int part = 0; part < count; part++) {
                parts.add(whole.subList(whole.size() * part / count, whole.size() * (part + 1) / count));
            }
            return parts;
        }
        for (int part = 0; part < PARTS; part++) {
            parts.add(between(rides, rows * part / PARTS, rows * (part + 1) / PARTS));
        }
        return parts;
    }

    private static long rows(List<Readings> rides) {
        return rides.stream().mapToLong(Readings::size).sum();
    }

    /** All rows where there are at most {@code most}; otherwise samples of about that many in all, spread evenly over the rides. */
    static List<List<Stretch>> some(List<Readings> rides, int most) {
        long rows = rows(rides);
        if (rows <= most) {
            return all(rides);
        }
        List<List<Stretch>> parts = new ArrayList<>();
        int pieces = Math.max(1, most / SAMPLE_ROWS);
        for (int i = 0; i < pieces; i++) {
            long from = rows * i / pieces;
            parts.add(between(rides, from, Math.min(rows, from + SAMPLE_ROWS)));
        }
        return parts;
    }

    /** The stretches that rows {@code from} to {@code to} exclusive make, counted over all rides. */
    private static List<Stretch> between(List<Readings> rides, long from, long to) {
        List<Stretch> stretches = new ArrayList<>();
        long first = 0;
        for (int ride = 0; ride < rides.size(); ride++) {
            RideTrack track = rides.get(ride).track;
            int[] starts = track.segmentStarts;
            for (int s = 0; s + 1 < starts.length; s++) {
                int a = (int) Math.max(starts[s], from - first);
                int b = (int) Math.min(starts[s + 1], to - first);
                if (a < b) {
                    stretches.add(new Stretch(ride, lead(track.timeS, starts[s], a), a, b));
                }
            }
            first += track.size();
        }
        return stretches;
    }

    private static int lead(double[] timeS, int least, int from) {
        int at = Arrays.binarySearch(timeS, least, from, timeS[from] - RUN_UP_S);
        return at >= 0 ? at : Math.max(least, -at - 2);
    }
}
