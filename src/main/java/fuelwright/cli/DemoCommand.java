package fuelwright.cli;

import fuelwright.work.SampleJob;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The sample job. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "The sample job, from files inside the program.")
final class DemoCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private OutputOptions output;

    @Option(names = "--pdf", description = "report and entry sheet as PDF too; takes some seconds")
    private boolean pdf;

    @Option(names = "--json", description = "the summary as JSON")
    private boolean json;

    @Override
    public Integer call() {
        return ProposeCommand.propose(spec, "demo", SampleJob.load(), false, output, pdf, json);
    }
}
