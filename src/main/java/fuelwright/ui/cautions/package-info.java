/**
 * The stage Cautions: safety findings, worst first, each with its place and moment. Entry class: {@link fuelwright.ui.cautions.CautionsView}. Must not know other stages.
 */
package fuelwright.ui.cautions;
