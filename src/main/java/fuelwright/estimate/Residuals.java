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
    private int[] places = new int[SOME];
    private int count;
    private double lastS = Double.NEGATIVE_INFINITY;

    /** @param timeS time of each row of the ride, s */
    Residuals(double[] timeS) {
        this.timeS = timeS;
    }

    /**
     * @param stepS time since the reading before, whether that one counts or not, s
     * @param place where the engine was, as {@link Crowding} counts it
     */
    void add(double residual, double film, int row, double stepS, int place) {
        if (count == residuals.length) {
            residuals = Arrays.copyOf(residuals, 2 * count);
            films = Arrays.copyOf(films, 2 * count);
            stepsS = Arrays.copyOf(stepsS, 2 * count);
            places = Arrays.copyOf(places, 2 * count);
        }
        boolean goesOn = timeS[row] - lastS <= stepS + 1e-6;
        residuals[count] = residual;
        places[count] = place;
        films[count] = film;
        stepsS[count] = goesOn ? stepS : STRETCH_STARTS;
        lastS = timeS[row];
        count++;
    }

    /**
     * The noise of residuals of one ride, which were collected part by part, less what the table's straight lines miss in their places: that
     * stays for as long as the engine stays there, but it is the place's and not the sensor's.
     */
    static NoiseModel noise(List<Residuals> parts, Crowding crowding, double leastCorrelationS) {
        int all = parts.stream().mapToInt(p -> p.count).sum();
        double[] residuals = new double[all];
        double[] films = new double[all];
        double[] stepsS = new double[all];
        int at = 0;
        for (Residuals part : parts) {
            for (int i = 0; i < part.count; i++) {
                residuals[at + i] = part.residuals[i] - crowding.missed(part.places[i]);
            }
            System.arraycopy(part.films, 0, films, at, part.count);
            System.arraycopy(part.stepsS, 0, stepsS, at, part.count);
            at += part.count;
        }
        return NoiseModel.of(residuals, films, stepsS, leastCorrelationS);
    }
}
