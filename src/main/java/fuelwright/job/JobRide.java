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
 */
public record JobRide(Ride ride, Optional<Table> madeWith) {

    public JobRide {
        Objects.requireNonNull(ride, "ride");
        Objects.requireNonNull(madeWith, "madeWith");
    }
}
