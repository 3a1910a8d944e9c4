/**
 * What leaves the program: the output folder, its tables, cautions and report, and the entry check of what was typed into the hardware.
 * Entry classes: {@link fuelwright.handover.Exports}, {@link fuelwright.handover.OutputFolder},
 * {@link fuelwright.handover.EntryCheck}. Must not know how an analysis is made, the window or the command line.
 */
package fuelwright.handover;
