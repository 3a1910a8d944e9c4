package fuelwright.ui.cautions;

import fuelwright.job.JobRide;
import fuelwright.safety.Caution;
import fuelwright.ui.session.Mixture;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/** The stage Cautions without its looks. */
public final class CautionsModel {

    private final Session session;
    private final ObservableList<Caution> cautions = FXCollections.observableArrayList();
    private final ObjectProperty<Caution> selected = new SimpleObjectProperty<>();

    public CautionsModel(Session session) {
        this.session = session;
        session.analysisProperty().addListener((p, old, now) -> update());
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
                                        && c.cells().equals(before.cells()))
                                .findFirst()
                                .orElse(first()));
    }

    private Caution first() {
        return cautions.isEmpty() ? null : cautions.get(0);
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

    /** Goes to the first cell of the selected caution, on the stage Proposal. */
    public void showCell() {
        Caution caution = selected.get();
        if (caution != null && !caution.cells().isEmpty()) {
            session.cellProperty().set(caution.cells().first());
            session.stageProperty().set(Stage.PROPOSAL);
        }
    }

    /** Goes to a moment of a ride, on the stage Rides. */
    public void showMoment(Caution.Moment moment) {
        session.momentProperty().set(null);
        session.momentProperty().set(moment);
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
                .map(t -> TableWords.place(t, moment.speedRpm(), moment.load()))
                .orElse(Figures.plain(moment.speedRpm(), 0) + " rpm");
        return Words.of(
                "cautions.moment",
                moment.rideName(),
                Figures.clock(moment.startS(), 1),
                Figures.plain(moment.lengthS(), 1),
                place);
    }

    /** The worst mixture of a moment; empty where the figure is no mixture. */
    public Optional<String> worst(Caution.Moment moment) {
        boolean mixture = moment.worst() > 0.5 && moment.worst() < 2;
        return mixture ? Optional.of(Mixture.words(session.afrProperty().get(), moment.worst())) : Optional.empty();
    }

    /** The cells of a caution in words: a few, and how many more. */
    public String cells(Caution caution) {
        return session.job()
                .fuelTable()
                .map(table -> {
                    List<String> names = caution.cells().stream()
                            .filter(c -> c < table.cells())
                            .limit(4)
                            .map(c -> TableWords.cell(table, c))
                            .toList();
                    String text = String.join("; ", names);
                    int more = caution.cells().size() - names.size();
                    return more > 0 ? Words.of("cautions.more", text, more) : text;
                })
                .orElse("");
    }

    public ObservableList<Caution> cautions() {
        return cautions;
    }

    public ObjectProperty<Caution> selectedProperty() {
        return selected;
    }

    public Session session() {
        return session;
    }
}
