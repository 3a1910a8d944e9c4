package fuelwright.job;

import fuelwright.airflow.Machine;
import fuelwright.estimate.ProposalSettings;
import fuelwright.mixture.MixtureScale;
import fuelwright.safety.Limits;
import fuelwright.screen.ScreenSettings;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Consumer;

/**
 * Everything that the work on one machine consists of. Immutable: every change gives a new job, so undo is a stack of jobs.
 *
 * @param name what the user calls it
 * @param machine what is known of engine and change
 * @param fuelTable what the control unit holds now
 * @param targetTable the lambda or AFR that each cell should give
 * @param rides in the order in which they were made
 * @param screens what counts
 * @param proposal rules and decisions
 * @param limits what the cautions judge by; always for the machine's fuel
 * @param displayRatio the ratio that the AFR display of the rides is set to
 * @param targetRatio the ratio by which an AFR target is lambda, where it was told; never that of a ride
 * @param hardware what the tuning hardware takes
 * @param answers what the user answered to cautions
 * @param past the tables that were in the control unit before the fuel table, oldest first
 * @param firstStart what was done of what comes before the first start
 */
public record Job(
        String name,
        Machine machine,
        Optional<Table> fuelTable,
        Optional<Table> targetTable,
        List<JobRide> rides,
        ScreenSettings screens,
        ProposalSettings proposal,
        Limits limits,
        double displayRatio,
        OptionalDouble targetRatio,
        HardwareProfile hardware,
        List<Answer> answers,
        List<PastTable> past,
        Set<FirstStart> firstStart) {

    public Job {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(machine, "machine");
        Objects.requireNonNull(fuelTable, "fuelTable");
        Objects.requireNonNull(targetTable, "targetTable");
        rides = List.copyOf(rides);
        Objects.requireNonNull(screens, "screens");
        Objects.requireNonNull(proposal, "proposal");
        limits = Objects.requireNonNull(limits, "limits").withFuel(machine.fuel());
        if (!(displayRatio > 0)) {
            throw new IllegalArgumentException("displayRatio " + displayRatio + " must be above 0");
        }
        Objects.requireNonNull(targetRatio, "targetRatio");
        if (targetRatio.isPresent() && !(targetRatio.getAsDouble() > 0)) {
            throw new IllegalArgumentException("targetRatio " + targetRatio.getAsDouble() + " must be above 0");
        }
        Objects.requireNonNull(hardware, "hardware");
        answers = List.copyOf(answers);
        past = List.copyOf(past);
        firstStart = Set.copyOf(firstStart);
    }

    /** A job in which nothing is known yet. */
    public static Job empty() {
        return new Job(
                "new job",
                Machine.unknown(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                ScreenSettings.defaults(),
                ProposalSettings.defaults(),
                Limits.usual(Machine.unknown().fuel()),
                MixtureScale.USUAL_DISPLAY_RATIO,
                OptionalDouble.empty(),
                HardwareProfile.plain(),
                List.of(),
                List.of(),
                Set.of());
    }

    public Job withName(String other) {
        return with(d -> d.name = other);
    }

    /** With another machine; limits that nobody changed become the usual ones of its fuel. */
    public Job withMachine(Machine other) {
        return with(d -> d.machine = other);
    }

    public Job withFuelTable(Table other) {
        return with(d -> d.fuelTable = Optional.of(other));
    }

    /** With other figures of the same target: what was told of its ratio holds on. */
    public Job withTargetTable(Table other) {
        return with(d -> d.targetTable = Optional.of(other));
    }

    /** With another target: what was told of the old one's ratio doesn't hold for it. */
    public Job withNewTarget(Table other) {
        return with(d -> {
            d.targetTable = Optional.of(other);
            d.targetRatio = OptionalDouble.empty();
        });
    }

    public Job withRides(List<JobRide> other) {
        return with(d -> d.rides = other);
    }

    /** The job with one more ride at the end. */
    public Job withRide(JobRide more) {
        List<JobRide> all = new ArrayList<>(rides);
        all.add(more);
        return withRides(all);
    }

    public Job withScreens(ScreenSettings other) {
        return with(d -> d.screens = other);
    }

    public Job withProposal(ProposalSettings other) {
        return with(d -> d.proposal = other);
    }

    /** With other limits, taken for the machine's fuel. */
    public Job withLimits(Limits other) {
        return with(d -> d.limits = other);
    }

    public Job withDisplayRatio(double other) {
        return with(d -> d.displayRatio = other);
    }

    /** @param other empty where it isn't known */
    public Job withTargetRatio(OptionalDouble other) {
        return with(d -> d.targetRatio = other);
    }

    public Job withHardware(HardwareProfile other) {
        return with(d -> d.hardware = other);
    }

    public Job withAnswers(List<Answer> other) {
        return with(d -> d.answers = other);
    }

    public Job withPast(List<PastTable> other) {
        return with(d -> d.past = other);
    }

    public Job withFirstStart(Set<FirstStart> other) {
        return with(d -> d.firstStart = other);
    }

    /** What is still to be done before the first start. */
    public Set<FirstStart> beforeFirstStart() {
        Set<FirstStart> left = EnumSet.allOf(FirstStart.class);
        left.removeAll(firstStart);
        return left;
    }

    /** What an AFR target is divided by: what was told, else the usual ratio. */
    public double usedTargetRatio() {
        return targetRatio.orElse(MixtureScale.USUAL_DISPLAY_RATIO);
    }

    /** Whether the fuel table holds pulses of which nobody has said what dead time they contain. */
    public boolean asksForDeadTime() {
        return proposal.deadTimeToldMs().isEmpty()
                && fuelTable
                        .filter(t -> t.quantity() == Quantity.INJECTOR_PULSE)
                        .isPresent();
    }

    /** Whether the target is AFR and nobody has said by which ratio it is lambda. */
    public boolean asksForTargetRatio() {
        return targetRatio.isEmpty()
                && targetTable.filter(t -> t.quantity() == Quantity.AFR).isPresent();
    }

    /** The target as lambda: an AFR target is divided by its own ratio. */
    public Optional<Table> targetLambda() {
        return targetTable.map(t -> lambda(t, usedTargetRatio()));
    }

    /**
     * A target table as lambda.
     *
     * @param ratio what an AFR target is divided by
     */
    public static Table lambda(Table target, double ratio) {
        if (target.quantity() == Quantity.LAMBDA) {
            return target;
        }
        double[] cells = target.toArray();
        for (int c = 0; c < cells.length; c++) {
            cells[c] = MixtureScale.lambdaOfAfr(cells[c], ratio);
        }
        return target.with(Quantity.LAMBDA, cells);
    }

    /** Whether what is written for the hardware has decimal commas: as chosen, else as the user's own logs have them. */
    public boolean decimalComma() {
        return hardware.comma()
                .orElseGet(() -> rides.stream()
                        .anyMatch(r -> r.ride()
                                .form()
                                .filter(f -> f.decimalSign() == ',')
                                .isPresent()));
    }

    /** Whether the hardware takes the table as it is, in every respect. */
    public boolean takesTableAsItIs() {
        return hardware.takesTableAsItIs() && !decimalComma();
    }

    /** Whether anybody has said what the hardware takes. */
    public boolean isHardwareTold() {
        return hardware.told() || proposal.step() > 0;
    }

    /** Whether there is enough for a proposal: both tables and a ride. */
    public boolean isReady() {
        return fuelTable.isPresent() && targetTable.isPresent() && !rides.isEmpty();
    }

    /** The name, with the cylinder that the fuel table feeds where it is one. */
    public String title() {
        OptionalInt cylinder = fuelTable.map(Table::cylinder).orElse(OptionalInt.empty());
        return cylinder.isPresent() ? name + ", cylinder " + cylinder.getAsInt() : name;
    }

    /** The same with something changed. */
    private Job with(Consumer<Draft> change) {
        Draft draft = new Draft(this);
        change.accept(draft);
        return draft.done();
    }

    /** The parts while one of them is changed. */
    private static final class Draft {
        private String name;
        private Machine machine;
        private Optional<Table> fuelTable;
        private Optional<Table> targetTable;
        private List<JobRide> rides;
        private ScreenSettings screens;
        private ProposalSettings proposal;
        private Limits limits;
        private double displayRatio;
        private OptionalDouble targetRatio;
        private HardwareProfile hardware;
        private List<Answer> answers;
        private List<PastTable> past;
        private Set<FirstStart> firstStart;

        Draft(Job from) {
            name = from.name;
            machine = from.machine;
            fuelTable = from.fuelTable;
            targetTable = from.targetTable;
            rides = from.rides;
            screens = from.screens;
            proposal = from.proposal;
            limits = from.limits;
            displayRatio = from.displayRatio;
            targetRatio = from.targetRatio;
            hardware = from.hardware;
            answers = from.answers;
            past = from.past;
            firstStart = from.firstStart;
        }

        Job done() {
            return new Job(
                    name,
                    machine,
                    fuelTable,
                    targetTable,
                    rides,
                    screens,
                    proposal,
                    limits,
                    displayRatio,
                    targetRatio,
                    hardware,
                    answers,
                    past,
                    firstStart);
        }
    }
}
