package fuelwright.work;

import fuelwright.estimate.Decision;
import fuelwright.estimate.ProposalSettings;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.job.PastTable;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Another fuel table takes the place of the job's. Rides so far were made with the one that was there, and keep it: read as if the new one had
 * been in the control unit, what they showed would be added a second time. Held cells stay held while the breakpoints are the same; a typed
 * figure that the new table holds is no decision any more, and that no cell be leaned was a choice for the old one. Modified: nothing.
 *
 * @param job with the new table
 * @param keeping how many rides keep the old table only now
 * @param canServe whether the old table can be what those rides were made with: same quantity and kind of load
 * @param entered typed figures that the new table holds
 * @param givenUp decisions that can't be kept, the breakpoints, the quantity or the cylinder being others
 */
public record AnotherTable(Job job, int keeping, boolean canServe, int entered, int givenUp) {

    /** With no promise for it. */
    public static AnotherTable opened(Job job, Table now) {
        return of(job, now, Double.NaN);
    }

    /**
     * With the promise of the analysis that it came from, if it is the table that was handed over.
     *
     * @param handed what was handed over last
     */
    public static AnotherTable opened(Job job, Table now, Optional<Analysis> handed) {
        Optional<Analysis> meant = handed.filter(a -> a.job().fuelTable().equals(job.fuelTable()))
                .filter(a -> sameFigures(TableInUnit.table(a), now));
        AnotherTable other = of(job, now, meant.map(RideToRide::promisedPercent).orElse(Double.NaN));
        return meant.map(a -> other.on(TableInUnit.typed(other.job, a))).orElse(other);
    }

    private AnotherTable on(Job same) {
        return new AnotherTable(same, keeping, canServe, entered, givenUp);
    }

    /** @param promisedErrorPercent promised for the new table; NaN where nothing was */
    static AnotherTable of(Job job, Table now, double promisedErrorPercent) {
        Optional<Table> before = job.fuelTable();
        if (before.isEmpty() || sameFigures(before.get(), now)) {
            return new AnotherTable(job.withFuelTable(now), 0, true, 0, 0);
        }
        Table old = before.get();
        boolean ofOneCylinder = old.cylinder().equals(now.cylinder());
        boolean sameKind = old.quantity() == now.quantity()
                && old.load().kind() == now.load().kind();
        int keeping = 0;
        List<JobRide> rides = new ArrayList<>();
        for (JobRide ride : job.rides()) {
            // With a table for each cylinder all of them were in the unit on the same ride.
            boolean keeps = ofOneCylinder && ride.madeWith().isEmpty();
            keeping += keeps ? 1 : 0;
            rides.add(keeps ? new JobRide(ride.ride(), before, ride.source()) : ride);
        }
        List<PastTable> past = new ArrayList<>(job.past());
        if (keeping > 0) {
            past.add(new PastTable(old, rides.size(), promisedErrorPercent));
        }
        Map<Integer, Decision> decisions = new HashMap<>(job.proposal().decisions());
        int all = decisions.size();
        int entered = 0;
        if (ofOneCylinder && old.quantity() == now.quantity() && old.sameAxes(now)) {
            decisions.entrySet().removeIf(d -> isEntered(d.getValue(), now.at(d.getKey())));
            entered = all - decisions.size();
        } else {
            decisions.clear();
        }
        // What the hardware's cells hold belonged to the old table.
        Job next = job.withFuelTable(now)
                .withHardware(job.hardware().withCells(Optional.empty()))
                .withRides(rides)
                .withPast(past)
                .withProposal((old.quantity() == now.quantity() ? job.proposal() : untold(job.proposal()))
                        .withDecisions(decisions)
                        .withLeanNoCell(false));
        return new AnotherTable(next, keeping, sameKind, entered, all - entered - decisions.size());
    }

    /** What the cells of another quantity contained says nothing of these. */
    private static ProposalSettings untold(ProposalSettings settings) {
        return settings.withDeadTimeMs(OptionalDouble.empty());
    }

    private static boolean isEntered(Decision decision, double figure) {
        return decision.kind() == Decision.Kind.SET && same(decision.value(), figure);
    }

    /** Whether two tables hold the same, whatever is noted above them. */
    public static boolean sameFigures(Table one, Table other) {
        if (one.quantity() != other.quantity()
                || !one.sameAxes(other)
                || !one.cylinder().equals(other.cylinder())) {
            return false;
        }
        for (int cell = 0; cell < one.cells(); cell++) {
            if (!same(one.at(cell), other.at(cell))) {
                return false;
            }
        }
        return true;
    }

    /** As exactly as a file writes figures. */
    private static boolean same(double one, double other) {
        return Math.abs(one - other) <= 1e-9 * Math.max(1, Math.abs(one));
    }
}
