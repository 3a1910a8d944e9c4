package fuelwright.ui.session;

import fuelwright.job.Job;
import fuelwright.job.JobRide;
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
        Optional<LogForm> form = alone.form();
        if (form.isPresent() && alone.channel(Role.AFR).isPresent()) {
            origin.options()
                    .afrScale()
                    .ifPresent(ratio -> told.add(new LogRecipe(
                            form.get().headings(), RideOptions.defaults().withAfrScale(ratio))));
        }
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
