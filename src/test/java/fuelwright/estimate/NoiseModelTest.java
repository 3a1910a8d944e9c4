package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class NoiseModelTest {

    private static final double[] Y = {0.1, 1.9, 4.2, 5.8, 8.1, 30, 12.1, 13.9};

    /**
     * Computed with SciPy 1.17.1 {@code scipy.optimize.least_squares(loss='huber')} and iterated weights: a straight line through eight
     * points, one of them far off.
     */
    @Test
    void huberLinesOfAReferenceLibraryAreMet() {
        double[] plain = line(r -> 1e9);
        assertEquals(0.0416666667, plain[0], 6e-11);
        assertEquals(2.7059523810, plain[1], 6e-11);
        double[] fixed = line(r -> 1);
        assertEquals(0.0416666667, fixed[0], 6e-9);
        assertEquals(2.0501449275, fixed[1], 6e-10);
        // k = 1 at scale 1 is k = 1.345 at scale 1/1.345.
        double[] tighter = line(r -> 1 / NoiseModel.HUBER);
        assertEquals(0.0416666667, tighter[0], 6e-9);
        assertEquals(2.0351449275, tighter[1], 6e-10);
        double[] scaled = line(NoiseModelTest::medianScale);
        assertEquals(0.0416666667, scaled[0], 6e-9);
        assertEquals(2.0044775642, scaled[1], 6e-10);
        assertEquals(0.2190711095, medianScale(residuals(scaled)), 6e-10);
    }

    private interface Scale {
        double of(double[] residuals);
    }

    private static double[] line(Scale scale) {
        double[] line = {0, 0};
        for (int round = 0; round < 300; round++) {
            double[] r = residuals(line);
            NoiseModel model = new NoiseModel(round == 0 ? 1e9 : scale.of(r), 0, 1);
            double w = 0;
            double wx = 0;
            double wy = 0;
            double wxx = 0;
            double wxy = 0;
            for (int i = 0; i < Y.length; i++) {
                double weight = model.robustness(r[i], 0);
                w += weight;
                wx += weight * i;
                wy += weight * Y[i];
                wxx += weight * i * i;
                wxy += weight * i * Y[i];
            }
            line[1] = (w * wxy - wx * wy) / (w * wxx - wx * wx);
            line[0] = (wy - line[1] * wx) / w;
        }
        return line;
    }

    private static double[] residuals(double[] line) {
        double[] r = new double[Y.length];
        for (int i = 0; i < r.length; i++) {
            r[i] = Y[i] - line[0] - line[1] * i;
        }
        return r;
    }

    private static double medianScale(double[] residuals) {
        double[] size = Arrays.stream(residuals).map(Math::abs).sorted().toArray();
        return (size[3] + size[4]) / 2 / 0.6744897501960817;
    }

    @Test
    void theWeightIsOneInsideAndFallsAsOneOverTheSizeOutside() {
        NoiseModel model = new NoiseModel(0.02, 0, 1);
        assertEquals(1, model.robustness(0.0268, 0), 0.0);
        assertEquals(0.5, model.robustness(-2 * 1.345 * 0.02, 0), 1e-12);
        assertEquals(0.1, model.robustness(10 * 1.345 * 0.02, 0), 1e-12);
    }

    @Test
    void noiseGrowsWithMovement() {
        NoiseModel model = new NoiseModel(0.03, 0.4, 1);
        assertEquals(0.03, model.sd(0), 1e-12);
        assertEquals(0.05, model.sd(0.1), 1e-12);
    }

    @Test
    void aReadingIsAsIndependentAsTimeHasPassed() {
        NoiseModel model = new NoiseModel(0.02, 0, 0.4);
        assertEquals(0.1, model.independence(0.04), 1e-12);
        assertEquals(1, model.independence(0.5), 0.0);
    }

    /** A first-order process that forgets with time constant τ has the integrated correlation time dt·(1 + ρ)/(1 − ρ) (derived). */
    @Test
    void theCorrelationTimeOfAFirstOrderProcessIsFoundWithinThirtyPercent() {
        double dtS = 0.04;
        for (double tauS : new double[] {0.1, 0.3, 0.8}) {
            double rho = Math.exp(-dtS / tauS);
            double expected = dtS * (1 + rho) / (1 - rho);
            NoiseModel model = measured(rho, 20_000, dtS, 0);
            assertEquals(expected, model.correlationS(), 0.3 * expected, "time constant " + tauS);
            assertEquals(0.02, model.still(), 0.002);
            assertEquals(dtS / expected, model.independence(dtS), 0.43 * dtS / expected);
        }
    }

    @Test
    void independentResidualsCountInFull() {
        NoiseModel model = measured(0, 20_000, 0.04, 0);
        assertEquals(1, model.independence(0.04), 0.05);
    }

    @Test
    void readingsCloserThanTheSensorCanFollowAreNeverIndependent() {
        assertEquals(0.16, measured(0, 5000, 0.04, 0.16).correlationS(), 0.0);
    }

    private static NoiseModel measured(double rho, int n, double dtS, double leastS) {
        Random random = new Random(9);
        double[] residuals = new double[n];
        double[] steps = new double[n];
        double state = random.nextGaussian();
        for (int i = 0; i < n; i++) {
            residuals[i] = 0.02 * state;
            state = rho * state + Math.sqrt(1 - rho * rho) * random.nextGaussian();
            steps[i] = i == 0 ? 10 : dtS;
        }
        return NoiseModel.of(residuals, new double[n], steps, leastS);
    }

    @Test
    void noiseWhileThingsMoveIsToldFromNoiseAtRest() {
        Random random = new Random(2);
        int n = 20_000;
        double[] residuals = new double[n];
        double[] films = new double[n];
        double[] steps = new double[n];
        for (int i = 0; i < n; i++) {
            films[i] = i % 4 == 0 ? 0.2 * random.nextDouble() : 0.001 * random.nextDouble();
            residuals[i] = random.nextGaussian() * Math.hypot(0.01, 0.3 * films[i]);
            steps[i] = i == 0 ? 10 : 0.05;
        }
        NoiseModel model = NoiseModel.of(residuals, films, steps, 0);
        assertEquals(0.01, model.still(), 0.001);
        assertEquals(0.3, model.moving(), 0.06);
    }

    @Test
    void oneBadReadingInTenHardlyMovesTheScale() {
        Random random = new Random(6);
        int n = 5000;
        double[] residuals = new double[n];
        double[] steps = new double[n];
        for (int i = 0; i < n; i++) {
            residuals[i] = i % 10 == 0 ? 1 : 0.01 * random.nextGaussian();
            steps[i] = i == 0 ? 10 : 0.05;
        }
        double still = NoiseModel.of(residuals, new double[n], steps, 0).still();
        assertTrue(still > 0.009 && still < 0.013, "still " + still);
    }

    @Test
    void fewReadingsTellNothingAndACalmSensorIsNotBelieved() {
        assertEquals(NoiseModel.start(), NoiseModel.of(new double[19], new double[19], new double[19], 0));
        assertEquals(
                0.003,
                NoiseModel.of(new double[50], new double[50], new double[50], 0).still(),
                0.0);
    }
}
