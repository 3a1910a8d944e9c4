package fuelwright;

import fuelwright.cli.CommandLineTool;
import fuelwright.cli.Exit;
import fuelwright.ui.WindowApp;
import java.io.PrintWriter;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;

/** Opens the window, or does without one. */
final class Start {

    /** Where the sample job goes when there is no window; its own to replace. */
    static final String SAMPLE_OUTPUT = "target/sample-output";

    /** Kept, as a logger that nobody keeps loses its level. */
    private static final Logger TOOLKIT = Logger.getLogger("javafx");

    private Start() {}

    /** @return the exit code: 0 also where there is no window, so that a build that runs the program doesn't fail */
    static int window(PrintWriter out, PrintWriter err) {
        Optional<String> missing = Display.whatIsMissing();
        if (missing.isEmpty()) {
            missing = open();
        }
        if (missing.isEmpty()) {
            return Exit.DONE;
        }
        out.println(missing.get() + ", so the sample job runs without a window, into " + SAMPLE_OUTPUT + ".");
        int code = CommandLineTool.run(new String[] {"demo", "--out", SAMPLE_OUTPUT, "--replace"}, out, err);
        return code == Exit.STOP ? Exit.DONE : code;
    }

    /** Opens the window and waits until it is closed; says why if the toolkit doesn't start. */
    private static Optional<String> open() {
        Level before = TOOLKIT.getLevel();
        // The toolkit warns about being on the class path, where 'java -jar' must have it; it works there.
        TOOLKIT.setFilter(
                record -> !String.valueOf(record.getMessage()).startsWith("Unsupported JavaFX configuration"));
        try {
            WindowApp.open(new String[0]);
            return Optional.empty();
        } catch (UnsupportedOperationException | UnsatisfiedLinkError | NoClassDefFoundError e) {
            return Optional.of("The display can't be opened");
        } finally {
            TOOLKIT.setLevel(before);
        }
    }
}
