package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.safety.Caution;
import java.util.List;
import java.util.TreeSet;

/** Names rides from which nothing could be taken, while others could. */
final class RidesLeftOut {

    private RidesLeftOut() {}

    static List<Caution> of(Job job) {
        return RideNeeds.leftOut(job).stream().map(r -> caution(job, r)).toList();
    }

    private static Caution caution(Job job, JobRide ride) {
        Issue why = Usable.lacks(job, ride.ride()).get(0);
        return new Caution(
                "ride-left-out",
                Caution.Level.CHECK,
                "A ride is left out",
                "Nothing of " + ride.ride().name() + " counts: " + why.what(),
                why.todo(),
                new TreeSet<>(),
                List.of());
    }
}
