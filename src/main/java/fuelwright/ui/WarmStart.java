package fuelwright.ui;

import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import java.io.IOException;
import java.net.URI;
import javafx.css.CssParser;

/** Loads, on a thread of its own while the toolkit starts, what the window needs in any case. Nothing depends on it but the time. */
final class WarmStart {

    private WarmStart() {}

    static void begin() {
        Thread thread = new Thread(WarmStart::touch, "fuelwright-warm");
        thread.setDaemon(true);
        thread.start();
    }

    private static void touch() {
        WorkServices.ofUser().state().recentJobs();
        Words.of("app.name");
        Theme.LIGHT.palette();
        try {
            new CssParser()
                    .parse(URI.create(Theme.class
                                    .getResource(Theme.LIGHT.colourFile())
                                    .toExternalForm())
                            .toURL());
        } catch (IOException e) {
            return; // the window will say so
        }
    }
}
