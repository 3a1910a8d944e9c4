package fuelwright.ui.records;

import fuelwright.ui.session.Runner;
import fuelwright.ui.session.Session;
import fuelwright.work.EnginesLike;
import fuelwright.work.JobRecord;
import fuelwright.work.JobsCompared;
import fuelwright.work.Records;
import fuelwright.work.WorkException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/** A folder of jobs as the window shows it. Files are only read, and in the background. */
public final class RecordsModel {

    private static final String LANE = Runner.LOOK + "-records";

    /**
     * How far it is.
     *
     * @param folder the folder looked through; empty where none was chosen
     * @param reading whether it is being read now
     * @param all its jobs
     * @param trouble why it can't be read, a sentence; empty where it can
     */
    record State(Optional<Path> folder, boolean reading, List<JobRecord> all, String trouble) {
        State {
            all = List.copyOf(all);
        }
    }

    private final Session session;
    private final ReadOnlyObjectWrapper<State> state =
            new ReadOnlyObjectWrapper<>(new State(Optional.empty(), false, List.of(), ""));
    private final ReadOnlyObjectWrapper<List<JobRecord>> found = new ReadOnlyObjectWrapper<>(List.of());
    private final ReadOnlyObjectWrapper<List<JobRecord>> chosen = new ReadOnlyObjectWrapper<>(List.of());
    private String words = "";

    public RecordsModel(Session session) {
        this.session = session;
    }

    Session session() {
        return session;
    }

    ReadOnlyObjectProperty<State> stateProperty() {
        return state.getReadOnlyProperty();
    }

    /** The jobs that mention all words looked for. */
    ReadOnlyObjectProperty<List<JobRecord>> foundProperty() {
        return found.getReadOnlyProperty();
    }

    /** At most two. */
    ReadOnlyObjectProperty<List<JobRecord>> chosenProperty() {
        return chosen.getReadOnlyProperty();
    }

    /** The folder of the open job or of the one opened last, as long as nobody chose another. */
    void begin() {
        if (state.get().folder().isEmpty()) {
            session.desk()
                    .fileProperty()
                    .get()
                    .or(() -> session.desk().recent().stream().findFirst())
                    .map(f -> f.toAbsolutePath().getParent())
                    .ifPresent(this::read);
        } else {
            read(state.get().folder().get());
        }
    }

    /** Looks through a folder. */
    void read(Path folder) {
        List<JobRecord> before = state.get().folder().filter(folder::equals).isPresent()
                ? state.get().all()
                : List.of();
        put(new State(Optional.of(folder), true, before, ""));
        session.look(
                LANE,
                (progress, cancellation) -> {
                    try {
                        return new State(Optional.of(folder), false, Records.read(folder, progress, cancellation), "");
                    } catch (WorkException e) {
                        return new State(Optional.of(folder), false, List.of(), e.getMessage());
                    }
                },
                this::put);
    }

    private void put(State now) {
        List<Path> kept = chosen.get().stream().map(JobRecord::file).toList();
        state.set(now);
        find(words);
        chosen.set(now.all().stream().filter(r -> kept.contains(r.file())).toList());
    }

    /** Narrows the list. */
    void find(String all) {
        words = all;
        found.set(state.get().all().stream().filter(r -> r.mentions(all)).toList());
    }

    /** The first two of these stand side by side. */
    void choose(List<JobRecord> records) {
        chosen.set(List.copyOf(records.subList(0, Math.min(2, records.size()))));
    }

    /** Empty unless two are chosen. */
    Optional<JobsCompared> compared() {
        return chosen.get().size() < 2
                ? Optional.empty()
                : Optional.of(JobsCompared.of(chosen.get().get(0), chosen.get().get(1)));
    }

    /** What is asked of the folder: engines and changes like the open job's. */
    EnginesLike.Question question() {
        return EnginesLike.Question.of(
                session.job().machine(), session.desk().fileProperty().get());
    }

    /** Empty where the open job says nothing of its engine. */
    Optional<EnginesLike> like() {
        return question().asks() ? Optional.of(EnginesLike.of(state.get().all(), question())) : Optional.empty();
    }

    /** How many of the jobs keep no results although they could. */
    int missing() {
        return (int)
                state.get().all().stream().filter(JobRecord::canBeWorkedOut).count();
    }

    /** Works those out, for this once; nothing is saved. */
    void workOut() {
        State now = state.get();
        state.set(new State(now.folder(), true, now.all(), ""));
        session.look(
                LANE,
                (progress, cancellation) -> {
                    List<JobRecord> all = new ArrayList<>();
                    for (JobRecord each : now.all()) {
                        cancellation.check();
                        all.add(Records.workedOut(each, progress, cancellation));
                    }
                    return new State(now.folder(), false, all, "");
                },
                this::put);
    }
}
