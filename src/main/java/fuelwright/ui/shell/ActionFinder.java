package fuelwright.ui.shell;

import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.control.skin.VirtualFlow;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** A list of everything that can be done, found by typing. Lies over the window until something is chosen or Escape is pressed. */
final class ActionFinder extends StackPane {

    private static final double ROW = 30;
    private static final int MOST_ROWS = 12;

    private final List<Action> actions;
    private final TextField field = new TextField();
    private final ListView<Action> list = new ListView<>();
    private final Label nothing = Parts.text("", "muted");

    ActionFinder(List<Action> actions) {
        this.actions = actions;
        getStyleClass().add("veil");
        field.setPromptText(Words.of("finder.prompt"));
        field.setAccessibleText(Words.of("finder.prompt"));
        field.setId("finder-field");
        list.setCellFactory(view -> new Row());
        list.setFixedCellSize(Fonts.grown(ROW));
        list.setId("finder-list");
        nothing.setId("finder-nothing");
        list.getStyleClass().add("quiet-list");
        VBox box = new VBox(8, field, list, nothing);
        box.getStyleClass().add("finder");
        box.setMaxSize(520, USE_PREF_SIZE);
        getChildren().add(box);
        setAlignment(box, Pos.TOP_CENTER);
        setMargin(box, new javafx.geometry.Insets(72, 0, 0, 0));
        field.textProperty().addListener((p, old, now) -> filter());
        field.setOnAction(e -> choose());
        list.setOnMouseClicked(e -> choose());
        addEventFilter(KeyEvent.KEY_PRESSED, this::key);
        setOnMousePressed(e -> {
            if (e.getTarget() == this) {
                hide();
            }
        });
        hide();
    }

    void show() {
        field.clear();
        filter();
        setVisible(true);
        field.requestFocus();
    }

    private void hide() {
        setVisible(false);
    }

    private void filter() {
        List<Action> found = Action.matching(actions, field.getText());
        list.getItems().setAll(found);
        list.setFixedCellSize(Fonts.grown(ROW));
        double height = Math.min(MOST_ROWS, found.size()) * list.getFixedCellSize() + 2;
        list.setMinHeight(height);
        list.setMaxHeight(height);
        list.setPrefHeight(height);
        Parts.show(list, !found.isEmpty());
        nothing.setText(Words.of("finder.nothing", field.getText().strip()));
        Parts.show(nothing, found.isEmpty());
        list.getSelectionModel().selectFirst();
        seeSelected();
    }

    /** Scrolls no further than needed. */
    private void seeSelected() {
        if (list.lookup(".virtual-flow") instanceof VirtualFlow<?> rows) {
            rows.scrollTo(list.getSelectionModel().getSelectedIndex());
        }
    }

    private void choose() {
        Action action = list.getSelectionModel().getSelectedItem();
        if (action != null) {
            hide();
            action.run().run();
        }
    }

    private void key(KeyEvent event) {
        if (event.getCode() == KeyCode.ESCAPE) {
            hide();
        } else if (event.getCode() == KeyCode.DOWN) {
            list.getSelectionModel().selectNext();
            seeSelected();
        } else if (event.getCode() == KeyCode.UP) {
            list.getSelectionModel().selectPrevious();
            seeSelected();
        } else {
            return;
        }
        event.consume();
    }

    private static final class Row extends ListCell<Action> {
        @Override
        protected void updateItem(Action action, boolean empty) {
            super.updateItem(action, empty);
            setText(null);
            if (empty || action == null) {
                setGraphic(null);
                return;
            }
            Label keys = Parts.label(action.keys() == null ? "" : action.keys().getDisplayText(), "muted", "small");
            HBox row = Parts.row(12, Parts.label(action.name()), Parts.gap(), keys);
            row.setStyle("-fx-padding: 4 8 4 8;");
            setGraphic(row);
        }
    }
}
