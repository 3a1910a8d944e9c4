package fuelwright.ui.shell;

import fuelwright.ui.session.JobDesk;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.Words;
import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.StringBinding;
import javafx.scene.Node;
import javafx.scene.control.Alert;
import javafx.scene.control.ButtonBar;
import javafx.scene.control.ButtonType;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;

/** What can be done with the job's file from the window. */
final class JobActions {

    private final Session session;
    private final JobDesk desk;
    private final Node owner;

    JobActions(Session session, Node owner) {
        this.session = session;
        this.desk = session.desk();
        this.owner = owner;
    }

    /** To be found by name and key: saving, and the jobs opened last. */
    void addTo(List<Action> actions) {
        actions.add(new Action(
                Words.of("action.save"), new KeyCodeCombination(KeyCode.S, KeyCombination.SHORTCUT_DOWN), this::save));
        actions.add(new Action(
                Words.of("action.saveas"),
                new KeyCodeCombination(KeyCode.S, KeyCombination.SHORTCUT_DOWN, KeyCombination.SHIFT_DOWN),
                this::saveAs));
        desk.recent()
                .forEach(file -> actions.add(new Action(
                        Words.of("action.recent", file.getFileName()), null, () -> session.open(List.of(file)))));
    }

    void save() {
        if (!desk.save()) {
            saveAs();
        }
    }

    private void saveAs() {
        String name = session.job().name().replaceAll("[^\\p{L}\\p{N} _-]", "_").strip();
        AskFiles.save(owner, Words.of("action.saveas"), name + ".fwjob", file -> desk.saveAs(file, done -> {}));
    }

    /** The window's title: the job, whether it is saved, the program. */
    StringBinding title() {
        return Bindings.createStringBinding(
                () -> session.job().name()
                        + (desk.unsavedProperty().get() ? " · " + Words.of("job.unsaved") : "") + " – "
                        + Words.of("app.name"),
                session.jobProperty(),
                desk.unsavedProperty());
    }

    /** Asks what to do with what isn't saved. Whether the window may close now. */
    boolean mayClose() {
        if (!desk.unsavedProperty().get()) {
            return true;
        }
        ButtonType save = new ButtonType(Words.of("job.close.save"), ButtonBar.ButtonData.YES);
        ButtonType leave = new ButtonType(Words.of("job.close.leave"), ButtonBar.ButtonData.NO);
        ButtonType stay = new ButtonType(Words.of("job.close.stay"), ButtonBar.ButtonData.CANCEL_CLOSE);
        Alert question = new Alert(
                Alert.AlertType.CONFIRMATION,
                Words.of("job.close.text", session.job().name()),
                save,
                leave,
                stay);
        question.initOwner(owner.getScene().getWindow());
        question.setHeaderText(Words.of("job.close.title"));
        ButtonType answer = question.showAndWait().orElse(stay);
        if (answer == save) {
            save();
        }
        return answer == leave;
    }
}
