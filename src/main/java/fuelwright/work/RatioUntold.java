package fuelwright.work;

import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.mixture.MixtureScale;
import fuelwright.ride.Ride;
import fuelwright.safety.Caution;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Asks for the ratio of the display where an AFR, of a ride or of the target, was taken by the usual one since nobody told it. */
final class RatioUntold {

    /** A display that may be met, to say what it would mean. */
    private static final double OTHER_RATIO = 13.2;

    private RatioUntold() {}

    static Optional<Caution> of(Job job) {
        List<String> rides = job.rides().stream()
                .map(JobRide::ride)
                .filter(Ride::isRatioUntold)
                .map(Ride::name)
                .toList();
        boolean target = job.asksForTargetRatio();
        if (rides.isEmpty() && !target) {
            return Optional.empty();
        }
        String what = (rides.isEmpty() ? "" : "The AFR of " + rides.stream().collect(Collectors.joining(", ")))
                + (target ? (rides.isEmpty() ? "The AFR" : " and that") + " of the target table" : "");
        return Optional.of(new Caution(
                "ratio-untold",
                Caution.Level.CHECK,
                "The ratio of the AFR isn't known",
                what
                        + String.format(
                                Locale.ROOT,
                                " is divided by %.1f, which nobody said. Were the display set to %.1f, every mixture would be"
                                        + " %.0f %% leaner than it looks",
                                MixtureScale.USUAL_DISPLAY_RATIO,
                                OTHER_RATIO,
                                100 * (MixtureScale.USUAL_DISPLAY_RATIO / OTHER_RATIO - 1)),
                "Read in the display's settings what ratio it shows at lambda 1, and say it, also where it is 14.7: for rides (--afr-scale RATIO), for the target (--target-ratio RATIO)",
                new TreeSet<>(),
                List.of()));
    }
}
