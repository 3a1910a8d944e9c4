package fuelwright.work;

import fuelwright.airflow.BoreForecast;
import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.estimate.FirstRideTable;
import fuelwright.estimate.ProposalSettings;
import fuelwright.handover.ForecastFiles;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.mixture.MixtureScale;
import fuelwright.safety.Caution;
import fuelwright.safety.HighLoadOfRides;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The first-ride table: what the bore forecast says before anybody has ridden, so that the first ride isn't lean where a bigger body
 * flows more. The rule is {@link FirstRideTable}'s; here files, objections and what the user is told come to it.
 */
public final class FirstRide {

    private static final Set<String> OF_NO_RIDE = Set.of("lean-not-checked", "injector-duty-not-checked");

    private FirstRide() {}

    /**
     * @param before the table that was forecast from
     * @param after the first-ride table
     * @param change change of delivered fuel, %
     * @param uncertainty standard error of the forecast, %
     * @param remark one sentence on what the forecast did
     * @param cautions what can be judged without a ride, worst first
     */
    public record Outcome(
            Table before, Table after, Table change, Table uncertainty, String remark, List<Caution> cautions) {
        public Outcome {
            Objects.requireNonNull(before, "before");
            Objects.requireNonNull(after, "after");
            Objects.requireNonNull(change, "change");
            Objects.requireNonNull(uncertainty, "uncertainty");
            Objects.requireNonNull(remark, "remark");
            cautions = List.copyOf(cautions);
        }

        /** Where there are rides, that there are none is no caution; they are judged with the table they were made with. */
        private Outcome besideRides() {
            return new Outcome(
                    before,
                    after,
                    change,
                    uncertainty,
                    remark,
                    cautions.stream()
                            .filter(c -> !OF_NO_RIDE.contains(c.rule()))
                            .toList());
        }

        /** Most fuel added to a cell, %. */
        public double mostAddedPercent() {
            double most = 0;
            for (int cell = 0; cell < change.cells(); cell++) {
                most = Math.max(most, change.at(cell));
            }
            return most;
        }
    }

    /**
     * As {@link #of(String, Table, Optional, Machine, OptionalDouble)}, from files.
     *
     * @param targetRatio the ratio by which an AFR in the target file is lambda, where it was told
     */
    public static Loaded<Outcome> run(
            Path file,
            Optional<Path> targetFile,
            OptionalDouble targetRatio,
            Machine machine,
            OptionalDouble deadTimeMs) {
        Loaded<Table> loaded = OpenTable.fuel(file);
        Optional<Loaded<Table>> target = targetFile.map(OpenTable::target);
        List<Issue> issues = new ArrayList<>(loaded.issues());
        target.ifPresent(t -> issues.addAll(t.issues()));
        if (loaded.value().isEmpty()
                || target.isPresent() && target.get().value().isEmpty()) {
            return Loaded.refused(issues);
        }
        if (target.isPresent() && targetRatio.isEmpty()) {
            TargetRatio.remark(
                            String.valueOf(targetFile.get().getFileName()),
                            target.get().value().get())
                    .ifPresent(issues::add);
        }
        Loaded<Outcome> outcome = of(
                String.valueOf(file.getFileName()),
                loaded.value().get(),
                target.map(t -> Job.lambda(t.value().get(), targetRatio.orElse(MixtureScale.USUAL_DISPLAY_RATIO))),
                machine,
                deadTimeMs);
        issues.addAll(outcome.issues());
        return new Loaded<>(outcome.value(), issues);
    }

    /** Of a job with a fuel table; its target table, where it has one, is looked at for lean cells. */
    public static Loaded<Outcome> of(Job job) {
        boolean target = job.targetTable().filter(t -> t.quantity().isMixture()).isPresent();
        Loaded<Outcome> outcome = of(
                job.name(),
                job.fuelTable().orElseThrow(),
                target ? Optional.of(Usable.targetLambda(job)) : Optional.empty(),
                job.machine(),
                job.proposal().deadTimeToldMs(),
                job.hardware().keepsCells() ? job.proposal().step() : 0);
        return job.rides().isEmpty()
                ? outcome
                : new Loaded<>(outcome.value().map(Outcome::besideRides), outcome.issues());
    }

    /** Without a target table, which is said in a caution. */
    public static Loaded<Outcome> of(String name, Table table, Machine machine, OptionalDouble deadTimeMs) {
        return of(name, table, Optional.empty(), machine, deadTimeMs);
    }

    /**
     * @param name the table's name as the user knows it
     * @param table a fuel table
     * @param targetLambda what lambda each cell should give; judged, not steered to
     * @param machine with displacement and both bodies
     * @param deadTimeMs injector dead time contained in pulses; empty where not known, which only a pulse table minds
     */
    public static Loaded<Outcome> of(
            String name, Table table, Optional<Table> targetLambda, Machine machine, OptionalDouble deadTimeMs) {
        return of(name, table, targetLambda, machine, deadTimeMs, 0);
    }

    /** @param step the hardware's smallest step in the table's own unit; 0: as fine as a file shows it */
    private static Loaded<Outcome> of(
            String name,
            Table table,
            Optional<Table> targetLambda,
            Machine machine,
            OptionalDouble deadTimeMs,
            double step) {
        List<Issue> objections = FuelCells.objections(name, table, deadTimeMs);
        if (!objections.isEmpty()) {
            return Loaded.refused(objections);
        }
        if (table.load().kind() == Axis.Kind.MANIFOLD_PRESSURE) {
            double[] nothing = new double[table.cells()];
            return Loaded.of(
                    new Outcome(
                            table,
                            table,
                            table.with(Quantity.CHANGE, nothing),
                            table.with(Quantity.UNCERTAINTY, nothing.clone()),
                            BoreForecast.WHY_PRESSURE_TABLES_KEEP,
                            FirstRideCautions.of(table, targetLambda, machine)),
                    List.of());
        }
        BoreForecast forecast = BoreForecast.of(machine)
                .orElseThrow(() -> new IllegalArgumentException("machine " + machine + " must have a body change"));
        FirstRideTable first = FirstRideTable.of(
                table,
                forecast,
                targetLambda
                        .map(t -> HighLoadOfRides.of(machine, table.load(), t, List.of()))
                        .orElseGet(() -> HighLoad.of(machine)),
                ProposalSettings.defaults().withDeadTimeMs(deadTimeMs.orElse(0)).withStep(step));
        double[] change = new double[table.cells()];
        double[] uncertainty = new double[table.cells()];
        for (int cell = 0; cell < table.cells(); cell++) {
            change[cell] = first.changePercent(cell);
            uncertainty[cell] = first.uncertaintyPercent(cell);
        }
        return Loaded.of(
                new Outcome(
                        table,
                        first.table(),
                        table.with(Quantity.CHANGE, change),
                        table.with(Quantity.UNCERTAINTY, uncertainty),
                        "From the bore alone; nobody has ridden it yet",
                        FirstRideCautions.of(first.table(), targetLambda, machine)),
                List.of());
    }

    /**
     * Writes the table, its change and its uncertainty, whole or not at all.
     *
     * @return the names of the files written
     * @throws WorkException if nothing could be written
     */
    public static List<String> write(Outcome outcome, Path folder, boolean replace) {
        return HandOver.write(
                ForecastFiles.of(
                        outcome.after(), outcome.change(), outcome.uncertainty(), outcome.remark(), outcome.cautions()),
                folder,
                replace);
    }
}
