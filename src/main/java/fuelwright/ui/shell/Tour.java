package fuelwright.ui.shell;

import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/**
 * A short guide through the stages, on the sample job or on one's own. A card over the work, which stays usable; can be left at any
 * time.
 */
final class Tour extends VBox {

    private static final Stage[] STOPS = Stage.values();

    private final Session session;
    private final Label title = Parts.text("", "section");
    private final Label text = Parts.text("");
    private final Label count = Parts.label("", "muted", "small");
    private final Button back = Parts.button("tour.back", () -> go(-1), "compact");
    private final Button next = Parts.button("tour.next", () -> go(1), "compact", "primary");
    private int at;

    Tour(Session session) {
        super(8);
        this.session = session;
        getStyleClass().addAll("finder", "tour");
        setId("tour");
        setMaxSize(560, USE_PREF_SIZE);
        StackPane.setAlignment(this, Pos.BOTTOM_LEFT);
        StackPane.setMargin(this, new Insets(0, 0, 56, 172));
        Button leave = Parts.button("tour.leave", this::leave, "compact");
        leave.setId("tour-leave");
        next.setId("tour-next");
        getChildren().addAll(title, text, Parts.row(8, count, Parts.gap(), leave, back, next));
        addEventFilter(KeyEvent.KEY_PRESSED, e -> {
            if (e.getCode() == KeyCode.ESCAPE) {
                leave();
                e.consume();
            }
        });
        Parts.show(this, false);
    }

    /** Begins at the first stage. */
    void begin() {
        at = 0;
        Parts.show(this, true);
        tell();
    }

    private void go(int step) {
        at += step;
        if (at >= STOPS.length) {
            leave();
        } else {
            tell();
        }
    }

    private void tell() {
        Stage stage = STOPS[at];
        session.stageProperty().set(stage);
        String key = "tour." + stage.name().toLowerCase(java.util.Locale.ROOT);
        title.setText(stage.number() + " · " + stage.words());
        text.setText(Words.of(key));
        count.setText(Words.of("tour.count", at + 1, STOPS.length));
        back.setDisable(at == 0);
        next.setText(Words.of(at == STOPS.length - 1 ? "tour.end" : "tour.next"));
        next.requestFocus();
    }

    private void leave() {
        Parts.show(this, false);
    }
}
