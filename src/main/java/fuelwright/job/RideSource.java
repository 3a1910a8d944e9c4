package fuelwright.job;

import fuelwright.ride.RideOptions;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;

/**
 * Where a ride was read from, and how.
 *
 * @param file the log
 * @param secondLogger the log of a second logger on the same ride
 * @param options what was said about it
 */
public record RideSource(Path file, Optional<Path> secondLogger, RideOptions options) {

    public RideSource {
        Objects.requireNonNull(file, "file");
        Objects.requireNonNull(secondLogger, "secondLogger");
        Objects.requireNonNull(options, "options");
    }
}
