package fuelwright.estimate;

import java.util.Arrays;

/** Residuals of the readings that count, in time order, for measuring their noise. Mutable, not thread-safe. */
final class Residuals {

    private static final double STRETCH_STARTS = 10;

    private final double[] timeS;
    private final double[] residuals;
    private final double[] films;
    private final double[] stepsS;
    private int count;
    private double lastS = Double.NEGATIVE_INFINITY;

    /** @param timeS time of each row of the ride, s */
    Residuals(double[] timeS) {
        this.timeS = timeS;
        residuals = new double[timeS.length];
        films = new double[timeS.length];
        stepsS = new double[timeS.length];
    }

    /** @param stepS time since the reading before, whether that one counts or not, s */
    void add(double residual, double film, int row, double stepS) {
        boolean goesOn = timeS[row] - lastS <= stepS + 1e-6;
        residuals[count] = residual;
        films[count] = film;
        stepsS[count] = goesOn ? stepS : STRETCH_STARTS;
        lastS = timeS[row];
        count++;
    }

    NoiseModel noise(double leastCorrelationS) {
        return NoiseModel.of(
                Arrays.copyOf(residuals, count),
                Arrays.copyOf(films, count),
                Arrays.copyOf(stepsS, count),
                leastCorrelationS);
    }
}
