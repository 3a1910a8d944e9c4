package fuelwright.ui.session;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.work.Cancellation;
import fuelwright.work.Progress;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** Where each ride came from and how it was read, so that it can be read again in another way. Used on the window's thread only. */
final class RideBook {

    /**
     * Where a ride came from.
     *
     * @param file empty for a ride of the sample job
     * @param options how it was read
     */
    record Origin(Optional<Path> file, RideOptions options) {}

    /**
     * Rides read again.
     *
     * @param rides new one by old one
     * @param options by new one
     */
    record Read(Map<Ride, Ride> rides, Map<Ride, RideOptions> options, List<Issue> issues) {

        Job in(Job job) {
            return job.withRides(job.rides().stream()
                    .map(r -> rides.containsKey(r.ride()) ? new JobRide(rides.get(r.ride()), r.madeWith()) : r)
                    .toList());
        }
    }

    private final Map<Ride, Origin> origins = new IdentityHashMap<>();

    void note(Ride ride, Optional<Path> file, RideOptions options) {
        origins.put(ride, new Origin(file, options));
    }

    void note(Read read) {
        read.rides()
                .forEach((old, now) ->
                        note(now, origins.get(old).file(), read.options().get(now)));
    }

    /** How a ride was read; the defaults where that isn't known. */
    RideOptions options(Ride ride) {
        Origin origin = origins.get(ride);
        return origin == null ? RideOptions.defaults() : origin.options();
    }

    /** Whether a job has a ride of the sample. */
    boolean hasSample(Job job) {
        return job.rides().stream().anyMatch(r -> {
            Origin origin = origins.get(r.ride());
            return origin != null && origin.file().isEmpty();
        });
    }

    /** Work that reads rides again; those of which nobody knows where they came from are left as they are. */
    Runner.Work<Read> reading(List<Ride> rides, UnaryOperator<RideOptions> change, Services services) {
        Map<Ride, Origin> wanted = new IdentityHashMap<>();
        rides.stream().filter(origins::containsKey).forEach(r -> wanted.put(r, origins.get(r)));
        return (progress, cancellation) -> read(wanted, change, services, progress, cancellation);
    }

    private static Read read(
            Map<Ride, Origin> wanted,
            UnaryOperator<RideOptions> change,
            Services services,
            Progress progress,
            Cancellation cancellation)
            throws IOException {
        Map<Ride, Ride> rides = new IdentityHashMap<>();
        Map<Ride, RideOptions> how = new IdentityHashMap<>();
        List<Issue> issues = new ArrayList<>();
        for (Map.Entry<Ride, Origin> entry : wanted.entrySet()) {
            cancellation.check();
            RideOptions options = change.apply(entry.getValue().options());
            Optional<Path> file = entry.getValue().file();
            Loaded<Ride> loaded = file.isPresent()
                    ? services.readRide(file.get(), options, progress, cancellation)
                    : services.readSampleRide(entry.getKey().name(), options, progress, cancellation);
            issues.addAll(loaded.issues());
            loaded.value().ifPresent(ride -> {
                rides.put(entry.getKey(), ride);
                how.put(ride, options);
            });
        }
        return new Read(rides, how, issues);
    }
}
