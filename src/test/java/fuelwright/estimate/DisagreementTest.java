package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.Machine;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Two rides that were made with different tables, though the same was said of both. */
class DisagreementTest {

    private static final double HZ = 25;
    private static final double APART = 1.12;

    /** @param factor of the fuel that is needed above 50 % throttle on the second ride */
    private static Estimate estimate(double factor) {
        List<ScreenedRide> rides = new ArrayList<>();
        Table old = null;
        Table target = null;
        for (double ofRide : new double[] {1, factor}) {
            MadeUpRide made = new MadeUpRide((rpm, load) -> 1.03 * (load >= 50 ? ofRide : 1), HZ, MadeUpRide.SENSOR);
            old = made.old;
            target = made.target;
            rides.add(made.made(
                    "ride " + rides.size(), 200, MadeUpRide.wandering(2000, 6500, 31), MadeUpRide.lively(3, 95, 1.9)));
        }
        Table with = old;
        return new Estimator(
                        old,
                        target,
                        rides.stream().map(r -> new Estimator.Source(r, with)).toList(),
                        Machine.unknown(),
                        0)
                .run(() -> {});
    }

    @Test
    void ridesThatAgreeAreBelievedAsFarAsTheirReadingsGo() {
        Estimate agreed = estimate(1);
        int doubted = 0;
        for (int c = 0; c < agreed.table().cells(); c++) {
            doubted += agreed.isDisputed(c) ? 1 : 0;
        }
        assertTrue(doubted <= 1, doubted + " cells");
    }

    @Test
    void whereRidesDisagreeTheDoubtGrowsAndTheLeanerOneIsHeard() {
        Estimate agreed = estimate(1);
        Estimate apart = estimate(APART);
        int judged = 0;
        for (int c = 0; c < apart.table().cells(); c++) {
            boolean ridden = agreed.independentReadings(c) > 20;
            if (ridden && apart.table().loadAt(c) >= 70) {
                judged++;
                assertTrue(apart.logUncertainty(c) > 0.02, "cell " + c + ": ± " + apart.logUncertainty(c));
                assertTrue(apart.isDisputed(c), "cell " + c);
                assertEquals(agreed.logUncertainty(c), apart.undisputedUncertainty(c), 0.01, "cell " + c);
                double heard = apart.logFactor(c) + apart.leftOver(c);
                assertEquals(Math.log(1.03 * APART), heard, 0.03, "cell " + c);
            }
            if (ridden && apart.table().loadAt(c) <= 20) {
                assertTrue(apart.logUncertainty(c) < 0.02, "cell " + c + ": ± " + apart.logUncertainty(c));
            }
        }
        assertTrue(judged >= 4, judged + " cells");
    }
}
