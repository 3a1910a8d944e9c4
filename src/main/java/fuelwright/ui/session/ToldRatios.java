package fuelwright.ui.session;

import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.mixture.MixtureScale;
import fuelwright.ride.LogForm;
import fuelwright.ride.LogRecipe;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.RideReader;
import fuelwright.ride.Role;
import fuelwright.work.SecondLogger;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What was told of the AFR displays of a job's own rides. It holds for another log with the same headings and for no other: one display's
 * ratio taken for another's makes every mixture wrong, and nothing shows it.
 *
 * @param told the ratio by the headings of each ride's log
 */
record ToldRatios(List<LogRecipe> told) {

    ToldRatios {
        told = List.copyOf(told);
    }

    /** Those of the rides that are in the job now. */
    static ToldRatios of(Job job, RideBook book) {
        List<LogRecipe> told = new ArrayList<>();
        for (JobRide each : job.rides()) {
            book.origin(each.ride())
                    .filter(origin -> origin.file().isPresent())
                    .ifPresent(origin -> add(each.ride(), origin, told));
        }
        return new ToldRatios(told);
    }

    private static void add(Ride ride, RideBook.Origin origin, List<LogRecipe> told) {
        Ride alone = origin.second().map(SecondLogger::first).orElse(ride);
        add(alone, origin.options().afrScale(), told);
        origin.second().ifPresent(s -> add(s.second(), origin.options().secondAfrScale(), told));
    }

    private static void add(Ride alone, OptionalDouble ratio, List<LogRecipe> told) {
        Optional<LogForm> form = alone.form();
        if (form.isPresent() && ratio.isPresent() && alone.channel(Role.AFR).isPresent()) {
            told.add(new LogRecipe(form.get().headings(), RideOptions.defaults().withAfrScale(ratio.getAsDouble())));
        }
    }

    /** The ratios that were told, in the order of the rides. */
    List<Double> ratios() {
        return told.stream().map(r -> r.options().afrScale().orElseThrow()).toList();
    }

    /**
     * What mixtures are shown by after a change of the rides: the ratio that was told last, of those whose rides are still there; what stood
     * before where no ride had told it.
     */
    static Job shown(Job before, Job now, RideBook book) {
        double ratio = now.displayRatio();
        if (before.rides().equals(now.rides())
                || ratio != before.displayRatio()
                || !of(before, book).ratios().contains(ratio)) {
            return now;
        }
        List<Double> left = of(now, book).ratios();
        return left.contains(ratio)
                ? now
                : now.withDisplayRatio(left.isEmpty() ? MixtureScale.USUAL_DISPLAY_RATIO : left.get(left.size() - 1));
    }

    /** What holds for a log; nothing where two rides with its headings were told different ratios. */
    RideOptions of(Path log) {
        if (told.isEmpty()) {
            return RideOptions.defaults();
        }
        try {
            List<String> headings = RideReader.headings(log, RideOptions.defaults());
            List<RideOptions> fitting = told.stream()
                    .filter(r -> r.fits(headings))
                    .map(LogRecipe::options)
                    .distinct()
                    .toList();
            return fitting.size() == 1 ? fitting.get(0) : RideOptions.defaults();
        } catch (IOException e) {
            // Whoever reads the log itself will say so.
            return RideOptions.defaults();
        }
    }
}
