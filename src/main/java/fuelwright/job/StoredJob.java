package fuelwright.job;

import java.util.List;
import java.util.Optional;

/**
 * A job as its file holds it: everything but the rides' columns, which are read from the logs.
 *
 * @param job without its rides
 * @param rides in order
 * @param results what came out of it, where that was known when it was saved
 */
public record StoredJob(Job job, List<StoredRide> rides, Optional<Results> results) {

    public StoredJob {
        rides = List.copyOf(rides);
    }

    /** A job that nothing has come out of yet. */
    public StoredJob(Job job, List<StoredRide> rides) {
        this(job, rides, Optional.empty());
    }
}
