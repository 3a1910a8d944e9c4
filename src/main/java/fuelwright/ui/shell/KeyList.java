package fuelwright.ui.shell;

import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.List;
import javafx.geometry.Insets;
import javafx.scene.control.Button;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** What can be done by key. Lies over the window until Escape is pressed. */
final class KeyList extends StackPane {

    private static final List<String> OTHERS = List.of(
            "keys.find",
            "keys.grid",
            "keys.block",
            "keys.edit",
            "keys.clipboard",
            "keys.form",
            "keys.moment",
            "keys.timeline",
            "keys.zoom",
            "keys.cross",
            "keys.marks");

    private final Button close = Parts.button("keys.close", this::hide, "compact");

    KeyList(List<Action> actions) {
        getStyleClass().add("veil");
        VBox list = new VBox();
        list.setPadding(new Insets(0, 12, 0, 0));
        for (Action action : actions) {
            if (action.keys() != null) {
                list.getChildren().add(Parts.fact(action.name(), action.keys().getDisplayText()));
            }
        }
        for (String key : OTHERS) {
            list.getChildren().add(Parts.fact(Words.of(key), Words.of(key + ".keys")));
        }
        VBox box = new VBox(
                12,
                Parts.row(8, Parts.label(Words.of("keys.title"), "section"), Parts.gap(), close),
                Parts.scroll(list));
        box.getStyleClass().add("finder");
        box.setMaxSize(460, 580);
        getChildren().add(box);
        setOnMousePressed(e -> {
            if (e.getTarget() == this) {
                hide();
            }
        });
        addEventFilter(KeyEvent.KEY_PRESSED, e -> {
            if (e.getCode() == KeyCode.ESCAPE) {
                hide();
                e.consume();
            }
        });
        hide();
    }

    void show() {
        setVisible(true);
        close.requestFocus();
    }

    private void hide() {
        setVisible(false);
    }
}
