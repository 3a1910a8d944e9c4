package fuelwright.ui.handover;

import fuelwright.handover.EntryDifference;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import javafx.event.Event;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextArea;
import javafx.scene.input.Clipboard;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Step 3 of the handover: what was read back is pasted; what differs stands on the grid, and beside it in a list, worst first. */
final class EntryCheckPane {

    private static final int PASTE_ROWS = 2;
    private static final double LIST_HEIGHT = 420;

    private final EntryCheckModel model;
    private final TextArea pasted = new TextArea();
    private final ListView<EntryDifference> list = new ListView<>();
    private final Node node;
    private final HeatGrid grid;

    EntryCheckPane(EntryCheckModel model) {
        this.model = model;
        pasted.setId("entry-pasted");
        pasted.setPrefRowCount(PASTE_ROWS);
        pasted.setMinHeight(64);
        pasted.setPromptText(Words.of("check.prompt"));
        pasted.setAccessibleText(Words.of("check.paste"));
        pasted.textProperty().bindBidirectional(model.textProperty());
        pasted.addEventFilter(KeyEvent.KEY_PRESSED, EntryCheckPane::leaveByTab);
        Button paste = Parts.button("check.paste", () -> {
            String text = Clipboard.getSystemClipboard().getString();
            model.textProperty().set(text == null ? "" : text);
        });
        paste.setId("entry-paste");
        Button clear = Parts.button("check.clear", () -> model.textProperty().set(""));
        clear.disableProperty().bind(model.textProperty().isEmpty());
        Label said = Parts.text("", "section");
        said.setId("entry-said");
        said.textProperty().bind(model.saidProperty());
        Label remark = Parts.text("", "muted");
        remark.textProperty().bind(model.remarkProperty());
        for (Label label : new Label[] {said, remark}) {
            label.managedProperty().bind(label.textProperty().isNotEmpty());
        }
        list();
        HBox.setHgrow(pasted, Priority.ALWAYS);
        VBox buttons = new VBox(8, paste, clear);
        grid = TypingGrid.of(model.handover(), model.mapProperty(), "entry-grid");
        VBox nothing = Parts.empty(Words.of("check.empty.title"), Words.of("check.empty"));
        VBox.setVgrow(nothing, Priority.ALWAYS);
        Runnable show = () -> {
            Parts.show(grid, model.mapProperty().get() != null);
            Parts.show(nothing, model.mapProperty().get() == null);
        };
        model.mapProperty().addListener((p, old, now) -> show.run());
        show.run();
        node = new VBox(8, new HBox(12, pasted, buttons), said, remark, grid, nothing);
    }

    /** Nobody types a tab here: the key leads on, as it does everywhere else. */
    private static void leaveByTab(KeyEvent event) {
        if (event.getCode() == KeyCode.TAB && !event.isControlDown()) {
            event.consume();
            Event.fireEvent(
                    event.getTarget(),
                    new KeyEvent(KeyEvent.KEY_PRESSED, "", "", KeyCode.TAB, event.isShiftDown(), true, false, false));
        }
    }

    private void list() {
        list.setId("entry-found");
        list.setItems(model.found());
        list.getStyleClass().add("quiet-list");
        list.setCellFactory(view -> new Row());
        list.setAccessibleText(Words.of("check.list"));
        list.getSelectionModel().selectedItemProperty().addListener((p, old, now) -> {
            if (now != null) {
                model.jump(now);
            }
        });
        model.cellProperty().addListener((p, old, now) -> select(now.intValue()));
        Runnable show = () -> Parts.show(list, !model.found().isEmpty());
        model.saidProperty().addListener((p, old, now) -> {
            show.run();
            select(model.cellProperty().get());
        });
        show.run();
        list.setPrefHeight(LIST_HEIGHT);
    }

    private void select(int cell) {
        EntryDifference now =
                model.found().stream().filter(d -> d.cell() == cell).findFirst().orElse(null);
        if (now == null) {
            list.getSelectionModel().clearSelection();
        } else if (now != list.getSelectionModel().getSelectedItem()) {
            list.getSelectionModel().select(now);
            list.scrollTo(now);
        }
    }

    private final class Row extends ListCell<EntryDifference> {

        private Row() {
            setPrefWidth(0);
        }

        @Override
        protected void updateItem(EntryDifference d, boolean empty) {
            super.updateItem(d, empty);
            setText(null);
            if (empty || d == null) {
                setGraphic(null);
                setAccessibleText("");
                return;
            }
            Label place = Parts.text(model.place(d), "strong");
            HBox.setHgrow(place, Priority.ALWAYS);
            place.setMaxWidth(Double.MAX_VALUE);
            HBox head = Parts.row(8, place);
            if (d.isStop()) {
                Label level = Parts.label(Words.of("check.stop"), "level", "stop");
                level.setMinWidth(javafx.scene.layout.Region.USE_PREF_SIZE);
                head.getChildren().add(level);
            }
            VBox row = new VBox(
                    2, head, Parts.text(model.figures(d)), Parts.text(Parts.capital(model.effect(d)), "muted"));
            row.getStyleClass().add("list-row");
            setGraphic(row);
            setAccessibleText(model.place(d) + ": " + model.figures(d) + "; " + model.effect(d));
        }
    }

    HeatGrid grid() {
        return grid;
    }

    Node node() {
        return node;
    }

    /** What differs, to be shown beside it. */
    Node found() {
        return list;
    }
}
