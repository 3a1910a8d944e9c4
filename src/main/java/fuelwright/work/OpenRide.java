package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
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
            return new Loaded<>(loaded.value().map(Ride::filled), loaded.issues());
        } catch (IOException e) {
            throw WorkException.reading(file, e);
        }
    }

    /**
     * A ride from two loggers, on the first one's clock and rows.
     *
     * @throws WorkException if a file can't be read at all
     * @throws Cancellation.CancelledException if it isn't wanted any more
     */
    public static Loaded<Ride> read(
            Path file, Path secondFile, RideOptions options, Progress progress, Cancellation cancellation) {
        return read(file, secondFile, options, Optional.empty(), progress, cancellation);
    }

    /**
     * The same, aligned by hand where {@code byHand} says how.
     *
     * @throws WorkException if a file can't be read at all
     * @throws Cancellation.CancelledException if it isn't wanted any more
     */
    public static Loaded<Ride> read(
            Path file,
            Path secondFile,
            RideOptions options,
            Optional<ClockAlignment> byHand,
            Progress progress,
            Cancellation cancellation) {
        Loaded<Ride> first = read(file, options, progress, cancellation);
        if (first.value().isEmpty()) {
            return first;
        }
        Loaded<SecondLogger> second = second(first.value().get(), secondFile, options, byHand, progress, cancellation);
        List<Issue> issues = new ArrayList<>(first.issues());
        issues.addAll(second.issues());
        return new Loaded<>(second.value().map(SecondLogger::together), issues);
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
        Loaded<Ride> second = read(secondFile, options, false, progress, cancellation);
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
}
