package fuelwright.ui.theme;

import atlantafx.base.theme.PrimerDark;
import atlantafx.base.theme.PrimerLight;
import java.util.List;
import java.util.Locale;
import javafx.scene.Scene;

/** The looks of the window. Colours are named by role in one file each; everything drawn asks for a role, never for a colour. */
public enum Theme {
    LIGHT,
    DARK,
    /** On black, every text at 7:1 or better. */
    CONTRAST;

    private static final String FOLDER = "/fuelwright/ui/";

    private Palette palette;

    /** The file that names this theme's colours. */
    public String colourFile() {
        return FOLDER + "theme-" + key() + ".css";
    }

    /** The colours by role, as the colour file has them. */
    public Palette palette() {
        if (palette == null) {
            palette = Palette.read(colourFile());
        }
        return palette;
    }

    public String words() {
        return Words.of("theme." + key());
    }

    private String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The one that follows when one goes through them. */
    public Theme next() {
        return values()[(ordinal() + 1) % values().length];
    }

    /** The stylesheet under everything, for {@code Application.setUserAgentStylesheet}. */
    public String base() {
        return this == LIGHT ? new PrimerLight().getUserAgentStylesheet() : new PrimerDark().getUserAgentStylesheet();
    }

    /** Puts this theme on a scene. */
    public void applyTo(Scene scene, TextSize size) {
        scene.setFill(palette().surface());
        scene.getStylesheets()
                .setAll(List.of(
                        Theme.class.getResource(colourFile()).toExternalForm(),
                        size.stylesheet(FOLDER + "window.css")));
    }
}
