package fuelwright.job;

import fuelwright.estimate.CellNeed;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.power.Breathing;
import fuelwright.table.Table;
import java.util.List;
import java.util.Optional;

/**
 * What the part gave, by a job: air per cycle by the oldest table it knows, taken as right before the part, against what its rides show to be
 * right now. Both are taken to be meant for the same target.
 */
public final class PartGain {

    /** Key of the note by which a table says that it is a forecast. */
    public static final String FORECAST = "forecast";

    private PartGain() {}

    /** Of a job with its rides; refused with the reason where it can't be told. */
    public static Loaded<Breathing> of(Job job, List<CellNeed> cells) {
        return of(job, job.rides().stream().findFirst().flatMap(JobRide::madeWith), cells);
    }

    /** Of a job as its file holds it. */
    public static Loaded<Breathing> of(StoredJob stored, List<CellNeed> cells) {
        return of(stored.job(), stored.rides().stream().findFirst().flatMap(StoredRide::madeWith), cells);
    }

    private static Loaded<Breathing> of(Job job, Optional<Table> ofFirstRide, List<CellNeed> cells) {
        Table now = job.fuelTable().orElseThrow();
        Table oldest = job.past().stream()
                .map(PastTable::table)
                .findFirst()
                .or(() -> ofFirstRide)
                .orElse(now);
        if (oldest.notes().stream().anyMatch(n -> n.key().equalsIgnoreCase(FORECAST))) {
            return refused(
                    job,
                    "the oldest table of the job is a first-ride table: what the engine drew before the part isn't known",
                    "Next time start the job with the table from before the part");
        }
        Optional<Breathing> gain = Breathing.measured(
                oldest, now, job.targetLambda(), job.proposal().deadTimeMs(), cells);
        if (gain.isEmpty()) {
            return refused(
                    job,
                    "the oldest table of the job holds " + oldest.quantity().words() + " by "
                            + oldest.load().kind().words() + ", the newest "
                            + now.quantity().words() + " by "
                            + now.load().kind().words(),
                    "Compare tables of one kind");
        }
        if (gain.get().knownCells() == 0) {
            return refused(job, "no cell has 3 independent readings or more", "Ride on");
        }
        return Loaded.of(gain.get(), List.of());
    }

    private static Loaded<Breathing> refused(Job job, String what, String todo) {
        return Loaded.refused(Issue.error(job.name(), 0, 0, what, todo));
    }
}
