/**
 * Tables over engine speed and load: axes, cells, interpolation, and their neutral CSV. Entry classes: {@link fuelwright.table.Table},
 * {@link fuelwright.table.TableReader}, {@link fuelwright.table.TableWriter}. Must not know rides, evidence or the window.
 */
package fuelwright.table;
