package fuelwright.ui.tables;

import fuelwright.table.AxisEdit;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.List;
import java.util.function.Predicate;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.TilePane;
import javafx.scene.layout.VBox;

/** What can be done with the selected cells and their breakpoints, and what came of it. */
final class EditPane extends VBox {

    /** Cells that can be filled from their corners or edges. */
    private static final int BLOCK = 3;

    private final TablesModel model;
    private final TextField amount = new TextField();
    private final TextField breakpoint = new TextField();

    EditPane(TablesModel model) {
        super(12);
        this.model = model;
        TableEditor editor = model.editor();
        field(amount, "tables.edit.amount", "tables-amount");
        field(breakpoint, "tables.edit.breakpoint", "tables-breakpoint");
        amount.setOnAction(e -> editor.fill(amount.getText()));
        Label said = Parts.text("");
        said.setId("tables-said");
        said.textProperty().bind(editor.saidProperty());
        editor.refusedProperty().addListener((p, old, now) -> colour(said, now));
        colour(said, editor.refusedProperty().get());
        Parts.show(said, !editor.saidProperty().get().isEmpty());
        editor.saidProperty().addListener((p, old, now) -> Parts.show(said, !now.isEmpty()));
        Label hint = Parts.text(Words.of("tables.edit.select"), "muted", "small");
        hint.setId("tables-select-hint");
        Parts.show(hint, model.cellProperty().get() < 0);
        model.cellProperty().addListener((p, old, now) -> Parts.show(hint, now.intValue() < 0));
        getChildren()
                .addAll(
                        said,
                        new VBox(
                                8,
                                Parts.label(Words.of("tables.edit.cells"), "section"),
                                hint,
                                Parts.row(
                                        8,
                                        amount,
                                        selected(with("tables.edit.fill", amount, editor::fill), 1),
                                        selected(with("tables.edit.add", amount, editor::add), 1)),
                                pairs(
                                        selected(with("tables.edit.percent", amount, editor::addPercent), 1),
                                        selected(with("tables.edit.times", amount, editor::times), 1),
                                        selected(plain("tables.edit.corners", editor::betweenCorners), BLOCK),
                                        selected(plain("tables.edit.edges", editor::betweenEdges), BLOCK),
                                        selected(plain("tables.edit.soften", editor::soften), 1))),
                        axes(editor),
                        Parts.text(Words.of("tables.edit.keys"), "muted", "small"));
    }

    private VBox axes(TableEditor editor) {
        VBox box = new VBox(8, Parts.label(Words.of("tables.edit.axes"), "section"), breakpoint);
        for (AxisEdit.Side side : AxisEdit.Side.values()) {
            Label name = Parts.label(
                    model.table()
                            .map(t -> Parts.capital(side.of(t).kind().words()))
                            .orElse(""),
                    "muted");
            box.getChildren()
                    .add(new VBox(
                            2,
                            name,
                            Parts.row(
                                    4,
                                    with("tables.edit.insert", breakpoint, text -> editor.insert(side, text)),
                                    selected(with("tables.edit.move", breakpoint, text -> editor.move(side, text)), 1),
                                    selected(plain("tables.edit.remove", () -> editor.remove(side)), 1))));
        }
        return box;
    }

    private static void field(TextField field, String key, String id) {
        field.setId(id);
        field.setPromptText(Words.of(key));
        field.setAccessibleText(Words.of(key));
        field.setTooltip(new Tooltip(Words.of(key + ".tip")));
        field.setPrefColumnCount(8);
        HBox.setHgrow(field, Priority.ALWAYS);
    }

    /** What changes a selection can be pressed while there is one. */
    private Button selected(Button button, int least) {
        button.disableProperty()
                .bind(Bindings.createBooleanBinding(
                        () -> model.cellProperty().get() < 0
                                || least > 1 && model.blockProperty().get().size() < least,
                        model.cellProperty(),
                        model.blockProperty()));
        return button;
    }

    private static Button with(String key, TextField field, Predicate<String> edit) {
        return plain(key, () -> {
            if (!edit.test(field.getText())) {
                field.requestFocus();
            }
        });
    }

    private static Button plain(String key, Runnable edit) {
        Button button = Parts.button(key, edit, "compact");
        button.setId(key.replace('.', '-'));
        button.setTooltip(new Tooltip(Words.of(key + ".tip")));
        button.setAccessibleHelp(Words.of(key + ".tip"));
        return button;
    }

    /** Two in a line that fill it, all equally wide; below each other where the text is too large for that. */
    private static TilePane pairs(Button... buttons) {
        TilePane tiles = new TilePane(8, 8, buttons);
        tiles.setPrefColumns(2);
        for (Button button : buttons) {
            button.setMaxWidth(Double.MAX_VALUE);
        }
        tiles.widthProperty().addListener((p, old, now) -> {
            double half = Math.floor((now.doubleValue() - tiles.getHgap()) / 2);
            boolean fits = List.of(buttons).stream().allMatch(b -> b.prefWidth(-1) <= half);
            tiles.setPrefTileWidth(fits ? half : TilePane.USE_COMPUTED_SIZE);
        });
        return tiles;
    }

    private static void colour(Label said, boolean refused) {
        said.getStyleClass().removeAll("field-message", "strong");
        said.getStyleClass().add(refused ? "field-message" : "strong");
    }
}
