package fuelwright.ui.session;

import java.util.function.Supplier;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;

/** Undo in a field whose figure is taken into the job: what is being typed is given up first, then the job's last change. */
public final class UndoInField {

    private UndoInField() {}

    /** @param taken what the job holds, as the field shows it */
    public static void on(TextField field, Supplier<String> taken, Session session) {
        field.addEventFilter(KeyEvent.KEY_PRESSED, event -> {
            if (event.getCode() != KeyCode.Z || !event.isShortcutDown() || event.isShiftDown()) {
                return;
            }
            event.consume();
            if (field.getText().equals(taken.get())) {
                session.undo();
            } else {
                field.setText(taken.get());
            }
        });
    }
}
