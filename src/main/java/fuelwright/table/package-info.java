/**
 * Tables over engine speed and load: axes, cells, interpolation, and their neutral CSV. Entry class: {@link fuelwright.table.Table}.
 * Must not know rides, evidence or the window.
 */
package fuelwright.table;
