/**
 * The stage Handover: what goes to the tuning hardware, and what must be said first. Entry class: {@link fuelwright.ui.handover.HandoverView}. Must not know other stages.
 */
package fuelwright.ui.handover;
