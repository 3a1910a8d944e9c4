package fuelwright.safety;

import java.util.List;

/** One family of findings. Stateless; the same dossier gives the same cautions, worst first. */
interface Rule {

    List<Caution> judge(Dossier dossier);

    /** Whether another proposal for the same rides and estimate can change what this rule finds. */
    default boolean looksAtProposal() {
        return false;
    }
}
