package fuelwright.estimate;

import fuelwright.ride.Ride;
import fuelwright.table.Axis;

/**
 * The mixture readings of one sensor, moved back to the moment at which they were burnt: the reading at time t belongs to t − delay,
 * with the delay taken at the conditions of that earlier moment. The sensor's lag isn't undone. Rows without a reading, or whose moment
 * lies before the segment's start, are left out. Immutable.
 */
public final class BurntTrace {

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
        int count = 0;
        for (int s = 0; s + 1 < track.segmentStarts.length; s++) {
            Moment moment = new Moment(track, flowGPerS, model, track.segmentStarts[s], track.segmentStarts[s + 1]);
            for (int row = track.segmentStarts[s]; row < track.segmentStarts[s + 1]; row++) {
                if (!Double.isNaN(reading[row]) && moment.goTo(row)) {
                    rows[count] = row;
                    burntS[count] = moment.burntS();
                    lambda[count] = reading[row];
                    speedRpm[count] = moment.interpolate(track.speedRpm);
                    throttlePercent[count] = moment.interpolate(track.throttlePercent);
                    pressureKpa[count] = moment.interpolate(track.pressureKpa);
                    barometerKpa[count] = moment.interpolate(track.barometerKpa);
                    count++;
                }
            }
        }
        size = count;
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
