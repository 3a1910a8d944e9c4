/**
 * What all stages share: the job with its undo, the analysis that follows from it, what is selected, and the one background runner.
 * Entry class: {@link fuelwright.ui.session.Session}. Must not know any stage, node or dialogue.
 */
package fuelwright.ui.session;
