package fuelwright.ui.shell;

import fuelwright.ui.session.Runner;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Measures;
import fuelwright.ui.theme.TextSize;
import fuelwright.ui.theme.Theme;
import fuelwright.work.StateFolder;
import java.time.Duration;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import javafx.beans.property.Property;
import javafx.stage.Screen;
import javafx.stage.Stage;

/** How the window was left: found again at the next start. What was kept wrongly, or by another version, is as if it weren't there. */
public final class Remembered {

    private static final String PLACE = "window";
    private static final Duration AFTER = Duration.ofMillis(300);
    /** The least of a window that must be on a screen for its place to be taken. */
    private static final double SEEN = 200;

    private final Session session;
    private final StateFolder state;
    /** What was changed a moment ago. */
    private final Map<String, String> waiting = new LinkedHashMap<>();

    public Remembered(Session session) {
        this.session = session;
        this.state = session.state();
    }

    /** Sets the session as it was left, and keeps what changes from now on. */
    public void follow() {
        follow("stage", session.stageProperty(), choice(fuelwright.ui.session.Stage.values()));
        follow("theme", session.themeProperty(), choice(Theme.values()));
        follow("textsize", session.textSizeProperty(), choice(TextSize.values()));
        follow("measures", session.measuresProperty(), choice(Measures.values()));
        follow("afr", session.afrProperty(), Remembered::yesOrNo);
    }

    private static <E extends Enum<E>> Function<String, Optional<E>> choice(E[] all) {
        return text -> Arrays.stream(all).filter(e -> e.name().equals(text)).findFirst();
    }

    private static Optional<Boolean> yesOrNo(String text) {
        return text.equals("true") || text.equals("false") ? Optional.of(Boolean.valueOf(text)) : Optional.empty();
    }

    private <T> void follow(String name, Property<T> property, Function<String, Optional<T>> read) {
        state.get(name).flatMap(read).ifPresent(property::setValue);
        property.addListener((p, old, now) -> {
            waiting.put(name, now.toString());
            session.look(
                    Runner.LOOK + "-remember-" + name,
                    AFTER,
                    (progress, cancellation) -> {
                        state.put(name, now.toString());
                        return now.toString();
                    },
                    kept -> waiting.remove(name, kept));
        });
    }

    /** Keeps what was changed a moment ago: the program ends. */
    public void keepNow() {
        waiting.forEach(state::put);
        waiting.clear();
    }

    /** Whether this is the first time that anybody sees the window; from now on it isn't. */
    public boolean isFirstTime() {
        boolean first = state.get("greeted").isEmpty();
        if (first) {
            state.put("greeted", "true");
        }
        return first;
    }

    /** Puts a window where it was; false where that isn't known or on no screen any more. */
    public boolean place(Stage window) {
        double[] at = state.get(PLACE).map(Remembered::figures).orElse(new double[0]);
        if (at.length != 4
                || Screen.getScreensForRectangle(at[0], at[1], SEEN, SEEN).isEmpty()) {
            return false;
        }
        window.setX(at[0]);
        window.setY(at[1]);
        window.setWidth(at[2]);
        window.setHeight(at[3]);
        return true;
    }

    /** Keeps where a window is; nothing for one that fills the screen, as it does by itself. */
    public void leave(Stage window) {
        state.put(
                PLACE,
                window.isMaximized()
                        ? ""
                        : window.getX() + " " + window.getY() + " " + window.getWidth() + " " + window.getHeight());
    }

    private static double[] figures(String text) {
        try {
            double[] all = Arrays.stream(text.split(" "))
                    .mapToDouble(Double::parseDouble)
                    .toArray();
            return Arrays.stream(all).allMatch(Double::isFinite) ? all : new double[0];
        } catch (NumberFormatException e) {
            return new double[0];
        }
    }
}
