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
        try {
            Optional<Issue> swapped = FileKind.tableGivenAsRide(file);
            if (swapped.isPresent()) {
                return Loaded.refused(swapped.get());
            }
            Loaded<Ride> loaded = RideReader.read(
                    file,
                    options,
                    fraction -> progress.at(fraction, "reading " + file.getFileName()),
                    cancellation::cancelled);
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
        Loaded<Ride> first = read(file, options, progress, cancellation);
        Loaded<Ride> second = read(secondFile, options, progress, cancellation);
        List<Issue> issues = new ArrayList<>(first.issues());
        issues.addAll(second.issues());
        if (first.value().isEmpty() || second.value().isEmpty()) {
            return Loaded.refused(issues);
        }
        Loaded<ClockAlignment> alignment =
                ClockAlignment.of(first.value().get(), second.value().get());
        issues.addAll(alignment.issues());
        if (alignment.value().isEmpty()) {
            return Loaded.refused(issues);
        }
        ClockAlignment found = alignment.value().get();
        issues.add(Issue.note(second.value().get().name(), "Clock " + found.words()));
        return Loaded.of(first.value().get().with(second.value().get(), found), issues);
    }
}
