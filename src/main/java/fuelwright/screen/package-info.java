/**
 * What counts: rules that keep readings out of the evidence, each with a reason and a count. Entry class:
 * {@code Screens}. Must not know how evidence is used.
 */
package fuelwright.screen;
