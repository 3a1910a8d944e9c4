package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.accuracy.SimulatedJob;
import fuelwright.estimate.HighLoadCells;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.job.Results;
import fuelwright.simulated.Grid;
import fuelwright.simulated.MachineTables;
import fuelwright.simulated.RideProfile;
import fuelwright.simulated.SimulatedMachines;
import fuelwright.simulated.Simulation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A simulated machine is ridden, corrected and ridden again. */
class RideToRideTest {

    private static final HighLoadCells ALL_MEASURED = new HighLoadCells(45, 0);

    private static final MachineTables TABLES = new MachineTables(SimulatedMachines.vTwin720());
    private static final RideProfile ROAD = RideProfile.road(14);

    private static Analysis analysed(Job job) {
        return Analyse.run(job, Progress.NONE, Cancellation.NEVER).value().orElseThrow();
    }

    private static String log(Grid inUnit, long seed) {
        return Simulation.ride(TABLES, inUnit, ROAD, seed).csv();
    }

    private static JobRide ride(Grid inUnit, long seed) {
        return new JobRide(
                SimulatedJob.of(TABLES, inUnit, List.of(log(inUnit, seed)), true)
                        .rides()
                        .get(0)
                        .ride(),
                Optional.empty());
    }

    private static Job withRide(Job job, JobRide ride) {
        List<JobRide> rides = new ArrayList<>(job.rides());
        rides.add(ride);
        return job.withRides(rides);
    }

    @Test
    void aFirstRideIsNotDoneTheCorrectedTableIsNotYetAndTheRideWithItKeepsThePromise() {
        Grid old = TABLES.old(1);
        Job job = SimulatedJob.of(TABLES, old, List.of(log(old, 1)), true);
        Analysis first = analysed(job.withProposal(job.proposal().withCaps(60, 60)));
        RideToRide before = first.rideToRide().orElseThrow();
        assertFalse(before.done());
        assertTrue(before.promisedPercent().isEmpty() && before.asPromised().isEmpty());

        Job corrected = TableInUnit.after(first);
        assertFalse(analysed(corrected).rideToRide().orElseThrow().done(), "nobody rode the corrected table yet");

        Grid inUnit = old.with(first.proposal().corrected().toArray());
        RideToRide after =
                analysed(withRide(corrected, ride(inUnit, 2))).rideToRide().orElseThrow();
        assertEquals(before.errorPercent(), after.errorBeforePercent().orElseThrow(), 0.5);
        assertTrue(after.errorPercent() < before.errorPercent() / 3, after.toString());
        assertEquals(Optional.of(true), after.asPromised(), after.toString());
        assertTrue(after.cellsLeft() < before.cellsLeft() / 3, before.cellsLeft() + " cells, then " + after);

        RideToRide worse =
                analysed(withRide(corrected, ride(old, 3))).rideToRide().orElseThrow();
        assertEquals(Optional.of(false), worse.asPromised(), "the corrected table never went in: " + worse);
        assertFalse(worse.done());
    }

    private static RideToRide shortRide(Grid inUnit, long seed) {
        String log = Simulation.ride(TABLES, inUnit, RideProfile.road(4), seed).csv();
        return analysed(SimulatedJob.of(TABLES, inUnit, List.of(log), true))
                .rideToRide()
                .orElseThrow();
    }

    @Test
    void withTheRightTableNextToNothingIsLeftAndWithFuelMissingItIsNeverDone() {
        Grid lean = TABLES.truth().combine(TABLES.truth(), (a, b) -> 0.96 * a);
        for (long seed = 4; seed < 6; seed++) {
            RideToRide right = shortRide(TABLES.truth(), seed);
            assertTrue(right.cellsLeft() <= 3, right.toString());
            RideToRide wrong = shortRide(lean, seed);
            assertFalse(wrong.done(), wrong.toString());
            assertTrue(wrong.cellsLeft() > 2 * right.cellsLeft(), right + ", lean " + wrong);
            assertTrue(wrong.words(false).contains("Cells still off"), wrong.words(false));
        }
    }

    @Test
    void aLongRideWithTheRightTableIsDoneAndOneALittleLeanIsNot() {
        RideToRide right = longRide(TABLES.truth(), 12);
        assertTrue(right.done(), right.toString());
        RideToRide lean = longRide(TABLES.truth().combine(TABLES.truth(), (a, b) -> 0.985 * a), 12);
        assertFalse(lean.done(), lean.toString());
        assertTrue(lean.cellsLeft() > 10, lean.toString());
    }

    private static RideToRide longRide(Grid inUnit, long seed) {
        return analysed(SimulatedJob.of(TABLES, inUnit, List.of(log(inUnit, seed)), true))
                .rideToRide()
                .orElseThrow();
    }

    /** Šidák: 0.95^(1/n) for each; quantiles of the normal distribution from memory of common tables. */
    @Test
    void theMoreCellsAreLookedAtTheMoreStandardErrorsAreAllowed() {
        assertEquals(2, RideToRide.standardErrors(0), "never below two");
        assertEquals(2, RideToRide.standardErrors(1));
        assertEquals(2.80, RideToRide.standardErrors(10), 0.01);
        assertEquals(3.47, RideToRide.standardErrors(100), 0.02);
    }

    @Test
    void doneIsSaidAfterTheStopCautions() {
        RideToRide done = new RideToRide(
                "b", 0.9, Optional.of(8.0), Optional.of(1.0), 0, true, ALL_MEASURED, RideToRide.Proposed.NOTHING);
        assertTrue(done.words(false).contains("promised 1.0 %, kept"), done.words(false));
        assertTrue(done.words(false).endsWith("done, stop changing"), done.words(false));
        assertTrue(done.words(true).contains("see to the Stop cautions"), done.words(true));
    }

    @Test
    void whileHighLoadIsNotMeasuredItIsDoneOnlyWhereItWasRidden() {
        RideToRide done = new RideToRide(
                "b",
                0.9,
                Optional.empty(),
                Optional.empty(),
                0,
                true,
                new HighLoadCells(45, 25),
                new RideToRide.Proposed(1, 0.03, 115, 1.6));
        String words = done.words(false);
        assertFalse(words.contains("stop changing"), words);
        assertTrue(words.contains("done where you rode; 25 of 45 high-load cells aren't measured"), words);
        assertFalse(words.contains("0.0 %"), words);
        assertTrue(words.contains("no ride vouches for the old figures there"), words);
        assertFalse(done.words(true).contains("stop changing"), done.words(true));
        RideToRide short_ = shortRide(TABLES.truth(), 4);
        assertTrue(short_.highLoad().notMeasured() > 0 && short_.highLoad().cells() > 10, short_.toString());
    }

    @Test
    void keptResultsSayNeverMoreThanWasRidden() {
        Results known = new Results(
                List.of(), OptionalDouble.of(1), true, 0, List.of(), Optional.of(new HighLoadCells(45, 25)));
        assertEquals("done where ridden (25 of 45 high-load cells aren't measured)", known.doneWords());
        assertEquals(
                "done",
                new Results(List.of(), OptionalDouble.of(1), true, 0, List.of(), Optional.of(ALL_MEASURED))
                        .doneWords());
        assertEquals(
                "done where ridden",
                new Results(List.of(), OptionalDouble.of(1), true, 0, List.of()).doneWords(),
                "kept by an older version");
    }

    @Test
    void besideDoneItIsSaidWhatTheChangesStillShownAreWorth() {
        RideToRide done = new RideToRide(
                "b",
                0.9,
                Optional.empty(),
                Optional.empty(),
                0,
                true,
                ALL_MEASURED,
                new RideToRide.Proposed(12, 0.84, 1, 6.25));
        String words = done.words(false);
        assertTrue(
                words.contains(
                        "done, stop changing. The 12 changes still proposed in measured cells, at most 0.8 %, are no more than that: the old figures can be left"),
                words);
        assertTrue(
                words.endsWith(
                        "The change of up to 6.3 % in cells that aren't measured is another matter: no ride vouches for the old figures there"),
                words);
        RideToRide going = new RideToRide(
                "b",
                4,
                Optional.empty(),
                Optional.empty(),
                3,
                false,
                ALL_MEASURED,
                new RideToRide.Proposed(12, 0.84, 1, 6.25));
        assertFalse(going.words(false).contains("can be left"), going.words(false));
    }

    @Test
    void whatIsProposedStillIsToldApartByWhetherItIsMeasured() {
        RideToRide.Proposed right = longRide(TABLES.truth(), 12).proposed();
        assertTrue(right.measured() > 0 && right.measuredPercent() > 0, right.toString());
        assertTrue(right.measuredPercent() < 4, right.toString());
        assertTrue(right.others() > 0, right.toString());
    }
}
