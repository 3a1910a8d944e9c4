package fuelwright.ui.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.table.Table;
import fuelwright.ui.Fixture;
import fuelwright.work.Analysis;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** One ride, made with the table or with one that holds a tenth more fuel. */
class CellReadingsTest {

    private static Analysis analysed(Job job) {
        return Fixture.analyse(job).value().orElseThrow();
    }

    private static int ridden(Analysis analysis) {
        for (int cell = 0; cell < analysis.estimate().table().cells(); cell++) {
            if (CellReadings.of(analysis, cell).counting() > 20) {
                return cell;
            }
        }
        throw new AssertionError("nothing was ridden");
    }

    @Test
    void readingsMadeWithAnotherTableAreShownAsTheyWouldHaveBeenWithThisOneAndThatIsSaid() {
        Job job = Fixture.job();
        Table table = job.fuelTable().orElseThrow();
        double[] more = Arrays.stream(table.toArray()).map(v -> 1.1 * v).toArray();
        JobRide ride = job.rides().get(0);
        Job other = job.withRides(List.of(new JobRide(ride.ride(), Optional.of(table.withValues(more)))));
        Analysis same = analysed(job);
        int cell = ridden(same);
        CellReadings own = CellReadings.of(same, cell);
        CellReadings rebased = CellReadings.of(analysed(other), cell);
        assertEquals(own.counting(), rebased.counting());
        for (int i = 0; i < own.readings().size(); i++) {
            assertEquals(
                    1.1 * (100 + own.readings().get(i).shortfallPercent()),
                    100 + rebased.readings().get(i).shortfallPercent(),
                    1e-9);
        }
        assertTrue(own.rebased().isEmpty() && own.rebasedWords(job).isEmpty());
        assertEquals(Set.of(0), rebased.rebased());
        String words = rebased.rebasedWords(other).orElseThrow();
        assertTrue(words.startsWith(ride.ride().name() + " was made with another table"), words);
        assertTrue(SliceReadings.of(analysed(other), cell, true).rebased());
        assertTrue(!SliceReadings.of(same, cell, true).rebased());
    }
}
