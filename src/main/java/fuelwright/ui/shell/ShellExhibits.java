package fuelwright.ui.shell;

import fuelwright.issue.Issue;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.theme.Exhibit;
import fuelwright.work.StateFolder;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.layout.Region;

/** What stands around the stages, in every state. */
public final class ShellExhibits {

    private static final double WIDE = 720;
    private static final double TALL = 420;
    private static final List<Action> ACTIONS = List.of(
            new Action("Go to Rides", new KeyCodeCombination(KeyCode.DIGIT3, KeyCombination.SHORTCUT_DOWN), () -> {}),
            new Action("Undo", new KeyCodeCombination(KeyCode.Z, KeyCombination.SHORTCUT_DOWN), () -> {}),
            new Action("Save a picture", (KeyCombination) null, () -> {}));

    private final Supplier<Session> sessions;
    private final List<Exhibit> all = new ArrayList<>();

    private ShellExhibits(Supplier<Session> sessions) {
        this.sessions = sessions;
    }

    /** @param sessions gives a session with an empty job each time */
    public static List<Exhibit> all(Supplier<Session> sessions) {
        ShellExhibits shell = new ShellExhibits(sessions);
        shell.frame();
        shell.strips();
        shell.overlays();
        return shell.all;
    }

    private Session session(Consumer<Session> change) {
        Session session = sessions.get();
        change.accept(session);
        return session;
    }

    private void add(String control, String state, Region node, double width, double height) {
        all.add(new Exhibit(control, state, node, width, height));
    }

    private void frame() {
        for (Stage stage : Stage.values()) {
            add(
                    "Rail",
                    stage.words(),
                    new Rail(session(s -> s.stageProperty().set(stage)), () -> {}, () -> {}),
                    160,
                    620);
        }
        add("NextBox", "empty job", new NextBox(sessions.get(), () -> {}, () -> {}), 160, 0);
        add("TopBar", "empty job, lambda", new TopBar(sessions.get(), () -> {}, () -> {}, () -> {}, () -> {}), WIDE, 0);
        add(
                "TopBar",
                "AFR",
                new TopBar(session(s -> s.afrProperty().set(true)), () -> {}, () -> {}, () -> {}, () -> {}),
                WIDE,
                0);
        add("ViewMenu", "closed", new ViewMenu(sessions.get()), 0, 0);
        add("StatusLine", "empty job", new StatusLine(sessions.get()), WIDE, 0);
    }

    private void strips() {
        Issue warning = Issue.warning("ride.csv", 12, 3, "a figure is missing", "it is left out");
        Issue error = Issue.error("ride.csv", 12, 3, "this isn't a log", "open a CSV file");
        issues("one warning", List.of(warning));
        issues("one error", List.of(error));
        issues("five", List.of(error, warning, warning, warning, warning));
        for (boolean first : new boolean[] {false, true}) {
            for (boolean working : new boolean[] {true, false}) {
                add(
                        "StaleNote",
                        (first ? "first answer, " : "") + (working ? "working it out anew" : "cancelled"),
                        new StaleNote(
                                new SimpleBooleanProperty(true),
                                new SimpleBooleanProperty(working),
                                new SimpleObjectProperty<>(Stage.PROPOSAL),
                                new SimpleBooleanProperty(first),
                                () -> {}),
                        0,
                        0);
            }
        }
        StateFolder.Left left =
                new StateFolder.Left(Path.of("copy"), "V-twin with bigger throttle bodies", Optional.empty());
        recovery("one job", List.of(left));
        recovery("three jobs", List.of(left, left, left));
    }

    private void issues(String state, List<Issue> issues) {
        add("IssueStrip", state, new IssueStrip(session(s -> s.issues().setAll(issues))), WIDE, 0);
    }

    private void recovery(String state, List<StateFolder.Left> left) {
        add("RecoveryBar", state, new RecoveryBar(new ArrayDeque<>(left), (l, then) -> {}, l -> {}), WIDE, 0);
    }

    private void overlays() {
        ActionFinder finder = new ActionFinder(ACTIONS);
        finder.show();
        add("ActionFinder", "all actions", finder, WIDE, TALL);
        KeyList keys = new KeyList(ACTIONS);
        keys.show();
        add("KeyList", "shown", keys, WIDE, TALL);
        Tour tour = new Tour(sessions.get());
        tour.begin();
        add("Tour", "first stop", tour, WIDE, 0);
    }
}
