package fuelwright.ui.shell;

import fuelwright.ui.session.NextStep;
import fuelwright.ui.session.RefusedLogs;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.List;
import java.util.Optional;
import javafx.beans.value.ObservableValue;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/** The next step, at the foot of the rail. */
final class NextBox extends VBox {

    private final Session session;
    private final Button go = new Button();

    /**
     * @param home takes away what lies over the stages
     * @param open asks for files
     */
    NextBox(Session session, Runnable home, Runnable open) {
        super(4);
        this.session = session;
        Label title = Parts.label(Words.of("next.title"), "rail-word");
        go.getStyleClass().setAll("rail-next");
        go.setWrapText(true);
        go.setMaxWidth(Double.MAX_VALUE);
        go.setMinHeight(USE_PREF_SIZE);
        go.setId("next-step");
        go.setOnAction(e -> {
            home.run();
            NextStep.of(session).ifPresent(s -> s.go(session, open));
        });
        getChildren().addAll(title, go);
        setStyle("-fx-padding: 0 4 4 4;");
        List<ObservableValue<?>> watched = List.of(
                session.jobProperty(),
                session.analysisProperty(),
                session.staleProperty(),
                session.refusalProperty(),
                session.workingProperty(),
                session.stageProperty(),
                session.outputs().handedOverProperty(),
                session.outputs().checkedProperty(),
                session.outputs().firstWrittenProperty(),
                session.question().waitingProperty());
        session.refused().all().addListener((ListChangeListener<RefusedLogs.Refused>) c -> refresh());
        watched.forEach(v -> v.addListener((p, old, now) -> refresh()));
        refresh();
    }

    private void refresh() {
        Optional<NextStep> step = NextStep.of(session);
        setVisible(step.isPresent());
        step.ifPresent(s -> {
            go.setText(s.words());
            go.setAccessibleText(Words.of("next.words", s.words()));
        });
    }
}
