package fuelwright.safety;

import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import java.util.Arrays;

/** A ride's rows as the rules on sensors and conditions look at them. A channel that wasn't logged is NaN throughout. */
final class RideRows {

    private static final double CLOSED_PERCENT = 2;
    private static final double MOST_CLOSED_PERCENT = 15;
    private static final double OVERRUN_KPA = 40;
    private static final double OVERRUN_RPM = 1200;
    private static final double RUNNING_RPM = 500;
    private static final double GAP_S = 1.0;

    final Ride ride;
    final int size;
    final double[] timeS;
    final double[] speedRpm;
    final double[] throttlePercent;
    final double[] pressureKpa;
    final double[] load;
    private final ScreenedRide screened;
    private final double closedPercent;
    /** What a channel holds that wasn't logged. */
    private double[] none;

    RideRows(ScreenedRide screened, Axis.Kind loadKind) {
        this.screened = screened;
        ride = screened.ride();
        size = ride.size();
        timeS = ride.timeS().shared();
        speedRpm = values(Role.ENGINE_SPEED);
        throttlePercent = values(Role.THROTTLE);
        pressureKpa = values(Role.MANIFOLD_PRESSURE);
        load = loadKind == Axis.Kind.THROTTLE ? throttlePercent : pressureKpa;
        closedPercent = closedPercent(throttlePercent);
    }

    /**
     * Throttle up to which it is called closed, %: a little above the ride's least. In a ride whose least is far from nothing, such as a
     * lone pull, the throttle was never closed: nothing is then.
     */
    static double closedPercent(double[] throttlePercent) {
        double least =
                Arrays.stream(throttlePercent).filter(Double::isFinite).min().orElse(Double.NaN);
        return least <= MOST_CLOSED_PERCENT ? least + CLOSED_PERCENT : Double.NEGATIVE_INFINITY;
    }

    /** A role's values; NaN throughout where there is no such channel. Not to be modified. */
    double[] values(Role role) {
        return ride.channel(role).map(Channel::values).map(Column::shared).orElseGet(() -> none(size));
    }

    private synchronized double[] none(int rows) {
        if (none == null) {
            none = new double[rows];
            Arrays.fill(none, Double.NaN);
        }
        return none;
    }

    double[] mixture(int sensor) {
        return ride.mixtures().get(sensor).values().shared();
    }

    boolean isRunning(int row) {
        return speedRpm[row] >= RUNNING_RPM;
    }

    /** Throttle closed well above idle, or the manifold nearly empty where there is no throttle. */
    boolean isOverrun(int row) {
        boolean closed = Double.isNaN(throttlePercent[row])
                ? pressureKpa[row] < OVERRUN_KPA
                : throttlePercent[row] <= closedPercent;
        return closed && speedRpm[row] > OVERRUN_RPM;
    }

    boolean isEvidence(int row) {
        return screened.counts(row);
    }

    boolean isScreened(int row, Screen screen) {
        return screened.isKeptOutBy(row, screen);
    }

    /** Time that a row stands for, s: up to the next row, nothing over a gap. */
    double stepS(int row) {
        double step = row + 1 < size ? timeS[row + 1] - timeS[row] : 0;
        return step > 0 && step <= GAP_S ? step : 0;
    }

    /** Time of the rows that fulfil a condition, s. */
    double seconds(java.util.function.IntPredicate condition) {
        double sum = 0;
        for (int i = 0; i < size; i++) {
            sum += condition.test(i) ? stepS(i) : 0;
        }
        return sum;
    }

    /** A stretch whose worst figure is a lambda. */
    Caution.Moment moment(int rideIndex, int from, int to, double worst) {
        return moment(rideIndex, from, to, worst, "lambda");
    }

    Caution.Moment moment(int rideIndex, int from, int to, double worst, String unit) {
        return new Caution.Moment(
                rideIndex,
                ride.name(),
                timeS[from],
                Math.max(0, timeS[to] - timeS[from]),
                worst,
                speedRpm[from],
                load[from],
                unit);
    }
}
