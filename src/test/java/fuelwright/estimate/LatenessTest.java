package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class LatenessTest {

    private static final int FIXED = Nuisance.FIXED_DELAY.ordinal();
    private static final int LAG = Nuisance.LAG.ordinal();

    private static double[] with(double fixedS, double lagS) {
        double[] nuisances = Nuisance.starts();
        nuisances[FIXED] = fixedS;
        nuisances[LAG] = lagS;
        return nuisances;
    }

    private static double latenessS(double[] nuisances) {
        return Nuisance.sensor(nuisances).delayS(DelayProfile.SPEED_RPM, DelayProfile.FLOW_G_PER_S) + nuisances[LAG];
    }

    @Test
    void theLongerALoggerHoldsBackTheLessPlausible() {
        double last = Lateness.penalty(with(0.02, 0.08));
        for (double fixedS : new double[] {0.1, 0.2, 0.4, 0.8}) {
            double now = Lateness.penalty(with(fixedS, 0.08));
            assertTrue(now > last, fixedS + " s");
            last = now;
        }
        // By an exponential: as much more from 0.4 to 0.8 s as from 0.8 to 1.2 s.
        assertEquals(
                Lateness.penalty(with(0.8, 0.08)) - Lateness.penalty(with(0.4, 0.08)),
                Lateness.penalty(with(1.2, 0.08)) - Lateness.penalty(with(0.8, 0.08)),
                1e-6);
    }

    @Test
    void whatIsLateIsSharedOutBetweenDelayAndLagAndStaysAsLate() {
        double[] found = with(0.3, 0.08);
        List<double[]> trials = Lateness.lags(found);
        assertTrue(trials.size() > 3);
        for (double[] trial : trials.subList(0, trials.size() - 1)) {
            assertEquals(latenessS(found), latenessS(trial), 1e-9);
        }
    }

    @Test
    void onlyAnUnusualSensorWidensWhatIsBelievedOfIt() {
        assertArrayEquals(Nuisance.spreads(), Lateness.spreads(with(0.05, 0.1)));
        double[] wide = Lateness.spreads(with(0.5, 0.1));
        assertTrue(wide[FIXED] > 5 * Nuisance.FIXED_DELAY.spread);
        assertTrue(wide[LAG] > Nuisance.LAG.spread);
        assertEquals(Nuisance.CYCLES.spread, wide[Nuisance.CYCLES.ordinal()]);
    }
}
