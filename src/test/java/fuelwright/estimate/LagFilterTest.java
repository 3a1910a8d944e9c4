package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A first-order lag answers a step with 1 − exp(−t/τ) and a ramp of slope 1 with t − τ(1 − exp(−t/τ)) (derived). */
class LagFilterTest {

    private static final double LAG_S = 0.08;

    private static LagFilter prepared(double dtS, double lagS) {
        LagFilter filter = new LagFilter(6);
        filter.prepare(dtS, lagS);
        return filter;
    }

    @Test
    void aStepIsAnsweredAsAFirstOrderLagDoes() {
        double[] lags = {1, 2, 4};
        double[] answers = {0.632121, 0.864665, 0.981684};
        for (int k = 0; k < lags.length; k++) {
            for (int steps : new int[] {1, 7, 100}) {
                LagFilter filter = prepared(lags[k] * LAG_S / steps, LAG_S);
                double shown = 0;
                for (int i = 0; i < steps; i++) {
                    shown = filter.next(shown, 1, 1);
                }
                assertEquals(answers[k], shown, 5e-7, lags[k] + " time constants in " + steps + " steps");
            }
        }
    }

    @Test
    void aRampIsFollowedExactlyWhateverTheStep() {
        for (double dtS : new double[] {0.001, 0.01, 0.1, 1}) {
            LagFilter filter = prepared(dtS, LAG_S);
            double shown = 0;
            for (int i = 1; i <= 10; i++) {
                double t = i * dtS;
                shown = filter.next(shown, t - dtS, t);
                assertEquals(t - LAG_S * (1 - Math.exp(-t / LAG_S)), shown, 1e-12);
            }
        }
    }

    @Test
    void aPathOfStraightLinesGivesTheSameInFewOrManyUnevenSteps() {
        double[] corners = {0, 0.03, 0.11, 0.4, 0.45, 1.2};
        double[] values = {0, 1, -2, 0.5, 0.5, 3};
        double coarse = values[0];
        double fine = values[0];
        LagFilter filter = new LagFilter(0);
        for (int k = 1; k < corners.length; k++) {
            double span = corners[k] - corners[k - 1];
            filter.prepare(span, LAG_S);
            coarse = filter.next(coarse, values[k - 1], values[k]);
            double[] parts = {0, 0.1, 0.15, 0.6, 0.95, 1};
            for (int p = 1; p < parts.length; p++) {
                filter.prepare((parts[p] - parts[p - 1]) * span, LAG_S);
                double rise = values[k] - values[k - 1];
                fine = filter.next(fine, values[k - 1] + parts[p - 1] * rise, values[k - 1] + parts[p] * rise);
            }
            assertEquals(coarse, fine, 1e-12);
        }
    }

    @Test
    void withoutLagTheOutputFollowsAtOnceAndWithoutTimeNothingMoves() {
        assertEquals(5, prepared(0.01, 0).next(1, 3, 5), 0.0);
        assertEquals(1, prepared(0, LAG_S).next(1, 3, 5), 0.0);
    }

    @Test
    void sharesSumToOneThroughAnyWalkOverTheCells() {
        Random random = new Random(3);
        LagFilter filter = new LagFilter(200);
        int[] before = {0, 1, 2, 3};
        double[] sharesBefore = {0.1, 0.2, 0.3, 0.4};
        filter.restart(before, sharesBefore);
        assertEquals(1, sum(filter), 1e-12);
        for (int i = 0; i < 2000; i++) {
            int[] now = random.ints(4, 0, 200).toArray();
            double[] shares = random.doubles(4).toArray();
            double total = Arrays.stream(shares).sum();
            for (int k = 0; k < 4; k++) {
                shares[k] /= total;
            }
            filter.prepare(0.002 + 0.1 * random.nextDouble(), LAG_S);
            filter.nextShares(before, sharesBefore, now, shares);
            before = now;
            sharesBefore = shares;
            // Shares below 0.0002 are dropped, a few in each step.
            assertEquals(1, sum(filter), 0.02);
        }
        filter.restart(before, sharesBefore);
        assertEquals(1, sum(filter), 1e-12);
        assertTrue(filter.count() <= 4);
    }

    /** Where the engine stays between the same breakpoints, the short way gives to the last bit what the long one gives. */
    @Test
    void stayingInAPlaceIsNoOtherSum() {
        Random random = new Random(11);
        int[] cells = {1, 2, 4, 5};
        LagFilter filter = prepared(0.05, LAG_S);
        double[] before = {0.4, 0.3, 0.2, 0.1};
        filter.restart(cells, before);
        double[] expected = before.clone();
        for (int step = 0; step < 100; step++) {
            double dtS = 0.01 + 0.05 * random.nextDouble();
            double[] now = random.doubles(4, 0.2, 0.3).toArray();
            filter.prepare(dtS, LAG_S);
            double carry = filter.next(1, 0, 0);
            double earlier = filter.next(0, 1, 0);
            double later = filter.next(0, 0, 1);
            filter.nextShares(cells, before, cells.clone(), now);
            for (int k = 0; k < 4; k++) {
                expected[k] *= carry;
                expected[k] += earlier * before[k];
                expected[k] += later * now[k];
                assertEquals(cells[k], filter.cells()[k]);
                assertEquals(expected[k], filter.shares()[k], "step " + step);
            }
            before = now;
        }
    }

    /** The shares are the lagged weights: each cell's share is what the lag makes of that cell's weight by itself. */
    @Test
    void aCellsShareIsItsLaggedWeight() {
        int[] first = {0, 1, 2, 3};
        int[] second = {1, 4, 3, 5};
        double[] w0 = {0.4, 0.3, 0.2, 0.1};
        double[] w1 = {0.25, 0.25, 0.3, 0.2};
        LagFilter filter = prepared(0.05, LAG_S);
        filter.restart(first, w0);
        filter.nextShares(first, w0, second, w1);
        double[] expected = new double[6];
        double[] was = {0.4, 0.3, 0.2, 0.1, 0, 0};
        double[] is = {0, 0.25, 0, 0.3, 0.25, 0.2};
        double[] shares = new double[6];
        for (int c = 0; c < 6; c++) {
            expected[c] = filter.next(was[c], was[c], is[c]);
        }
        for (int k = 0; k < filter.count(); k++) {
            shares[filter.cells()[k]] += filter.shares()[k];
        }
        for (int c = 0; c < 6; c++) {
            assertEquals(expected[c], shares[c], 1e-12, "cell " + c);
        }
    }

    private static double sum(LagFilter filter) {
        double sum = 0;
        for (int k = 0; k < filter.count(); k++) {
            sum += filter.shares()[k];
        }
        return sum;
    }
}
