package fuelwright.job;

import fuelwright.ride.ClockAlignment;
import fuelwright.ride.RideOptions;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;

/**
 * Where a ride was read from, and how.
 *
 * @param file the log
 * @param secondLogger the log of a second logger on the same ride
 * @param byHand how the second logger's clock lies, where the user said so; empty: found from the logs
 * @param options what was said about it
 */
public record RideSource(Path file, Optional<Path> secondLogger, Optional<ClockAlignment> byHand, RideOptions options) {

    public RideSource {
        Objects.requireNonNull(file, "file");
        Objects.requireNonNull(secondLogger, "secondLogger");
        Objects.requireNonNull(byHand, "byHand");
        Objects.requireNonNull(options, "options");
    }

    /** One logger's file. */
    public static RideSource of(Path file, RideOptions options) {
        return new RideSource(file, Optional.empty(), Optional.empty(), options);
    }
}
