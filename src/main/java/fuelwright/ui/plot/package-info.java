/**
 * Own views on a canvas: the grid of cells and the timeline of lanes, over pure and tested arithmetic. Entry classes:
 * {@link fuelwright.ui.plot.HeatGrid}, {@link fuelwright.ui.plot.Timeline}. Must not know jobs or stages.
 */
package fuelwright.ui.plot;
