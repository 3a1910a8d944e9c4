package fuelwright.work;

import fuelwright.estimate.Decision;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.job.PastTable;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The corrected table has gone into the control unit: it becomes the job's fuel table, and every ride so far keeps the table that it was
 * made with, so that its evidence is re-based. Held cells stay held; a typed figure is in the table now and is no decision any more.
 * Answers stay: they belong to cautions by name and hide none.
 */
public final class TableInUnit {

    private TableInUnit() {}

    /** The job for the next ride. */
    public static Job after(Analysis analysis) {
        Job job = analysis.job();
        Table old = analysis.proposal().before();
        List<JobRide> rides = new ArrayList<>();
        for (JobRide ride : job.rides()) {
            rides.add(new JobRide(ride.ride(), Optional.of(ride.madeWith().orElse(old)), ride.source()));
        }
        Map<Integer, Decision> held = new HashMap<>(job.proposal().decisions());
        held.values().removeIf(d -> d.kind() != Decision.Kind.HELD);
        List<PastTable> past = new ArrayList<>(job.past());
        past.add(new PastTable(old, rides.size(), RideToRide.promisedPercent(analysis)));
        return job.withFuelTable(analysis.proposal().corrected())
                .withRides(rides)
                .withProposal(job.proposal().withDecisions(held))
                .withPast(past);
    }
}
