package fuelwright.job;

import fuelwright.table.Table;
import java.util.Objects;

/**
 * A table that was in the control unit before.
 *
 * @param table the table
 * @param ridesSoFar how many of the job's rides had been made when it was replaced
 * @param promisedErrorPercent mixture error promised for the table that replaced it, %: on readings that the fit hadn't seen, with the gap between
 *     fit and proposal; NaN where there was none
 */
public record PastTable(Table table, int ridesSoFar, double promisedErrorPercent) {

    public PastTable {
        Objects.requireNonNull(table, "table");
        if (ridesSoFar < 0) {
            throw new IllegalArgumentException("ridesSoFar " + ridesSoFar + " must be at least 0");
        }
    }
}
