package fuelwright.ui.shell;

import fuelwright.ui.session.RefusedLogs;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.session.StageState;
import fuelwright.ui.session.Unsettled;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The seven stages, each with its state by shape, word and colour. */
final class Rail extends VBox {

    private final Session session;
    private final Map<Stage, Button> items = new EnumMap<>(Stage.class);
    private final Map<Stage, Label> marks = new EnumMap<>(Stage.class);
    private final Map<Stage, Label> words = new EnumMap<>(Stage.class);

    private final Runnable home;
    private final VBox also = new VBox(Parts.label(Words.of("rail.also"), "rail-word"));
    private boolean covered;

    /**
     * @param home takes away what lies over the stages
     * @param open asks for files
     */
    Rail(Session session, Runnable home, Runnable open) {
        this.session = session;
        this.home = home;
        getStyleClass().add("rail");
        VBox list = new VBox(4);
        for (Stage stage : Stage.values()) {
            list.getChildren().add(item(stage));
        }
        list.getChildren().add(also);
        ScrollPane scroll = Parts.scroll(list);
        scroll.setFocusTraversable(false);
        scroll.setMinHeight(0);
        VBox.setVgrow(scroll, Priority.ALWAYS);
        setMinHeight(0);
        NextBox next = new NextBox(session, home, open);
        next.setMinHeight(USE_PREF_SIZE);
        getChildren().addAll(scroll, next);
        session.stageProperty().addListener((p, old, now) -> refresh());
        session.jobProperty().addListener((p, old, now) -> refresh());
        session.analysisProperty().addListener((p, old, now) -> refresh());
        session.workingProperty().addListener((p, old, now) -> refresh());
        session.outputs().handedOverProperty().addListener((p, old, now) -> refresh());
        session.outputs().mistypedProperty().addListener((p, old, now) -> refresh());
        session.question().waitingProperty().addListener((p, old, now) -> refresh());
        session.refusalProperty().addListener((p, old, now) -> refresh());
        session.refused().all().addListener((ListChangeListener<RefusedLogs.Refused>) c -> refresh());
        Parts.show(also, false);
        refresh();
    }

    /** Names a page beside the stages. */
    void addPage(String name, Runnable open) {
        // In the rail its first words are enough.
        Button page = new Button(name.split("[:,]")[0]);
        page.setTooltip(new Tooltip(name));
        page.setAccessibleText(name);
        page.getStyleClass().setAll("rail-page");
        page.setMaxWidth(Double.MAX_VALUE);
        page.setWrapText(true);
        page.setMinHeight(USE_PREF_SIZE);
        page.setOnAction(e -> {
            home.run();
            open.run();
        });
        also.getChildren().add(page);
        Parts.show(also, true);
    }

    private Button item(Stage stage) {
        Label badge = Parts.label(Integer.toString(stage.number()), "rail-badge");
        Label word = Parts.label("", "rail-word");
        VBox text = new VBox(1, Parts.label(stage.words(), "rail-name"), word);
        text.setAlignment(javafx.geometry.Pos.CENTER_LEFT);
        Label mark = Parts.label("", "rail-mark");
        HBox.setHgrow(text, Priority.ALWAYS);
        text.setMaxWidth(Double.MAX_VALUE);
        mark.setMinWidth(USE_PREF_SIZE);
        HBox content = Parts.row(8, badge, text, mark);
        Button button = new Button();
        button.setGraphic(content);
        button.setMaxWidth(Double.MAX_VALUE);
        button.setPrefHeight(46);
        button.getStyleClass().setAll("rail-item");
        button.setId("rail-" + stage.number());
        button.setOnAction(e -> {
            home.run();
            session.stageProperty().set(stage);
        });
        items.put(stage, button);
        marks.put(stage, mark);
        words.put(stage, word);
        return button;
    }

    /** @param over whether a page lies over the stages: then none of them is where one is */
    void cover(boolean over) {
        covered = over;
        refresh();
    }

    /** Gives the keyboard to a stage's item. */
    void focus(Stage stage) {
        items.get(stage).requestFocus();
    }

    private void refresh() {
        for (Stage stage : Stage.values()) {
            Optional<String> waits = Unsettled.of(stage, session);
            StageState state = state(stage, waits);
            boolean chosen = !covered && session.stageProperty().get() == stage;
            Button item = items.get(stage);
            item.getStyleClass().setAll("rail-item", state.style());
            if (chosen) {
                item.getStyleClass().add("chosen");
            }
            String word = word(state, waits);
            marks.get(stage).setText(mark(state));
            Parts.show(marks.get(stage), !mark(state).isEmpty());
            words.get(stage).setText(word);
            Parts.show(words.get(stage), !word.isEmpty());
            item.setAccessibleText(
                    Words.of("rail.item", stage.number(), stage.words(), word.isEmpty() ? state.words() : word));
        }
    }

    private StageState state(Stage stage, Optional<String> waits) {
        boolean handed = session.outputs().isHandedOver() && !session.outputs().isMistyped();
        StageState state = StageState.of(
                stage,
                session.job(),
                session.analysis(),
                session.workingProperty().get(),
                handed);
        return state == StageState.DONE && waits.isPresent()
                        || stage == Stage.RIDES && waits.isPresent() && state == StageState.EMPTY
                ? StageState.NEEDS_YOU
                : state;
    }

    private static String mark(StageState state) {
        return state == StageState.DONE ? "✓" : state == StageState.STOP ? "!" : "";
    }

    /** What it waits for is named rather than that it waits. */
    private String word(StageState state, Optional<String> waits) {
        if (state == StageState.STOP) {
            return Words.of("rail.stops", session.analysis().stops().size());
        }
        if (state == StageState.NEEDS_YOU) {
            return waits.orElse(state.words());
        }
        return state == StageState.DONE ? "" : state.words();
    }
}
