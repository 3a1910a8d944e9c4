package fuelwright.work;

import fuelwright.job.RideSource;
import fuelwright.ride.ClockAlignment;
import fuelwright.ride.Ride;
import java.nio.file.Path;
import java.util.Objects;

/**
 * A ride and the log of a second logger on the same ride.
 *
 * @param file the second log
 * @param first the ride by itself
 * @param second the second log by itself
 * @param alignment how the second clock runs against the first
 */
public record SecondLogger(Path file, Ride first, Ride second, ClockAlignment alignment) {

    public SecondLogger {
        Objects.requireNonNull(file, "file");
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(second, "second");
        Objects.requireNonNull(alignment, "alignment");
    }

    /** Its file as it was when it was read. */
    public RideSource.Log log() {
        return new RideSource.Log(file, second.fingerprint());
    }

    /** Both as one ride, on the first one's clock and rows. */
    public Ride together() {
        return first.with(second, alignment);
    }

    /** The same, otherwise aligned. */
    public SecondLogger aligned(ClockAlignment other) {
        return new SecondLogger(file, first, second, other);
    }
}
