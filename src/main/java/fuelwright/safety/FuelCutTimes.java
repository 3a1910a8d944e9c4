package fuelwright.safety;

import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import java.util.Arrays;

/**
 * When a ride's fuel was cut, by what was logged: the flag, or an injector pulse of nothing above idle. A flag that is set most of the
 * time isn't believed: it would hide everything. Holds a cursor: not thread-safe.
 */
final class FuelCutTimes {

    private static final double OVERRUN_RPM = 1200;
    private static final double BELIEVED_SHARE = 0.6;

    private final double[] startsS;
    private final double[] endsS;
    private int cursor;

    private FuelCutTimes(double[] startsS, double[] endsS) {
        this.startsS = startsS;
        this.endsS = endsS;
    }

    static FuelCutTimes of(Ride ride) {
        Column flag = ride.column(Role.FUEL_CUT).orElse(null);
        Column pulse = ride.column(Role.INJECTOR_PULSE).orElse(null);
        Column speed = ride.column(Role.ENGINE_SPEED).orElse(null);
        if (flag == null && (pulse == null || speed == null)) {
            return new FuelCutTimes(new double[0], new double[0]);
        }
        Column time = ride.timeS();
        double[] starts = new double[64];
        double[] ends = new double[64];
        int n = 0;
        int rows = 0;
        boolean on = false;
        for (int i = 0; i < ride.size(); i++) {
            boolean cut = flag != null && flag.at(i) > 0.5
                    || pulse != null && speed != null && pulse.at(i) <= 0 && speed.at(i) > OVERRUN_RPM;
            if (cut) {
                rows++;
                if (!on) {
                    if (n == starts.length) {
                        starts = Arrays.copyOf(starts, 2 * n);
                        ends = Arrays.copyOf(ends, 2 * n);
                    }
                    starts[n++] = time.at(i);
                }
                ends[n - 1] = time.at(i);
            }
            on = cut;
        }
        if (rows > BELIEVED_SHARE * ride.size()) {
            n = 0;
        }
        return new FuelCutTimes(Arrays.copyOf(starts, n), Arrays.copyOf(ends, n));
    }

    int size() {
        return startsS.length;
    }

    double startS(int i) {
        return startsS[i];
    }

    double endS(int i) {
        return endsS[i];
    }

    /** Whether fuel was cut at a moment. Fastest where asked in the order of time. */
    boolean at(double timeS) {
        return lastS(timeS) == timeS;
    }

    /** The last moment up to this one at which fuel was cut, s; minus infinity where it wasn't yet. Fastest where asked in the order of time. */
    double lastS(double timeS) {
        int n = startsS.length;
        if (n == 0 || startsS[0] > timeS) {
            return Double.NEGATIVE_INFINITY;
        }
        while (cursor > 0 && startsS[cursor] > timeS) {
            cursor--;
        }
        while (cursor + 1 < n && startsS[cursor + 1] <= timeS) {
            cursor++;
        }
        return Math.min(timeS, endsS[cursor]);
    }
}
