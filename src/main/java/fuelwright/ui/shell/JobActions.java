package fuelwright.ui.shell;

import fuelwright.job.Job;
import fuelwright.ui.session.JobDesk;
import fuelwright.ui.session.Runner;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.Words;
import fuelwright.work.OpenJob;
import fuelwright.work.SaveJob;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
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

    /** What shall become of what isn't saved. */
    enum Unsaved {
        SAVE,
        LEAVE,
        STAY
    }

    private static final String FOLDER = "folder";

    private final Session session;
    private final JobDesk desk;
    private final Node owner;
    private final Function<String, Unsaved> question;
    /** The same where undo or redo would go to another job. */
    private final Function<Job, Unsaved> atBorder;

    JobActions(Session session, Node owner) {
        this(session, owner, null);
    }

    /** @param question how the user is asked about what isn't saved, told the key of its title; null: by a dialog */
    JobActions(Session session, Node owner, Function<String, Unsaved> question) {
        this.session = session;
        this.desk = session.desk();
        this.owner = owner;
        this.question = question == null ? this::ask : question;
        this.atBorder = question == null
                ? other -> ask(
                        Words.of("job.back.title", other.title()),
                        Words.of("job.back.text", session.job().title()),
                        "job.back.go",
                        "job.back.unsaved")
                : other -> question.apply("job.back.title");
        startFolder();
        desk.askForLogs(this::locate);
        desk.askBeforeAnother(other -> inPlace("job.other.title", other));
        session.askAtBorder((other, go) -> answered(atBorder.apply(other), go));
    }

    /** Dialogues start where they were left, else beside the job that was opened last. */
    private void startFolder() {
        session.state()
                .get(FOLDER)
                .map(Path::of)
                .or(() -> desk.recent().stream().findFirst())
                .ifPresent(AskFiles::startIn);
        AskFiles.onStart(folder -> session.look(
                Runner.LOOK + "-folder",
                (p, c) -> {
                    session.state().put(FOLDER, folder.toString());
                    return folder;
                },
                kept -> {
                    // nobody waits for it
                }));
    }

    /** Asks for a log that isn't where it was. */
    private Optional<Path> locate(OpenJob.Missing log) {
        ButtonType find = new ButtonType(Words.of("job.lost.find"), ButtonBar.ButtonData.YES);
        ButtonType leave = new ButtonType(Words.of("job.lost.leave"), ButtonBar.ButtonData.CANCEL_CLOSE);
        Alert alert = new Alert(
                Alert.AlertType.CONFIRMATION,
                Words.of(log.place().isEmpty() ? "job.lost.gone" : "job.lost.text", log.name(), log.place()),
                find,
                leave);
        alert.initOwner(owner.getScene().getWindow());
        alert.setHeaderText(Words.of("job.lost.title", log.name()));
        alert.getDialogPane().getStylesheets().setAll(owner.getScene().getStylesheets());
        List<Path> chosen = new ArrayList<>();
        if (alert.showAndWait().filter(find::equals).isPresent()) {
            AskFiles.one(owner, Words.of("job.lost.title", log.name()), chosen::add);
        }
        return chosen.stream().findFirst();
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
        save(() -> {});
    }

    /** @param then run once it is saved; not where the user gives it up, or it fails */
    private void save(Runnable then) {
        if (!desk.save(done -> then.run())) {
            saveAs(then);
        }
    }

    private void saveAs() {
        saveAs(() -> {});
    }

    private void saveAs(Runnable then) {
        String name = SaveJob.fileName(session.job().name());
        AskFiles.save(owner, Words.of("action.saveas"), name, file -> desk.saveAs(file, done -> then.run()));
    }

    /** Begins a new job; asks first where this one isn't saved. */
    void startNew() {
        inPlace("job.new.title", session::startNew);
    }

    /** Opens the sample job; asks first where this one isn't saved. */
    void openSample() {
        inPlace("job.other.title", session::openSample);
    }

    /** Lets another job take this one's place. */
    private void inPlace(String title, Runnable other) {
        answered(asks() ? question.apply(title) : Unsaved.LEAVE, other);
    }

    private void answered(Unsaved answer, Runnable other) {
        if (answer == Unsaved.SAVE) {
            save(other);
        } else if (answer == Unsaved.LEAVE) {
            other.run();
        }
    }

    /** Whether something would be lost. */
    private boolean asks() {
        return desk.unsavedProperty().get() || desk.waiting() > 0;
    }

    /** What would be lost, in words. */
    String lost() {
        String changed = desk.unsavedProperty().get()
                ? Words.of("job.close.text", session.job().title()) + " "
                : "";
        return (changed + (desk.waiting() == 0 ? "" : Words.of("job.close.waiting", desk.waiting()))).strip();
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

    /**
     * Asks what to do with what isn't saved. Whether the window may close now.
     *
     * @param later closes it, once it is saved; not where something is left that can't be saved
     */
    boolean mayClose(Runnable later) {
        Unsaved answer = asks() ? question.apply("job.close.title") : Unsaved.LEAVE;
        if (answer == Unsaved.SAVE) {
            save(() -> {
                if (!asks()) {
                    later.run();
                }
            });
        }
        return answer == Unsaved.LEAVE;
    }

    private Unsaved ask(String title) {
        return ask(Words.of(title), "", "job.close.leave", "job.close.leave");
    }

    /**
     * @param more what is said before what would be lost
     * @param go key of what goes on where nothing would be lost
     * @param unsaved key of what goes on without saving
     */
    private Unsaved ask(String title, String more, String go, String unsaved) {
        ButtonType save = new ButtonType(Words.of("job.close.save"), ButtonBar.ButtonData.YES);
        ButtonType leave = new ButtonType(Words.of(asks() ? unsaved : go), ButtonBar.ButtonData.NO);
        ButtonType stay = new ButtonType(Words.of("job.close.stay"), ButtonBar.ButtonData.CANCEL_CLOSE);
        Alert alert = new Alert(Alert.AlertType.CONFIRMATION, (more + " " + lost()).strip(), leave, stay);
        if (asks()) {
            alert.getButtonTypes().add(0, save);
        }
        alert.initOwner(owner.getScene().getWindow());
        alert.setHeaderText(title);
        alert.getDialogPane().getStylesheets().setAll(owner.getScene().getStylesheets());
        ButtonType answer = alert.showAndWait().orElse(stay);
        return answer == save ? Unsaved.SAVE : answer == leave ? Unsaved.LEAVE : Unsaved.STAY;
    }
}
