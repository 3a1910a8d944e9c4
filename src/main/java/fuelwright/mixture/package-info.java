/**
 * Mixture as numbers: fuels, lambda and its other notations, what a fuel needs and what an exhaust gas tells. Entry classes:
 * {@link fuelwright.mixture.Fuel}, {@link fuelwright.mixture.MixtureScale}, {@link fuelwright.mixture.Stoichiometry}. Must not know
 * tables or rides.
 */
package fuelwright.mixture;
