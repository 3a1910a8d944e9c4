package fuelwright.estimate;

import fuelwright.ride.Ride;
import fuelwright.table.Axis;
import java.util.ArrayList;
import java.util.List;

/**
 * The mixture readings of one sensor, moved back to the moment at which they were burnt: the reading at time t belongs to t − delay,
 * with the delay taken at the conditions of that earlier moment. The sensor's lag isn't undone. Rows without a reading, or whose moment
 * lies before the segment's start, are left out. Immutable.
 */
public final class BurntTrace {

    private static final int PART_ROWS = 1 << 16;

    private final int size;
    private final int[] rows;
    private final double[] burntS;
    private final double[] lambda;
    private final double[] speedRpm;
    private final double[] throttlePercent;
    private final double[] pressureKpa;
    private final double[] barometerKpa;
    private final double[] load;

    private BurntTrace(RideTrack track, double[] reading, Axis.Kind loadKind, SensorModel model, FlowModel flow) {
        int n = track.size();
        rows = new int[n];
        burntS = new double[n];
        lambda = new double[n];
        speedRpm = new double[n];
        throttlePercent = new double[n];
        pressureKpa = new double[n];
        barometerKpa = new double[n];
        load = loadKind == Axis.Kind.THROTTLE ? throttlePercent : pressureKpa;
        double[] flowGPerS = flow.gramsPerSecond(track.speedRpm, track.load(loadKind));
        List<int[]> parts = parts(track.segmentStarts);
        int[] found = parts.parallelStream()
                .mapToInt(p ->
                        read(track, reading, new Moment(track, flowGPerS, model, p[0], p[1]).near(p[2]), p[2], p[3]))
                .toArray();
        int count = 0;
        for (int i = 0; i < found.length; i++) {
            move(parts.get(i)[2], count, found[i]);
            count += found[i];
        }
        size = count;
    }

    /** Rows that are read together: start and end of the segment, first row, one past the last. */
    private static List<int[]> parts(int[] segmentStarts) {
        List<int[]> parts = new ArrayList<>();
        for (int s = 0; s + 1 < segmentStarts.length; s++) {
            for (int from = segmentStarts[s]; from < segmentStarts[s + 1]; from += PART_ROWS) {
                int to = Math.min(segmentStarts[s + 1], from + PART_ROWS);
                parts.add(new int[] {segmentStarts[s], segmentStarts[s + 1], from, to});
            }
        }
        return parts;
    }

    /** Puts the readings of some rows where the first of these rows is; how many there are. */
    private int read(RideTrack track, double[] reading, Moment moment, int from, int to) {
        int at = from;
        for (int row = from; row < to; row++) {
            if (!Double.isNaN(reading[row]) && moment.goTo(row)) {
                rows[at] = row;
                burntS[at] = moment.burntS();
                lambda[at] = reading[row];
                speedRpm[at] = moment.interpolate(track.speedRpm);
                throttlePercent[at] = moment.interpolate(track.throttlePercent);
                pressureKpa[at] = moment.interpolate(track.pressureKpa);
                barometerKpa[at] = moment.interpolate(track.barometerKpa);
                at++;
            }
        }
        return at - from;
    }

    private void move(int from, int to, int count) {
        if (from != to) {
            System.arraycopy(rows, from, rows, to, count);
            for (double[] column : List.of(burntS, lambda, speedRpm, throttlePercent, pressureKpa, barometerKpa)) {
                System.arraycopy(column, from, column, to, count);
            }
        }
    }

    /**
     * @param mixtureIndex which of {@link Ride#mixtures()}
     * @param loadKind what the fuel table is indexed by
     */
    public static BurntTrace of(Ride ride, int mixtureIndex, Axis.Kind loadKind, SensorModel model, FlowModel flow) {
        double[] reading = ride.mixtures().get(mixtureIndex).values().shared();
        return new BurntTrace(RideTrack.of(ride), reading, loadKind, model, flow);
    }

    public int size() {
        return size;
    }

    /** The ride's row that the reading was logged in. */
    public int row(int i) {
        return rows[i];
    }

    /** When the mixture was burnt, on the ride's clock, s. */
    public double burntS(int i) {
        return burntS[i];
    }

    public double lambda(int i) {
        return lambda[i];
    }

    public double speedRpm(int i) {
        return speedRpm[i];
    }

    /** Throttle, %; NaN where not logged. */
    public double throttlePercent(int i) {
        return throttlePercent[i];
    }

    /** Manifold pressure, kPa; NaN where not logged. */
    public double pressureKpa(int i) {
        return pressureKpa[i];
    }

    /** Barometer, kPa; NaN where not logged. */
    public double barometerKpa(int i) {
        return barometerKpa[i];
    }

    /** Load as the fuel table is indexed by it. */
    public double load(int i) {
        return load[i];
    }
}
