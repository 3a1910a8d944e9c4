package fuelwright.ride;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import java.nio.file.Path;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
/** stub */
public final class RideReader {
    private RideReader() {}
    public static Loaded<Ride> read(Path p, RideOptions o, DoubleConsumer d, BooleanSupplier c) {
        return Loaded.refused(Issue.error(p.getFileName().toString(), 0, 0, "rides can't be read yet", ""));
    }
}
