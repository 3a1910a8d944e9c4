package fuelwright.ui.session;

import fuelwright.job.Job;
import fuelwright.mixture.MixtureScale;
import fuelwright.table.Quantity;
import fuelwright.ui.theme.Figures;

/**
 * Mixtures as the user wants to see them: lambda, or AFR as their display shows it.
 *
 * @param afr whether as AFR
 * @param displayRatio what the display is set to
 * @param targetRatio what an AFR target is divided by
 */
public record Mixture(boolean afr, double displayRatio, double targetRatio) {

    /** Those of a job. */
    public static Mixture of(boolean afr, Job job) {
        return new Mixture(afr, job.displayRatio(), job.usedTargetRatio());
    }

    /** For a table alone: one that holds AFR is shown in its own figures. */
    public Mixture in(Quantity quantity) {
        return quantity == Quantity.AFR ? new Mixture(afr, targetRatio, targetRatio) : this;
    }

    /** The figure with the sign of what it is. */
    public String words(double lambda) {
        return (afr ? "AFR " : "λ ") + figure(lambda);
    }

    /** The figure alone. */
    public String figure(double lambda) {
        return Figures.plain(lambda * scale(), decimals());
    }

    public int decimals() {
        return afr ? 1 : 2;
    }

    /** Factor from lambda to what is shown. */
    public double scale() {
        return afr ? displayRatio : 1;
    }

    /** Lambda behind a figure of a target table. */
    public double lambdaOf(Quantity quantity, double value) {
        return quantity == Quantity.AFR ? MixtureScale.lambdaOfAfr(value, targetRatio) : value;
    }
}
