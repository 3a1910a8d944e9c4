package fuelwright.work;

import fuelwright.estimate.Decision;
import fuelwright.estimate.Proposal;
import fuelwright.handover.StopNotes;
import fuelwright.job.CellsNow;
import fuelwright.job.HardwareProfile;
import fuelwright.job.Job;
import fuelwright.table.Table;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The corrected table has gone into the control unit: it becomes the job's fuel table, and every ride so far keeps the table that it was
 * made with, so that its evidence is re-based. Held cells stay held, unless the breakpoints are others now; a typed figure is in the table now and is no decision any more.
 * Answers stay: they belong to cautions by name and hide none. A Stop caution that stands against the table goes with it.
 */
public final class TableInUnit {

    /** Closer than this, relative, is the same fuel. */
    private static final double SAME = 1e-9;

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
        return typed(
                AnotherTable.of(untyped, table(analysis), RideToRide.promisedPercent(analysis))
                        .job(),
                analysis);
    }

    /** The table that goes into the unit, with the Stop cautions that stand against it. */
    public static Table table(Analysis analysis) {
        return StopNotes.on(inUnit(analysis), analysis.cautions());
    }

    /**
     * What the control unit delivers now: hardware that holds the table's own figure holds its own rounded one at its own breakpoints; hardware
     * that holds a change or multiplier leaves its factor on the table beneath it, read off at the old table's breakpoints.
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
        CellsNow now = analysis.hardware().get().now().orElseThrow();
        double[] cells = old.toArray();
        double deadTimeMs = analysis.job().proposal().deadTimeMs();
        for (int c = 0; c < cells.length; c++) {
            double factor = CellsNow.factor(holds, typed.value(old.speedAt(c), old.loadAt(c)));
            double fuel = now.beneath().at(c) * factor;
            double delivered = old.quantity().delivered(old.at(c), deadTimeMs);
            // As it was to the last digit where nothing was typed: what is kept must not creep from round to round.
            if (Math.abs(fuel - delivered) > SAME * Math.abs(delivered)) {
                cells[c] = old.quantity().fromDelivered(fuel, deadTimeMs);
            }
        }
        return proposal.corrected().withValues(cells);
    }

    /** What the hardware's cells hold once everything is typed, where they hold changes or multipliers. */
    static Job typed(Job job, Analysis analysis) {
        HardwareProfile hardware = job.hardware();
        return analysis.hardware()
                .filter(h -> h.now().isPresent()
                        && hardware.holds() == analysis.job().hardware().holds())
                .map(h -> job.withHardware(hardware.withCells(Optional.of(h.table()))))
                .orElse(job);
    }
}
