/**
 * Units as data. Entry class: {@link fuelwright.unit.Unit}. Knows nothing else of the program.
 */
package fuelwright.unit;
