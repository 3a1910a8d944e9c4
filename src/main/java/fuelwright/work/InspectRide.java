package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.screen.ScreenSettings;
import fuelwright.screen.ScreenedRide;
import fuelwright.screen.Screens;
import fuelwright.table.Axis;
import java.nio.file.Path;
import java.util.List;

/** Looks at a ride by itself: what it holds, and what would be screened out. */
public final class InspectRide {

    /** Breakpoints so far apart that nothing is outside them: there is no table to be outside of. */
    private static final Axis ALL_SPEEDS = new Axis(Axis.Kind.ENGINE_SPEED, 0, 1e6);

    private static final Axis ALL_THROTTLE = new Axis(Axis.Kind.THROTTLE, 0, 1e6);
    private static final Axis ALL_PRESSURE = new Axis(Axis.Kind.MANIFOLD_PRESSURE, 0, 1e6);

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
        boolean byPressure = ride.column(Role.THROTTLE).isEmpty()
                && ride.column(Role.MANIFOLD_PRESSURE).isPresent();
        ScreenedRide screened =
                Screens.apply(ride, ScreenSettings.defaults(), ALL_SPEEDS, byPressure ? ALL_PRESSURE : ALL_THROTTLE);
        return Loaded.of(screened, loaded.issues());
    }
}
