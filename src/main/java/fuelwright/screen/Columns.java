package fuelwright.screen;

import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.HeldValues;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.table.Axis;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The columns that screens look at, as arrays; NaN throughout where the ride has no such channel. */
final class Columns {

    /** Throttle above the ride's smallest up to which it is called closed, %. */
    private static final double CLOSED_PERCENT = 2;
    /** A ride whose throttle never comes below this never closed it, %: a single pull, say. */
    private static final double HIGHEST_CLOSED_PERCENT = 15;
    /** Manifold pressure below which the engine is on the overrun where no throttle was logged, kPa. */
    private static final double OVERRUN_KPA = 40;
    /** Engine speed above which a closed throttle is an overrun, rpm. */
    private static final double OVERRUN_RPM = 1200;

    final double[] timeS;
    final double[] speedRpm;
    final double[] throttlePercent;
    final double[] load;
    final double[] lambda;
    final double[] commandedLambda;
    final double[] coolantC;
    final double[] gear;
    final int[] segmentStarts;
    private final double[] pressureKpa;
    private final double[] fuelCut;
    private final double[] pulseS;
    private final double[] shortTrim;
    private final double[] longTrim;
    private final boolean hasMixture;
    private final Ride ride;
    /** What a channel holds that wasn't logged. */
    private double[] none;

    Columns(Ride ride, Axis.Kind loadKind) {
        timeS = ride.timeS().shared();
        speedRpm = values(ride, Role.ENGINE_SPEED);
        throttlePercent = values(ride, Role.THROTTLE);
        pressureKpa = values(ride, Role.MANIFOLD_PRESSURE);
        load = load(loadKind);
        lambda = ride.mixture().map(Column::shared).orElseGet(() -> nothing(ride));
        commandedLambda = values(ride, Role.COMMANDED_LAMBDA);
        coolantC = values(ride, Role.COOLANT);
        gear = values(ride, Role.GEAR);
        fuelCut = values(ride, Role.FUEL_CUT);
        pulseS = values(ride, Role.INJECTOR_PULSE);
        shortTrim = values(ride, Role.SHORT_TRIM);
        longTrim = values(ride, Role.LONG_TRIM);
        hasMixture = ride.mixture().isPresent();
        this.ride = ride;
        List<Integer> starts = ride.segmentStarts();
        segmentStarts = new int[starts.size() + 1];
        for (int s = 0; s < starts.size(); s++) {
            segmentStarts[s] = starts.get(s);
        }
        segmentStarts[starts.size()] = ride.size();
    }

    /** The load as an axis of that kind indexes it. */
    double[] load(Axis.Kind kind) {
        return kind == Axis.Kind.THROTTLE ? throttlePercent : pressureKpa;
    }

    private double[] values(Ride ride, Role role) {
        return ride.channel(role).map(Channel::values).map(Column::shared).orElseGet(() -> nothing(ride));
    }

    private double[] nothing(Ride ride) {
        if (none == null) {
            none = new double[ride.size()];
            Arrays.fill(none, Double.NaN);
        }
        return none;
    }

    /** Whether the row says anything about the table: engine speed, load, and a mixture or, where the ride has none, a trim. */
    boolean hasReading(int row) {
        boolean reads = hasMixture ? lambda[row] > 0 : !Double.isNaN(shortTrim[row]) || !Double.isNaN(longTrim[row]);
        return reads && !Double.isNaN(speedRpm[row]) && !Double.isNaN(load[row]);
    }

    /** The rows in which the logger didn't only repeat its last answer; empty where nothing was read. */
    Optional<HeldValues> renewed() {
        return ride.mixture()
                .or(() -> ride.column(Role.SHORT_TRIM))
                .or(() -> ride.column(Role.LONG_TRIM))
                .map(c -> HeldValues.of(c, ride.segmentStarts()));
    }

    boolean isFuelCutLogged(int row) {
        return fuelCut[row] > 0.5 || pulseS[row] <= 0 && speedRpm[row] > OVERRUN_RPM;
    }

    /** Throttle up to which it is called closed, %; NaN where the ride never closed it. */
    double closedPercent() {
        double least = Double.NaN;
        for (double throttle : throttlePercent) {
            least = throttle >= least ? least : Double.isNaN(throttle) ? least : throttle;
        }
        return least <= HIGHEST_CLOSED_PERCENT ? least + CLOSED_PERCENT : Double.NaN;
    }

    /**
     * Whether the throttle is closed (or the manifold nearly empty) well above idle.
     *
     * @param closedPercent see {@link #closedPercent()}
     */
    boolean isOverrun(int row, double closedPercent) {
        boolean closed = Double.isNaN(throttlePercent[row])
                ? pressureKpa[row] < OVERRUN_KPA
                : throttlePercent[row] <= closedPercent;
        return closed && speedRpm[row] > OVERRUN_RPM;
    }

    /** Whether engine speed or load moved noticeably between two rows. */
    boolean moved(int from, int to) {
        return range(speedRpm, from, to) > 0.04 * Math.abs(speedRpm[from]) || range(load, from, to) > 2;
    }

    /** Natural logs of values after adding {@code offset}. */
    static double[] logs(double[] values, double offset) {
        double[] logs = new double[values.length];
        for (int i = 0; i < logs.length; i++) {
            logs[i] = Math.log(Math.max(values[i] + offset, 1e-3));
        }
        return logs;
    }

    private static double range(double[] values, int from, int to) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = from; i < to; i++) {
            if (!Double.isNaN(values[i])) {
                least = Math.min(least, values[i]);
                most = Math.max(most, values[i]);
            }
        }
        return most - least;
    }
}
