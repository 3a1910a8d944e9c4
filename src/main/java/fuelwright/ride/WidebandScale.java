package fuelwright.ride;

import fuelwright.mixture.MixtureScale;

/**
 * The straight line of a wideband's analogue output, by two points.
 *
 * @param volt1 V
 * @param lambda1 lambda at {@code volt1}
 * @param volt2 V, other than {@code volt1}
 * @param lambda2 lambda at {@code volt2}
 */
public record WidebandScale(double volt1, double lambda1, double volt2, double lambda2) {

    public WidebandScale {
        if (!(Math.abs(volt1 - volt2) > 0)) {
            throw new IllegalArgumentException("volt1 " + volt1 + " and volt2 " + volt2 + " must differ");
        }
        if (!(lambda1 > 0 && lambda2 > 0)) {
            throw new IllegalArgumentException("lambda1 " + lambda1 + " and lambda2 " + lambda2 + " must be above 0");
        }
    }

    double lambda(double volts) {
        return MixtureScale.lambdaOfVolts(volts, volt1, lambda1, volt2, lambda2);
    }
}
