package fuelwright.ui.shell;

import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.session.StageState;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.EnumMap;
import java.util.Map;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/** The seven stages, each with its state by shape, word and colour. */
final class Rail extends VBox {

    private final Session session;
    private final Map<Stage, Button> items = new EnumMap<>(Stage.class);
    private final Map<Stage, Label> badges = new EnumMap<>(Stage.class);
    private final Map<Stage, Label> words = new EnumMap<>(Stage.class);

    private final Runnable home;
    private boolean covered;

    /** @param home takes away what lies over the stages */
    Rail(Session session, Runnable home) {
        this.session = session;
        this.home = home;
        getStyleClass().add("rail");
        for (Stage stage : Stage.values()) {
            getChildren().add(item(stage));
        }
        getChildren().addAll(Parts.gap(), new NextBox(session, home));
        session.stageProperty().addListener((p, old, now) -> refresh());
        session.jobProperty().addListener((p, old, now) -> refresh());
        session.analysisProperty().addListener((p, old, now) -> refresh());
        session.workingProperty().addListener((p, old, now) -> refresh());
        session.outputs().handedOverProperty().addListener((p, old, now) -> refresh());
        session.outputs().mistypedProperty().addListener((p, old, now) -> refresh());
        session.question().waitingProperty().addListener((p, old, now) -> refresh());
        refresh();
    }

    private Button item(Stage stage) {
        Label badge = Parts.label(Integer.toString(stage.number()), "rail-badge");
        Label word = Parts.label("", "rail-word");
        VBox text = new VBox(1, Parts.label(stage.words(), "rail-name"), word);
        text.setAlignment(javafx.geometry.Pos.CENTER_LEFT);
        HBox content = Parts.row(12, badge, text);
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
        badges.put(stage, badge);
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
        boolean handed = session.outputs().handedOverProperty().get() == session.job()
                && session.outputs().mistypedProperty().get() != session.job();
        for (Stage stage : Stage.values()) {
            StageState state = StageState.of(
                    stage,
                    session.job(),
                    session.analysis(),
                    session.workingProperty().get(),
                    handed);
            if (stage == Stage.RIDES
                    && !session.question().waitingProperty().get().isEmpty()) {
                state = StageState.NEEDS_YOU;
            }
            boolean chosen = !covered && session.stageProperty().get() == stage;
            Button item = items.get(stage);
            item.getStyleClass().setAll("rail-item", state.style());
            if (chosen) {
                item.getStyleClass().add("chosen");
            }
            badges.get(stage).setText(badge(stage, state));
            words.get(stage).setText(word(stage, state));
            Parts.show(words.get(stage), !words.get(stage).getText().isEmpty());
            item.setAccessibleText(Words.of("rail.item", stage.number(), stage.words(), state.words()));
        }
    }

    private static String badge(Stage stage, StageState state) {
        switch (state) {
            case DONE:
                return "✓";
            case STOP:
                return "!";
            default:
                return Integer.toString(stage.number());
        }
    }

    private String word(Stage stage, StageState state) {
        if (state == StageState.STOP) {
            return Words.of("rail.stops", session.analysis().stops().size());
        }
        return state == StageState.DONE ? "" : state.words();
    }
}
