/**
 * The page of power pulls: curves of the job's pulls, reference air, assumptions of a road pull. Entry class:
 * {@link fuelwright.ui.power.PowerView}.
 */
package fuelwright.ui.power;
