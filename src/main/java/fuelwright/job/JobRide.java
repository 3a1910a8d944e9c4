package fuelwright.job;

import fuelwright.ride.Ride;
import fuelwright.table.Table;
import java.util.Objects;
import java.util.Optional;

/**
 * A ride with the table that was in the control unit when it was made.
 *
 * @param ride the log
 * @param madeWith the table it was made with; empty: the job's fuel table
 * @param source where it was read from; empty where it has no file of its own (the sample job)
 */
public record JobRide(Ride ride, Optional<Table> madeWith, Optional<RideSource> source) {

    public JobRide {
        Objects.requireNonNull(ride, "ride");
        Objects.requireNonNull(madeWith, "madeWith");
        Objects.requireNonNull(source, "source");
    }

    /**
     * The ride as a fuel table hears it: where that feeds one cylinder, that cylinder's sensor alone is evidence; a cylinder that the ride has no
     * sensor of changes nothing.
     */
    public Ride heardBy(Table fuel) {
        int sensors = ride.mixtures().size();
        return fuel.cylinder().isPresent() && (sensors == 1 || fuel.cylinder().getAsInt() <= sensors)
                ? ride.ofCylinder(fuel.cylinder().getAsInt())
                : ride;
    }

    /** A ride without a file of its own. */
    public JobRide(Ride ride, Optional<Table> madeWith) {
        this(ride, madeWith, Optional.empty());
    }
}
