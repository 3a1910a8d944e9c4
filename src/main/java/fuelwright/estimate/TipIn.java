package fuelwright.estimate;

import java.util.List;
import java.util.Locale;

/**
 * The lean or rich moments as the throttle opens: how far the mixture is from what the table alone would give, by opening rate and engine
 * speed. They want accel enrichment, not table. Immutable.
 *
 * @param bins where there were openings: slow before quick, low speeds before high
 * @param openings how many were judged
 * @param leftOut openings of which nothing can be said: engine cold, fuel cut just before, gear changing, closed again at once, or too few
 *     readings
 */
public record TipIn(List<Bin> bins, int openings, int leftOut) {

    public TipIn {
        bins = List.copyOf(bins);
    }

    /** Nothing was found. */
    public static TipIn none() {
        return new TipIn(List.of(), 0, 0);
    }

    /**
     * Openings of like rate from like engine speeds. Deviations in % of the mixture, positive is lean.
     *
     * @param rateFrom % of throttle a second
     * @param rateTo infinite in the last bin
     * @param speedFromRpm engine speed as the throttle starts to open
     * @param openings how many
     * @param meanPercent mean from the start of the opening until half a second after its end
     * @param uncertaintyPercent standard error of that mean: scatter from opening to opening, noise of the sensor, doubt of the table
     * @param worstPercent furthest from right of all of them, over a moment of 0.2 s or one lag of the sensor
     * @param atLimit openings in which the sensor was at its end, so that it was worse than told
     */
    public record Bin(
            double rateFrom,
            double rateTo,
            double speedFromRpm,
            double speedToRpm,
            int openings,
            double meanPercent,
            double uncertaintyPercent,
            double worstPercent,
            int atLimit) {

        /** Whether the mean is lean or rich beyond doubt: more than two standard errors and one per cent. */
        public boolean isClear() {
            return Math.abs(meanPercent) > Math.max(1, 2 * uncertaintyPercent);
        }

        /** For instance "50–100 %/s". */
        public String rateWords() {
            return Double.isInfinite(rateTo) ? whole(rateFrom) + " %/s and more" : range(rateFrom, rateTo) + " %/s";
        }

        /** For instance "2000–4000 rpm". */
        public String speedWords() {
            return range(speedFromRpm, speedToRpm) + " rpm";
        }

        private static String range(double from, double to) {
            return whole(from) + "–" + whole(to);
        }

        private static String whole(double value) {
            return String.format(Locale.ROOT, "%.0f", value);
        }
    }
}
