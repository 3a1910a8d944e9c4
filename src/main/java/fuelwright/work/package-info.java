/**
 * The use cases that window and command line share, with two ports: {@link fuelwright.work.Progress} and
 * {@link fuelwright.work.Cancellation}. Entry class: {@link fuelwright.work.Analyse}. Must not know the window or the command line.
 */
package fuelwright.work;
