package fuelwright.estimate;

/**
 * Keeps many readings in one spot from claiming more than one spot can tell. Between breakpoints the fuel needed isn't quite bilinear; in
 * each quarter of a cell all readings share that misfit, so n of them weigh together 1/(misfit² + σ²/n) and not n/σ². The misfit is
 * measured from what the quarters' mean residuals differ by beyond their noise.
 */
final class Crowding {

    private static final double LEAST = 0.001;
    private static final double MOST = 0.012;
    private static final double START = 0.004;
    private static final double ENOUGH = 4;

    private final double[] weight;
    private final double[] sum;
    private final double misfit;

    private Crowding(double[] weight, double[] sum, double misfit) {
        this.weight = weight;
        this.sum = sum;
        this.misfit = misfit;
    }

    /** Before anything was measured: no reading is crowded. */
    static Crowding none(int cells) {
        return new Crowding(new double[4 * cells], new double[4 * cells], START);
    }

    /** A counter for one pass. */
    static Crowding counter(int cells) {
        return none(cells);
    }

    /** Adds what another counter of the same cells counted. */
    void add(Crowding other) {
        for (int i = 0; i < weight.length; i++) {
            weight[i] += other.weight[i];
            sum[i] += other.sum[i];
        }
    }

    void count(int place, double readingWeight, double residual) {
        weight[place] += readingWeight;
        sum[place] += readingWeight * residual;
    }

    /** The factor on a reading's weight, from 0 to 1. */
    double factor(int place) {
        return 1 / (1 + weight[place] * misfit * misfit);
    }

    /** The same for {@code times} as many readings in the same places. */
    Crowding scaled(double times) {
        double[] more = weight.clone();
        for (int i = 0; i < more.length; i++) {
            more[i] *= times;
        }
        double[] sums = sum.clone();
        for (int i = 0; i < sums.length; i++) {
            sums[i] *= times;
        }
        return new Crowding(more, sums, misfit);
    }

    double misfit() {
        return misfit;
    }

    /** What the table's straight lines miss in a place, ln: the mean residual there, as far as it is more than noise. */
    double missed(int place) {
        double squared = misfit * misfit;
        return weight[place] > 0 ? squared / (squared + 1 / weight[place]) * sum[place] / weight[place] : 0;
    }

    /** The same counts with the misfit that they show: the mean square of the quarters' means less what noise explains. */
    Crowding measured() {
        double excess = 0;
        double total = 0;
        for (int i = 0; i < weight.length; i++) {
            double noise = weight[i] > 0 ? 1 / weight[i] : 0;
            if (weight[i] > 0 && noise < ENOUGH * START * START) {
                double mean = sum[i] / weight[i];
                double trust = 1 / Math.pow(noise + START * START, 2);
                excess += trust * (Math.min(mean * mean, 9 * (noise + MOST * MOST)) - noise);
                total += trust;
            }
        }
        double found = total > 0 ? Math.sqrt(Math.max(0, excess / total)) : START;
        return new Crowding(weight, sum, Math.max(LEAST, Math.min(MOST, found)));
    }
}
