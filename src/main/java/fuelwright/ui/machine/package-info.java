/**
 * The stage Machine: figures of engine and change, and what must be right before the first start. Entry class: {@link fuelwright.ui.machine.MachineView}. Must not know other stages.
 */
package fuelwright.ui.machine;
