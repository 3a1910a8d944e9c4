package fuelwright.safety;

import fuelwright.estimate.Pace;
import fuelwright.estimate.Proposal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What the rules found in a case, kept with the lean scan of its rides, so that another proposal for the same rides, estimate and limits is
 * judged without going over the rides again. Judging it gives what {@link Judge#judge} gives for the case with that proposal. Immutable.
 */
public final class Findings {

    private final Dossier dossier;
    private final List<Rule> rules;
    /** For each rule its cautions; null where they depend on the proposal. */
    private final List<List<Caution>> lasting;

    private Findings(Dossier dossier, List<Rule> rules, Pace pace) {
        this.dossier = dossier.kept();
        this.rules = rules;
        pace.next(1, rules.size());
        this.lasting = rules.parallelStream()
                .map(rule -> {
                    List<Caution> found = rule.looksAtProposal() ? null : rule.judge(dossier);
                    pace.step();
                    return found;
                })
                .toList();
    }

    /** Goes over the rides of a case; its proposal matters only for the dead time that it was made with. */
    public static Findings of(CaseFile file) {
        return of(file, Pace.unheard());
    }

    /**
     * The same.
     *
     * @param pace goes from 0 to 1 meanwhile
     */
    public static Findings of(CaseFile file, Pace pace) {
        return new Findings(new Dossier(file, pace), Judge.RULES, pace);
    }

    /**
     * Every finding, worst first: by level, then by rule, then as the rule ranks them.
     *
     * @param proposal made with the same dead time as that of the case
     */
    public List<Caution> judge(Proposal proposal) {
        return judge(dossier.with(proposal));
    }

    /** The same for the case as it came. */
    List<Caution> judge() {
        return judge(dossier);
    }

    private List<Caution> judge(Dossier with) {
        List<Caution> all = new ArrayList<>();
        for (int i = 0; i < rules.size(); i++) {
            List<Caution> known = lasting.get(i);
            all.addAll(known == null ? rules.get(i).judge(with) : known);
        }
        all.sort(Comparator.comparing(Caution::level));
        return List.copyOf(LimitsSaid.said(all, with.limits));
    }
}
