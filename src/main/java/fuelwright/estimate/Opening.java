package fuelwright.estimate;

import java.util.ArrayList;
import java.util.List;

/**
 * The throttle opening quickly, on the ride's clock.
 *
 * @param row where it starts
 * @param segmentEnd one past the last row that belongs to the same segment
 * @param startS when it starts to move, s
 * @param endS when it has stopped opening, s
 * @param untilS how long what follows is laid to it: {@link #AFTER_S} more, or until the throttle closes or opens again, s
 * @param rate the quickest it went, % a second
 * @param speedRpm engine speed where it starts
 */
record Opening(int row, int segmentEnd, double startS, double endS, double untilS, double rate, double speedRpm) {

    /** Slower is no opening that a mixture stumbles over, % a second (common practice, no source). */
    static final double LEAST_RATE = 20;
    /** Wall film and manifold have settled after this, s: time constants of 0.2 to 0.4 s (values from memory). */
    private static final double AFTER_S = 0.5;
    /** Time over which the rate is taken, s. */
    private static final double SPAN_S = 0.15;
    /** A smaller opening is a hand's tremor, %. */
    private static final double LEAST_RISE = 3;
    /** A throttle that falls this far below where it was opened to is closing: share of the rise. */
    private static final double CLOSING_SHARE = 0.2;
    /** The throttle has started to move once it has done this share of its rise. */
    private static final double STARTED_SHARE = 0.05;
    /** Rows further apart don't belong together, s. */
    private static final double GAP_S = 0.5;

    /** All openings of a ride, in order. O(rows). */
    static List<Opening> of(RideTrack track) {
        List<Opening> found = new ArrayList<>();
        for (int s = 0; s + 1 < track.segmentStarts.length; s++) {
            segment(track, track.segmentStarts[s], track.segmentStarts[s + 1], found);
        }
        return found;
    }

    private static void segment(RideTrack track, int from, int to, List<Opening> found) {
        double[] rates = rates(track, from, to);
        int i = from;
        while (i < to) {
            if (!(rates[i - from] >= LEAST_RATE)) {
                i++;
                continue;
            }
            int first = before(track, from, i);
            double rate = 0;
            int end = i;
            while (i < to && rates[i - from] >= LEAST_RATE) {
                rate = Math.max(rate, rates[i - from]);
                end = i++;
            }
            double rise = track.throttlePercent[end] - track.throttlePercent[first];
            double started = track.throttlePercent[first] + STARTED_SHARE * rise;
            while (first + 1 < end && track.throttlePercent[first + 1] <= started) {
                first++;
            }
            if (rise >= LEAST_RISE && track.speedRpm[first] > 0) {
                double untilS = until(track, rates, from, to, end, rise);
                found.add(new Opening(
                        first, to, track.timeS[first], track.timeS[end], untilS, rate, track.speedRpm[first]));
            }
        }
    }

    private static double[] rates(RideTrack track, int from, int to) {
        double[] rates = new double[to - from];
        for (int i = from; i < to; i++) {
            int j = before(track, from, i);
            double dtS = track.timeS[i] - track.timeS[j];
            rates[i - from] =
                    dtS > 0 && dtS <= GAP_S ? (track.throttlePercent[i] - track.throttlePercent[j]) / dtS : Double.NaN;
        }
        return rates;
    }

    /** The row from which the movement up to a row is measured. */
    private static int before(RideTrack track, int from, int row) {
        int j = Math.max(from, row - 1);
        while (j > from && track.timeS[row] - track.timeS[j] < SPAN_S - 1e-9) {
            j--;
        }
        return j;
    }

    private static double until(RideTrack track, double[] rates, int from, int to, int end, double rise) {
        double least = track.throttlePercent[end] - CLOSING_SHARE * rise;
        int i = end;
        while (i + 1 < to
                && track.timeS[i + 1] - track.timeS[end] <= AFTER_S
                && track.throttlePercent[i + 1] >= least
                && !(rates[i + 1 - from] >= LEAST_RATE)) {
            i++;
        }
        return track.timeS[i];
    }
}
