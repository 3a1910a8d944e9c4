package fuelwright.cli;

import fuelwright.airflow.Machine;
import fuelwright.job.StoredJob;
import fuelwright.work.Cancellation;
import fuelwright.work.EnginesLike;
import fuelwright.work.JobRecord;
import fuelwright.work.JobsCompared;
import fuelwright.work.Progress;
import fuelwright.work.Records;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A workshop's memory: the jobs in a folder. */
@Command(
        name = "records",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description =
                "The jobs in a folder and below it: listed, searched, two of them compared, or what a part gave on engines like one. Files are only read.")
final class RecordsCommand implements Callable<Integer> {

    private static final Pattern BORES = Pattern.compile("(\\d+(?:\\.\\d+)?)?:(\\d+(?:\\.\\d+)?)?");

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FOLDER", description = "the folder that the jobs (*.fwjob) are in")
    private Path folder;

    @Option(names = "--find", paramLabel = "WORDS", description = "only jobs that mention all of these words")
    private String words;

    @Option(
            names = "--compare",
            arity = "2",
            paramLabel = "JOB",
            description = "two jobs side by side, each by its place in the folder or by its name")
    private List<String> compared;

    @Option(
            names = "--like",
            paramLabel = "JOB",
            description = "what parts like this job's gave on engines like this job's")
    private String like;

    @Option(names = "--displacement", paramLabel = "CC", description = "engines of so many cm³")
    private Double displacementCc;

    @Option(names = "--within", paramLabel = "PCT", description = "how far the displacement may be off, %% (25)")
    private Double withinPercent;

    @Option(names = "--bodies", paramLabel = "N", description = "engines with so many throttle bodies")
    private Integer bodies;

    @Option(
            names = "--bores",
            paramLabel = "MM:MM",
            description = "changes from this bore to that, within 1 mm; either may be left out")
    private String bores;

    @Option(
            names = "--work-out",
            description = "work out, for this once, jobs that keep no results; takes as long as propose for each")
    private boolean workOut;

    @Option(names = "--json", description = "the summary as JSON")
    private boolean json;

    @Override
    public Integer call() {
        boolean asks = like != null || displacementCc != null || bodies != null || bores != null;
        if (compared != null && (asks || words != null)) {
            throw CommandFailed.usage("--compare stands alone: leave out --find, --like and what engines are like");
        }
        if (withinPercent != null && !asks) {
            throw CommandFailed.usage("--within belongs to --displacement or --like");
        }
        List<JobRecord> all = Records.read(folder, Progress.NONE, Cancellation.NEVER);
        RecordsSummary summary = new RecordsSummary(folder, spec.commandLine().getOut(), json);
        if (compared != null) {
            JobRecord first = workedOut(named(compared.get(0), all));
            JobRecord second = workedOut(named(compared.get(1), all));
            summary.compared(first, second, JobsCompared.of(first, second));
            return Exit.DONE;
        }
        Optional<JobRecord> model = Optional.ofNullable(like).map(name -> named(name, all));
        List<JobRecord> found = all.stream()
                .filter(r -> words == null || r.mentions(words))
                .map(this::workedOut)
                .toList();
        if (asks) {
            EnginesLike.Question question = question(model);
            if (!question.asks()) {
                throw CommandFailed.usage(
                        "--like " + like
                                + " says nothing of its engine: give --displacement, --bodies or --bores, or write it down in the job");
            }
            summary.like(question, EnginesLike.of(found, question));
        } else {
            summary.list(found, all.size());
        }
        return Exit.DONE;
    }

    private JobRecord workedOut(JobRecord record) {
        return workOut ? Records.workedOut(record, Progress.NONE, Cancellation.NEVER) : record;
    }

    private EnginesLike.Question question(Optional<JobRecord> model) {
        EnginesLike.Question base = EnginesLike.Question.of(
                model.flatMap(JobRecord::stored)
                        .map(StoredJob::job)
                        .map(fuelwright.job.Job::machine)
                        .orElseGet(Machine::unknown),
                model.map(JobRecord::file));
        Matcher both = BORES.matcher(bores == null ? ":" : bores.strip());
        if (!both.matches() || bores != null && bores.strip().equals(":")) {
            throw CommandFailed.usage(
                    "--bores " + bores + " must be two bores in mm, such as 38:44, or one, such as :44");
        }
        return new EnginesLike.Question(
                displacementCc == null
                        ? base.displacementCc()
                        : OptionalDouble.of(positive("--displacement", displacementCc)),
                withinPercent == null ? base.withinPercent() : within(withinPercent),
                bodies == null ? base.bodies() : OptionalInt.of((int) positive("--bodies", bodies)),
                bore(both.group(1), base.boreBeforeMm()),
                bore(both.group(2), base.boreAfterMm()),
                base.itself());
    }

    private static OptionalDouble bore(String text, OptionalDouble otherwise) {
        return text == null ? otherwise : OptionalDouble.of(Double.parseDouble(text));
    }

    private static double positive(String option, double value) {
        if (!(value > 0 && Double.isFinite(value))) {
            throw CommandFailed.usage(option + " " + value + " must be above 0");
        }
        return value;
    }

    private static double within(double percent) {
        if (!(percent >= 0 && percent <= 100)) {
            throw CommandFailed.usage("--within " + percent + " must be from 0 to 100 %");
        }
        return percent;
    }

    /** By place in the folder, else by file name or the job's own, where only one has it; a file elsewhere by its path. */
    private JobRecord named(String name, List<JobRecord> all) {
        String place = name.replace('\\', '/');
        List<JobRecord> found =
                all.stream().filter(r -> r.place().equals(place)).toList();
        if (found.isEmpty()) {
            found = all.stream()
                    .filter(r -> String.valueOf(r.file().getFileName()).equals(place)
                            || r.place().equals(place + ".fwjob")
                            || r.name().equals(name))
                    .toList();
        }
        if (found.size() == 1) {
            return found.get(0);
        }
        if (found.isEmpty() && Files.isRegularFile(Path.of(name))) {
            return Records.read(Path.of(name));
        }
        throw CommandFailed.usage(
                found.isEmpty()
                        ? "There is no job " + name + " in " + folder + ": records " + folder + " lists them"
                        : found.size() + " jobs are called " + name + ": give the place of one, such as "
                                + found.get(0).place());
    }
}
