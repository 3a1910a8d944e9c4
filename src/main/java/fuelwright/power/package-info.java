/**
 * Power from a ride: pulls, power and torque curves, correction to a reference air, two pulls compared; and breathing, what a part gave by
 * cell. Entry classes: {@link fuelwright.power.Pull}, {@link fuelwright.power.PowerCurves}, {@link fuelwright.power.PullComparison},
 * {@link fuelwright.power.Breathing}. Must not know cautions, files or the window.
 */
package fuelwright.power;
