package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.Decision;
import fuelwright.handover.StopNotes;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The sample job's corrected table goes into the unit. */
class TableInUnitTest {

    private static Analysis analysed(Job job) {
        return Analyse.run(job, Progress.NONE, Cancellation.NEVER).value().orElseThrow();
    }

    @Test
    void theRidesKeepTheTableThatTheyWereMadeWithAndWhatIsLeftToCorrectIsLittle() {
        Job sample = SampleJob.load().value().orElseThrow();
        Job first = sample.withProposal(sample.proposal()
                .withCaps(60, 60)
                .withDecisions(Map.of(
                        13,
                                new Decision(
                                        Decision.Kind.HELD,
                                        sample.fuelTable().orElseThrow().at(13)),
                        14, new Decision(Decision.Kind.SET, 50))));
        Analysis before = analysed(first);
        Job next = TableInUnit.after(before);
        assertEquals(
                StopNotes.on(before.proposal().corrected(), before.cautions()),
                next.fuelTable().orElseThrow());
        assertEquals(
                before.stops().size(),
                StopNotes.carriedBy(next.fuelTable().orElseThrow()).size(),
                "a Stop goes with the table");
        for (JobRide ride : next.rides()) {
            assertEquals(first.fuelTable(), ride.madeWith());
        }
        assertEquals(
                Map.of(13, first.proposal().decisions().get(13)),
                next.proposal().decisions());
        assertEquals(1, next.past().size());
        assertEquals(first.rides().size(), next.past().get(0).ridesSoFar());
        double promised = next.past().get(0).promisedErrorPercent();
        double leftOut = before.validation().orElseThrow().errorAfterPercent();
        assertTrue(promised > leftOut, promised + " % promised: rules and decisions leave a gap on top of " + leftOut);
        AnotherTable opened = AnotherTable.opened(first, next.fuelTable().orElseThrow(), Optional.of(before));
        assertEquals(next, opened.job(), "its file opened says the same, promise and all");
        assertEquals(first.rides().size(), opened.keeping());
        Analysis after = analysed(next);
        double left = after.validation().orElseThrow().errorBeforePercent();
        assertTrue(left < before.validation().orElseThrow().errorBeforePercent() / 4, left + " %");
    }
}
