package fuelwright.estimate;

import java.util.Arrays;
import java.util.List;

/** Residuals of the readings that count, in time order, for measuring their noise. Mutable, not thread-safe. */
final class Residuals {

    private static final double STRETCH_STARTS = 10;

    private static final int SOME = 4096;

    private final double[] timeS;
    private double[] residuals = new double[SOME];
    private double[] films = new double[SOME];
    private double[] stepsS = new double[SOME];
    private int count;
    private double lastS = Double.NEGATIVE_INFINITY;

    /** @param timeS time of each row of the ride, s */
    Residuals(double[] timeS) {
        this.timeS = timeS;
    }

    /** @param stepS time since the reading before, whether that one counts or not, s */
    void add(double residual, double film, int row, double stepS) {
        if (count == residuals.length) {
            residuals = Arrays.copyOf(residuals, 2 * count);
            films = Arrays.copyOf(films, 2 * count);
            stepsS = Arrays.copyOf(stepsS, 2 * count);
        }
        boolean goesOn = timeS[row] - lastS <= stepS + 1e-6;
        residuals[count] = residual;
        films[count] = film;
        stepsS[count] = goesOn ? stepS : STRETCH_STARTS;
        lastS = timeS[row];
        count++;
    }

    /** The noise of residuals of one ride, which were collected part by part. */
    static NoiseModel noise(List<Residuals> parts, double leastCorrelationS) {
        int all = parts.stream().mapToInt(p -> p.count).sum();
        double[] residuals = new double[all];
        double[] films = new double[all];
        double[] stepsS = new double[all];
        int at = 0;
        for (Residuals part : parts) {
            System.arraycopy(part.residuals, 0, residuals, at, part.count);
            System.arraycopy(part.films, 0, films, at, part.count);
            System.arraycopy(part.stepsS, 0, stepsS, at, part.count);
            at += part.count;
        }
        return NoiseModel.of(residuals, films, stepsS, leastCorrelationS);
    }
}
