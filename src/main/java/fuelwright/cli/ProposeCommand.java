package fuelwright.cli;

import fuelwright.airflow.Machine;
import fuelwright.estimate.ProposalSettings;
import fuelwright.handover.Handed;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.ride.ClockAlignment;
import fuelwright.ride.RideOptions;
import fuelwright.safety.Limits;
import fuelwright.table.Table;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.HandOver;
import fuelwright.work.JobFiles;
import fuelwright.work.OpenJob;
import fuelwright.work.Progress;
import fuelwright.work.TargetRatio;
import fuelwright.work.Workbench;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The whole job: tables and rides in, corrected table and report out. */
@Command(
        name = "propose",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "The whole job: corrected table, maps, cautions and report from tables and rides.")
final class ProposeCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Option(names = "--job", paramLabel = "F", description = "a saved job with all of the above and below in it")
    private Path job;

    @Option(names = "--table", paramLabel = "F", description = "the fuel table in the control unit")
    private Path table;

    @Option(
            names = "--cylinder",
            paramLabel = "N",
            description =
                    "the table feeds cylinder N alone: only its mixture sensor counts, the Nth from the left in each ride")
    private Integer cylinder;

    @Option(names = "--target", paramLabel = "F", description = "the target table, lambda or AFR")
    private Path target;

    @Mixin
    private TargetRatioOption targetRatio;

    @ArgGroup(exclusive = false, multiplicity = "0..*")
    private List<RideArguments> rides = new ArrayList<>();

    @Mixin
    private OutputOptions output;

    @Option(names = "--pdf", description = "report and entry sheet as PDF too; takes some seconds")
    private boolean pdf;

    @Option(
            names = "--step",
            paramLabel = "S",
            defaultValue = "0",
            description =
                    "smallest step of a cell that the hardware takes, in the table's own unit, or that of --holds")
    private double step;

    @Mixin
    private DeadTimeOption deadTime;

    @Option(
            names = "--max-add",
            paramLabel = "PCT",
            defaultValue = "40",
            description = "most to add in one pass, %% (40)")
    private double maxAddPercent;

    @Option(
            names = "--max-cut",
            paramLabel = "PCT",
            defaultValue = "5",
            description = "most to take away in one pass, %% (5)")
    private double maxCutPercent;

    @Option(
            names = "--only-richer",
            description =
                    "lean no cell: those that would be leaned keep their old figure, rounded up to the step; for while a Stop caution stands")
    private boolean onlyRicher;

    @Mixin
    private HardwareOptions hardware;

    @Mixin
    private ReadingOptions reading;

    @Mixin
    private BodyOptions bodies;

    @Mixin
    private LimitOption limits;

    @Option(names = "--json", description = "the summary as JSON")
    private boolean json;

    /** One ride with what follows it. */
    static final class RideArguments {
        private static final double MILLION = 1e6;
        private static final double MOST_OFFSET_S = 1e6;
        private static final double MOST_DRIFT_MILLIONTHS = 1e5;

        @Option(names = "--ride", required = true, paramLabel = "F", description = "a ride; may be repeated")
        private Path ride;

        @Option(
                names = "--ride-table",
                paramLabel = "F",
                description = "the table that was in the unit on the ride before it, if not --table")
        private Path madeWith;

        @Option(names = "--with", paramLabel = "F2", description = "a second logger's file of the ride before it")
        private Path secondLogger;

        @Option(
                names = "--offset",
                paramLabel = "S",
                description =
                        "the ride's time at 0 of its second logger's clock, s; then the clocks aren't aligned anew")
        private Double offsetS;

        @Option(
                names = "--drift",
                paramLabel = "MILLIONTHS",
                description = "how much faster the ride's clock runs than its second logger's; goes with --offset")
        private Double driftMillionths;

        JobFiles.RideFiles files() {
            return new JobFiles.RideFiles(
                    ride, Optional.ofNullable(madeWith), Optional.ofNullable(secondLogger), byHand());
        }

        private Optional<ClockAlignment> byHand() {
            if (offsetS == null && driftMillionths == null) {
                return Optional.empty();
            }
            if (offsetS == null || secondLogger == null) {
                throw CommandFailed.usage(
                        "--offset and --drift need a second logger's file (--with), --drift needs --offset");
            }
            double millionths = driftMillionths == null ? 0 : driftMillionths;
            if (!(Math.abs(offsetS) <= MOST_OFFSET_S && Math.abs(millionths) <= MOST_DRIFT_MILLIONTHS)) {
                throw CommandFailed.usage("--offset " + offsetS + " must be within a million seconds, --drift "
                        + millionths + " within 100000 millionths");
            }
            return Optional.of(ClockAlignment.byHand(offsetS, millionths / MILLION));
        }
    }

    @Override
    public Integer call() {
        if (job != null) {
            refuseBesideJob();
            Loaded<Job> opened = OpenJob.open(job, log -> Optional.empty(), Progress.NONE, Cancellation.NEVER);
            return propose(spec, "propose", hardware.cellsOn(ready(opened)), onlyRicher, output, pdf, json);
        }
        needFiles();
        refuseToPrecede("--ride-table");
        refuseToPrecede("--with");
        refuseToPrecede("--offset");
        refuseToPrecede("--drift");
        needEveryTable();
        ProposalSettings settings = settings();
        limits.on(Limits.usual(Machine.unknown().fuel()));
        RideOptions options = reading.rideOptions();
        JobFiles files = new JobFiles(
                String.valueOf(table.getFileName()),
                table,
                target,
                rides.stream().map(RideArguments::files).toList(),
                bodies.machine(),
                options,
                settings);
        Loaded<Job> read = ofCylinder(
                hardware.on(TargetRatio.told(files.load(Progress.NONE, Cancellation.NEVER), targetRatio.ratio())));
        Loaded<Job> job = new Loaded<>(read.value().map(j -> j.withLimits(limits.on(j.limits()))), read.issues());
        return propose(spec, "propose", job, onlyRicher, output, pdf, json);
    }

    private Loaded<Job> ofCylinder(Loaded<Job> read) {
        if (cylinder == null || read.value().isEmpty()) {
            return read;
        }
        if (cylinder < 1 || cylinder > Table.MOST_CYLINDERS) {
            throw CommandFailed.usage("--cylinder " + cylinder + " must be from 1 to " + Table.MOST_CYLINDERS);
        }
        Job job = read.value().get();
        Table fuel = job.fuelTable().orElseThrow();
        if (fuel.cylinder().isPresent() && fuel.cylinder().getAsInt() != cylinder) {
            throw CommandFailed.usage("--cylinder " + cylinder + ", but " + table.getFileName()
                    + " says that it feeds cylinder " + fuel.cylinder().getAsInt());
        }
        return new Loaded<>(Optional.of(job.withFuelTable(fuel.ofCylinder(OptionalInt.of(cylinder)))), read.issues());
    }

    /** Analyses a job, writes what it hands over and says so. */
    static int propose(
            CommandSpec spec,
            String command,
            Loaded<Job> job,
            boolean onlyRicher,
            OutputOptions output,
            boolean pdf,
            boolean json) {
        Job usable = CommandFailed.valueOf(job);
        HandOver.check(output.folder(), output.replace());
        if (onlyRicher) {
            usable = usable.withProposal(usable.proposal().withLeanNoCell(true));
        }
        Loaded<Analysis> analysed = new Workbench().analyse(usable, Progress.NONE, Cancellation.NEVER);
        Analysis analysis = CommandFailed.valueOf(analysed);
        List<Issue> remarks = new ArrayList<>(job.issues());
        TargetRatio.remark(usable).ifPresent(remarks::add);
        remarks.addAll(analysed.issues());
        Handed handed = HandOver.of(analysis);
        List<String> written = HandOver.write(analysis, handed, output.folder(), output.replace(), pdf);
        ProposalSummary summary =
                new ProposalSummary(command, analysis, handed.expected(), remarks, output.folder(), written);
        summary.print(spec.commandLine().getOut(), spec.commandLine().getErr(), json);
        return summary.exitCode();
    }

    private static final Set<String> BESIDE_JOB =
            Set.of("--job", "--cells-now", "--out", "--replace", "--pdf", "--only-richer", "--json");

    private void needFiles() {
        List<String> missing = new ArrayList<>();
        if (table == null) {
            missing.add("--table");
        }
        if (target == null) {
            missing.add("--target");
        }
        if (rides.isEmpty()) {
            missing.add("--ride");
        }
        if (missing.isEmpty()) {
            return;
        }
        String last = missing.remove(missing.size() - 1);
        String said =
                missing.isEmpty() ? last + " is missing" : String.join(", ", missing) + " and " + last + " are missing";
        boolean onlyTarget = missing.isEmpty() && target == null;
        throw CommandFailed.usage("--table, --target and at least one --ride are needed, or --job: " + said
                + (onlyTarget
                        ? ". The window makes a target table from a few figures (stage Tables, Make a target table)"
                        : ""));
    }

    /** What a job says is taken from the job alone, so that the same outputs come as from the window. */
    private void refuseBesideJob() {
        for (OptionSpec given : spec.commandLine().getParseResult().matchedOptions()) {
            if (!BESIDE_JOB.contains(given.longestName())) {
                throw CommandFailed.usage(given.longestName()
                        + " and --job say the same thing twice: change it in the job, or give the files instead");
            }
        }
    }

    private Loaded<Job> ready(Loaded<Job> opened) {
        if (opened.value().filter(j -> !j.isReady()).isPresent()) {
            return Loaded.refused(List.of(Issue.error(
                    String.valueOf(job.getFileName()),
                    0,
                    0,
                    "this job lacks a fuel table, a target table or a ride",
                    "Open it in the window and add what is missing")));
        }
        return opened;
    }

    /** Once the table changed between rides, a ride without a table of its own would be laid to the newest. */
    private void needEveryTable() {
        for (int named = rides.size() - 1; named > 0; named--) {
            for (int i = 0; i < named && rides.get(named).madeWith != null; i++) {
                if (rides.get(i).madeWith == null) {
                    throw CommandFailed.usage(
                            "--ride-table is given for " + rides.get(named).ride.getFileName()
                                    + " but not for the earlier ride "
                                    + rides.get(i).ride.getFileName()
                                    + ": name the table that was in the unit on it too, else it would count against the wrong one");
                }
            }
        }
    }

    private ProposalSettings settings() {
        least("--step", step);
        least("--max-add", maxAddPercent);
        if (!(maxCutPercent >= 0 && maxCutPercent < 100)) {
            throw CommandFailed.usage("--max-cut " + maxCutPercent + " must be from 0 to below 100");
        }
        return ProposalSettings.defaults()
                .withCaps(maxAddPercent, maxCutPercent)
                .withStep(step)
                .withDeadTimeMs(deadTime.ms());
    }

    private static void least(String option, double value) {
        if (!(value >= 0 && Double.isFinite(value))) {
            throw CommandFailed.usage(option + " " + value + " must be at least 0");
        }
    }

    /** A table given before its ride would be taken for that of the next one: it could belong to either, so it is asked for. */
    private void refuseToPrecede(String option) {
        for (String argument : spec.commandLine().getParseResult().originalArgs()) {
            if (argument.equals("--ride") || argument.startsWith("--ride=")) {
                return;
            }
            if (argument.equals(option) || argument.startsWith(option + "=")) {
                throw CommandFailed.usage(option + " belongs after the --ride that it goes with");
            }
        }
    }
}
