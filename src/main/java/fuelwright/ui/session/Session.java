package fuelwright.ui.session;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.safety.Caution;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import fuelwright.work.FirstRide;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/**
 * The job that is open, with undo, and the analysis that follows from it. Every change of the job starts the analysis anew a moment
 * later; only the newest counts. Used on the window's thread only.
 */
public final class Session {

    private static final Duration DEBOUNCE = Duration.ofMillis(150);

    private final Services services;
    private final Runner runner;
    private final Errand errand;
    private final History<Job> history = new History<>(Job.empty());
    private Job sample;
    private final ReadOnlyObjectWrapper<Job> job = new ReadOnlyObjectWrapper<>(history.now());
    private final ReadOnlyObjectWrapper<Analysis> analysis = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyBooleanWrapper canUndo = new ReadOnlyBooleanWrapper();
    private final ReadOnlyBooleanWrapper canRedo = new ReadOnlyBooleanWrapper();
    private final ReadOnlyObjectWrapper<Job> handedOver = new ReadOnlyObjectWrapper<>();
    private final ObservableList<Issue> issues = FXCollections.observableArrayList();
    private final ObjectProperty<Stage> stage = new SimpleObjectProperty<>(Stage.MACHINE);
    private final ObjectProperty<Theme> theme = new SimpleObjectProperty<>(Theme.LIGHT);
    private final BooleanProperty afr = new SimpleBooleanProperty();
    private final IntegerProperty cell = new SimpleIntegerProperty(-1);
    private final ObjectProperty<Caution.Moment> moment = new SimpleObjectProperty<>();

    public Session(Services services, Runner runner) {
        this.services = services;
        this.runner = runner;
        this.errand = new Errand(runner, this::failed);
        stage.addListener((p, old, now) -> forgetWarnings());
    }

    /** Opens the sample job. Where nothing was known before, undo doesn't go back behind it. */
    public void openSample() {
        errand.run("open", Duration.ZERO, Words.of("doing.sample"), (p, c) -> services.sample(), this::opened);
    }

    private void opened(Loaded<Job> loaded) {
        // What was doubtful in a ride is said beside the ride; only what can't be used is said at once.
        issues.setAll(loaded.issues().stream()
                .filter(i -> i.severity() == Issue.Severity.ERROR)
                .toList());
        loaded.value().ifPresent(value -> {
            moment.set(null);
            cell.set(-1);
            sample = value;
            if (history.now().equals(Job.empty())) {
                history.start(value);
                publish();
            } else {
                edit(now -> value);
            }
        });
    }

    /** Reads files, each as what it is, and puts them into the job. */
    public void open(List<Path> files) {
        errand.run(
                "open",
                Duration.ZERO,
                Words.of("doing.reading"),
                (p, c) -> Opened.read(files, services, p, c),
                found -> {
                    issues.setAll(found.issues());
                    if (found.isEmpty()) {
                        return;
                    }
                    if (isSample()) {
                        issues.add(Issue.warning("", 0, 0, Words.of("open.sample"), Words.of("open.sample.todo")));
                        cell.set(-1);
                        edit(job -> found.addTo(ownMachine(job)));
                    } else {
                        edit(found::addTo);
                    }
                });
    }

    /** The user's files must not be mixed with the sample's rides. */
    private boolean isSample() {
        return sample != null && job().rides().stream().anyMatch(sample.rides()::contains);
    }

    private Job ownMachine(Job job) {
        return job.machine().equals(sample.machine())
                ? Job.empty()
                : Job.empty().withMachine(job.machine());
    }

    /** Starts a job in which nothing is known yet. Undo brings the old one back. */
    public void startNew() {
        issues.clear();
        moment.set(null);
        cell.set(-1);
        edit(old -> Job.empty());
        stage.set(Stage.MACHINE);
    }

    /** Changes the job. The analysis follows by itself. */
    public void edit(UnaryOperator<Job> change) {
        if (history.put(change.apply(history.now()))) {
            publish();
        }
    }

    public void undo() {
        history.undo();
        publish();
    }

    public void redo() {
        history.redo();
        publish();
    }

    private void publish() {
        Job now = history.now();
        int cells = now.fuelTable().map(fuelwright.table.Table::cells).orElse(0);
        if (cell.get() >= cells) {
            cell.set(-1);
        }
        canUndo.set(history.canUndo());
        canRedo.set(history.canRedo());
        job.set(now);
        if (now.isReady()) {
            errand.run(
                    "analyse",
                    DEBOUNCE,
                    Words.of("doing.analysing"),
                    (p, c) -> services.analyse(now, p, c),
                    this::analysed);
        } else {
            errand.cancel("", "analyse");
            analysis.set(null);
        }
    }

    private void analysed(Loaded<Analysis> loaded) {
        issues.removeIf(i -> i.severity() == Issue.Severity.ERROR && i.file().isEmpty());
        issues.addAll(serious(loaded.issues()));
        analysis.set(loaded.value().orElse(null));
    }

    /** A warning was seen on the stage where it came; it stays beside its ride. */
    private void forgetWarnings() {
        if (issues.stream().noneMatch(i -> i.severity() == Issue.Severity.ERROR)) {
            issues.clear();
        }
    }

    private static List<Issue> serious(List<Issue> all) {
        return all.stream().filter(i -> i.severity() != Issue.Severity.NOTE).toList();
    }

    /** Writes the output folder. */
    public void export(Path folder, boolean replace, Consumer<List<String>> done) {
        Analysis what = analysis.get();
        errand.run(
                "export",
                Duration.ZERO,
                Words.of("doing.writing"),
                (p, c) -> services.export(what, folder, replace),
                files -> {
                    handedOver.set(what.job());
                    done.accept(files);
                });
    }

    /** Works out the first-ride table; what stands in its way is an issue. */
    public void firstRide(Consumer<FirstRide.Outcome> done) {
        Job now = job();
        errand.run("first", DEBOUNCE, Words.of("doing.first"), (p, c) -> services.firstRide(now), loaded -> {
            issues.addAll(serious(loaded.issues()));
            loaded.value().ifPresent(done);
        });
    }

    /** Writes the first-ride table. */
    public void writeFirstRide(FirstRide.Outcome outcome, Path folder, Consumer<List<String>> done) {
        errand.run(
                "export",
                Duration.ZERO,
                Words.of("doing.writing"),
                (p, c) -> services.writeFirstRide(outcome, folder, false),
                done);
    }

    /** The corrected table as text, cautions above the grid. */
    public String tableText() {
        return services.tableText(analysis.get());
    }

    /** Stops what is going on; what was there before stays. */
    public void cancel() {
        errand.cancel(Words.of("doing.cancelled"), "open", "analyse", "export", "first");
    }

    public void close() {
        runner.close();
    }

    private void failed(Exception problem) {
        issues.setAll(Issue.error("", 0, 0, sentence(problem), Words.of("failed.todo")));
    }

    private static String sentence(Exception problem) {
        if (problem instanceof NoSuchFileException) {
            return Words.of("failed.nofile", problem.getMessage());
        }
        String message = problem.getMessage();
        return message == null ? Words.of("failed.unknown", problem.getClass().getSimpleName()) : message;
    }

    public ReadOnlyObjectProperty<Job> jobProperty() {
        return job.getReadOnlyProperty();
    }

    public Job job() {
        return job.get();
    }

    /** The newest analysis; null where there is none. While {@link #workingProperty} is true it may be that of an older job. */
    public ReadOnlyObjectProperty<Analysis> analysisProperty() {
        return analysis.getReadOnlyProperty();
    }

    public Analysis analysis() {
        return analysis.get();
    }

    public ReadOnlyBooleanProperty canUndoProperty() {
        return canUndo.getReadOnlyProperty();
    }

    public ReadOnlyBooleanProperty canRedoProperty() {
        return canRedo.getReadOnlyProperty();
    }

    public ReadOnlyBooleanProperty workingProperty() {
        return errand.workingProperty();
    }

    /** 0 to 1; negative where it can't be told. */
    public ReadOnlyDoubleProperty progressProperty() {
        return errand.progressProperty();
    }

    public ReadOnlyStringProperty doingProperty() {
        return errand.doingProperty();
    }

    /** The job that was last handed over; null where none was. */
    public ReadOnlyObjectProperty<Job> handedOverProperty() {
        return handedOver.getReadOnlyProperty();
    }

    /** What went wrong or was doubtful with the last files and the last analysis. */
    public ObservableList<Issue> issues() {
        return issues;
    }

    public ObjectProperty<Stage> stageProperty() {
        return stage;
    }

    public ObjectProperty<Theme> themeProperty() {
        return theme;
    }

    /** Whether mixtures are shown as AFR instead of lambda. */
    public BooleanProperty afrProperty() {
        return afr;
    }

    /** The selected cell of the fuel table, −1 where none is. */
    public IntegerProperty cellProperty() {
        return cell;
    }

    /** The moment of a ride that is looked at; null where none is. */
    public ObjectProperty<Caution.Moment> momentProperty() {
        return moment;
    }
}
