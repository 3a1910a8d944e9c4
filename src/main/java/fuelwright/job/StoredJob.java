package fuelwright.job;

import java.util.List;

/**
 * A job as its file holds it: everything but the rides' columns, which are read from the logs.
 *
 * @param job without its rides
 * @param rides in order
 */
public record StoredJob(Job job, List<StoredRide> rides) {

    public StoredJob {
        rides = List.copyOf(rides);
    }
}
