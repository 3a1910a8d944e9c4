package fuelwright.safety;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Judges a case by every rule there is. The same case gives the same cautions in the same order. */
public final class Judge {

    /** Order decides between cautions of one level. */
    private static final List<Rule> RULES = List.of(
            new LeanUnderLoad(),
            new TargetTable(),
            new ProposalLean(),
            new Injectors(),
            new Plausible(),
            new EngineChannels(),
            new SensorHealth(),
            new ProposalShape(),
            new NotRidden(),
            new SensorsCompared(),
            new MixtureClock(),
            new LeakAndMisfire(),
            new ClosedLoop(),
            new ThrottleRange(),
            new RideConditions(),
            new CarriedCautions(),
            new LimitsSaid());

    private Judge() {}

    /** Every finding, worst first: by level, then by rule, then as the rule ranks them. */
    public static List<Caution> judge(CaseFile file) {
        Dossier dossier = new Dossier(file);
        List<Caution> all = new ArrayList<>();
        for (Rule rule : RULES) {
            all.addAll(rule.judge(dossier));
        }
        all.sort(Comparator.comparing(Caution::level));
        return List.copyOf(LimitsSaid.said(all, file.limits()));
    }
}
