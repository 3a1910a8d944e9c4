package fuelwright.work;

import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.handover.EntryCheck;
import fuelwright.handover.EntryDifference;
import fuelwright.handover.StopNotes;
import fuelwright.handover.ToType;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.CellsNow;
import fuelwright.job.Job;
import fuelwright.mixture.Fuel;
import fuelwright.mixture.MixtureScale;
import fuelwright.safety.CellLoads;
import fuelwright.safety.HighLoadOfRides;
import fuelwright.safety.Limits;
import fuelwright.table.BareCells;
import fuelwright.table.Pasted;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntFunction;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Compares what was typed into the hardware with the table that was handed over. */
public final class CheckEntry {

    /** A target this rich or richer says that the cell is one where lean does harm (common practice, no source). */
    private static final double PROTECTING_LAMBDA = 0.95;

    /** What the program writes above a table while a Stop stands. */
    private static final Pattern CAUTION_LINE =
            Pattern.compile("\\W*#\\s*" + StopNotes.KEY + "\\s*:.*", Pattern.CASE_INSENSITIVE);

    private static final long MOST_BYTES = 1_000_000;

    private CheckEntry() {}

    /**
     * @param meant the table that was handed over
     * @param differences what differs, worst first
     * @param target what lambda the cells should give, where a target was given
     */
    public record Outcome(Table meant, List<EntryDifference> differences, Optional<Table> target) {
        public Outcome {
            differences = List.copyOf(differences);
        }

        /** Whether a cell is lean at high load. */
        public boolean isStop() {
            return differences.stream().anyMatch(EntryDifference::isStop);
        }
    }

    /**
     * @param before what the hardware held before, where it is known: tells cells that were passed over
     * @param step the hardware's step, in the table's own unit; 0: any difference counts
     * @param deadTimeMs injector dead time contained in pulses; empty where not known, which only a pulse table minds
     * @param target where it is given, cells with a rich target count as high load too
     * @param targetRatio the ratio by which an AFR target is lambda, where it was told
     * @param machine what high load is judged by, as far as it is known
     */
    public static Loaded<Outcome> run(
            Path meant,
            Path typed,
            Optional<Path> before,
            double step,
            OptionalDouble deadTimeMs,
            Optional<Path> target,
            OptionalDouble targetRatio,
            Machine machine) {
        if (isOwn(meant, typed)) {
            return Loaded.refused(List.of(ownTable(name(typed))));
        }
        Loaded<Table> wanted = OpenTable.read(meant);
        Loaded<Table> got = typed(typed, wanted.value());
        Optional<Loaded<Table>> old = before.map(f -> typed(f, wanted.value()));
        Optional<Loaded<Table>> mixture = target.map(OpenTable::target);
        List<Issue> issues = new ArrayList<>(wanted.issues());
        issues.addAll(got.issues());
        mixture.ifPresent(m -> issues.addAll(m.issues()));
        if (targetRatio.isEmpty()) {
            mixture.flatMap(Loaded::value)
                    .flatMap(t -> TargetRatio.remark(name(target.get()), t))
                    .ifPresent(issues::add);
        }
        old.ifPresent(o -> issues.addAll(o.issues()));
        if (wanted.value().isPresent() && old.flatMap(Loaded::value).isPresent()) {
            whyNot(meant, wanted.value().get(), before.get(), old.get().value().get())
                    .ifPresent(issues::add);
        }
        if (wanted.value().isPresent() && got.value().isPresent()) {
            whyNot(meant, wanted.value().get(), typed, got.value().get()).ifPresent(issues::add);
            issues.addAll(FuelCells.objections(name(meant), wanted.value().get(), deadTimeMs));
        }
        if (issues.stream().anyMatch(i -> i.severity() == Issue.Severity.ERROR)) {
            return Loaded.refused(issues);
        }
        Table table = wanted.value().orElseThrow();
        Optional<Table> asked = mixture.flatMap(Loaded::value)
                .map(t -> Job.lambda(t, targetRatio.orElse(MixtureScale.USUAL_DISPLAY_RATIO)));
        HighLoad rule = HighLoadOfRides.of(machine, table.load(), asked.orElseGet(() -> lightLoad(table)), List.of());
        List<EntryDifference> differences = EntryCheck.compare(
                table,
                got.value().orElseThrow(),
                old.flatMap(Loaded::value),
                step,
                deadTimeMs.orElse(0),
                places(rule, table, asked));
        return Loaded.of(new Outcome(table, differences, asked), issues);
    }

    /**
     * What was read back from the hardware as text, such as from the clipboard, against what the analysis hands over.
     *
     * @param text all cells, with breakpoints or without; without, in the hardware's orientation
     * @return refused where it isn't the whole table
     */
    public static Loaded<Outcome> pasted(String text, Analysis analysis) {
        ToType sheet = HandOver.toType(analysis);
        Table meant = sheet.after();
        if (carriesCaution(text) || lines(text).equals(lines(HandOver.tableText(analysis)))) {
            return Loaded.refused(List.of(ownTable("")));
        }
        Loaded<Table> got = pasted(text, meant);
        if (got.value().isEmpty()) {
            return Loaded.refused(got.issues());
        }
        Optional<Table> target = Optional.of(Usable.targetLambda(analysis.job()));
        List<EntryDifference> differences = EntryCheck.compare(
                meant,
                got.value().get(),
                Optional.of(sheet.before()),
                analysis.job().proposal().step(),
                analysis.job().proposal().deadTimeMs(),
                places(analysis.highLoad(), meant, target));
        return Loaded.of(new Outcome(meant, differences, target), got.issues());
    }

    /**
     * What the cells of hardware that holds changes or multipliers hold now, from a file: a table, or its cells alone.
     *
     * @param like a table of those cells
     */
    public static Loaded<Table> cellsNow(Path file, Table like) {
        Loaded<Table> read = typed(file, Optional.of(like));
        return read.value().isEmpty() || CellsNow.fits(read.value().get(), like)
                ? read
                : Loaded.refused(List.of(whyNot(
                                Path.of("the hardware's table"),
                                like,
                                file,
                                read.value().get())
                        .orElseGet(() -> noFuel(name(file)))));
    }

    /** The same from the clipboard. */
    public static Loaded<Table> cellsNow(String text, Table like) {
        Loaded<Table> read = pasted(text, like);
        return read.value().isEmpty() || CellsNow.fits(read.value().get(), like)
                ? read
                : Loaded.refused(List.of(noFuel("")));
    }

    private static Issue noFuel(String name) {
        return Issue.error(
                name,
                0,
                0,
                "with one of these figures no fuel would be left",
                "Give what the cells hold, in the hardware's own unit");
    }

    /** That a table is the program's own, not what was read back: comparing it would say that all is well. */
    public static Issue ownTable(String name) {
        return Issue.error(
                name,
                0,
                0,
                "this is the program's own table, as it was copied or written, not what was read back from the hardware",
                "Read the cells back out of the hardware and give those");
    }

    private static boolean carriesCaution(String text) {
        return text.lines().anyMatch(CAUTION_LINE.asMatchPredicate());
    }

    /** Without what a clipboard changes: line ends, blanks behind. */
    private static List<String> lines(String text) {
        return text.stripTrailing().lines().map(String::stripTrailing).toList();
    }

    private static boolean isOwn(Path meant, Path typed) {
        try {
            if (!Files.isRegularFile(meant) || !Files.isRegularFile(typed) || Files.size(typed) > MOST_BYTES) {
                return false;
            }
            String text = Files.readString(typed, StandardCharsets.ISO_8859_1);
            return carriesCaution(text)
                    || lines(text).equals(lines(Files.readString(meant, StandardCharsets.ISO_8859_1)));
        } catch (IOException e) {
            throw WorkException.reading(typed, e);
        }
    }

    private static Loaded<Table> pasted(String text, Table meant) {
        String figures = text.lines().filter(l -> !l.strip().startsWith("#")).collect(Collectors.joining("\n"));
        boolean commas = figures.indexOf('\t') < 0 && figures.indexOf(';') < 0;
        Loaded<Pasted> read = Pasted.read(commas ? figures.replace(',', '\t') : figures);
        if (read.value().isEmpty()) {
            return Loaded.refused(read.issues());
        }
        Pasted cells = read.value().get();
        if (!cells.isHeaded()) {
            return BareCells.read("", text.getBytes(StandardCharsets.UTF_8), meant)
                    .orElseGet(() -> notWhole(meant, cells.rowCount() + " rows of " + cells.columnCount()));
        }
        try {
            Table typed = cells.into(meant);
            // A cell that wasn't pasted keeps what it is laid over.
            Table over = cells.into(meant.withValues(
                    Arrays.stream(meant.toArray()).map(v -> v + 1).toArray()));
            return Arrays.equals(typed.toArray(), over.toArray())
                    ? Loaded.of(typed, read.issues())
                    : notWhole(meant, cells.rowCount() + " rows of " + cells.columnCount());
        } catch (IllegalArgumentException e) {
            return Loaded.refused(List.of(Issue.error("", 0, 0, e.getMessage(), "Copy the whole table")));
        }
    }

    private static Loaded<Table> notWhole(Table meant, String what) {
        boolean down = meant.orientation() == Table.Orientation.SPEED_DOWN;
        int rows = (down ? meant.speed() : meant.load()).size();
        int columns = (down ? meant.load() : meant.speed()).size();
        return Loaded.refused(List.of(Issue.error(
                "",
                0,
                0,
                "There are " + what + " cells, and the table has " + rows + " rows of " + columns,
                "Copy all cells of the table, with breakpoints or without")));
    }

    /** A table file, or bare cells of the size of the table that was meant. */
    private static Loaded<Table> typed(Path file, Optional<Table> meant) {
        if (meant.isPresent() && Files.isRegularFile(file)) {
            try {
                Optional<Loaded<Table>> bare = Files.size(file) > MOST_BYTES
                        ? Optional.empty()
                        : BareCells.read(name(file), Files.readAllBytes(file), meant.get());
                if (bare.isPresent()) {
                    return bare.get();
                }
            } catch (IOException e) {
                throw WorkException.reading(file, e);
            }
        }
        return OpenTable.read(file);
    }

    private static Optional<Issue> whyNot(Path meantFile, Table meant, Path typedFile, Table typed) {
        if (meant.cylinder().isPresent()
                && typed.cylinder().isPresent()
                && !meant.cylinder().equals(typed.cylinder())) {
            return Optional.of(Issue.error(
                    name(typedFile),
                    0,
                    0,
                    "this table feeds cylinder " + typed.cylinder().getAsInt() + ", but " + name(meantFile)
                            + " is for cylinder " + meant.cylinder().getAsInt(),
                    "Compare the tables of the same cylinder"));
        }
        if (EntryCheck.comparable(meant, typed)) {
            return Optional.empty();
        }
        if (meant.quantity() != typed.quantity()) {
            return Optional.of(Issue.error(
                    name(typedFile),
                    0,
                    0,
                    "this table holds " + typed.quantity().words() + ", but " + name(meantFile) + " holds "
                            + meant.quantity().words(),
                    "Give two tables of the same quantity"));
        }
        if (!meant.sameAxes(typed)) {
            return Optional.of(Issue.error(
                    name(typedFile),
                    0,
                    0,
                    "its breakpoints aren't those of " + name(meantFile),
                    "Export the table for the hardware's own breakpoints, or correct them in the file"));
        }
        return Optional.of(Issue.error(
                name(meantFile),
                0,
                0,
                "a table of " + meant.quantity().words() + " is nothing that one types into the hardware",
                "Give the corrected table, the change table or the target table"));
    }

    private static String name(Path file) {
        return String.valueOf(file.getFileName());
    }

    /** By the same rule as the line on the map; and by the target where there is one. */
    private static IntFunction<EntryDifference.Place> places(HighLoad rule, Table table, Optional<Table> target) {
        CellLoads loads =
                CellLoads.of(table, target.orElseGet(() -> lightLoad(table)), rule, Limits.usual(Fuel.PETROL));
        Optional<Table> sameLoad =
                target.filter(t -> t.load().kind() == table.load().kind());
        return cell -> {
            if (loads.isHigh(cell)) {
                return EntryDifference.Place.HIGH_LOAD;
            }
            if (loads.isBeside(cell)) {
                return EntryDifference.Place.EDGE;
            }
            boolean rich = sameLoad.filter(t -> t.value(table.speedAt(cell), table.loadAt(cell)) <= PROTECTING_LAMBDA)
                    .isPresent();
            return rich ? EntryDifference.Place.RICH_TARGET : EntryDifference.Place.LIGHT_LOAD;
        };
    }

    /** A target that says nothing of load. */
    private static Table lightLoad(Table axes) {
        double[] lambda = new double[axes.cells()];
        Arrays.fill(lambda, 1);
        return axes.with(Quantity.LAMBDA, lambda);
    }
}
