package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.RideSource;
import fuelwright.ride.ClockAlignment;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.RideReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleConsumer;

/** Reads a log. */
public final class OpenRide {

    private OpenRide() {}

    /**
     * A ride with where it came from.
     *
     * @param source its files as they were when they were read
     * @param second the second logger's log, where there is one
     */
    public record Found(Ride ride, RideSource source, Optional<SecondLogger> second) {}

    /**
     * A ride from one logger or two, on the first one's clock and rows.
     *
     * @param byHand how the second clock lies, where the user said so; empty: found from what both logged
     * @throws WorkException if a file can't be read at all
     * @throws Cancellation.CancelledException if it isn't wanted any more
     */
    public static Loaded<Found> found(
            Path file,
            Optional<Path> secondFile,
            RideOptions options,
            Optional<ClockAlignment> byHand,
            Progress progress,
            Cancellation cancellation) {
        Loaded<Ride> first = read(file, options, progress, cancellation);
        List<Issue> issues = new ArrayList<>(first.issues());
        if (first.value().isEmpty()) {
            return Loaded.refused(issues);
        }
        Ride ride = first.value().get();
        Optional<SecondLogger> second = Optional.empty();
        if (secondFile.isPresent()) {
            Loaded<SecondLogger> added = second(ride, secondFile.get(), options, byHand, progress, cancellation);
            issues.addAll(added.issues());
            if (added.value().isEmpty()) {
                return Loaded.refused(issues);
            }
            second = added.value();
        }
        RideSource source = new RideSource(
                new RideSource.Log(file, ride.fingerprint()), second.map(SecondLogger::log), byHand, options);
        return Loaded.of(new Found(second.map(SecondLogger::together).orElse(ride), source, second), issues);
    }

    /**
     * A ride; a table given instead is named as such.
     *
     * @throws WorkException if the file can't be read at all
     * @throws Cancellation.CancelledException if it isn't wanted any more
     */
    public static Loaded<Ride> read(Path file, RideOptions options, Progress progress, Cancellation cancellation) {
        return read(file, options, true, progress, cancellation);
    }

    private static Loaded<Ride> read(
            Path file, RideOptions options, boolean whole, Progress progress, Cancellation cancellation) {
        try {
            Optional<Issue> swapped = FileKind.tableGivenAsRide(file);
            if (swapped.isPresent()) {
                return Loaded.refused(swapped.get());
            }
            DoubleConsumer at = fraction -> progress.at(fraction, "reading " + file.getFileName());
            Loaded<Ride> loaded = whole
                    ? RideReader.read(file, options, at, cancellation::cancelled)
                    : RideReader.readSecond(file, options, at, cancellation::cancelled);
            cancellation.check();
            if (loaded.value().isEmpty()) {
                return loaded;
            }
            Ride ride = loaded.value().get().filled().fingerprinted(Fingerprint.of(file));
            return Loaded.of(ride, loaded.issues());
        } catch (IOException e) {
            throw WorkException.reading(file, e);
        }
    }

    /**
     * The log of a second logger, added to a ride; refused where the two don't match well enough and nobody said how they lie.
     *
     * @param byHand how they lie; empty: found from what both logged
     * @throws WorkException if the file can't be read at all
     * @throws Cancellation.CancelledException if it isn't wanted any more
     */
    public static Loaded<SecondLogger> second(
            Ride first,
            Path secondFile,
            RideOptions options,
            Optional<ClockAlignment> byHand,
            Progress progress,
            Cancellation cancellation) {
        Loaded<Ride> second = read(secondFile, options.ofSecond(), false, progress, cancellation);
        if (second.value().isEmpty()) {
            return Loaded.refused(second.issues());
        }
        List<Issue> issues = new ArrayList<>(second.issues());
        Ride other = second.value().get();
        Optional<ClockAlignment> alignment = byHand;
        if (byHand.isEmpty()) {
            Loaded<ClockAlignment> found = ClockAlignment.of(first, other);
            issues.addAll(found.issues());
            alignment = found.value();
        }
        if (alignment.isEmpty()) {
            return Loaded.refused(issues);
        }
        issues.add(Issue.note(other.name(), "Clock " + alignment.get().words()));
        return Loaded.of(new SecondLogger(secondFile, first, other, alignment.get()), issues);
    }

    /** Refuses a ride whose readings are there already: counted twice they would look twice as sure. */
    public static Optional<Issue> twice(Ride ride, List<Ride> there) {
        return there.stream()
                .filter(ride::hasReadingsOf)
                .findFirst()
                .map(first -> Issue.error(
                        ride.name(),
                        0,
                        0,
                        "this log holds the same readings as "
                                + (first.name().equals(ride.name()) ? "the ride of that name" : first.name())
                                + ", which is there already: they would count twice",
                        "leave one of the two out"));
    }
}
