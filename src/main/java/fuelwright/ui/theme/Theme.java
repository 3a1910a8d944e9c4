package fuelwright.ui.theme;

import atlantafx.base.theme.PrimerDark;
import atlantafx.base.theme.PrimerLight;
import java.util.List;
import javafx.scene.Scene;

/** The two looks of the window. Colours are named by role in one file each; everything drawn asks for a role, never for a colour. */
public enum Theme {
    LIGHT,
    DARK;

    private static final String FOLDER = "/fuelwright/ui/";

    private Palette palette;

    /** The file that names this theme's colours. */
    public String colourFile() {
        return FOLDER + (this == LIGHT ? "theme-light.css" : "theme-dark.css");
    }

    /** The colours by role, as the colour file has them. */
    public Palette palette() {
        if (palette == null) {
            palette = Palette.read(colourFile());
        }
        return palette;
    }

    public Theme other() {
        return this == LIGHT ? DARK : LIGHT;
    }

    /** The stylesheet under everything, for {@code Application.setUserAgentStylesheet}. */
    public String base() {
        return this == LIGHT ? new PrimerLight().getUserAgentStylesheet() : new PrimerDark().getUserAgentStylesheet();
    }

    /** Puts this theme on a scene. */
    public void applyTo(Scene scene) {
        scene.setFill(palette().surface());
        scene.getStylesheets()
                .setAll(List.of(
                        Theme.class.getResource(colourFile()).toExternalForm(),
                        Theme.class.getResource(FOLDER + "window.css").toExternalForm()));
    }
}
