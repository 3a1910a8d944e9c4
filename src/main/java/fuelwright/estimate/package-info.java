/**
 * From readings to a proposal: evidence, delay and lag, fit, uncertainty, rules. Entry classes: {@code Estimator},
 * {@link fuelwright.estimate.Estimate}, {@link fuelwright.estimate.Proposal}. Must not know cautions, files or the window.
 */
package fuelwright.estimate;
