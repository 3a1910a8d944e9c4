package fuelwright.work;

import fuelwright.estimate.Decision;
import fuelwright.estimate.Proposal;
import fuelwright.handover.StopNotes;
import fuelwright.job.HardwareProfile;
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
 * made with, so that its evidence is re-based. Held cells stay held, unless the breakpoints are others now; a typed figure is in the table now and is no decision any more.
 * Answers stay: they belong to cautions by name and hide none. A Stop caution that stands against the table goes with it.
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
        Table now = StopNotes.on(inUnit(analysis), analysis.cautions());
        if (!now.sameAxes(old)) {
            held.clear();
        }
        return job.withFuelTable(now)
                .withRides(rides)
                .withProposal(job.proposal().withDecisions(held))
                .withPast(past);
    }

    /**
     * What the control unit delivers now: hardware that holds the table's own figure holds its own rounded one at its own breakpoints; hardware
     * that holds a change or multiplier leaves its factor on the old table, read off at the old table's breakpoints.
     */
    private static Table inUnit(Analysis analysis) {
        Proposal proposal = analysis.proposal();
        if (analysis.hardware().isEmpty()) {
            return proposal.corrected();
        }
        Table typed = analysis.hardware().get().table();
        Table old = proposal.before();
        HardwareProfile.Holds holds = analysis.job().hardware().holds();
        if (holds == HardwareProfile.Holds.VALUE) {
            return typed.withNotes(proposal.corrected().notes());
        }
        double[] cells = new double[old.cells()];
        for (int c = 0; c < cells.length; c++) {
            double figure = typed.value(old.speedAt(c), old.loadAt(c));
            double factor = holds == HardwareProfile.Holds.MULTIPLIER ? figure : 1 + figure / 100;
            cells[c] = old.quantity()
                    .corrected(old.at(c), factor, analysis.job().proposal().deadTimeMs());
        }
        return proposal.corrected().withValues(cells);
    }
}
