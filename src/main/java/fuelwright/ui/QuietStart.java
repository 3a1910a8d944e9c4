package fuelwright.ui;

import java.util.logging.Logger;

/**
 * Keeps one line out of the log: JavaFX warns when it is loaded from the class path, as {@code java -jar} does, though it runs the same.
 * Nothing else is filtered.
 */
final class QuietStart {

    /** Held on to, or the logger and its filter would be collected. */
    private static final Logger TOOLKIT = Logger.getLogger("javafx");

    private QuietStart() {}

    static void apply() {
        TOOLKIT.setFilter(record ->
                record.getMessage() == null || !record.getMessage().startsWith("Unsupported JavaFX configuration"));
    }
}
