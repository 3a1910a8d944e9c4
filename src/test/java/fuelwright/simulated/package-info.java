/**
 * Rides made from physics, with their truth known: machines, riders, control units, exhausts and sensors that don't exist. Entry
 * class: {@link fuelwright.simulated.Simulation}; machines to use it on: {@link fuelwright.simulated.SimulatedMachines}. It must know
 * nothing of the program that it examines: no class outside this package is used here but the JDK's, so that an error in the program
 * cannot be hidden by the same error in its examiner. Everything is seeded, and {@link StrictMath} keeps the last digit the same on
 * every computer.
 */
package fuelwright.simulated;
