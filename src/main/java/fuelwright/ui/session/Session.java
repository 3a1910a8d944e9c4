package fuelwright.ui.session;

import fuelwright.issue.Issue;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.safety.Caution;
import fuelwright.table.Unsaid;
import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.Measures;
import fuelwright.ui.theme.TextSize;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import fuelwright.work.OpenRide;
import fuelwright.work.RideNeeds;
import fuelwright.work.StateFolder;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.ObservableList;

/**
 * The job that is open, with undo, and the analysis that follows from it. Every change of the job starts the analysis anew a moment
 * later; only the newest counts. Used on the window's thread only.
 */
public final class Session {

    private final Services services;
    private final Runner runner;
    private final Errand errand;
    private final Findings findings;
    private final Outputs outputs;
    private final Reading reading;
    private final TableQuestion question;
    private final RefusedLogs refused;
    private final UnsaidTables unsaid;
    private final JobDesk desk;
    private final History<Job> history = new History<>(Job.empty());
    /** By the line of the job that it waits beside. */
    private final Map<Integer, Beside> beside = new HashMap<>();

    private BiConsumer<Job, Runnable> border = (other, step) -> step.run();
    private Job sample;
    private final ReadOnlyObjectWrapper<Job> job = new ReadOnlyObjectWrapper<>(history.now());
    private final ReadOnlyBooleanWrapper canUndo = new ReadOnlyBooleanWrapper();
    private final ReadOnlyBooleanWrapper canRedo = new ReadOnlyBooleanWrapper();
    private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
    private final Notices notices = new Notices();
    private final Selection selection = new Selection();
    private final RideBook book = new RideBook();
    private final ObjectProperty<Stage> stage = new SimpleObjectProperty<>(Stage.MACHINE);
    private final ObjectProperty<Theme> theme = new SimpleObjectProperty<>(Theme.LIGHT);
    private final ObjectProperty<TextSize> textSize = new SimpleObjectProperty<>(TextSize.NORMAL);
    private final BooleanProperty afr = new SimpleBooleanProperty();
    private final ObjectProperty<Measures> measures = new SimpleObjectProperty<>(Measures.METRIC);

    public Session(Services services, Runner runner) {
        this.services = services;
        this.runner = runner;
        this.errand = new Errand(runner, notices::failed);
        this.findings = new Findings(services, errand, notices);
        this.reading = new Reading(this, services, errand, notices, book);
        this.question = new TableQuestion(this);
        this.refused = new RefusedLogs(this, services, errand);
        this.unsaid = new UnsaidTables(this);
        this.desk = new JobDesk(this, services, errand, runner, notices, book);
        this.outputs = new Outputs(this, services, errand, notices);
        stage.addListener((p, old, now) -> notices.forgetWarnings());
    }

    /** Opens the sample job. Where nothing was known before, its tables come first, and undo doesn't go back behind it. */
    public void openSample() {
        if (job().equals(Job.empty()) && !history.canUndo()) {
            errand.run("open", Duration.ZERO, Words.of("doing.sample"), (p, c) -> services.sampleTables(), loaded -> {
                if (job().equals(Job.empty())) {
                    loaded.value().ifPresent(tables -> {
                        sample = tables;
                        start(tables);
                    });
                }
                openWholeSample(job());
            });
        } else {
            openWholeSample(null);
        }
    }

    /** @param before what it takes the place of without a step of undo; null for none */
    private void openWholeSample(Job before) {
        errand.run("open", Duration.ZERO, Words.of("doing.sample"), (p, c) -> services.sample(), loaded -> {
            notices.errorsOnly(loaded.issues());
            loaded.value().ifPresent(value -> {
                selection.clear();
                sample = value;
                value.rides().forEach(r -> book.note(r.ride(), Optional.empty(), RideOptions.defaults()));
                if (job() == before) {
                    start(value);
                } else {
                    if (before == null) {
                        setAside();
                        question.begin(false);
                        another(value);
                        desk.begin();
                    } else {
                        edit(now -> now.withRides(value.rides()));
                    }
                }
            });
        });
    }

    private void start(Job first) {
        history.start(first);
        desk.settled(first);
        publish();
    }

    /** The job's file. */
    public JobDesk desk() {
        return desk;
    }

    /** What is kept between two runs of the program. */
    public StateFolder state() {
        return services.state();
    }

    /** Shows another job in place of this one; one step of undo. */
    void replace(Job other) {
        selection.clear();
        setAside();
        question.begin(true);
        another(other);
    }

    /**
     * What is beside a job and belongs to no other: its file, and what waits.
     *
     * @param refused logs
     * @param unsaid tables
     */
    private record Beside(
            JobDesk.State desk, TableQuestion.State question, List<RefusedLogs.Refused> refused, List<Unsaid> unsaid) {}

    private Beside beside() {
        return new Beside(desk.state(), question.state(), List.copyOf(refused.all()), List.copyOf(unsaid.all()));
    }

    /** Puts what waits beside the job out of the way of the one that comes now. */
    private void setAside() {
        beside.put(history.line(), beside());
        refused.show(List.of());
        unsaid.show(List.of());
    }

    /** What waits beside the job that is shown again. */
    private void bringBack() {
        Beside waiting = beside.get(history.line());
        if (waiting == null) {
            question.begin(false);
            refused.show(List.of());
            unsaid.show(List.of());
            // Another job is shown: saving must not write it into this one's file.
            desk.leave();
            return;
        }
        desk.bring(waiting.desk());
        question.bring(waiting.question());
        refused.show(waiting.refused());
        unsaid.show(waiting.unsaid());
    }

    /** Reads files, each as what it is, and puts them into the job; a job file takes the job's place. */
    public void open(List<Path> files) {
        files.stream().findFirst().ifPresent(AskFiles::startIn);
        Optional<Path> saved = files.stream().filter(JobDesk::isJob).findFirst();
        if (saved.isPresent()) {
            desk.open(saved.get(), files.stream().filter(f -> !JobDesk.isJob(f)).toList());
            return;
        }
        open(files, List.of());
    }

    /** @param said what still has to be said of what was opened just before */
    void open(List<Path> files, List<Issue> said) {
        ToldRatios told = ToldRatios.of(job(), book);
        boolean tables = stage.get() == Stage.TABLES;
        Set<Role> needed = RideNeeds.of(job());
        errand.run(
                "open",
                Duration.ZERO,
                Words.of("doing.reading"),
                (p, c) -> Opened.read(files, tables, told, needed, services, p, c),
                found -> {
                    put(found, RideOptions.defaults());
                    notices.all().addAll(said);
                });
    }

    /** @param options what the user said about all of them */
    void put(Opened found, RideOptions options) {
        if (!found.refused().isEmpty()) {
            stage.set(Stage.RIDES);
        }
        notices.all().setAll(found.issues());
        refused.add(found.refused());
        if (!found.unsaid().isEmpty()) {
            unsaid.add(found.unsaid());
            stage.set(Stage.TABLES);
        }
        if (found.isEmpty()) {
            return;
        }
        for (int i = 0; i < found.rides().size(); i++) {
            RideOptions used = found.rideOptions().get(i);
            boolean remembered = !used.equals(options);
            book.note(
                    found.rides().get(i),
                    new RideBook.Origin(Optional.of(found.rideFiles().get(i)), used, remembered));
        }
        Job base = job();
        // The user's files must not be mixed with the sample's rides.
        if (holdsSample()) {
            notices.all().add(Issue.warning("", 0, 0, Words.of("open.sample"), Words.of("open.sample.todo")));
            selection.clear();
            base = ownMachine(base);
            List<RefusedLogs.Refused> logs = List.copyOf(refused.all());
            List<Unsaid> tables = List.copyOf(unsaid.all());
            setAside();
            question.begin(false);
            refused.show(logs);
            unsaid.show(tables);
        }
        addTo(base, withoutTwins(base, found));
    }

    /** Without logs that hold the same readings as one that is there. */
    private Opened withoutTwins(Job base, Opened found) {
        List<Ride> there =
                new ArrayList<>(base.rides().stream().map(JobRide::ride).toList());
        there.addAll(question.waitingProperty().get());
        List<Ride> refused = new ArrayList<>();
        for (Ride ride : found.rides()) {
            Optional<Issue> twin = OpenRide.twice(ride, there);
            if (twin.isPresent()) {
                notices.all().add(twin.get());
                refused.add(ride);
            } else {
                there.add(ride);
            }
        }
        return found.without(refused);
    }

    private void addTo(Job base, Opened found) {
        boolean asks = !found.rides().isEmpty() && !found.hasFuelTable() && base == job() && question.arises();
        Opened now = asks ? found.without(found.rides()) : found;
        Job before = job();
        List<Ride> waited = found.hasFuelTable() ? question.take() : List.of();
        Opened.Added added = now.addTo(base, question.handed(), waited);
        if (base == before) {
            edit(job -> added.job());
        } else {
            another(added.job());
            desk.leave();
        }
        question.answered(before, waited, question.other());
        if (found.hasFuelTable()) {
            question.opened(added.job().fuelTable().orElseThrow());
        }
        if (asks) {
            question.ask(found.rides());
            stage.set(Stage.RIDES);
            notices.add(List.of(Issue.warning(
                    "", 0, 0, Words.of("question.waiting", found.rides().size()), Words.of("question.waiting.todo"))));
        }
        notices.add(added.issues());
        List<Ride> came = found.rides();
        RideNeeds.leftOut(job()).stream()
                .map(JobRide::ride)
                .filter(came::contains)
                .forEach(ride -> notices.all()
                        .add(
                                0,
                                Issue.warning(
                                        ride.name(), 0, 0, Words.of("rides.useless"), Words.of("rides.useless.todo"))));
    }

    /** Logs that can be read once more is said about them. */
    public RefusedLogs refused() {
        return refused;
    }

    /** Tables that can be read once more is said about them. */
    public UnsaidTables unsaid() {
        return unsaid;
    }

    /** With which table new rides were made, where that has to be asked. */
    public TableQuestion question() {
        return question;
    }

    /** How the rides were read, and reading them again. */
    public Reading reading() {
        return reading;
    }

    /** Whether a ride or a table of the sample is in the job. */
    private boolean holdsSample() {
        Job now = job();
        boolean table = sample != null
                && (now.fuelTable().isPresent() && now.fuelTable().equals(sample.fuelTable())
                        || now.targetTable().isPresent() && now.targetTable().equals(sample.targetTable()));
        return table || book.hasSample(now);
    }

    private Job ownMachine(Job job) {
        return job.machine().equals(sample.machine())
                ? Job.empty()
                : Job.empty().withMachine(job.machine());
    }

    /** Starts a job in which nothing is known yet. Undo brings the old one back. */
    public void startNew() {
        errand.cancel("", "open");
        notices.all().clear();
        selection.clear();
        setAside();
        question.begin(false);
        another(Job.empty());
        desk.begin();
        stage.set(Stage.MACHINE);
    }

    /** Changes the job. The analysis follows by itself. */
    public void edit(UnaryOperator<Job> change) {
        Job before = history.now();
        if (history.put(book.sourced(ToldRatios.shown(before, change.apply(before), book)))) {
            said.set("");
            publish();
        }
    }

    /** Another job takes this one's place. */
    private void another(Job job) {
        if (history.putAnother(book.sourced(job))) {
            said.set("");
            publish();
        }
    }

    public void undo() {
        asked(history.otherBefore(), () -> step(history::undo, "change.back"));
    }

    public void redo() {
        asked(history.otherAfter(), () -> step(history::redo, "change.again"));
    }

    /** Takes a step; where it leaves the job for another one, that is asked first. */
    private void asked(Optional<Job> other, Runnable step) {
        if (other.isPresent() && !job().equals(Job.empty())) {
            border.accept(other.get(), step);
        } else {
            step.run();
        }
    }

    /** @param ask told to which other job undo or redo would go, and runs the step, now, later or never */
    public void askAtBorder(BiConsumer<Job, Runnable> ask) {
        border = ask;
    }

    private void step(Runnable step, String key) {
        Job before = history.now();
        int line = history.line();
        Beside waiting = beside();
        step.run();
        if (history.line() == line) {
            question.stepped(before, history.now());
        } else {
            beside.put(line, waiting);
            bringBack();
            said.set(Words.of(key, Words.of("change.job")));
            publish();
            return;
        }
        say(key, before);
        publish();
    }

    private void say(String key, Job before) {
        said.set(before == history.now() ? "" : Words.of(key, Changes.words(before, history.now())));
    }

    /** Says quietly, in the status line, what was done. */
    public void say(String words) {
        said.set(words);
    }

    /** What was done last, where it can't be seen; empty where there is nothing to say. */
    public ReadOnlyStringProperty saidProperty() {
        return said.getReadOnlyProperty();
    }

    private void publish() {
        Job now = history.now();
        forgetRidesThatWent(job.get(), now);
        selection.keepWithin(now.fuelTable().map(fuelwright.table.Table::cells).orElse(0));
        canUndo.set(history.canUndo());
        canRedo.set(history.canRedo());
        job.set(now);
        desk.follow(now);
        findings.follow(now);
    }

    /** What was said of a ride goes with it. */
    private void forgetRidesThatWent(Job before, Job now) {
        Set<String> there = now.rides().stream().map(r -> r.ride().name()).collect(Collectors.toSet());
        before.rides().stream()
                .map(r -> r.ride().name())
                .filter(name -> !there.contains(name))
                .forEach(name -> notices.all().removeIf(i -> i.file().equals(name)));
    }

    /**
     * Short work for what is looked at, beside everything else and without a word in the status line; only the newest of a lane counts.
     *
     * @param lane starts with {@link Runner#LOOK}
     */
    public <T> void look(String lane, Runner.Work<T> work, Consumer<T> done) {
        look(lane, Duration.ZERO, work, done);
    }

    /**
     * The same a moment later, for what follows typing.
     *
     * @param delay how long nothing newer must come
     */
    public <T> void look(String lane, Duration delay, Runner.Work<T> work, Consumer<T> done) {
        runner.latest(lane, delay, work, new Runner.Listener<T>() {
            @Override
            public void at(double fraction, String what) {
                // too short to be told
            }

            @Override
            public void done(T value) {
                done.accept(value);
            }

            @Override
            public void failed(Exception problem) {
                notices.failed(problem);
            }
        });
    }

    /** Works the analysis out once more, after it was cancelled. */
    public void analyse() {
        findings.workOut(job());
    }

    /** What leaves the program. */
    public Outputs outputs() {
        return outputs;
    }

    /** Stops what is going on; what was there before stays. */
    public void cancel() {
        errand.cancel(Words.of("doing.cancelled"), "open", "analyse", "export", "first");
    }

    /** The program ends, whatever isn't saved is given up. */
    public void close() {
        // First what runs: a copy that is being kept would outlive the job it is of.
        runner.close();
        desk.close();
    }

    /** The program is ended from outside, where nobody can be asked: whatever isn't saved is kept for the next start. */
    public void endUnasked() {
        runner.close();
        desk.endUnasked();
    }

    public ReadOnlyObjectProperty<Job> jobProperty() {
        return job.getReadOnlyProperty();
    }

    public Job job() {
        return job.get();
    }

    /**
     * The newest analysis; null where there is none. While {@link #staleProperty} is true it is that of an older job, or a first answer that is
     * not {@link Analysis#settled}.
     */
    public ReadOnlyObjectProperty<Analysis> analysisProperty() {
        return findings.analysis.getReadOnlyProperty();
    }

    public Analysis analysis() {
        return findings.analysis.get();
    }

    /** Whether the analysis belongs to the job as it was before the last change, or is only a first answer to it. */
    public ReadOnlyBooleanProperty staleProperty() {
        return findings.stale.getReadOnlyProperty();
    }

    /** Whether the analysis is a first answer, not {@link Analysis#settled}. */
    public ReadOnlyBooleanProperty settlingProperty() {
        return findings.settling.getReadOnlyProperty();
    }

    /** Why there is no analysis although both tables and a ride are there; empty otherwise. */
    public ReadOnlyObjectProperty<List<Issue>> refusalProperty() {
        return findings.refusal.getReadOnlyProperty();
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

    /** What went wrong or was doubtful with the last files and the last analysis. */
    public ObservableList<Issue> issues() {
        return notices.all();
    }

    public ObjectProperty<Stage> stageProperty() {
        return stage;
    }

    public ObjectProperty<Theme> themeProperty() {
        return theme;
    }

    public ObjectProperty<TextSize> textSizeProperty() {
        return textSize;
    }

    /** The units that measured figures are shown in. */
    public ObjectProperty<Measures> measuresProperty() {
        return measures;
    }

    /** How mixtures are shown. */
    public Mixture mixture() {
        return Mixture.of(afr.get(), job());
    }

    /** What figures are shown in. */
    public ShownIn shownIn() {
        return new ShownIn(measures.get(), mixture());
    }

    /** Does something whenever figures are to be shown in other units. */
    public void whenShownOtherwise(Runnable then) {
        measures.addListener((p, old, now) -> then.run());
        afr.addListener((p, old, now) -> then.run());
    }

    /** Whether mixtures are shown as AFR instead of lambda. */
    public BooleanProperty afrProperty() {
        return afr;
    }

    /** What is looked at. */
    public Selection selection() {
        return selection;
    }

    /** The selected cell of the fuel table, −1 where none is. */
    public IntegerProperty cellProperty() {
        return selection.cellProperty();
    }

    /** The moment of a ride that is looked at; null where none is. */
    public ObjectProperty<Caution.Moment> momentProperty() {
        return selection.momentProperty();
    }
}
