package fuelwright.mixture;

/** Conversions between lambda and the other notations of mixture. */
public final class MixtureScale {

    /** The ratio that a display is taken to be set to until the user says otherwise (common practice, no source). */
    public static final double USUAL_DISPLAY_RATIO = 14.7;

    private MixtureScale() {}

    /**
     * Lambda behind a displayed air–fuel ratio: a display shows lambda times the ratio it was set to, whatever is in the tank.
     *
     * @param displayRatio the ratio that the display was set to, above 0
     */
    public static double lambdaOfAfr(double afr, double displayRatio) {
        if (!(displayRatio > 0)) {
            throw new IllegalArgumentException("displayRatio " + displayRatio + " must be above 0");
        }
        return afr / displayRatio;
    }

    /** What a display set to {@code displayRatio} shows for a lambda: the inverse of {@link #lambdaOfAfr}. */
    public static double afrOfLambda(double lambda, double displayRatio) {
        if (!(displayRatio > 0)) {
            throw new IllegalArgumentException("displayRatio " + displayRatio + " must be above 0");
        }
        return lambda * displayRatio;
    }

    /** Lambda of a fuel–air equivalence ratio: its reciprocal. */
    public static double lambdaOfEquivalenceRatio(double equivalenceRatio) {
        return 1 / equivalenceRatio;
    }

    /** Lambda on a wideband output's two-point linear scale (volt1 → lambda1, volt2 → lambda2). */
    public static double lambdaOfVolts(double volts, double volt1, double lambda1, double volt2, double lambda2) {
        if (volt1 == volt2) {
            throw new IllegalArgumentException("volt1 and volt2 are both " + volt1);
        }
        return lambda1 + (volts - volt1) * (lambda2 - lambda1) / (volt2 - volt1);
    }
}
