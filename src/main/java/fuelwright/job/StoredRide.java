package fuelwright.job;

import fuelwright.ride.ClockAlignment;
import fuelwright.ride.RideOptions;
import fuelwright.table.Table;
import java.util.Optional;

/**
 * A ride as a job file holds it, before it is read.
 *
 * @param name the ride's name
 * @param first the log
 * @param second the second logger's log
 * @param byHand how the second clock lies, where the user said so
 * @param options what was said about it
 * @param madeWith the table it was made with; empty: the job's fuel table
 */
public record StoredRide(
        String name,
        Log first,
        Optional<Log> second,
        Optional<ClockAlignment> byHand,
        RideOptions options,
        Optional<Table> madeWith) {

    /**
     * A log's file.
     *
     * @param path where it lay, as the job file has it: relative to the job file where that could be; empty where it is inside
     * @param sha256 fingerprint of its bytes, in hexadecimal
     * @param content its bytes, where it is inside the job file
     */
    public record Log(String name, String path, String sha256, Optional<byte[]> content) {}
}
