/**
 * The stage Proposal: the change of every cell, how it came about, and the user's own decisions. Entry class:
 * {@link fuelwright.ui.proposal.ProposalView}. Must not know other stages.
 */
package fuelwright.ui.proposal;
