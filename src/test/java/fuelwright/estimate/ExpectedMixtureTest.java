package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Table;
import org.junit.jupiter.api.Test;

/** Rides made with known truth, put through other tables. */
class ExpectedMixtureTest {

    private static final MadeUpRide MADE =
            new MadeUpRide((rpm, load) -> 1.08 + 0.0015 * load, 20, MadeUpRide.SENSOR).withNoise(0);
    private static final ScreenedRide RIDE =
            MADE.made("a", 240, MadeUpRide.wandering(2000, 6500, 40), MadeUpRide.lively(3, 90, 4));

    private static ExpectedMixture with(Table other) {
        return ExpectedMixture.of(
                new Estimator.Source(RIDE, MADE.old),
                other,
                MADE.target,
                FlowModel.of(Machine.unknown(), MADE.old, 0),
                MadeUpRide.SENSOR,
                HighLoad.byThrottle(),
                0);
    }

    @Test
    void withTheTableThatIsNeededTheMixtureIsAtItsTargetAlsoWhileTheThrottleMoves() {
        ExpectedMixture expected = with(MADE.needed);
        ExpectedMixture.Summary summary = expected.summary();
        assertTrue(summary.errorBeforePercent() > 8, summary.toString());
        assertTrue(summary.errorAfterPercent() < 0.5, summary.toString());
        assertTrue(summary.highLoadReadings() > 0 && Math.abs(summary.leanestPercent()) < 3, summary.toString());
    }

    @Test
    void withTheSameTableTheReadingsStayAsTheyAre() {
        ExpectedMixture expected = with(MADE.old);
        double[] read = RIDE.ride().mixture().orElseThrow().toArray();
        int told = 0;
        for (int row = 0; row < read.length; row++) {
            if (!Double.isNaN(expected.lambda(row))) {
                assertEquals(read[row], expected.lambda(row), 1e-9);
                told++;
            }
        }
        assertTrue(told > 0.95 * read.length, told + " rows");
        assertEquals(expected.summary().errorBeforePercent(), expected.summary().errorAfterPercent(), 1e-9);
    }
}
