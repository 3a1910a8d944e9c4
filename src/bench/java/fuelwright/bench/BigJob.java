package fuelwright.bench;

import fuelwright.airflow.Machine;
import fuelwright.estimate.ProposalSettings;
import fuelwright.job.Job;
import fuelwright.speed.BigRide;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import fuelwright.work.Analyse;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.JobFiles;
import fuelwright.work.Progress;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Jobs on a million rows, as a user would put them together. */
final class BigJob {

    static final int ROWS = 1_000_000;

    private BigJob() {}

    /** The log, written where it isn't there yet. */
    static Path log() {
        try {
            return BigRide.log(ROWS);
        } catch (IOException e) {
            throw new IllegalStateException("the log can't be written", e);
        }
    }

    /** With the table that the ride was made with, resampled to so many breakpoints each way. */
    static Job of(int breakpoints) {
        JobFiles.RideFiles ride = new JobFiles.RideFiles(log(), Optional.empty(), Optional.empty());
        Job job = new JobFiles(
                        "big",
                        BigRide.fuelTable(),
                        BigRide.targetTable(),
                        List.of(ride),
                        Machine.unknown(),
                        fuelwright.ride.RideOptions.defaults(),
                        ProposalSettings.defaults().withDeadTimeMs(0))
                .load(Progress.NONE, Cancellation.NEVER)
                .value()
                .orElseThrow();
        return job.withFuelTable(resampled(job.fuelTable().orElseThrow(), breakpoints));
    }

    /** The analysis of a job that can be analysed. */
    static Analysis analysed(Job job) {
        return Analyse.run(job, Progress.NONE, Cancellation.NEVER).value().orElseThrow();
    }

    private static Table resampled(Table table, int breakpoints) {
        Axis speed = spread(table.speed(), breakpoints);
        Axis load = spread(table.load(), breakpoints);
        double[] values = new double[speed.size() * load.size()];
        for (int c = 0; c < values.length; c++) {
            values[c] = table.value(speed.at(c % speed.size()), load.at(c / speed.size()));
        }
        return Table.of(table.quantity(), speed, load, values);
    }

    /** Breakpoints as dense where the axis has them dense. */
    private static Axis spread(Axis axis, int count) {
        double[] breakpoints = new double[count];
        for (int i = 0; i < count; i++) {
            double at = (axis.size() - 1.0) * i / (count - 1);
            int low = Math.min((int) at, axis.size() - 2);
            breakpoints[i] = axis.at(low) + (at - low) * (axis.at(low + 1) - axis.at(low));
        }
        return new Axis(axis.kind(), breakpoints);
    }
}
