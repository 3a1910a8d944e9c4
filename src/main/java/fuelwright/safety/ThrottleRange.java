package fuelwright.safety;

import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/**
 * A throttle that stands at the same greatest figure again and again, short of fully open: either the sensor wasn't re-learnt, and load
 * is taken for less than it is, or the rider never opened further. The log can't tell, so it asks.
 */
final class ThrottleRange implements Rule {

    private static final double LEAST_PERCENT = 60;
    private static final double FULL_PERCENT = 97;
    private static final double SAME_PERCENT = 0.7;
    private static final double STANDS_S = 1.0;
    private static final int TIMES = 3;

    @Override
    public List<Caution> judge(Dossier d) {
        double most = Double.NEGATIVE_INFINITY;
        for (int r = 0; r < d.rides(); r++) {
            for (double throttle : d.rows(r).throttlePercent) {
                most = throttle > most ? throttle : most;
            }
        }
        int times = 0;
        for (int r = 0; r < d.rides() && most >= LEAST_PERCENT && most < FULL_PERCENT; r++) {
            times += stands(d.rows(r), most - SAME_PERCENT);
        }
        if (times < TIMES) {
            return List.of();
        }
        return List.of(new Caution(
                "throttle-short",
                Caution.Level.CHECK,
                "The throttle never reads fully open",
                String.format(
                        Locale.ROOT,
                        "The throttle stood at its greatest figure of %.0f %% %d times for %.0f s or more and never went"
                                + " beyond. If that was full throttle, load is higher than the log says",
                        most,
                        times,
                        STANDS_S),
                "Open the throttle fully with the engine off and see that it reads 100 %; re-learn the sensor if it doesn't",
                new TreeSet<>(),
                List.of()));
    }

    /** How often a ride's throttle stood at or above a figure. */
    private static int stands(RideRows rows, double from) {
        int times = 0;
        int start = -1;
        for (int i = 0; i <= rows.size; i++) {
            boolean up = i < rows.size && rows.throttlePercent[i] >= from && rows.isRunning(i);
            if (up && start < 0) {
                start = i;
            } else if (!up && start >= 0) {
                times += rows.timeS[i - 1] - rows.timeS[start] >= STANDS_S ? 1 : 0;
                start = -1;
            }
        }
        return times;
    }
}
