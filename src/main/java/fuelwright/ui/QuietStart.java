package fuelwright.ui;

import java.util.logging.Logger;

/**
 * What the toolkit must be told before it starts. One line is kept out of the log: JavaFX warns when it is loaded from the class path, as
 * {@code java -jar} does, though it runs the same; nothing else is filtered. And it always draws the whole window: drawing only what changed
 * left the old pane on the screen where a pane that scrolls got another content, and a figure of another ride or cell must not be read there.
 */
final class QuietStart {

    /** Held on to, or the logger and its filter would be collected. */
    private static final Logger TOOLKIT = Logger.getLogger("javafx");

    private QuietStart() {}

    static void apply() {
        System.setProperty("prism.dirtyopts", "false");
        TOOLKIT.setFilter(record ->
                record.getMessage() == null || !record.getMessage().startsWith("Unsupported JavaFX configuration"));
    }
}
