package fuelwright.cli;

import java.nio.file.Path;
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

    @Mixin
    private OutputOptions output;

    @Mixin
    private BodyOptions bodies;

    @Option(names = "--json", description = "the summary as JSON")
    private boolean json;

    @Override
    public Integer call() {
        bodies.machineWithBodies();
        throw CommandFailed.input("The bore forecast isn't there yet. Nothing was written");
    }
}
