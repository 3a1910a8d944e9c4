package fuelwright.ui.session;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.JobFile;
import fuelwright.job.JobRide;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import fuelwright.work.JobLock;
import fuelwright.work.OpenJob;
import fuelwright.work.SaveJob;
import fuelwright.work.StateFolder;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/** The job's file: saving, opening, what isn't saved yet, and the copy that outlives a crash. */
public final class JobDesk {

    private static final String KEEPING = Runner.LOOK + "-keep";
    private static final Duration KEEP_AFTER = Duration.ofSeconds(3);

    private final Session session;
    private final Services services;
    private final Errand errand;
    private final Runner runner;
    private final Notices notices;
    private final RideBook book;
    private final ReadOnlyObjectWrapper<Optional<Path>> file = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyBooleanWrapper unsaved = new ReadOnlyBooleanWrapper();
    private Job saved = Job.empty();
    private JobLock lock;
    private Function<OpenJob.Missing, Optional<Path>> question = log -> Optional.empty();
    private Consumer<Runnable> guard = Runnable::run;

    JobDesk(Session session, Services services, Errand errand, Runner runner, Notices notices, RideBook book) {
        this.session = session;
        this.services = services;
        this.errand = errand;
        this.runner = runner;
        this.notices = notices;
        this.book = book;
    }

    /** Whether a file is a job by its name. */
    static boolean isJob(Path file) {
        return String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT).endsWith(JobFile.SUFFIX);
    }

    /** Takes a job as one that needs no saving. */
    void settled(Job job) {
        saved = job;
        follow(job);
    }

    /** Another job is shown. */
    void follow(Job job) {
        unsaved.set(!job.equals(saved));
        if (unsaved.get()) {
            keep(job);
        } else {
            runner.cancel(KEEPING);
            services.state().settled();
        }
    }

    private void keep(Job job) {
        Job sourced = book.sourced(job);
        Optional<Path> where = file.get();
        session.look(
                KEEPING,
                KEEP_AFTER,
                (p, c) -> {
                    services.state().keep(sourced, where);
                    return sourced;
                },
                kept -> {
                    // nobody waits for it
                });
    }

    /** Saves over the job's file; false where it has none yet, or another window has it open. */
    public boolean save() {
        return save(done -> {});
    }

    /** @param then told once it is saved */
    public boolean save(Consumer<Path> then) {
        if (file.get().isEmpty() || lock != null && !lock.isHeld()) {
            return false;
        }
        saveAs(file.get().get(), then);
        return true;
    }

    /**
     * Saves as a file, and goes on with that one.
     *
     * @param then told once it is saved
     */
    public void saveAs(Path chosen, Consumer<Path> then) {
        Path target = withSuffix(chosen);
        Job job = session.job();
        Job sourced = book.sourced(job);
        if (!SaveJob.canSave(sourced)) {
            notices.all().add(Issue.error("", 0, 0, Words.of("job.norides"), Words.of("job.norides.todo")));
            return;
        }
        Optional<Analysis> outcome = Optional.ofNullable(session.analysis())
                .filter(a -> a.settled() && a.job().equals(job));
        boolean own = lock != null
                && lock.isHeld()
                && file.get().filter(target::equals).isPresent();
        errand.run(
                "save",
                Duration.ZERO,
                Words.of("doing.saving"),
                (p, c) -> {
                    if (!own) {
                        refuseTaken(target);
                    }
                    List<Issue> logs = services.saveJob(sourced, outcome.map(Analysis::results), target);
                    services.state().opened(target);
                    return logs;
                },
                logs -> {
                    notices.add(logs);
                    belongsTo(Optional.of(target));
                    saved = job;
                    follow(session.job());
                    int waiting = waiting();
                    session.say(Words.of("job.saved", target.getFileName())
                            + (waiting == 0 ? "" : " " + Words.of("job.saved.waiting", waiting)));
                    then.accept(target);
                });
    }

    /** With the ending of a job's file, once. */
    private static Path withSuffix(Path chosen) {
        String name = String.valueOf(chosen.getFileName());
        while (name.toLowerCase(Locale.ROOT).endsWith(JobFile.SUFFIX)) {
            name = name.substring(0, name.length() - JobFile.SUFFIX.length());
        }
        return chosen.resolveSibling(name + JobFile.SUFFIX);
    }

    /** What another window works on must not be written over under its hands. */
    private static void refuseTaken(Path target) throws IOException {
        try (JobLock look = JobLock.on(target)) {
            if (!look.isHeld()) {
                throw new IOException(Words.of("job.save.taken", target.getFileName()));
            }
        }
    }

    private void belongsTo(Optional<Path> now) {
        if (!now.equals(file.get()) || lock == null) {
            if (lock != null) {
                lock.close();
                lock = null;
            }
            now.ifPresent(f -> {
                lock = JobLock.on(f);
                if (!lock.isHeld()) {
                    notices.all()
                            .add(Issue.warning(
                                    String.valueOf(f.getFileName()), 0, 0, Words.of("job.taken", f.getFileName()), ""));
                }
            });
        }
        file.set(now);
    }

    /**
     * Opens a job. Undo brings back what was there before.
     *
     * @param others files opened together with it: logs that aren't where they were are looked for among them; what is none of these is put
     *     into the job
     */
    public void open(Path job, List<Path> others) {
        guard.accept(() -> open(job, others, new HashMap<>(), Optional.of(job), opened -> {}));
    }

    /** @param ask told before another job takes this one's place: runs what it is given, now, later or never */
    public void askBeforeAnother(Consumer<Runnable> ask) {
        guard = ask;
    }

    private void open(
            Path job,
            List<Path> others,
            Map<OpenJob.Missing, Path> located,
            Optional<Path> belongs,
            Consumer<Job> then) {
        errand.run(
                "open",
                Duration.ZERO,
                Words.of("doing.opening", job.getFileName()),
                (p, c) -> {
                    Map<OpenJob.Missing, Path> found = new LinkedHashMap<>(located);
                    Set<OpenJob.Missing> lost = new LinkedHashSet<>();
                    Set<Path> used = new LinkedHashSet<>();
                    Loaded<OpenJob.Opened> loaded = services.openJob(
                            job,
                            log -> {
                                Optional<Path> file = Optional.ofNullable(found.get(log))
                                        .or(() -> others.size() == 1 ? Optional.of(others.get(0)) : log.among(others));
                                if (file.isEmpty()) {
                                    lost.add(log);
                                }
                                file.ifPresent(used::add);
                                return file;
                            },
                            p,
                            c);
                    return new Attempt(
                            loaded,
                            lost,
                            others.stream().filter(f -> !used.contains(f)).toList());
                },
                attempt -> {
                    if (!attempt.lost().isEmpty() && locate(attempt.lost(), located)) {
                        open(job, others, located, belongs, then);
                        return;
                    }
                    Loaded<OpenJob.Opened> loaded = attempt.loaded();
                    notices.errorsOnly(loaded.issues());
                    loaded.value().ifPresent(opened -> {
                        notices.add(opened.changed());
                        note(opened);
                        session.replace(opened.job());
                        belongsTo(belongs);
                        belongs.ifPresent(f -> {
                            settled(opened.job());
                            services.state().opened(f);
                        });
                        then.accept(opened.job());
                        if (!attempt.more().isEmpty()) {
                            session.open(attempt.more(), opened.changed());
                        }
                    });
                });
    }

    /**
     * What came of opening a job.
     *
     * @param lost logs that nobody found
     * @param more files opened together with it that are none of its logs
     */
    private record Attempt(Loaded<OpenJob.Opened> loaded, Set<OpenJob.Missing> lost, List<Path> more) {}

    /** Asks for each log that is lost; false where the user gives one up. */
    private boolean locate(Set<OpenJob.Missing> lost, Map<OpenJob.Missing, Path> located) {
        for (OpenJob.Missing log : lost) {
            Optional<Path> answer = question.apply(log);
            if (answer.isEmpty()) {
                return false;
            }
            located.put(log, answer.get());
        }
        return true;
    }

    /** @param ask how the user is asked for a log that isn't where it was; an empty answer gives the job up */
    public void askForLogs(Function<OpenJob.Missing, Optional<Path>> ask) {
        question = ask;
    }

    private void note(OpenJob.Opened opened) {
        for (int i = 0; i < opened.job().rides().size(); i++) {
            JobRide ride = opened.job().rides().get(i);
            Optional<fuelwright.work.SecondLogger> second = opened.seconds().get(i);
            ride.source()
                    .ifPresent(s -> book.note(
                            ride.ride(), new RideBook.Origin(Optional.of(s.file()), s.options(), false, second)));
        }
    }

    /** The job has no file any more: a new one was begun. */
    void begin() {
        belongsTo(Optional.empty());
        settled(session.job());
    }

    /**
     * A job's file, and what of it is saved there.
     *
     * @param saved the job as it was saved last
     */
    record State(Optional<Path> file, Job saved) {}

    State state() {
        return new State(file.get(), saved);
    }

    /** The job that this was of is shown again. */
    void bring(State state) {
        belongsTo(state.file());
        saved = state.saved();
    }

    /** Another job is shown than the one that the file is of. */
    void leave() {
        belongsTo(Optional.empty());
    }

    /** Work that wasn't saved when the program last ended. */
    public List<StateFolder.Left> left() {
        return services.state().left();
    }

    /**
     * Goes on with it. Undo brings back what was there before.
     *
     * @param then told once it may take the job's place
     */
    public void take(StateFolder.Left work, Runnable then) {
        guard.accept(() -> {
            then.run();
            open(work.copy(), List.of(), new HashMap<>(), Optional.empty(), job -> {
                saved = Job.empty();
                belongsTo(work.file());
                follow(job);
                services.state().drop(work.copy());
            });
        });
    }

    /** Throws it away. */
    public void drop(StateFolder.Left work) {
        services.state().drop(work.copy());
    }

    public List<Path> recent() {
        return services.state().recentJobs();
    }

    /** The program ends, whatever isn't saved is given up. */
    void close() {
        services.state().settled();
        release();
    }

    /** The program ends and nobody could be asked: whatever isn't saved is kept as it is now. */
    void endUnasked() {
        if (unsaved.get()) {
            services.state().keep(book.sourced(session.job()), file.get());
            services.state().leave();
        } else {
            services.state().settled();
        }
        release();
    }

    private void release() {
        if (lock != null) {
            lock.close();
            lock = null;
        }
    }

    /** How many rides wait for their table beside the job: they are never saved with it. */
    public int waiting() {
        return session.question().waitingProperty().get().size();
    }

    /** Where the job is saved; empty where it never was. */
    public ReadOnlyObjectProperty<Optional<Path>> fileProperty() {
        return file.getReadOnlyProperty();
    }

    /** Whether something was changed since it was saved or opened. */
    public ReadOnlyBooleanProperty unsavedProperty() {
        return unsaved.getReadOnlyProperty();
    }
}
