package fuelwright.ui.shell;

import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/** Says over the work that its figures belong to the job before the last change; lies above it, so nothing moves. */
final class StaleNote extends HBox {

    private final Session session;
    private final Label words = Parts.label("", "strong");
    private final Button again;

    StaleNote(Session session) {
        super(8);
        this.session = session;
        again = Parts.button("stale.again", session::analyse, "compact");
        getStyleClass().add("stale-note");
        setAlignment(Pos.CENTER_LEFT);
        setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
        getChildren().addAll(words, again);
        session.staleProperty().addListener((p, old, now) -> refresh());
        session.workingProperty().addListener((p, old, now) -> refresh());
        session.stageProperty().addListener((p, old, now) -> refresh());
        refresh();
    }

    private void refresh() {
        boolean working = session.workingProperty().get();
        Stage stage = session.stageProperty().get();
        Parts.show(this, session.staleProperty().get() && stage.compareTo(Stage.EVIDENCE) >= 0);
        Parts.show(again, !working);
        words.setText(Words.of(working ? "stale.working" : "stale.cancelled"));
    }
}
