/**
 * Rides: logs as primitive columns with roles, and reading them. Entry classes: {@link fuelwright.ride.Ride},
 * {@code RideReader}. Must not know tables, evidence or the window.
 */
package fuelwright.ride;
