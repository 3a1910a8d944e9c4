package fuelwright.work;

import fuelwright.airflow.Machine;
import fuelwright.estimate.ProposalSettings;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.mixture.MixtureScale;
import fuelwright.ride.ClockAlignment;
import fuelwright.ride.RideOptions;
import fuelwright.table.Table;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The files and settings that a job is put together from.
 *
 * @param name what the job is called
 * @param table the fuel table in the control unit now
 * @param target the target table
 * @param rides in the order in which they were made, at least one
 * @param machine what is known of engine and change
 * @param options how the rides are to be read
 * @param settings rules of the proposal
 */
public record JobFiles(
        String name,
        Path table,
        Path target,
        List<RideFiles> rides,
        Machine machine,
        RideOptions options,
        ProposalSettings settings) {

    /**
     * One ride's files.
     *
     * @param ride the log
     * @param madeWith the table that was in the control unit then, where it was another
     * @param secondLogger the log of a second logger on the same ride
     * @param byHand how the second logger's clock runs, where that is given and needn't be found
     */
    public record RideFiles(
            Path ride, Optional<Path> madeWith, Optional<Path> secondLogger, Optional<ClockAlignment> byHand) {

        /** With clocks that are found from what both logged. */
        public RideFiles(Path ride, Optional<Path> madeWith, Optional<Path> secondLogger) {
            this(ride, madeWith, secondLogger, Optional.empty());
        }
    }

    public JobFiles {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(table, "table");
        Objects.requireNonNull(target, "target");
        rides = List.copyOf(rides);
        Objects.requireNonNull(machine, "machine");
        Objects.requireNonNull(options, "options");
        Objects.requireNonNull(settings, "settings");
    }

    /**
     * Reads everything. Every file that can't be used is named, not only the first.
     *
     * @throws WorkException if a file can't be read at all
     */
    public Loaded<Job> load(Progress progress, Cancellation cancellation) {
        List<Issue> issues = new ArrayList<>();
        Optional<Table> fuel = keep(OpenTable.fuel(table), issues);
        fuel.ifPresent(t -> issues.addAll(FuelCells.objections(nameOf(table), t, settings.deadTimeToldMs())));
        Optional<Table> wanted = keep(OpenTable.target(target), issues);
        List<JobRide> made = new ArrayList<>();
        for (RideFiles files : rides) {
            Optional<OpenRide.Found> found = keep(
                    OpenRide.found(files.ride(), files.secondLogger(), options, files.byHand(), progress, cancellation),
                    issues);
            Optional<Table> madeWith = files.madeWith().flatMap(f -> keep(OpenTable.fuel(f), issues));
            if (fuel.isPresent()
                    && madeWith.isPresent()
                    && fuel.get().quantity() != madeWith.get().quantity()) {
                issues.add(Issue.error(
                        nameOf(files.madeWith().get()),
                        0,
                        0,
                        "this table holds " + madeWith.get().quantity().words() + ", the fuel table "
                                + fuel.get().quantity().words(),
                        "Give the table that was in the same control unit"));
            }
            found.ifPresent(f -> made.add(new JobRide(f.ride(), madeWith, Optional.of(f.source()))));
        }
        if (made.size() == rides.size()) {
            issues.addAll(
                    GivenRoles.unmet(options, made.stream().map(JobRide::ride).toList()));
        }
        if (issues.stream().anyMatch(i -> i.severity() == Issue.Severity.ERROR)) {
            return Loaded.refused(issues);
        }
        Job job = Job.empty()
                .withName(name)
                .withMachine(machine)
                .withFuelTable(fuel.orElseThrow())
                .withTargetTable(wanted.orElseThrow())
                .withRides(made)
                .withProposal(settings)
                .withDisplayRatio(options.afrScale().orElse(MixtureScale.USUAL_DISPLAY_RATIO));
        return Loaded.of(job, issues);
    }

    private static String nameOf(Path file) {
        return String.valueOf(file.getFileName());
    }

    private static <T> Optional<T> keep(Loaded<T> loaded, List<Issue> issues) {
        issues.addAll(loaded.issues());
        return loaded.value();
    }
}
