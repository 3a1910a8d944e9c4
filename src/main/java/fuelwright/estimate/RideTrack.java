package fuelwright.estimate;

import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.table.Axis;
import java.util.Arrays;
import java.util.List;

/**
 * The columns of a ride that say where in a table the engine was, as plain arrays, with short holes bridged by straight lines. One for
 * each ride; shared by evidence and cautions. Read-only by convention inside this package.
 */
final class RideTrack {

    /** Holes longer than this stay holes, s. */
    private static final double BRIDGED_S = 1.0;

    private static final double TURNING_RPM = 500;

    final Ride ride;
    final double[] timeS;
    final double[] speedRpm;
    final double[] throttlePercent;
    final double[] pressureKpa;
    final double[] barometerKpa;
    /** Rows in which the log itself says that no fuel was injected: by its flag, or by a pulse of 0 with the engine turning. */
    final boolean[] fuelCut;
    /** Row at which the segment of each segment number starts, and one past the end. */
    final int[] segmentStarts;

    private double[] none;

    private RideTrack(Ride ride) {
        this.ride = ride;
        this.timeS = ride.timeS().shared();
        List<Integer> starts = ride.segmentStarts();
        segmentStarts = new int[starts.size() + 1];
        for (int s = 0; s < starts.size(); s++) {
            segmentStarts[s] = starts.get(s);
        }
        segmentStarts[starts.size()] = ride.size();
        this.speedRpm = bridged(Role.ENGINE_SPEED);
        this.throttlePercent = bridged(Role.THROTTLE);
        this.pressureKpa = bridged(Role.MANIFOLD_PRESSURE);
        this.barometerKpa = bridged(Role.BAROMETER);
        double[] flag = bridged(Role.FUEL_CUT);
        double[] pulseS = bridged(Role.INJECTOR_PULSE);
        this.fuelCut = new boolean[timeS.length];
        for (int i = 0; i < fuelCut.length; i++) {
            fuelCut[i] = flag[i] > 0.5 || pulseS[i] <= 0 && speedRpm[i] > TURNING_RPM;
        }
    }

    static RideTrack of(Ride ride) {
        return new RideTrack(ride);
    }

    int size() {
        return timeS.length;
    }

    /** The load as an axis of that kind indexes it; all NaN where the ride has no such channel. */
    double[] load(Axis.Kind kind) {
        return kind == Axis.Kind.THROTTLE ? throttlePercent : pressureKpa;
    }

    /** A role's channel with holes bridged, all NaN where the ride has none. Not to be modified: shared where there are no holes. */
    double[] bridged(Role role) {
        return ride.channel(role).map(Channel::values).map(this::bridge).orElseGet(this::nothing);
    }

    private double[] nothing() {
        if (none == null) {
            none = new double[timeS.length];
            Arrays.fill(none, Double.NaN);
        }
        return none;
    }

    private double[] bridge(Column column) {
        double[] v = column.shared();
        for (int s = 0; s + 1 < segmentStarts.length; s++) {
            int before = -1;
            for (int i = segmentStarts[s]; i < segmentStarts[s + 1]; i++) {
                if (Double.isNaN(v[i])) {
                    continue;
                }
                if (before >= 0 && i > before + 1 && timeS[i] - timeS[before] <= BRIDGED_S) {
                    v = v == column.shared() ? v.clone() : v;
                    fill(v, before, i);
                }
                before = i;
            }
        }
        return v;
    }

    private void fill(double[] v, int from, int to) {
        double span = timeS[to] - timeS[from];
        for (int i = from + 1; i < to; i++) {
            double part = span > 0 ? (timeS[i] - timeS[from]) / span : 0;
            v[i] = v[from] + part * (v[to] - v[from]);
        }
    }
}
