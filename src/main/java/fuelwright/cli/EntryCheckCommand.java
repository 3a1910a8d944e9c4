package fuelwright.cli;

import fuelwright.handover.EntryDifference;
import fuelwright.issue.Loaded;
import fuelwright.table.Table;
import fuelwright.work.CheckEntry;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What was typed against what was meant. */
@Command(
        name = "entry-check",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Differences between a corrected table and what the hardware holds, worst first.")
final class EntryCheckCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Option(names = "--meant", required = true, paramLabel = "F", description = "the table that was handed over")
    private Path meant;

    @Option(
            names = "--typed",
            required = true,
            paramLabel = "F",
            description = "what the hardware holds: a table file, or its cells alone as pasted")
    private Path typed;

    @Option(
            names = "--before",
            paramLabel = "F",
            description = "what the hardware held before: names cells that were passed over")
    private Path before;

    @Option(
            names = "--step",
            paramLabel = "S",
            defaultValue = "0",
            description = "the hardware's smallest step, in the table's own unit; less than it is rounding")
    private double step;

    @Option(
            names = "--target",
            paramLabel = "F",
            description = "the target table: cells with a rich target count as high load")
    private Path target;

    @Mixin
    private TargetRatioOption targetRatio;

    @Mixin
    private DeadTimeOption deadTime;

    @Mixin
    private BodyOptions bodies;

    @Option(names = "--json", description = "the same as JSON")
    private boolean json;

    @Override
    public Integer call() {
        if (!(step >= 0 && Double.isFinite(step))) {
            throw CommandFailed.usage("--step " + step + " must be at least 0");
        }
        Loaded<CheckEntry.Outcome> loaded = CheckEntry.run(
                meant,
                typed,
                Optional.ofNullable(before),
                step,
                deadTime.ms(),
                Optional.ofNullable(target),
                targetRatio.ratio(),
                bodies.machine());
        CheckEntry.Outcome outcome = CommandFailed.valueOf(loaded);
        int code = outcome.isStop() ? Exit.STOP : outcome.differences().isEmpty() ? Exit.DONE : Exit.DIFFERENCE;
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.println(Json.write(asMap(outcome, code)));
        } else {
            print(outcome, out);
        }
        Said.remarks(loaded.issues(), spec.commandLine().getErr());
        long stops =
                outcome.differences().stream().filter(EntryDifference::isStop).count();
        if (stops > 0) {
            spec.commandLine()
                    .getErr()
                    .println("Stop · leaner than meant at high load or its edge: " + stops
                            + (stops == 1 ? " cell" : " cells") + ". Correct them before the engine is loaded");
        }
        return code;
    }

    private static void print(CheckEntry.Outcome outcome, PrintWriter out) {
        List<EntryDifference> all = outcome.differences();
        if (all.isEmpty()) {
            out.println("All " + outcome.meant().cells() + " cells hold what was meant");
            return;
        }
        out.println(all.size() + " of " + outcome.meant().cells() + " cells differ, worst first:");
        all.forEach(d -> out.println("  " + line(outcome.meant(), d)));
    }

    private static String line(Table table, EntryDifference d) {
        return figure(table.speedAt(d.cell())) + " rpm, " + figure(table.loadAt(d.cell())) + " "
                + table.load().kind().unit().symbol() + ": meant " + figure(d.meant()) + ", typed " + figure(d.typed())
                + " ("
                + d.detail() + "), " + effect(d)
                + (d.place().words().isEmpty() ? "" : " " + d.place().words()) + (d.isStop() ? ": Stop" : "");
    }

    private static String effect(EntryDifference d) {
        if (Double.isInfinite(d.mixturePercent())) {
            return "no fuel left";
        }
        return String.format(
                Locale.ROOT, "%.1f %% %s than meant", Math.abs(d.mixturePercent()), d.isLean() ? "leaner" : "richer");
    }

    private static Map<String, Object> asMap(CheckEntry.Outcome outcome, int code) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("command", "entry-check");
        map.put("exit", code);
        map.put("cells", outcome.meant().cells());
        map.put(
                "differences",
                outcome.differences().stream().map(d -> one(outcome.meant(), d)).toList());
        return map;
    }

    private static Map<String, Object> one(Table table, EntryDifference d) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("engineSpeedRpm", table.speedAt(d.cell()));
        map.put("load", table.loadAt(d.cell()));
        map.put("meant", d.meant());
        map.put("typed", d.typed());
        map.put("mixturePercent", Json.number(d.mixturePercent()));
        map.put("lean", d.isLean());
        map.put("highLoad", d.place() == EntryDifference.Place.HIGH_LOAD);
        map.put("place", d.place().words());
        map.put("stop", d.isStop());
        map.put("slip", d.slip().words());
        map.put("detail", d.detail());
        return map;
    }

    private static String figure(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
