package fuelwright;

import fuelwright.cli.CommandLineTool;
import fuelwright.cli.Exit;
import fuelwright.ui.WindowApp;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Opens the window, or does without one. */
final class Start {

    /** Where the sample job goes when there is no window; its own to replace. */
    static final String SAMPLE_OUTPUT = "target/sample-output";

    static final String DEAD_DISPLAY = "The display that DISPLAY names can't be opened";

    private Start() {}

    /** Whether there are no arguments, only those of the window, or files to open in it. */
    static boolean isForWindow(String... args) {
        return args.length == 0 || WindowApp.isForWindow(args[0]) || isFile(args[0]);
    }

    private static boolean isFile(String argument) {
        try {
            return Files.isRegularFile(Path.of(argument));
        } catch (InvalidPathException e) {
            return false;
        }
    }

    /**
     * @return the exit code: 0 also where there is no window, so that a build that runs the program doesn't fail; that of a signal which
     *     ended the window
     */
    static int window(String[] args, PrintWriter out, PrintWriter err) {
        Optional<String> missing = Display.whatIsMissing();
        int code = Exit.DONE;
        if (missing.isEmpty()) {
            try {
                code = WindowApp.open(args);
            } catch (UnsupportedOperationException e) {
                missing = Optional.of(isOfLibrary(e) ? Display.NO_GTK : DEAD_DISPLAY);
            } catch (UnsatisfiedLinkError | NoClassDefFoundError e) {
                missing = Optional.of(Display.NO_GTK);
            }
        }
        if (missing.isEmpty()) {
            return code;
        }
        if (Arrays.stream(args).anyMatch(Start::isFile)) {
            err.println(missing.get()
                    + ", so files can't be opened in the window here. Without it: fuelwright propose --help");
            return Exit.INPUT;
        }
        out.println(missing.get() + ", so the sample job runs without a window, into " + SAMPLE_OUTPUT + ".");
        code = CommandLineTool.run(new String[] {"demo", "--out", SAMPLE_OUTPUT, "--replace"}, out, err);
        return code == Exit.STOP ? Exit.DONE : code;
    }

    /** Whether the toolkit doesn't start for want of a library. */
    private static boolean isOfLibrary(UnsupportedOperationException problem) {
        return String.valueOf(problem.getMessage()).toLowerCase(Locale.ROOT).contains("gtk");
    }
}
