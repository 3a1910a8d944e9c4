package fuelwright.ui.tables;

import fuelwright.ui.plot.GridScroll;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.theme.Words;
import javafx.geometry.Rectangle2D;
import javafx.scene.control.TextField;
import javafx.scene.input.Clipboard;
import javafx.scene.input.ClipboardContent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Pane;
import javafx.scene.layout.StackPane;

/**
 * The map of a table with a field over the cell that is typed into. Typing replaces, F2 and Enter edit, Enter and Tab take and go on, Escape
 * leaves; Ctrl+A, C, V as everywhere. A table too large for its place scrolls.
 */
final class EditableGrid extends StackPane {

    private static final String BEGINS_A_FIGURE = "0123456789.,+-−";
    private static final double LEAST_FIELD_WIDTH = 64;
    private static final double LEAST_FIELD_HEIGHT = 28;

    private final TablesModel model;
    private final HeatGrid grid = new HeatGrid();
    private final TextField field = new TextField();

    EditableGrid(TablesModel model) {
        this.model = model;
        grid.setId("tables-grid");
        field.setId("tables-cell");
        field.setVisible(false);
        field.getStyleClass().add("cell-field");
        Pane over = new Pane(field);
        over.setPickOnBounds(false);
        grid.mapProperty().bind(model.mapProperty());
        grid.viewProperty().bind(model.viewProperty());
        grid.themeProperty().bind(model.session().themeProperty());
        grid.selectedProperty().bindBidirectional(model.cellProperty());
        grid.blockProperty().bindBidirectional(model.blockProperty());
        GridScroll scroll = new GridScroll(grid, model.session().textSizeProperty(), over);
        scroll.setMinSize(0, 0);
        getChildren().add(scroll);
        grid.addEventHandler(KeyEvent.KEY_PRESSED, this::pressed);
        grid.addEventHandler(KeyEvent.KEY_TYPED, this::typed);
        grid.addEventHandler(MouseEvent.MOUSE_CLICKED, e -> {
            if (e.getClickCount() == 2) {
                begin(model.editor().figure().orElse(""));
            }
        });
        field.addEventFilter(KeyEvent.KEY_PRESSED, this::inField);
        field.focusedProperty().addListener((p, old, now) -> {
            if (!now && field.isVisible()) {
                leave(true);
            }
        });
    }

    HeatGrid grid() {
        return grid;
    }

    private void pressed(KeyEvent event) {
        if (event.isShortcutDown()) {
            shortcut(event);
            return;
        }
        switch (event.getCode()) {
            case F2:
            case ENTER:
                begin(model.editor().figure().orElse(""));
                field.selectAll();
                break;
            case DELETE:
            case BACK_SPACE:
                model.editor().delete();
                break;
            default:
                return;
        }
        event.consume();
    }

    private void shortcut(KeyEvent event) {
        switch (event.getCode()) {
            case A:
                grid.selectAll();
                break;
            case C:
                ClipboardContent content = new ClipboardContent();
                String text = model.editor().copy(event.isShiftDown());
                if (!text.isEmpty()) {
                    content.putString(text);
                    Clipboard.getSystemClipboard().setContent(content);
                }
                break;
            case V:
                model.editor().paste(Clipboard.getSystemClipboard().getString());
                break;
            default:
                return;
        }
        event.consume();
    }

    private void typed(KeyEvent event) {
        String text = event.getCharacter();
        if (text.length() == 1
                && BEGINS_A_FIGURE.contains(text)
                && !event.isShortcutDown()
                && !event.isAltDown()
                && !field.isVisible()) {
            begin(text);
            field.end();
            event.consume();
        }
    }

    private void begin(String text) {
        int cell = model.cellProperty().get();
        if (cell < 0 || !model.editor().isEditable()) {
            model.editor().type(text);
            return;
        }
        Rectangle2D at = grid.boundsOf(cell);
        double width = Math.max(LEAST_FIELD_WIDTH, at.getWidth());
        double height = Math.max(LEAST_FIELD_HEIGHT, at.getHeight());
        field.resizeRelocate(
                Math.min(at.getMinX(), grid.getWidth() - width),
                at.getMinY() + (at.getHeight() - height) / 2,
                width,
                height);
        field.setManaged(false);
        field.setAccessibleText(Words.of("tables.edit.field", model.placeOf(cell)));
        field.setText(text);
        field.setVisible(true);
        field.requestFocus();
    }

    private void inField(KeyEvent event) {
        KeyCode code = event.getCode();
        boolean takesBack = code == KeyCode.Z && event.isShortcutDown();
        // Not the field's own undo: half of what was typed would stay and be taken.
        if (code == KeyCode.ESCAPE || takesBack) {
            leave(false);
        } else if (code == KeyCode.ENTER || code == KeyCode.TAB) {
            if (model.editor().type(field.getText())) {
                leave(false);
                int by = event.isShiftDown() ? -1 : 1;
                grid.step(code == KeyCode.TAB ? by : 0, code == KeyCode.TAB ? 0 : by);
            } else {
                // What was typed stays, to be mended; why it wasn't taken is said beside.
                refused(true);
                field.selectAll();
            }
        } else {
            return;
        }
        event.consume();
    }

    private void leave(boolean taking) {
        String text = field.getText();
        field.setVisible(false);
        refused(false);
        if (taking) {
            model.editor().type(text);
        }
        grid.requestFocus();
    }

    private void refused(boolean now) {
        field.getStyleClass().remove("bad-field");
        if (now) {
            field.getStyleClass().add("bad-field");
        }
    }
}
