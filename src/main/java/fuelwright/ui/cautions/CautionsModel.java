package fuelwright.ui.cautions;

import fuelwright.job.Answer;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.safety.Caution;
import fuelwright.table.Table;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/** The stage Cautions without its looks. */
public final class CautionsModel {

    private final Session session;
    private final ObservableList<Caution> cautions = FXCollections.observableArrayList();
    private final ObjectProperty<Caution> selected = new SimpleObjectProperty<>();
    private final ObjectProperty<Caution.Moment> moment = new SimpleObjectProperty<>();
    private final ReadOnlyObjectWrapper<HeatMap> map = new ReadOnlyObjectWrapper<>();

    public CautionsModel(Session session) {
        this.session = session;
        session.analysisProperty().addListener((p, old, now) -> update());
        session.themeProperty().addListener((p, old, now) -> updateMap());
        selected.addListener((p, old, now) -> {
            moment.set(now == null ? null : now.worst().orElse(null));
            updateMap();
        });
        update();
    }

    private void update() {
        Analysis analysis = session.analysis();
        Caution before = selected.get();
        cautions.setAll(analysis == null ? List.of() : analysis.cautions());
        selected.set(
                before == null
                        ? first()
                        : cautions.stream()
                                .filter(c -> c.rule().equals(before.rule())
                                        && c.name().equals(before.name()))
                                .findFirst()
                                .orElse(first()));
        updateMap();
    }

    private void updateMap() {
        Caution caution = selected.get();
        Analysis analysis = session.analysis();
        map.set(
                caution == null || analysis == null
                        ? null
                        : CautionMap.of(
                                analysis, caution, session.themeProperty().get().palette()));
    }

    /** Selects a caution as the user does: its worst cell is selected at once, and its worst moment shown. */
    public void select(Caution caution) {
        selected.set(caution);
        if (!caution.cells().isEmpty()) {
            session.cellProperty().set(worstCell(caution));
        }
    }

    /** The cell nearest to the worst moment; the first where there is no moment. */
    private int worstCell(Caution caution) {
        return session.job()
                .fuelTable()
                .flatMap(table -> caution.worst()
                        .flatMap(m -> caution.cells().stream()
                                .filter(c -> c < table.cells())
                                .min(Comparator.comparingDouble(c -> apart(table, c, m)))))
                .orElse(caution.cells().first());
    }

    /** How many cells lie between a cell and a moment, squared. */
    private static double apart(Table table, int cell, Caution.Moment m) {
        double right = table.speed().position(m.speedRpm()) - table.speedIndex(cell);
        double up = table.load().position(m.load()) - table.loadIndex(cell);
        return right * right + up * up;
    }

    /** Which of the selected caution's moments is shown, from 0; −1 where none is. */
    public int index() {
        return selected.get() == null || moment.get() == null
                ? -1
                : selected.get().moments().indexOf(moment.get());
    }

    /** Shows the next moment, or the one before; the first and the last stay. */
    public void step(int by) {
        int next = index() + by;
        if (index() >= 0 && next >= 0 && next < selected.get().moments().size()) {
            moment.set(selected.get().moments().get(next));
        }
    }

    private Caution first() {
        return cautions.isEmpty() ? null : cautions.get(0);
    }

    /** What was answered to a caution; empty where nothing was. */
    public Optional<Answer> answer(Caution caution) {
        return session.job().answers().stream().filter(a -> a.isFor(caution)).reduce((a, b) -> b);
    }

    /** Answers the selected caution, in the place of an earlier answer. The caution stays where it is. */
    public void answer(Answer.Kind kind, String note) {
        Caution caution = selected.get();
        if (caution != null) {
            session.edit(job -> {
                List<Answer> answers = without(job, caution);
                answers.add(Answer.to(caution, kind, note.strip()));
                return job.withAnswers(answers);
            });
        }
    }

    /** Takes the answer to the selected caution back. */
    public void takeBack() {
        Caution caution = selected.get();
        if (caution != null) {
            session.edit(job -> job.withAnswers(without(job, caution)));
        }
    }

    private static List<Answer> without(Job job, Caution caution) {
        List<Answer> answers = new ArrayList<>(job.answers());
        answers.removeIf(a -> a.isFor(caution));
        return answers;
    }

    /** The answer to a caution in words: what, and the note where there is one; of one that says something else by now, that it was answered before. */
    public static String words(Answer answer, Caution caution) {
        String kind = Words.of("cautions.answer." + answer.kind().name().toLowerCase(Locale.ROOT));
        String said = answer.note().isEmpty() ? kind : kind + " · " + answer.note();
        return Words.of(answer.holds(caution) ? "cautions.answered" : "cautions.answered.before", said);
    }

    /** The kind of answer alone; that it has to be looked at again where the caution says something else by now. */
    static String brief(Answer answer, Caution caution) {
        return answer.holds(caution)
                ? Words.of("cautions.answer." + answer.kind().name().toLowerCase(Locale.ROOT))
                : Words.of("cautions.answer.again");
    }

    /** What was found, in the units that the user wants to see. */
    public String what(Caution caution) {
        return caution.what(session.shownIn());
    }

    /** How many of each level, in words. */
    public String summary() {
        if (session.analysis() == null) {
            return "";
        }
        long[] counts = new long[Caution.Level.values().length];
        cautions.forEach(c -> counts[c.level().ordinal()]++);
        return Words.of("cautions.summary", counts[0], counts[1], counts[2]);
    }

    /** Goes to the selected cell if it is one of the selected caution's, else to its worst, on the stage Proposal. */
    public void showCell() {
        Caution caution = selected.get();
        if (caution != null && !caution.cells().isEmpty()) {
            if (!caution.cells().contains(session.cellProperty().get())) {
                session.cellProperty().set(worstCell(caution));
            }
            session.stageProperty().set(Stage.PROPOSAL);
        }
    }

    /** Goes to the moment that is shown, on the stage Rides. */
    public void showMoment() {
        session.momentProperty().set(null);
        session.momentProperty().set(moment.get());
        session.stageProperty().set(Stage.RIDES);
    }

    /** The ride of a moment; empty where the job hasn't got it any more. */
    public Optional<JobRide> ride(Caution.Moment moment) {
        List<JobRide> rides = session.job().rides();
        return moment.ride() >= 0 && moment.ride() < rides.size()
                ? Optional.of(rides.get(moment.ride()))
                : Optional.empty();
    }

    /** A moment in words. */
    public String words(Caution.Moment moment) {
        String place = session.job()
                .fuelTable()
                .map(t -> TableWords.place(t, moment.speedRpm(), Math.rint(moment.load())))
                .orElse(Figures.plain(moment.speedRpm(), 0) + " rpm");
        return Words.of(
                "cautions.moment",
                moment.rideName(),
                Figures.clock(moment.startS(), 1),
                Figures.plain(moment.lengthS(), 1),
                place);
    }

    /** A moment and its worst figure in words. */
    public String sentence(Caution.Moment moment) {
        return words(moment) + worst(moment).map(w -> ", " + w).orElse("");
    }

    /** The selected cell in words; empty where none is. */
    public String selectedCell() {
        int cell = session.cellProperty().get();
        return session.job()
                .fuelTable()
                .filter(t -> cell >= 0 && cell < t.cells())
                .map(t -> Words.of("cautions.selectedcell", TableWords.cell(t, cell)))
                .orElse("");
    }

    /** The worst figure of a moment; empty where it has no unit. */
    private Optional<String> worst(Caution.Moment moment) {
        if (moment.isMixture()) {
            return Optional.of(session.mixture().words(moment.worst()));
        }
        return moment.unit().isEmpty() ? Optional.empty() : Optional.of(moment.worstWords(session.shownIn()));
    }

    public ObservableList<Caution> cautions() {
        return cautions;
    }

    public ObjectProperty<Caution> selectedProperty() {
        return selected;
    }

    /** The moment that is shown; null where the selected caution has none. */
    public ObjectProperty<Caution.Moment> momentProperty() {
        return moment;
    }

    /** Where the selected caution is; null where none is selected. */
    public ReadOnlyObjectProperty<HeatMap> mapProperty() {
        return map.getReadOnlyProperty();
    }

    public Session session() {
        return session;
    }
}
