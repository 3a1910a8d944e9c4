package fuelwright.simulated;

/**
 * What the logger writes.
 *
 * @param mixture lambda, AFR of a display set to 14.7, or one lambda a cylinder
 * @param lambdaStep smallest step of lambda (of AFR: ten times as much)
 */
public record Recorder(double rateHz, Mixture mixture, double lambdaStep, boolean pressure) {

    public enum Mixture {
        LAMBDA,
        AFR,
        LAMBDA_EACH_CYLINDER
    }

    public Recorder with(Mixture other) {
        return new Recorder(rateHz, other, lambdaStep, pressure);
    }
}
