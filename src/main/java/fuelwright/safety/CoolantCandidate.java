package fuelwright.safety;

import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import java.util.Arrays;
import java.util.Optional;

/** A column that nobody gave a role, and that warms up as a coolant does: slowly, from the air's temperature to where it stays, °C. */
final class CoolantCandidate {

    private static final double COLDEST_C = -30;
    private static final double COLD_C = 60;
    private static final double WARM_C = 60;
    private static final double HOTTEST_C = 120;
    private static final double RISE_K = 15;
    /** Of the coolant of an engine that is ridden off; its usual rate is a tenth of it (common practice, no source), K/s. */
    private static final double FASTEST = 2;

    private static final int SAMPLES = 400;
    private static final int LEAST_SAMPLES = 20;
    /** So much of the way goes up: it doesn't swing. */
    private static final double UPWARD_SHARE = 0.7;

    private CoolantCandidate() {}

    /** The heading of the first such column. */
    static Optional<String> in(Ride ride) {
        return ride.channels().stream()
                .filter(c -> c.role() == Role.OTHER || c.confidence() == Channel.Confidence.LEFT_OUT)
                .filter(c -> warmsUp(c.values(), ride.timeS()))
                .map(Channel::heading)
                .findFirst();
    }

    private static boolean warmsUp(Column values, Column timeS) {
        double[] v = new double[SAMPLES];
        double[] t = new double[SAMPLES];
        int n = 0;
        int stride = Math.max(1, (values.size() + SAMPLES - 1) / SAMPLES);
        for (int i = 0; i < values.size(); i += stride) {
            if (values.has(i)) {
                v[n] = values.at(i);
                t[n++] = timeS.at(i);
            }
        }
        if (n < LEAST_SAMPLES) {
            return false;
        }
        double least = Arrays.stream(v, 0, n).min().orElseThrow();
        double most = Arrays.stream(v, 0, n).max().orElseThrow();
        boolean range = v[0] >= COLDEST_C
                && v[0] < COLD_C
                && least >= COLDEST_C
                && most >= WARM_C
                && most <= HOTTEST_C
                && v[n - 1] - v[0] >= RISE_K;
        double up = 0;
        double all = 0;
        boolean slow = true;
        for (int k = 1; k < n; k++) {
            double step = v[k] - v[k - 1];
            up += Math.max(0, step);
            all += Math.abs(step);
            slow &= !(Math.abs(step) > Math.max(1.5, FASTEST * (t[k] - t[k - 1])));
        }
        return range && slow && up >= UPWARD_SHARE * all;
    }
}
