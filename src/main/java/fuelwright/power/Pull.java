package fuelwright.power;

import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A stretch of a ride at full throttle over which engine speed rises in one gear without fuel cut.
 *
 * @param ride the ride it is in
 * @param from first row
 * @param to row after the last one
 */
public record Pull(Ride ride, int from, int to) {

    /** Throttle opening from which it counts as full, %. */
    public static final double FULL_THROTTLE_PERCENT = 95;
    /** Rise of engine speed from which it counts as a pull, rpm. */
    public static final double LEAST_RISE_RPM = 1500;

    /** A fall below the highest speed so far that isn't noise: a shift, or the end, rpm. */
    private static final double FALL_RPM = 150;
    /** Share of the rise that is cut off both ends: a plateau before or after the pull goes with it. */
    private static final double TRIMMED = 0.003;

    private static final double LONGEST_GAP_S = 0.6;
    private static final int LEAST_ROWS = 12;

    /** The pulls of a ride in the order of time; none where throttle or engine speed isn't logged. */
    public static List<Pull> in(Ride ride) {
        Optional<Column> throttle = ride.column(Role.THROTTLE);
        Optional<Column> speed = ride.column(Role.ENGINE_SPEED);
        List<Pull> found = new ArrayList<>();
        if (throttle.isEmpty() || speed.isEmpty()) {
            return found;
        }
        List<Integer> starts = ride.segmentStarts();
        for (int s = 0; s < starts.size(); s++) {
            int end = s + 1 < starts.size() ? starts.get(s + 1) : ride.size();
            int first = -1;
            for (int row = starts.get(s); row <= end; row++) {
                boolean full = row < end && full(ride, throttle.get(), speed.get(), row);
                boolean goesOn = full && (first < 0 || joins(ride, row));
                if (!goesOn && first >= 0) {
                    climbs(ride, speed.get(), first, row, found);
                }
                first = goesOn && first >= 0 ? first : full ? row : -1;
            }
        }
        return found;
    }

    private static boolean full(Ride ride, Column throttle, Column speed, int row) {
        return throttle.at(row) >= FULL_THROTTLE_PERCENT && speed.has(row) && !isCut(ride, row);
    }

    private static boolean isCut(Ride ride, int row) {
        return ride.column(Role.FUEL_CUT).map(c -> c.at(row) > 0.5).orElse(false)
                || ride.column(Role.INJECTOR_PULSE).map(c -> c.at(row) <= 0).orElse(false);
    }

    private static boolean joins(Ride ride, int row) {
        boolean near = ride.timeS().at(row) - ride.timeS().at(row - 1) <= LONGEST_GAP_S;
        return near
                && ride.column(Role.GEAR)
                        .map(g -> !g.has(row) || !g.has(row - 1) || g.at(row) == g.at(row - 1))
                        .orElse(true);
    }

    private static void climbs(Ride ride, Column speed, int first, int end, List<Pull> found) {
        int low = first;
        int high = first;
        for (int row = first; row < end; row++) {
            double rpm = speed.at(row);
            if (rpm > speed.at(high)) {
                high = row;
            } else if (rpm < speed.at(high) - FALL_RPM) {
                add(ride, speed, low, high, found);
                low = row;
                high = row;
            } else if (rpm < speed.at(low)) {
                low = row;
                high = row;
            }
        }
        add(ride, speed, low, high, found);
    }

    private static void add(Ride ride, Column speed, int low, int high, List<Pull> found) {
        double rise = speed.at(high) - speed.at(low);
        double least = speed.at(low) + TRIMMED * rise;
        double most = speed.at(high) - TRIMMED * rise;
        int from = low;
        int to = high;
        for (int row = low; row <= high; row++) {
            if (speed.at(row) <= least) {
                from = row;
            }
        }
        for (int row = high; row >= low; row--) {
            if (speed.at(row) >= most) {
                to = row;
            }
        }
        if (rise >= LEAST_RISE_RPM && to - from + 1 >= LEAST_ROWS) {
            found.add(new Pull(ride, from, to + 1));
        }
    }

    public int rows() {
        return to - from;
    }

    public double startS() {
        return ride.timeS().at(from);
    }

    public double endS() {
        return ride.timeS().at(to - 1);
    }

    /** Engine speed at its start, rpm. */
    public double lowRpm() {
        return ride.column(Role.ENGINE_SPEED).orElseThrow().at(from);
    }

    /** Engine speed at its end, rpm. */
    public double highRpm() {
        return ride.column(Role.ENGINE_SPEED).orElseThrow().at(to - 1);
    }

    /** The values of a channel over the pull; NaN where it is missing. */
    Optional<double[]> values(Role role) {
        return ride.column(role).map(this::cut);
    }

    double[] times() {
        return cut(ride.timeS());
    }

    private double[] cut(Column column) {
        double[] cut = new double[rows()];
        for (int i = 0; i < cut.length; i++) {
            cut[i] = column.at(from + i);
        }
        return cut;
    }
}
