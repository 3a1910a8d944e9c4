/**
 * Mixture as numbers: fuels, lambda and its other notations. Entry classes: {@link fuelwright.mixture.Fuel},
 * {@link fuelwright.mixture.MixtureScale}. Must not know tables or rides.
 */
package fuelwright.mixture;
