package fuelwright.ui.session;

import fuelwright.mixture.MixtureScale;
import fuelwright.table.Quantity;
import fuelwright.ui.theme.Figures;

/** Mixtures as the user wants to see them: lambda, or AFR on a display that is set to the usual ratio. */
public final class Mixture {

    private Mixture() {}

    /** The figure with the sign of what it is. */
    public static String words(boolean afr, double lambda) {
        return afr ? figure(true, lambda) + " AFR" : "λ " + figure(false, lambda);
    }

    /** The figure alone. */
    public static String figure(boolean afr, double lambda) {
        return Figures.plain(lambda * scale(afr), decimals(afr));
    }

    public static int decimals(boolean afr) {
        return afr ? 1 : 2;
    }

    /** Factor from lambda to what is shown. */
    public static double scale(boolean afr) {
        return afr ? MixtureScale.USUAL_DISPLAY_RATIO : 1;
    }

    /** Lambda behind a figure of a target table. */
    public static double lambdaOf(Quantity quantity, double value) {
        return quantity == Quantity.AFR ? value / MixtureScale.USUAL_DISPLAY_RATIO : value;
    }
}
