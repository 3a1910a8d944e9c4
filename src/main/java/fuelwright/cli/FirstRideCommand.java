package fuelwright.cli;

import fuelwright.airflow.Machine;
import fuelwright.issue.Loaded;
import fuelwright.job.FirstStart;
import fuelwright.safety.Caution;
import fuelwright.work.FirstRide;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The first-ride table. */
@Command(
        name = "first-ride",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "A table for the first ride with other throttle bodies, from the bore forecast.")
final class FirstRideCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Option(names = "--table", required = true, paramLabel = "F", description = "the fuel table in the control unit")
    private Path table;

    @Option(
            names = "--target",
            paramLabel = "F",
            description = "the target table, lambda or AFR: looked at for lean cells at high load")
    private Path target;

    @Mixin
    private TargetRatioOption targetRatio;

    @Option(
            names = "--afr-scale",
            hidden = true,
            paramLabel = "RATIO",
            description = "the older name of --target-ratio")
    private Double afrScale;

    @Mixin
    private OutputOptions output;

    @Mixin
    private BodyOptions bodies;

    @Mixin
    private DeadTimeOption deadTime;

    @Option(names = "--json", description = "the summary as JSON")
    private boolean json;

    private OptionalDouble ratio() {
        OptionalDouble old = ReadingOptions.ratio("--afr-scale", afrScale);
        OptionalDouble told = targetRatio.ratio();
        if (old.isPresent() && told.isPresent()) {
            throw CommandFailed.usage("--afr-scale is the older name of --target-ratio: give one of them");
        }
        return told.isPresent() ? told : old;
    }

    @Override
    public Integer call() {
        Machine machine = bodies.machineWithBodies();
        Loaded<FirstRide.Outcome> loaded =
                FirstRide.run(table, Optional.ofNullable(target), ratio(), machine, deadTime.ms());
        FirstRide.Outcome outcome = CommandFailed.valueOf(loaded);
        List<String> written = FirstRide.write(outcome, output.folder(), output.replace()).stream()
                .sorted()
                .toList();
        List<Caution> cautions = outcome.cautions();
        int exit = cautions.stream().anyMatch(Caution::isStop) ? Exit.STOP : Exit.DONE;
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            Map<String, Object> map = new LinkedHashMap<>();
            map.put("command", "first-ride");
            map.put("exit", exit);
            map.put("mostAddedPercent", outcome.mostAddedPercent());
            map.put("remark", outcome.remark());
            map.put(
                    "beforeFirstStart",
                    Arrays.stream(FirstStart.values()).map(FirstStart::words).toList());
            map.put("cautions", cautions.stream().map(Said::asMap).toList());
            map.put("remarks", loaded.issues().stream().map(Said::asMap).toList());
            map.put("folder", output.folder().toString());
            map.put("written", written);
            out.println(Json.write(map));
        } else {
            out.println(String.format(
                    Locale.ROOT,
                    "First-ride table: up to %.1f %% more fuel, none taken away",
                    outcome.mostAddedPercent()));
            out.println(outcome.remark());
            out.println("Before the first start: " + FirstStart.words(List.of(FirstStart.values())));
            out.println(Said.counts(cautions));
            out.println("Written to " + output.folder() + ": " + String.join(", ", written));
        }
        Said.remarks(loaded.issues(), spec.commandLine().getErr());
        Said.all(cautions, spec.commandLine().getErr());
        return exit;
    }
}
