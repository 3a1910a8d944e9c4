package fuelwright.work;

import fuelwright.estimate.Decision;
import fuelwright.estimate.Proposal;
import fuelwright.handover.StopNotes;
import fuelwright.job.HardwareProfile;
import fuelwright.job.Job;
import fuelwright.table.Table;
import java.util.HashMap;
import java.util.Map;

/**
 * The corrected table has gone into the control unit: it becomes the job's fuel table, and every ride so far keeps the table that it was
 * made with, so that its evidence is re-based. Held cells stay held, unless the breakpoints are others now; a typed figure is in the table now and is no decision any more.
 * Answers stay: they belong to cautions by name and hide none. A Stop caution that stands against the table goes with it.
 */
public final class TableInUnit {

    private TableInUnit() {}

    /** The job for the next ride. */
    public static Job after(Analysis analysis) {
        return after(analysis, analysis.job());
    }

    /**
     * The same for a job that may have gone on since the table was handed over.
     *
     * @param now still with the fuel table that the handed one corrects; its rides so far were made with that one, or their own
     */
    public static Job after(Analysis analysis, Job now) {
        Map<Integer, Decision> held = new HashMap<>(now.proposal().decisions());
        held.values().removeIf(d -> d.kind() != Decision.Kind.HELD);
        Job untyped = now.withProposal(now.proposal().withDecisions(held));
        return AnotherTable.of(untyped, table(analysis), RideToRide.promisedPercent(analysis))
                .job();
    }

    /** The table that goes into the unit, with the Stop cautions that stand against it. */
    public static Table table(Analysis analysis) {
        return StopNotes.on(inUnit(analysis), analysis.cautions());
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
