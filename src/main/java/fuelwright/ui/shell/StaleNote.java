package fuelwright.ui.shell;

import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import javafx.beans.value.ObservableBooleanValue;
import javafx.beans.value.ObservableObjectValue;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/** Says over the work that its figures belong to the job before the last change, or are only a first answer; lies above it, so nothing moves. */
final class StaleNote extends HBox {

    private final ObservableBooleanValue stale;
    private final ObservableBooleanValue working;
    private final ObservableObjectValue<Stage> stage;
    private final ObservableBooleanValue first;
    private final Label words = Parts.label("", "strong");
    private final Button again;

    StaleNote(Session session) {
        this(
                session.staleProperty(),
                session.workingProperty(),
                session.stageProperty(),
                session.settlingProperty(),
                session::analyse);
    }

    /**
     * @param first whether what is shown is a first answer
     * @param anew has the figures worked out
     */
    StaleNote(
            ObservableBooleanValue stale,
            ObservableBooleanValue working,
            ObservableObjectValue<Stage> stage,
            ObservableBooleanValue first,
            Runnable anew) {
        super(8);
        this.stale = stale;
        this.working = working;
        this.stage = stage;
        this.first = first;
        again = Parts.button("stale.again", anew, "compact");
        getStyleClass().add("stale-note");
        setAlignment(Pos.CENTER_LEFT);
        setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
        getChildren().addAll(words, again);
        stale.addListener((p, old, now) -> refresh());
        working.addListener((p, old, now) -> refresh());
        stage.addListener((p, old, now) -> refresh());
        first.addListener((p, old, now) -> refresh());
        refresh();
    }

    private void refresh() {
        Parts.show(this, stale.get() && stage.get().compareTo(Stage.EVIDENCE) >= 0);
        Parts.show(again, !working.get());
        words.setText(Words.of((first.get() ? "stale.first." : "stale.") + (working.get() ? "working" : "cancelled")));
    }
}
