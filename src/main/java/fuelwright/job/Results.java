package fuelwright.job;

import fuelwright.estimate.CellNeed;
import fuelwright.estimate.HighLoadCells;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What came out of a job, kept with it so that a folder of jobs can be looked through without working each out again. Only ever what followed
 * from the job that lies beside it.
 *
 * @param cells what each cell of the job's fuel table still needs, in its order
 * @param errorPercent mixture error of the newest ride with the table it was made with, %
 * @param done whether what is left is within what the sensor can tell, where it was ridden
 * @param stops how many Stop cautions stood
 * @param peaks most power of the first and last ride whose pulls have one
 * @param highLoad how much of high load is measured; empty where an older version kept it
 */
public record Results(
        List<CellNeed> cells,
        OptionalDouble errorPercent,
        boolean done,
        int stops,
        List<Peak> peaks,
        Optional<HighLoadCells> highLoad) {

    /** Of which it isn't known how much of high load is measured. */
    public Results(List<CellNeed> cells, OptionalDouble errorPercent, boolean done, int stops, List<Peak> peaks) {
        this(cells, errorPercent, done, stops, peaks, Optional.empty());
    }

    /** Whether it is done, a few words; never of more than was ridden. Empty where it isn't. */
    public String doneWords() {
        if (!done) {
            return "";
        }
        return highLoad.map(h -> h.notMeasured() == 0 ? "done" : "done where ridden (" + h.words() + ")")
                .orElse("done where ridden");
    }

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
