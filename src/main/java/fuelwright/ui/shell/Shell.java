package fuelwright.ui.shell;

import fuelwright.issue.Issue;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.OverPage;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.TextSize;
import fuelwright.ui.theme.Words;
import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javafx.beans.binding.StringBinding;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.input.InputEvent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The whole window: frame, stages, keys, dropped files. */
public final class Shell {

    private static final double RAIL_MARKS = 80;
    private static final double RAIL_WORDS = 80;
    private static final double EXPLANATION_WIDTH = 324;
    private static final double WIDE_EXPLANATION_WIDTH = 420;
    private static final double WIDE_WINDOW = 1600;
    private static final double EXPLANATION_SHARE = 0.33;

    private final Session session;
    private final Map<Stage, Supplier<StagePane>> makers;
    private final Map<Stage, StagePane> panes = new EnumMap<>(Stage.class);
    private final StackPane work = new StackPane();
    private final StackPane explanation = new StackPane();
    private final StackPane place = new StackPane(work);
    private final BorderPane frame = new BorderPane();
    private final StackPane root = new StackPane(frame);
    private final List<Action> actions = new ArrayList<>();
    private final ActionFinder finder;
    private final KeyList keys;
    private final Tour tour;
    private final Rail rail;
    private final TopBar top;
    private final JobActions jobActions;
    private final Scene scene;
    /** What had the keyboard before nothing had. */
    private Node lost;
    /** Whether what had the keyboard went away and nobody has touched anything since. */
    private boolean went;

    /** @param makers what makes each stage's pane, called when it is first shown */
    public Shell(Session session, Map<Stage, Supplier<StagePane>> makers) {
        this.session = session;
        this.makers = makers;
        rail = new Rail(session, this::leavePages, this::chooseFiles);
        jobActions = new JobActions(session, root);
        collectActions();
        finder = new ActionFinder(actions);
        keys = new KeyList(actions);
        tour = new Tour(session);
        root.getChildren().addAll(tour, finder, keys);
        root.setStyle("-fx-font-family: \"" + Fonts.family() + "\";");
        explanation.getStyleClass().add("explanation");
        StaleNote note = new StaleNote(session);
        StackPane.setAlignment(note, Pos.TOP_RIGHT);
        StackPane.setMargin(note, new Insets(16));
        place.getChildren().add(note);
        VBox middle = new VBox(new RecoveryBar(session.desk()), new IssueStrip(session), place);
        VBox.setVgrow(place, javafx.scene.layout.Priority.ALWAYS);
        // Where there is too little room the work is cut short, not the bars around it.
        place.setMinSize(0, 0);
        work.setAlignment(Pos.TOP_LEFT);
        middle.setMinSize(0, 0);
        top = new TopBar(session, finder::show, jobActions::startNew, this::chooseFiles, jobActions::save);
        frame.setTop(top);
        frame.setLeft(rail);
        frame.setCenter(middle);
        frame.setRight(explanation);
        frame.setBottom(new StatusLine(session));
        scene = new Scene(root, 1280, 800);
        looks();
        session.themeProperty().addListener((p, old, now) -> theme());
        session.textSizeProperty().addListener((p, old, now) -> looks());
        session.stageProperty().addListener((p, old, now) -> enter(now));
        scene.widthProperty().addListener((p, old, now) -> explain());
        accelerators();
        drops();
        enter(session.stageProperty().get());
        scene.focusOwnerProperty().addListener((p, old, now) -> keepOnStage(old, now));
        scene.addEventFilter(InputEvent.ANY, e -> went = false);
    }

    /** What had the keyboard may go away, such as the button of an empty stage: the keyboard then stays on the stage. */
    private void keepOnStage(Node old, Node now) {
        if (now == null) {
            lost = old;
            if (old != null && !canBeUsed(old)) {
                went = true;
                focusStage();
            }
            return;
        }
        Node before = old == null ? lost : old;
        lost = null;
        // The scene itself then looks for the first button there is.
        if (within(now, top) && (went || before != null && !canBeUsed(before))) {
            went = false;
            focusStage();
        }
    }

    private static boolean canBeUsed(Node node) {
        return isSeen(node) && !node.isDisabled();
    }

    private static boolean isSeen(Node node) {
        Node at = node;
        while (at != null && at.isVisible() && at.getParent() != null) {
            at = at.getParent();
        }
        return at != null && at.isVisible() && node.getScene() != null;
    }

    private static boolean within(Node node, Node whole) {
        Node at = node;
        while (at != null && at != whole) {
            at = at.getParent();
        }
        return at != null;
    }

    /**
     * Adds a page that lies over work area and explanation.
     *
     * @param name what opening it is called among the actions
     */
    public void addPage(String name, OverPage page) {
        place.getChildren().add(page);
        page.visibleProperty().addListener((p, old, now) -> {
            boolean covered = pages().anyMatch(OverPage::isVisible);
            // What is explained on the right is the stage below.
            frame.setRight(covered ? null : explanation);
            rail.cover(covered);
        });
        action(name, (KeyCombination) null, page::open);
        rail.addPage(name, page::open);
    }

    private Stream<OverPage> pages() {
        return place.getChildren().stream().filter(OverPage.class::isInstance).map(OverPage.class::cast);
    }

    private void leavePages() {
        pages().filter(OverPage::isVisible).toList().forEach(OverPage::leave);
    }

    public Scene scene() {
        return scene;
    }

    private void theme() {
        javafx.application.Application.setUserAgentStylesheet(
                session.themeProperty().get().base());
        looks();
    }

    private void looks() {
        TextSize size = session.textSizeProperty().get();
        Fonts.use(size);
        session.themeProperty().get().applyTo(scene, size);
        double railWidth = RAIL_MARKS + Fonts.grown(RAIL_WORDS);
        rail.setMinWidth(railWidth);
        rail.setPrefWidth(railWidth);
        explain();
    }

    /** The explanation grows with text, but leaves the work most of the window. */
    private void explain() {
        double least = scene.getWidth() >= WIDE_WINDOW ? WIDE_EXPLANATION_WIDTH : EXPLANATION_WIDTH;
        double width = Math.max(least, Math.min(Fonts.grown(least), EXPLANATION_SHARE * scene.getWidth()));
        explanation.setMinWidth(width);
        explanation.setMaxWidth(width);
    }

    private void enter(Stage stage) {
        StagePane pane = panes.computeIfAbsent(stage, s -> makers.get(s).get());
        work.getChildren().setAll(pane.work());
        explanation.getChildren().setAll(pane.explanation());
        focusStage();
    }

    /** Gives the keyboard to what is worked with on the open stage. */
    public void focusStage() {
        Stage stage = session.stageProperty().get();
        Node first = panes.get(stage).first();
        if (first.isFocusTraversable() && isSeen(first)) {
            first.requestFocus();
        } else {
            rail.focus(stage);
        }
    }

    private void collectActions() {
        for (Stage stage : Stage.values()) {
            action(
                    Words.of("action.goto", stage.words()),
                    new KeyCodeCombination(KeyCode.valueOf("DIGIT" + stage.number()), KeyCombination.SHORTCUT_DOWN),
                    () -> {
                        leavePages();
                        session.stageProperty().set(stage);
                    });
        }
        action("action.open", KeyCode.O, this::chooseFiles);
        jobActions.addTo(actions);
        action("action.undo", KeyCode.Z, session::undo);
        action("action.redo", KeyCode.Y, session::redo);
        action(
                "action.theme",
                KeyCode.T,
                () -> session.themeProperty().set(session.themeProperty().get().next()));
        action(
                Words.of("action.larger"),
                new KeyCodeCombination(KeyCode.EQUALS, KeyCombination.SHORTCUT_DOWN),
                () -> session.textSizeProperty()
                        .set(session.textSizeProperty().get().larger()));
        action(
                Words.of("action.smaller"),
                new KeyCodeCombination(KeyCode.MINUS, KeyCombination.SHORTCUT_DOWN),
                () -> session.textSizeProperty()
                        .set(session.textSizeProperty().get().smaller()));
        action(
                "action.notation",
                KeyCode.L,
                () -> session.afrProperty().set(!session.afrProperty().get()));
        action(
                Words.of("action.measures"),
                (KeyCombination) null,
                () -> session.measuresProperty()
                        .set(session.measuresProperty().get().other()));
        action(Words.of("action.leanest"), (KeyCombination) null, this::goToLeanest);
        action("action.new", KeyCode.N, jobActions::startNew);
        action(Words.of("action.sample"), (KeyCombination) null, jobActions::openSample);
        action(Words.of("action.cancel"), (KeyCombination) null, session::cancel);
        action(Words.of("action.picture.save"), (KeyCombination) null, this::savePicture);
        action(
                Words.of("action.picture.copy"),
                (KeyCombination) null,
                () -> picture().ifPresent(Picture::copy));
        for (PageAction page : PageAction.list()) {
            action(page.name(), (KeyCombination) null, () -> {
                leavePages();
                session.stageProperty().set(page.stage());
                page.press(panes.get(page.stage()));
            });
        }
        action(Words.of("action.tour"), (KeyCombination) null, this::beginTour);
        action(Words.of("action.keys"), new KeyCodeCombination(KeyCode.F1), () -> keys.show());
    }

    private void action(String key, KeyCode code, Runnable run) {
        action(Words.of(key), new KeyCodeCombination(code, KeyCombination.SHORTCUT_DOWN), run);
    }

    private void action(String name, KeyCombination keys, Runnable run) {
        actions.add(new Action(name, keys, run));
    }

    private void accelerators() {
        for (Action action : actions) {
            if (action.keys() != null) {
                scene.getAccelerators().put(action.keys(), action.run());
            }
        }
        scene.getAccelerators().put(new KeyCodeCombination(KeyCode.K, KeyCombination.SHORTCUT_DOWN), finder::show);
    }

    private void goToLeanest() {
        leavePages();
        session.stageProperty().set(Stage.PROPOSAL);
        session.selection().selectLeanest(session.analysis());
    }

    private void chooseFiles() {
        AskFiles.choose(root, session::open);
    }

    private Optional<Picture> picture() {
        return Picture.of(work, session.themeProperty().get(), session.outputs().stops());
    }

    private void savePicture() {
        picture()
                .ifPresent(picture -> AskFiles.picture(
                        root, session.stageProperty().get().words(), file -> write(picture.take(file), file)));
    }

    private void write(Picture.Taken taken, Path file) {
        session.look("look-picture", (p, c) -> written(taken), ok -> {
            if (!ok) {
                session.issues()
                        .add(Issue.error(
                                String.valueOf(file.getFileName()),
                                0,
                                0,
                                Words.of("picture.failed"),
                                Words.of("picture.failed.todo")));
            }
        });
    }

    private static boolean written(Picture.Taken picture) {
        try {
            picture.write();
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    private void drops() {
        root.setOnDragOver(e -> {
            if (e.getDragboard().hasFiles()) {
                e.acceptTransferModes(TransferMode.COPY);
            }
            e.consume();
        });
        root.setOnDragEntered(e -> {
            if (e.getDragboard().hasFiles()) {
                mark(frame, true);
            }
        });
        root.setOnDragExited(e -> mark(frame, false));
        root.setOnDragDropped(e -> {
            List<Path> files =
                    e.getDragboard().getFiles().stream().map(File::toPath).toList();
            if (!files.isEmpty()) {
                session.open(files);
            }
            e.setDropCompleted(!files.isEmpty());
            e.consume();
        });
    }

    private static void mark(Node node, boolean marked) {
        node.getStyleClass().remove("drop-target");
        if (marked) {
            node.getStyleClass().add("drop-target");
        }
    }

    /** Begins the guide through the stages. */
    public void beginTour() {
        tour.begin();
    }

    /** The window's title. */
    public StringBinding title() {
        return jobActions.title();
    }

    /**
     * Whether the window may close now; asks where something isn't saved.
     *
     * @param later closes it, once what the user wants to be saved is saved
     */
    public boolean mayClose(Runnable later) {
        return jobActions.mayClose(later);
    }

    /** The root, for tests that look for nodes. */
    public Parent root() {
        return root;
    }
}
