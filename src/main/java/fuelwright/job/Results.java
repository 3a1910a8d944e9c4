package fuelwright.job;

import fuelwright.estimate.CellNeed;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What came out of a job, kept with it so that a folder of jobs can be looked through without working each out again. Only ever what followed
 * from the job that lies beside it.
 *
 * @param cells what each cell of the job's fuel table still needs, in its order
 * @param errorPercent mixture error of the newest ride with the table it was made with, %
 * @param done whether what is left is within what the sensor can tell
 * @param stops how many Stop cautions stood
 * @param peaks most power of the first and last ride whose pulls have one
 */
public record Results(List<CellNeed> cells, OptionalDouble errorPercent, boolean done, int stops, List<Peak> peaks) {

    /**
     * Most power of a ride's first pull, from logged power or torque, as logged: not corrected to any air.
     *
     * @param ride its name
     * @param powerKw kW
     * @param errorKw standard error, kW
     * @param rpm engine speed there
     */
    public record Peak(String ride, double powerKw, double errorKw, double rpm) {}

    public Results {
        cells = List.copyOf(cells);
        peaks = List.copyOf(peaks);
        if (stops < 0) {
            throw new IllegalArgumentException("stops " + stops + " must be at least 0");
        }
    }
}
