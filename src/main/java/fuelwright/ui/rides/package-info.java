/**
 * The stage Rides: what was read, what was screened out and why, and the ride over time. Entry class: {@link fuelwright.ui.rides.RidesView}. Must not know other stages.
 */
package fuelwright.ui.rides;
