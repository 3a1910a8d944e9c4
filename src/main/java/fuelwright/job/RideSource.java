package fuelwright.job;

import fuelwright.ride.ClockAlignment;
import fuelwright.ride.RideOptions;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;

/**
 * Where a ride was read from, and how.
 *
 * @param log its file
 * @param secondLogger the log of a second logger on the same ride
 * @param byHand how the second logger's clock lies, where the user said so; empty: found from the logs
 * @param options what was said about it
 */
public record RideSource(Log log, Optional<Log> secondLogger, Optional<ClockAlignment> byHand, RideOptions options) {

    /**
     * A log's file as it was when it was read.
     *
     * @param sha256 fingerprint of the bytes that were read, in hexadecimal; empty where that isn't known
     */
    public record Log(Path file, String sha256) {
        public Log {
            Objects.requireNonNull(file, "file");
            Objects.requireNonNull(sha256, "sha256");
        }
    }

    public RideSource {
        Objects.requireNonNull(log, "log");
        Objects.requireNonNull(secondLogger, "secondLogger");
        Objects.requireNonNull(byHand, "byHand");
        Objects.requireNonNull(options, "options");
    }

    /** Where the log lay when it was read. */
    public Path file() {
        return log.file();
    }
}
