package fuelwright.cli;

import fuelwright.work.WorkException;
import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command line's top: parses arguments, runs a command, turns every failure into one clear message and an exit code. */
@Command(
        name = "fuelwright",
        description =
                "Corrects an engine's fuel table from wideband rides. Without arguments, or with files alone: the window.",
        version = "fuelwright 0.1.0",
        mixinStandardHelpOptions = true,
        synopsisSubcommandLabel = "COMMAND",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "1:entry-check found a difference",
            "2:wrong usage",
            "3:an input can't be used, or an output can't be written",
            "4:done, with at least one Stop caution"
        },
        subcommands = {
            ProposeCommand.class,
            FirstRideCommand.class,
            InspectCommand.class,
            EntryCheckCommand.class,
            PullsCommand.class,
            RecordsCommand.class,
            DemoCommand.class
        })
public final class CommandLineTool implements Runnable {

    @Spec
    private CommandSpec spec;

    /** Made by {@link #run} only. */
    CommandLineTool() {}

    /**
     * Runs one command line.
     *
     * @param args command and options
     * @param out for the summary
     * @param err for cautions, remarks and failures
     * @return the exit code, see {@link Exit}
     */
    public static int run(String[] args, PrintWriter out, PrintWriter err) {
        CommandLine line = new CommandLine(new CommandLineTool());
        line.setOut(out);
        line.setErr(err);
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setUsageHelpAutoWidth(false);
        line.setExpandAtFiles(false);
        line.setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
        line.setParameterExceptionHandler((failure, arguments) -> usage(failure, err));
        line.setExecutionExceptionHandler((failure, command, parsed) -> failed(failure, err));
        int code = execute(line, args, err);
        out.flush();
        err.flush();
        return code;
    }

    private static int execute(CommandLine line, String[] args, PrintWriter err) {
        try {
            return line.execute(args);
        } catch (OutOfMemoryError e) {
            err.println(
                    "There isn't enough memory for this. Nothing was written: start Java with more, for instance java -Xmx4g");
            return Exit.INPUT;
        }
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Which command?");
    }

    private static int usage(ParameterException failure, PrintWriter err) {
        CommandLine command = failure.getCommandLine();
        String message = failure.getMessage().strip();
        err.println(message + (message.endsWith(".") || message.endsWith("?") ? "" : ".") + " See: "
                + command.getCommandSpec().qualifiedName() + " --help");
        return Exit.USAGE;
    }

    private static int failed(Throwable failure, PrintWriter err) {
        if (failure instanceof CommandFailed known) {
            err.println(known.getMessage());
            return known.code();
        }
        if (failure instanceof WorkException environment) {
            err.println(environment.getMessage());
            return environment.alreadyThere() ? Exit.USAGE : Exit.INPUT;
        }
        String detail = failure.getMessage() == null ? "" : ": " + failure.getMessage();
        err.println("Fuelwright has a fault of its own (" + failure.getClass().getSimpleName() + detail
                + "). Nothing was written; please report it with the command that you gave");
        return Exit.INPUT;
    }
}
