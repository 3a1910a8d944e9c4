package fuelwright.safety;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/**
 * A throttle whose closed figure isn't near nothing; and one that stands at the same greatest figure again and again, short of fully open: either the sensor wasn't re-learnt, and load
 * is taken for less than it is, or the rider never opened further. The log can't tell, so it asks.
 */
final class ThrottleRange implements Rule {

    private static final double LEAST_PERCENT = 60;
    private static final double FULL_PERCENT = 97;
    private static final double SAME_PERCENT = 0.7;
    private static final int TIMES = 3;

    /** A closed throttle that reads more isn't zeroed; one that reads much more may never have been closed. */
    private static final double CLOSED_PERCENT = 4;

    private static final double MOST_CLOSED_PERCENT = 15;

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        neverOpen(d, out);
        neverClosed(d, out);
        return out;
    }

    private static void neverClosed(Dossier d, List<Caution> out) {
        double least = Double.POSITIVE_INFINITY;
        for (int r = 0; r < d.rides(); r++) {
            for (double throttle : d.rows(r).throttlePercent) {
                least = throttle < least ? throttle : least;
            }
        }
        int times = 0;
        for (int r = 0; r < d.rides() && least >= CLOSED_PERCENT && least <= MOST_CLOSED_PERCENT; r++) {
            times += ThrottleSlip.stands(d.rows(r), 0, d.rows(r).size, least, least + SAME_PERCENT);
        }
        if (times >= TIMES) {
            out.add(new Caution(
                    "throttle-not-zeroed",
                    Caution.Level.CHECK,
                    "The throttle never reads closed",
                    String.format(
                            Locale.ROOT,
                            "The throttle stood at its least figure of %.0f %% %d times for %.0f s or more and never went"
                                    + " below. If that was closed, readings are laid to too large an opening",
                            least,
                            times,
                            ThrottleSlip.STANDS_S),
                    "Read the throttle closed with the engine off; re-learn the sensor unless the table counts it the same way",
                    new TreeSet<>(),
                    List.of()));
        }
    }

    private static void neverOpen(Dossier d, List<Caution> out) {
        double most = Double.NEGATIVE_INFINITY;
        for (int r = 0; r < d.rides(); r++) {
            for (double throttle : d.rows(r).throttlePercent) {
                most = throttle > most ? throttle : most;
            }
        }
        int times = 0;
        for (int r = 0; r < d.rides() && most >= LEAST_PERCENT && most < FULL_PERCENT; r++) {
            times += ThrottleSlip.stands(d.rows(r), 0, d.rows(r).size, most - SAME_PERCENT, most);
        }
        if (times < TIMES) {
            return;
        }
        out.add(new Caution(
                "throttle-short",
                Caution.Level.CHECK,
                "The throttle never reads fully open",
                String.format(
                        Locale.ROOT,
                        "The throttle stood at its greatest figure of %.0f %% %d times for %.0f s or more and never went"
                                + " beyond. If that was full throttle, load is higher than the log says",
                        most,
                        times,
                        ThrottleSlip.STANDS_S),
                "Open the throttle fully with the engine off and see that it reads 100 %; re-learn the sensor if it doesn't",
                new TreeSet<>(),
                List.of()));
    }
}
