package fuelwright.simulated;

/**
 * A wideband with its display.
 *
 * @param lagS first-order time constant, s
 * @param lagInLambda whether the lag acts on lambda; otherwise on 1/lambda, as exhaust gases mix
 * @param noise standard deviation of a reading, as a share of it
 * @param scatter standard deviation of the mixture from cycle to cycle, before the lag
 * @param heatingS how long after switching on it shows its upper limit only
 */
public record Sensor(
        double lagS,
        boolean lagInLambda,
        double lowestLambda,
        double highestLambda,
        double noise,
        double scatter,
        double heatingS) {

    public Sensor withNoise(double otherNoise) {
        return new Sensor(lagS, lagInLambda, lowestLambda, highestLambda, otherNoise, scatter, heatingS);
    }

    public Sensor withLag(double otherLagS) {
        return new Sensor(otherLagS, lagInLambda, lowestLambda, highestLambda, noise, scatter, heatingS);
    }

    double shown(double lambda) {
        return Math.min(highestLambda, Math.max(lowestLambda, lambda));
    }

    /** One step of the lag from the state (lambda) towards the input (lambda; infinite in free air). */
    double step(double state, double input, double dtS) {
        return step(state, input, dtS, lagS, lagInLambda);
    }

    static double step(double state, double input, double dtS, double lagS, boolean lagInLambda) {
        double share = 1 - StrictMath.exp(-dtS / lagS);
        if (lagInLambda) {
            return state + share * (Math.min(input, 2.5) - state);
        }
        double equivalence = 1 / state + share * (1 / input - 1 / state);
        return 1 / Math.max(equivalence, 0.02);
    }
}
