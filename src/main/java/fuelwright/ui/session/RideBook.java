package fuelwright.ui.session;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.job.RideSource;
import fuelwright.ride.ClockAlignment;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.work.Cancellation;
import fuelwright.work.Progress;
import fuelwright.work.SecondLogger;
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
     * @param remembered whether some of that was remembered from an earlier log
     * @param second the log of a second logger that was added to it
     */
    record Origin(Optional<Path> file, RideOptions options, boolean remembered, Optional<SecondLogger> second) {
        Origin(Optional<Path> file, RideOptions options, boolean remembered) {
            this(file, options, remembered, Optional.empty());
        }
    }

    /**
     * Rides read again.
     *
     * @param rides new one by old one
     * @param origins by new one
     */
    record Read(Map<Ride, Ride> rides, Map<Ride, Origin> origins, List<Issue> issues) {

        Job in(Job job) {
            return job.withRides(job.rides().stream()
                    .map(r -> rides.containsKey(r.ride())
                            ? new JobRide(rides.get(r.ride()), r.madeWith(), r.source())
                            : r)
                    .toList());
        }
    }

    private final Map<Ride, Origin> origins = new IdentityHashMap<>();

    void note(Ride ride, Optional<Path> file, RideOptions options) {
        note(ride, new Origin(file, options, false));
    }

    void note(Ride ride, Origin origin) {
        origins.put(ride, origin);
    }

    void note(Read read) {
        origins.putAll(read.origins());
    }

    /** The job with where each ride came from, as far as that is known: what saving needs. */
    Job sourced(Job job) {
        return job.withRides(job.rides().stream()
                .map(r -> {
                    Origin origin = origins.get(r.ride());
                    return origin == null ? r : new JobRide(r.ride(), r.madeWith(), source(origin, r));
                })
                .toList());
    }

    private static Optional<RideSource> source(Origin origin, JobRide ride) {
        return origin.file()
                .or(() -> ride.source().map(RideSource::file))
                .map(file -> new RideSource(
                        new RideSource.Log(file, ride.ride().fingerprint()),
                        origin.second().map(SecondLogger::log),
                        origin.second().map(SecondLogger::alignment).filter(a -> a.by() == ClockAlignment.By.HAND),
                        origin.options()));
    }

    /** Where a ride came from, if that is known. */
    Optional<Origin> origin(Ride ride) {
        return Optional.ofNullable(origins.get(ride));
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
        Map<Ride, Origin> origins = new IdentityHashMap<>();
        List<Issue> issues = new ArrayList<>();
        for (Map.Entry<Ride, Origin> entry : wanted.entrySet()) {
            cancellation.check();
            Origin old = entry.getValue();
            RideOptions options = change.apply(old.options());
            Ride alone = old.second().map(SecondLogger::first).orElse(entry.getKey());
            Loaded<Ride> loaded = old.file().isPresent()
                    ? services.readRide(old.file().get(), options, progress, cancellation)
                    : services.readSampleRide(alone.name(), options, progress, cancellation);
            issues.addAll(loaded.issues());
            Optional<Ride> ride = loaded.value();
            Optional<SecondLogger> second = Optional.empty();
            if (ride.isPresent() && old.second().isPresent()) {
                SecondLogger both = old.second().get();
                Loaded<SecondLogger> again = services.readSecond(
                        ride.get(), both.file(), options, Optional.of(both.alignment()), progress, cancellation);
                issues.addAll(again.issues());
                second = again.value();
                ride = second.map(SecondLogger::together);
            }
            if (ride.isPresent()) {
                rides.put(entry.getKey(), ride.get());
                origins.put(ride.get(), new Origin(old.file(), options, false, second));
            }
        }
        return new Read(rides, origins, issues);
    }
}
