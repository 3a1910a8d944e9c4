package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.Machine;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;

/** Rides long enough to be sampled and cut for the cores, and tables large enough to start from a coarser one. */
class LongRideTest {

    private static final MadeUpRide MADE = new MadeUpRide(
            (rpm, load) -> 1 + 0.0015 * load + 0.00001 * (rpm - 4000), 20, new SensorModel(0.03, 1, 0.3, 0.09));
    private static final ScreenedRide LONG =
            MADE.made("long", 3300, MadeUpRide.wandering(1500, 8500, 37), MadeUpRide.lively(3, 95, 3.1));

    private static Estimate estimate(Table table) {
        return new Estimator(table, MADE.target, List.of(new Estimator.Source(LONG, MADE.old)), Machine.unknown(), 0)
                .run(() -> {});
    }

    @Test
    void oneCoreGivesToTheLastBitWhatSeveralGive() throws InterruptedException, ExecutionException {
        assertTrue(LONG.ride().size() > 60_000);
        ForkJoinPool one = new ForkJoinPool(1);
        ForkJoinPool five = new ForkJoinPool(5);
        try {
            Estimate alone = one.submit(() -> estimate(MADE.old)).get();
            Estimate shared = five.submit(() -> estimate(MADE.old)).get();
            for (int c = 0; c < MADE.old.cells(); c++) {
                assertEquals(alone.logFactor(c), shared.logFactor(c), 0.0, "cell " + c);
                assertEquals(alone.logUncertainty(c), shared.logUncertainty(c), 0.0, "uncertainty of cell " + c);
                assertEquals(alone.independentReadings(c), shared.independentReadings(c), 0.0, "readings of " + c);
            }
            assertEquals(alone.remarks(), shared.remarks());
        } finally {
            one.shutdown();
            five.shutdown();
        }
    }

    @Test
    void aLargeTableFindsThePlantedTruthWithinItsOwnDoubt() {
        Table large = divided(MADE.old, 40);
        Table needed = divided(MADE.needed, 40);
        Estimate estimate = estimate(large);
        int judged = 0;
        int outside = 0;
        for (int c = 0; c < large.cells(); c++) {
            if (estimate.standing(c) == Standing.MEASURED) {
                double truth = Math.log(needed.at(c) / large.at(c));
                judged++;
                outside += Math.abs(estimate.logFactor(c) - truth) > 2.5 * estimate.logUncertainty(c) ? 1 : 0;
                assertEquals(truth, estimate.logFactor(c), 0.02, "cell " + c);
            }
        }
        assertTrue(judged > 40, judged + " cells measured");
        assertTrue(outside < 0.1 * judged, outside + " of " + judged + " outside");
    }

    private static Table divided(Table table, int breakpoints) {
        Axis speed = divided(table.speed(), breakpoints);
        Axis load = divided(table.load(), breakpoints);
        double[] values = new double[speed.size() * load.size()];
        for (int c = 0; c < values.length; c++) {
            values[c] = table.value(speed.at(c % speed.size()), load.at(c / speed.size()));
        }
        return Table.of(table.quantity(), speed, load, values);
    }

    private static Axis divided(Axis axis, int count) {
        double[] breakpoints = new double[count];
        for (int i = 0; i < count; i++) {
            double at = (axis.size() - 1.0) * i / (count - 1);
            int low = Math.min((int) at, axis.size() - 2);
            breakpoints[i] = axis.at(low) + (at - low) * (axis.at(low + 1) - axis.at(low));
        }
        return new Axis(axis.kind(), breakpoints);
    }
}
