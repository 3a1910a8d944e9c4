package fuelwright.estimate;

import java.util.List;

/**
 * Where parts of the rides ask for different fuel at one cell, by more than noise and the table's straight lines explain: another table in
 * the unit than was said, fuel that fades, a sensor that drifts. There the fit sides with the calmer or longer part and is sure of it; here
 * every part has its say. Which of them is right isn't known, so the standard error becomes at least what they differ by (standard
 * deviation of the parts), and not that of their mean.
 */
final class Disagreement {

    /** χ² per degree of freedom up to this is chance. */
    private static final double CHANCE = 6;
    /** Independent readings of a part at a cell from which it has a say. */
    private static final double LEAST_READINGS = 2;
    /** Standard errors by which the richest part's word is taken short. */
    private static final double SURE = 2;

    private final double[] uncertainties;
    private final double[] richest;

    /**
     * Evidence of a part of a ride.
     *
     * @param evidence around one point
     * @param times how many times the independent readings it has if it forgot as soon as the ride that forgets soonest: one that contradicts
     *     the others seems to remember its error
     */
    record Heard(Sums evidence, double times) {}

    /**
     * @param parts parts of the rides, around one point
     * @param step from there to the cells that were found
     * @param noise standard deviation of an independent reading of the calmest ride, ln
     * @param misfit what straight lines between cells miss, ln
     */
    Disagreement(List<Heard> parts, double[] step, double noise, double misfit) {
        int count = step.length;
        uncertainties = new double[count];
        richest = new double[count];
        for (int c = 0; c < count; c++) {
            double weight = 0;
            double pull = 0;
            double square = 0;
            double most = 0;
            int says = 0;
            for (Heard part : parts) {
                double n = part.times * part.evidence.independentReadings[c];
                if (n >= LEAST_READINGS) {
                    double mean = part.times * part.evidence.plainResidual[c] / n - step[c];
                    double variance = noise * noise / n + misfit * misfit;
                    weight += 1 / variance;
                    pull += mean / variance;
                    square += mean * mean / variance;
                    most = Math.max(most, mean - SURE * Math.sqrt(variance));
                    says++;
                }
            }
            double spread = says < 2 ? 0 : (square - pull * pull / weight) / (says - 1);
            if (spread > CHANCE) {
                uncertainties[c] = Math.sqrt(spread * says / weight);
                richest[c] = most;
            }
        }
    }

    /** What was disputed in an earlier estimate of the same rides. */
    static Disagreement asIn(Estimate before, CellOrder order) {
        int count = before.table().cells();
        double[] uncertainties = new double[count];
        double[] richest = new double[count];
        for (int c = 0; c < count; c++) {
            if (before.isDisputed(c)) {
                uncertainties[c] = before.logUncertainty(c);
                richest[c] = before.leftOver(c);
            }
        }
        return new Disagreement(order.fromTable(uncertainties), order.fromTable(richest));
    }

    private Disagreement(double[] uncertainties, double[] richest) {
        this.uncertainties = uncertainties;
        this.richest = richest;
    }

    /** Least standard error of each cell, ln; 0 where the parts agree. */
    double[] uncertainties() {
        return uncertainties.clone();
    }

    /** How much more fuel the part that asks for the most surely wants at each cell, ln; 0 where the parts agree. */
    double[] richest() {
        return richest.clone();
    }
}
