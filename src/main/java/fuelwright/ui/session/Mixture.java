package fuelwright.ui.session;

import fuelwright.mixture.MixtureScale;
import fuelwright.table.Quantity;
import fuelwright.ui.theme.Figures;

/**
 * Mixtures as the user wants to see them: lambda, or AFR as their display shows it.
 *
 * @param afr whether as AFR
 * @param displayRatio what the display, and so an AFR target, is set to
 */
public record Mixture(boolean afr, double displayRatio) {

    /** The figure with the sign of what it is. */
    public String words(double lambda) {
        return afr ? figure(lambda) + " AFR" : "λ " + figure(lambda);
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
        return quantity == Quantity.AFR ? MixtureScale.lambdaOfAfr(value, displayRatio) : value;
    }
}
