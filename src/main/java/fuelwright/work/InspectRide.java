package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.screen.ScreenSettings;
import fuelwright.screen.ScreenedRide;
import java.nio.file.Path;
import java.util.List;

/** Looks at a ride by itself: what it holds, and what would be screened out. */
public final class InspectRide {

    private InspectRide() {}

    /**
     * @return the ride with what the usual screens keep out, by throttle where it is logged, else by manifold pressure
     * @throws WorkException if the file can't be read at all
     */
    public static Loaded<ScreenedRide> run(
            Path file, RideOptions options, Progress progress, Cancellation cancellation) {
        Loaded<Ride> loaded = OpenRide.read(file, options, progress, cancellation);
        if (loaded.value().isEmpty()) {
            return Loaded.refused(loaded.issues());
        }
        Ride ride = loaded.value().get();
        List<Issue> unmet = GivenRoles.unmet(options, List.of(ride));
        if (!unmet.isEmpty()) {
            return Loaded.refused(unmet);
        }
        ScreenedRide screened = PreviewScreens.of(ride, ScreenSettings.defaults(), Cancellation.NEVER);
        return Loaded.of(screened, loaded.issues());
    }
}
