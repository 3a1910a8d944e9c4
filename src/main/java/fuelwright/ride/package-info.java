/**
 * Rides: logs as primitive columns with roles, and reading them. Entry classes: {@link fuelwright.ride.Ride},
 * {@link fuelwright.ride.RideReader}; {@link fuelwright.ride.ClockAlignment} for two loggers. A read goes through {@code Encoded} (bytes),
 * {@code DialectGuess}, {@code HeaderRow}, {@code FastRows} (or {@code ReferenceRows}, which it has to equal), {@code TimeColumn},
 * {@code Channels}. Must not know tables, evidence or the window.
 */
package fuelwright.ride;
