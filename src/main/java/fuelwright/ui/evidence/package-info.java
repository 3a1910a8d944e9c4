/**
 * The stage Evidence: how far each cell is from its target, and how sure one can be of it. Entry class: {@link fuelwright.ui.evidence.EvidenceView}. Must not know other stages.
 */
package fuelwright.ui.evidence;
