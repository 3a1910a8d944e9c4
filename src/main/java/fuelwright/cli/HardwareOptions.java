package fuelwright.cli;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.CellsNow;
import fuelwright.job.HardwareProfile;
import fuelwright.job.Job;
import fuelwright.table.Table;
import fuelwright.work.CheckEntry;
import fuelwright.work.OpenTable;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** What the tuning hardware takes, where it isn't the fuel table as it is. */
final class HardwareOptions {

    private static final String NONE = "none";

    @Option(
            names = "--holds",
            paramLabel = "WHAT",
            description = "what a cell of the hardware holds: value, change (in %%) or multiplier (value)")
    private String holds;

    @Option(
            names = "--range",
            paramLabel = "LEAST..MOST",
            description = "least and greatest figure of a cell that the hardware takes, such as -25..60")
    private String range;

    @Option(
            names = "--breakpoints",
            paramLabel = "F",
            description = "a table file with the hardware's own breakpoints; its cells don't matter")
    private Path breakpoints;

    @Option(
            names = "--orientation",
            paramLabel = "WAY",
            description = "how the hardware lays out its grid: speed-down or speed-across (as the fuel table's file)")
    private String orientation;

    @Option(
            names = "--decimal-comma",
            description = "hardware.csv with decimal commas and semicolons; without it as the logs have them")
    private boolean decimalComma;

    @Option(
            names = "--cells-now",
            paramLabel = "F",
            description =
                    "what cells that hold a change or multiplier hold now: a table file, its cells alone, or none where they change nothing yet")
    private String cellsNow;

    /** The job with what was told of what the hardware's cells hold now. */
    Loaded<Job> cellsOn(Loaded<Job> job) {
        if (cellsNow == null || job.value().isEmpty()) {
            return job;
        }
        HardwareProfile profile = job.value().get().hardware();
        Optional<Table> fuel = job.value().get().fuelTable();
        if (profile.holds() == HardwareProfile.Holds.VALUE || fuel.isEmpty()) {
            throw CommandFailed.usage("--cells-now is for hardware that holds a change or a multiplier (--holds)");
        }
        Table none = CellsNow.none(profile, fuel.get());
        Loaded<Table> now =
                cellsNow.equals(NONE) ? Loaded.of(none, List.of()) : CheckEntry.cellsNow(Path.of(cellsNow), none);
        List<Issue> issues = new ArrayList<>(job.issues());
        issues.addAll(now.issues());
        return now.value()
                .map(cells -> Loaded.of(job.value().get().withHardware(profile.withCells(Optional.of(cells))), issues))
                .orElseGet(() -> Loaded.refused(issues));
    }

    /** The job with what was told of the hardware; refused where the breakpoints can't be used for it. */
    Loaded<Job> on(Loaded<Job> job) {
        double[] bounds = bounds();
        HardwareProfile.Holds held = holds();
        Optional<Table.Orientation> way = orientation();
        Optional<Loaded<Table>> axes = Optional.ofNullable(breakpoints).map(OpenTable::read);
        List<Issue> issues = new ArrayList<>(job.issues());
        axes.ifPresent(a -> issues.addAll(a.issues()));
        if (job.value().isEmpty() || axes.isPresent() && axes.get().value().isEmpty()) {
            return Loaded.refused(issues);
        }
        Optional<Table> own = axes.flatMap(Loaded::value);
        Table fuel = job.value().get().fuelTable().orElseThrow();
        if (own.isPresent() && own.get().load().kind() != fuel.load().kind()) {
            issues.add(Issue.error(
                    String.valueOf(breakpoints.getFileName()),
                    0,
                    0,
                    "its load is " + own.get().load().kind().words() + ", that of the fuel table is "
                            + fuel.load().kind().words(),
                    "Give breakpoints of the same load"));
            return Loaded.refused(issues);
        }
        HardwareProfile profile = new HardwareProfile(
                "",
                held,
                bounds[0],
                bounds[1],
                own.map(Table::speed),
                own.map(Table::load),
                way,
                decimalComma ? Optional.of(true) : Optional.empty(),
                Optional.empty(),
                true);
        return cellsOn(Loaded.of(job.value().get().withHardware(profile), issues));
    }

    private HardwareProfile.Holds holds() {
        if (holds == null || holds.equals("value")) {
            return HardwareProfile.Holds.VALUE;
        }
        if (holds.equals("change")) {
            return HardwareProfile.Holds.PERCENT_CHANGE;
        }
        if (holds.equals("multiplier")) {
            return HardwareProfile.Holds.MULTIPLIER;
        }
        throw CommandFailed.usage("--holds " + holds + " must be value, change or multiplier");
    }

    private Optional<Table.Orientation> orientation() {
        if (orientation == null) {
            return Optional.empty();
        }
        if (orientation.equals("speed-down")) {
            return Optional.of(Table.Orientation.SPEED_DOWN);
        }
        if (orientation.equals("speed-across")) {
            return Optional.of(Table.Orientation.SPEED_ACROSS);
        }
        throw CommandFailed.usage("--orientation " + orientation + " must be speed-down or speed-across");
    }

    private double[] bounds() {
        if (range == null) {
            return new double[] {Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY};
        }
        String[] ends = range.split("\\.\\.", -1);
        try {
            double least = Double.parseDouble(ends[0]);
            double most = Double.parseDouble(ends[ends.length - 1]);
            if (ends.length == 2 && least < most && Double.isFinite(least) && Double.isFinite(most)) {
                return new double[] {least, most};
            }
        } catch (NumberFormatException e) {
            // said below, with what is right
        }
        throw CommandFailed.usage("--range " + range + " must be two figures with two dots between, such as -25..60");
    }
}
