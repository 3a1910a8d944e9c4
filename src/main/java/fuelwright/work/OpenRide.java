package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.RideReader;
import java.io.IOException;
import java.nio.file.Path;
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
            return loaded;
        } catch (IOException e) {
            throw WorkException.reading(file, e);
        }
    }
}
