package fuelwright.work;

import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.screen.ScreenSettings;
import fuelwright.screen.ScreenedRide;
import fuelwright.screen.Screens;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.Optional;

/** What screens would keep out of a ride, before anything follows from it. */
public final class PreviewScreens {

    /** Breakpoints so far apart that nothing is outside them: there is no table to be outside of. */
    private static final Axis ALL_SPEEDS = new Axis(Axis.Kind.ENGINE_SPEED, 0, 1e6);

    private static final Axis ALL_THROTTLE = new Axis(Axis.Kind.THROTTLE, 0, 1e6);
    private static final Axis ALL_PRESSURE = new Axis(Axis.Kind.MANIFOLD_PRESSURE, 0, 1e6);

    private PreviewScreens() {}

    /**
     * By the table that a ride of the job was made with, as the analysis does it; by the ride alone where there is none.
     *
     * @throws Cancellation.CancelledException if it isn't wanted any more
     */
    public static ScreenedRide of(Job job, JobRide ride, ScreenSettings settings, Cancellation cancellation) {
        Optional<Table> table = ride.madeWith().or(job::fuelTable);
        Ride heard = job.fuelTable().map(ride::heardBy).orElse(ride.ride());
        return table.isPresent()
                ? Screens.apply(
                        heard,
                        settings,
                        table.get().speed(),
                        table.get().load(),
                        job.targetLambda(),
                        cancellation::check)
                : of(heard, settings, cancellation);
    }

    /** By throttle where it is logged, else by manifold pressure, with no table to be outside of. */
    static ScreenedRide of(Ride ride, ScreenSettings settings, Cancellation cancellation) {
        boolean byPressure = ride.column(Role.THROTTLE).isEmpty()
                && ride.column(Role.MANIFOLD_PRESSURE).isPresent();
        return Screens.apply(
                ride,
                settings,
                ALL_SPEEDS,
                byPressure ? ALL_PRESSURE : ALL_THROTTLE,
                Optional.empty(),
                cancellation::check);
    }
}
