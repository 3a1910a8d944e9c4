package fuelwright.safety;

import java.util.List;

/** Judges a case by every rule there is. The same case gives the same cautions in the same order. */
public final class Judge {

    /** Order decides between cautions of one level. */
    static final List<Rule> RULES = List.of(
            new LeanUnderLoad(),
            new TargetTable(),
            new ProposalLean(),
            new StillLean(),
            new TypedFigures(),
            new LeanerCylinder(),
            new Injectors(),
            new Plausible(),
            new FuelTableKind(),
            new HeadingOverruled(),
            new EngineChannels(),
            new SensorHealth(),
            new SensorStill(),
            new SensorTop(),
            new MixtureAsAsked(),
            new ProposalShape(),
            new PulseAgainstTable(),
            new ForecastContradicted(),
            new CommandRicher(),
            new HighLoadUnknown(),
            new NotRidden(),
            new SensorsCompared(),
            new RidesApart(),
            new MixtureClock(),
            new LeakAndMisfire(),
            new ClosedLoop(),
            new TrimsAtHighLoad(),
            new ThrottleRange(),
            new ThrottleSlip(),
            new RideConditions(),
            new CarriedCautions(),
            new LimitsSaid());

    private Judge() {}

    /** Every finding, worst first: by level, then by rule, then as the rule ranks them. */
    public static List<Caution> judge(CaseFile file) {
        return Findings.of(file).judge();
    }
}
