package fuelwright.ui.session;

import fuelwright.handover.StopNotes;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.table.Table;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import fuelwright.work.CheckEntry;
import fuelwright.work.FirstRide;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;

/** What leaves the program: the output folder, the table as text, the first-ride table. */
public final class Outputs {

    private static final Duration DEBOUNCE = Duration.ofMillis(150);

    private final Session session;
    private final Services services;
    private final Errand errand;
    private final Notices notices;
    private FirstRide.Outcome first;
    private final ReadOnlyObjectWrapper<Job> handedOver = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<Job> checked = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<Job> mistyped = new ReadOnlyObjectWrapper<>();
    /** The fuel table of which a first-ride table was written last; null where none was. */
    private final ReadOnlyObjectWrapper<Table> firstWritten = new ReadOnlyObjectWrapper<>();

    private final BooleanProperty checking = new SimpleBooleanProperty();

    Outputs(Session session, Services services, Errand errand, Notices notices) {
        this.session = session;
        this.services = services;
        this.errand = errand;
        this.notices = notices;
    }

    /** Writes the output folder. */
    public void export(Path folder, boolean replace, boolean pdf, Consumer<List<String>> done) {
        Analysis what = session.analysis();
        errand.run(
                "export",
                Duration.ZERO,
                Words.of("doing.writing"),
                (p, c) -> services.export(what, folder, replace, pdf),
                files -> {
                    handedOver.set(what.job());
                    session.question().left(what);
                    done.accept(files);
                });
    }

    /** The corrected table as text, cautions above the grid. */
    public String tableText() {
        session.question().left(session.analysis());
        return services.tableText(session.analysis());
    }

    /**
     * The Stop cautions that stand against the tables that are shown, each in one line: those of the analysis, or those that the fuel table
     * carries where there is none; among the tables those of the first-ride table too.
     */
    public List<String> stops() {
        Set<String> all = new LinkedHashSet<>(
                session.analysis() != null
                        ? StopNotes.texts(session.analysis().cautions())
                        : session.job().fuelTable().map(StopNotes::carriedBy).orElse(List.of()));
        if (first != null && session.stageProperty().get() == Stage.TABLES) {
            all.addAll(StopNotes.texts(first.cautions()));
        }
        return List.copyOf(all);
    }

    /** The figures alone; only while no Stop stands. */
    public String cellsText() {
        session.question().left(session.analysis());
        return services.cellsText(session.analysis());
    }

    /** Writes the entry sheet or the report by itself as PDF. */
    public void writePdf(String name, Path file, Consumer<Path> done) {
        Analysis what = session.analysis();
        errand.run(
                "export",
                Duration.ZERO,
                Words.of("doing.writing"),
                (p, c) -> {
                    services.writePdf(what, name, file);
                    return file;
                },
                written -> {
                    session.question().left(what);
                    done.accept(written);
                });
    }

    /** Compares what was read back from the hardware with what is handed over; a moment after the last change of the text. */
    public void check(String text, Consumer<Loaded<CheckEntry.Outcome>> done) {
        Analysis what = session.analysis();
        session.look(Runner.LOOK + "-entry", DEBOUNCE, (p, c) -> services.checkEntry(text, what), loaded -> {
            loaded.value().filter(o -> what.settled()).ifPresent(o -> {
                checked.set(o.differences().isEmpty() ? what.job() : null);
                mistyped.set(o.differences().isEmpty() ? null : what.job());
            });
            done.accept(loaded);
        });
    }

    /** Reads a table file for its breakpoints. */
    public void breakpoints(Path file, Consumer<Loaded<Table>> done) {
        session.look(Runner.LOOK + "-breakpoints", (p, c) -> services.readBreakpoints(file), done);
    }

    /** Works out the first-ride table; what stands in its way is an issue. */
    public void firstRide(Consumer<FirstRide.Outcome> done) {
        Job now = session.job();
        errand.run("first", DEBOUNCE, Words.of("doing.first"), (p, c) -> services.firstRide(now), loaded -> {
            notices.add(loaded.issues());
            loaded.value().ifPresent(done);
        });
    }

    /** The first-ride table that is shown, whose Stops go with what leaves; null where there is none. */
    public void shownFirstRide(FirstRide.Outcome now) {
        first = now;
    }

    /** Writes the first-ride table. */
    public void writeFirstRide(FirstRide.Outcome outcome, Path folder, Consumer<List<String>> done) {
        errand.run(
                "export",
                Duration.ZERO,
                Words.of("doing.writing"),
                (p, c) -> services.writeFirstRide(outcome, folder, false),
                files -> {
                    session.question().left(outcome.after());
                    firstWritten.set(outcome.before());
                    done.accept(files);
                });
    }

    /** The fuel table of which a first-ride table was written last; null where none was. */
    public ReadOnlyObjectProperty<Table> firstWrittenProperty() {
        return firstWritten.getReadOnlyProperty();
    }

    /** Whether the first-ride table of the job's fuel table was written. */
    public boolean isFirstRideWritten() {
        return session.job()
                .fuelTable()
                .filter(t -> t.equals(firstWritten.get()))
                .isPresent();
    }

    /** The job that was last handed over; null where none was. */
    public ReadOnlyObjectProperty<Job> handedOverProperty() {
        return handedOver.getReadOnlyProperty();
    }

    /** The job of which all cells were last found typed as they were meant; null where none was. */
    public ReadOnlyObjectProperty<Job> checkedProperty() {
        return checked.getReadOnlyProperty();
    }

    /** The job of which something else was read back than what was meant; null where there is none. */
    public ReadOnlyObjectProperty<Job> mistypedProperty() {
        return mistyped.getReadOnlyProperty();
    }

    /** Whether what the session holds now was handed over. */
    public boolean isHandedOver() {
        return isNow(handedOver.get());
    }

    /** Whether all cells were found typed as what the session holds now means them. */
    public boolean isChecked() {
        return isNow(checked.get());
    }

    /** Whether something else was read back than what the session holds now means. */
    public boolean isMistyped() {
        return isNow(mistyped.get());
    }

    /** Ticking off what is to be done before the first start changes nothing of what is handed over. */
    private boolean isNow(Job job) {
        return job != null
                && (job == session.job()
                        || job.withFirstStart(Set.of()).equals(session.job().withFirstStart(Set.of())));
    }

    /** Whether the handover shows, or shall show, its check of what was typed. */
    public BooleanProperty checkingProperty() {
        return checking;
    }
}
