package fuelwright.estimate;

import java.util.Arrays;

/**
 * How much a reading is worth: standard deviation that grows with how fast fuelling moves, σ² = σ₀² + (κ·film)², robust by Huber's weight
 * (k = 1.345: 95 % efficient for normal errors; Huber, Ann. Math. Stat. 35 (1964) 73), and an independence in time measured from the
 * residual's own autocorrelation.
 *
 * @param still standard deviation where nothing moves, ln of lambda
 * @param moving growth with the film measure of {@link EvidencePass}
 * @param correlationS time for which a residual remembers: readings closer together share it, s
 */
record NoiseModel(double still, double moving, double correlationS) {

    static final double HUBER = 1.345;
    /** Below this a sensor isn't believed, however calm it looks: ±0.005 lambda is what a laboratory instrument claims. */
    private static final double LEAST_STILL = 0.003;
    /** From a median absolute deviation to a standard deviation, for normal errors. */
    private static final double MAD_TO_SD = 1.4826;

    static NoiseModel start() {
        return new NoiseModel(0.02, 0.3, 0.3);
    }

    double sd(double film) {
        return Math.sqrt(still * still + moving * moving * film * film);
    }

    /** Huber's weight of a residual, from 0 to 1. */
    double robustness(double residual, double film) {
        return robustness(Math.abs(residual) / sd(film));
    }

    /** The same of a residual's size in standard deviations. */
    static double robustness(double size) {
        return size <= HUBER ? 1 : HUBER / size;
    }

    /** How much of an independent reading a reading is that comes {@code stepS} after the one before it. */
    double independence(double stepS) {
        return Math.min(1, stepS / correlationS);
    }

    /**
     * Measures the noise of residuals.
     *
     * @param residuals in time order
     * @param films film measure of each
     * @param stepsS time since the reading before, s; larger than 1 s where a stretch starts
     * @param leastCorrelationS readings closer than this are never independent, s
     */
    static NoiseModel of(double[] residuals, double[] films, double[] stepsS, double leastCorrelationS) {
        if (residuals.length < 20) {
            return start();
        }
        double[] sortedFilms = films.clone();
        Arrays.parallelSort(sortedFilms);
        double calm = quantileOf(sortedFilms, 0.5);
        double still = Math.max(LEAST_STILL, scale(residuals, films, -1, calm));
        double lively = quantileOf(sortedFilms, 0.9);
        double moving = 0.05;
        if (lively > 1e-6) {
            double there = scale(residuals, films, lively, Double.POSITIVE_INFINITY);
            double typical = quantileOf(sortedFilms, 0.95);
            moving = Math.max(moving, Math.sqrt(Math.max(0, there * there - still * still)) / typical);
        }
        NoiseModel model = new NoiseModel(still, Math.min(moving, 2), 1);
        return new NoiseModel(
                model.still, model.moving, Math.max(leastCorrelationS, model.correlation(residuals, films, stepsS)));
    }

    private static double quantileOf(double[] sorted, double q) {
        return sorted[(int) Math.min(sorted.length - 1, q * sorted.length)];
    }

    /** Robust standard deviation of the residuals whose film measure is above {@code from} and up to {@code to}. */
    private static double scale(double[] residuals, double[] films, double from, double to) {
        double[] size = new double[residuals.length];
        int count = 0;
        for (int i = 0; i < residuals.length; i++) {
            if (films[i] > from && films[i] <= to) {
                size[count++] = Math.abs(residuals[i]);
            }
        }
        double[] sorted = Arrays.copyOf(size, count);
        Arrays.parallelSort(sorted);
        return count == 0 ? 0 : MAD_TO_SD * quantileOf(sorted, 0.5);
    }

    /** Integrated autocorrelation time of the standardised, clipped residuals: summed until it first falls below a tenth. */
    private double correlation(double[] residuals, double[] films, double[] stepsS) {
        int n = residuals.length;
        double[] z = new double[n];
        int[] start = new int[n];
        double meanStep = 0;
        int steps = 0;
        double mean = 0;
        for (int i = 0; i < n; i++) {
            z[i] = Math.max(-3, Math.min(3, residuals[i] / sd(films[i])));
            mean += z[i] / n;
            boolean fresh = i == 0 || stepsS[i] >= 0.5;
            start[i] = fresh ? i : start[i - 1];
            if (!fresh) {
                meanStep += stepsS[i];
                steps++;
            }
        }
        if (steps == 0) {
            return 0;
        }
        meanStep /= steps;
        double variance = 0;
        for (int i = 0; i < n; i++) {
            z[i] -= mean;
            variance += z[i] * z[i] / n;
        }
        double sum = 1;
        int furthest = (int) Math.min(n / 4.0, 6 / Math.max(meanStep, 1e-3));
        for (int lag = 1; lag <= furthest; lag++) {
            double product = 0;
            int pairs = 0;
            for (int i = lag; i < n; i++) {
                if (start[i] <= i - lag) {
                    product += z[i] * z[i - lag];
                    pairs++;
                }
            }
            double rho = pairs == 0 || variance == 0 ? 0 : product / pairs / variance;
            if (rho < 0.1) {
                break;
            }
            sum += 2 * rho;
        }
        return sum * meanStep;
    }
}
