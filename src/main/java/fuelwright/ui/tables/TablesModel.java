package fuelwright.ui.tables;

import fuelwright.job.Job;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.ui.plot.GridShape;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.session.Mixture;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Words;
import fuelwright.work.FirstRide;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleObjectProperty;

/** The stage Tables without its looks. */
public final class TablesModel {

    /** Which table is looked at. */
    public enum Shown {
        FUEL,
        TARGET,
        FIRST_RIDE
    }

    /** A fact about the table: words and figure. */
    public record Fact(String words, String figure) {}

    private final Session session;
    private Job asked;
    private final ObjectProperty<Shown> shown = new SimpleObjectProperty<>(Shown.FUEL);
    private final BooleanProperty asFile = new SimpleBooleanProperty();
    private final IntegerProperty cell = new SimpleIntegerProperty(-1);
    private final ReadOnlyObjectWrapper<HeatMap> map = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<GridShape.View> view = new ReadOnlyObjectWrapper<>(GridShape.View.CHART);
    private final ReadOnlyObjectWrapper<FirstRide.Outcome> firstRide = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyStringWrapper outcome = new ReadOnlyStringWrapper("");
    private final ReadOnlyObjectWrapper<List<Fact>> facts = new ReadOnlyObjectWrapper<>(List.of());

    public TablesModel(Session session) {
        this.session = session;
        session.jobProperty().addListener((p, old, now) -> {
            forgetFirstRide(old, now);
            update();
        });
        session.themeProperty().addListener((p, old, now) -> update());
        session.afrProperty().addListener((p, old, now) -> update());
        shown.addListener((p, old, now) -> update());
        firstRide.addListener((p, old, now) -> update());
        asFile.addListener((p, old, now) -> update());
        cell.addListener((p, old, now) -> updateFacts());
        update();
    }

    /** The table that is looked at; for the first ride the table to be put into the control unit. */
    public Optional<Table> table() {
        switch (shown.get()) {
            case TARGET:
                return session.job().targetTable();
            case FIRST_RIDE:
                return Optional.ofNullable(firstRide.get()).map(FirstRide.Outcome::after);
            default:
                return session.job().fuelTable();
        }
    }

    private void forgetFirstRide(Job old, Job now) {
        if (!old.fuelTable().equals(now.fuelTable())
                || !old.machine().equals(now.machine())
                || old.proposal().deadTimeMs() != now.proposal().deadTimeMs()) {
            firstRide.set(null);
        }
    }

    private void workOutFirstRide() {
        Job job = session.job();
        boolean pressure = job.fuelTable()
                .filter(t -> t.load().kind() == Axis.Kind.MANIFOLD_PRESSURE)
                .isPresent();
        if (job == asked) {
            return;
        }
        asked = job;
        if (firstRide.get() == null
                && job.fuelTable().isPresent()
                && (pressure || job.machine().hasBodyChange())) {
            session.outputs().firstRide(firstRide::set);
        }
    }

    /** Writes the first-ride table; {@link #outcomeProperty} says what came of it. */
    public void writeFirstRide(Path folder) {
        session.outputs()
                .writeFirstRide(
                        firstRide.get(),
                        folder,
                        files -> outcome.set(Words.of("tables.first.written", String.join(", ", files))));
    }

    /** Whether the dead time of the injectors has to be asked for. */
    public boolean asksForDeadTime() {
        return shown.get() != Shown.TARGET
                && session.job()
                        .fuelTable()
                        .filter(t -> t.quantity() == Quantity.INJECTOR_PULSE)
                        .isPresent();
    }

    public double deadTimeMs() {
        return session.job().proposal().deadTimeMs();
    }

    /** Takes a typed dead time; what can't be one is left as it was. */
    public void deadTime(String typed) {
        try {
            double ms = Double.parseDouble(typed.strip().replace(',', '.'));
            if (ms >= 0 && ms < 10) {
                session.edit(job -> job.withProposal(job.proposal().withDeadTimeMs(ms)));
            }
        } catch (NumberFormatException e) {
            outcome.set("");
        }
    }

    private void update() {
        if (shown.get() == Shown.FIRST_RIDE) {
            workOutFirstRide();
        }
        outcome.set("");
        Optional<Table> table = table();
        view.set(table.filter(t -> asFile.get())
                .map(t -> t.orientation() == Table.Orientation.SPEED_DOWN
                        ? GridShape.View.SPEED_DOWN
                        : GridShape.View.LOAD_DOWN)
                .orElse(GridShape.View.CHART));
        Palette palette = session.themeProperty().get().palette();
        map.set(table.map(t -> shown.get() == Shown.FIRST_RIDE
                        ? TableMap.firstRide(firstRide.get(), palette)
                        : TableMap.of(t, session.mixture(), palette))
                .orElse(null));
        if (table.isPresent() && cell.get() >= table.get().cells()) {
            cell.set(-1);
        }
        updateFacts();
    }

    private void updateFacts() {
        facts.set(table().map(shown.get() == Shown.FIRST_RIDE ? t -> firstRideFacts() : this::facts)
                .orElse(List.of()));
    }

    private List<Fact> firstRideFacts() {
        FirstRide.Outcome first = firstRide.get();
        return List.of(
                new Fact(Words.of("tables.first.most"), Figures.signed(first.mostAddedPercent(), 1) + " %"),
                new Fact(Words.of("tables.first.range"), "±" + TableMap.firstRideRange(first) + " %"));
    }

    private List<Fact> facts(Table table) {
        Mixture notation = session.mixture();
        List<Fact> all = new ArrayList<>();
        all.add(new Fact(Words.of("tables.holds"), quantity(table, notation)));
        all.add(new Fact(
                Words.of("tables.size"),
                Words.of(
                        "tables.size.figure", table.speed().size(), table.load().size())));
        double[] sorted = Arrays.stream(table.toArray()).sorted().toArray();
        all.add(new Fact(
                Words.of("tables.span"),
                TableMap.figure(table, sorted[0], notation) + " … "
                        + TableMap.figure(table, sorted[sorted.length - 1], notation)));
        all.add(new Fact(
                Words.of("tables.lies"),
                Words.of("tables.lies." + table.orientation().name())));
        for (Table.Note note : table.notes()) {
            all.add(new Fact(note.key(), note.value()));
        }
        return all;
    }

    private static String quantity(Table table, Mixture notation) {
        if (table.quantity().isMixture()) {
            return notation.afr()
                    ? Words.of("tables.afr", Figures.shortest(notation.displayRatio()))
                    : Words.of("tables.lambda");
        }
        String unit = table.quantity().unit();
        return table.quantity().words() + (unit.equals("1") ? "" : ", " + unit);
    }

    /** The selected cell in words: place and figure; empty where none is. */
    public Optional<Fact> selected() {
        return table().filter(t -> cell.get() >= 0 && cell.get() < t.cells())
                .map(t -> new Fact(TableWords.cell(t, cell.get()), figure(t, cell.get())));
    }

    private String figure(Table table, int at) {
        return table.quantity().isMixture()
                ? session.mixture().words(session.mixture().lambdaOf(table.quantity(), table.at(at)))
                : TableWords.figure(table, table.at(at));
    }

    public ObjectProperty<Shown> shownProperty() {
        return shown;
    }

    /** The first-ride table; null where there is none. */
    public ReadOnlyObjectProperty<FirstRide.Outcome> firstRideProperty() {
        return firstRide.getReadOnlyProperty();
    }

    /** What came of writing. */
    public ReadOnlyStringProperty outcomeProperty() {
        return outcome.getReadOnlyProperty();
    }

    /** Whether the grid lies as in its file instead of as on a chart. */
    public BooleanProperty asFileProperty() {
        return asFile;
    }

    public IntegerProperty cellProperty() {
        return cell;
    }

    /** Null where there is no table. */
    public ReadOnlyObjectProperty<HeatMap> mapProperty() {
        return map.getReadOnlyProperty();
    }

    public ReadOnlyObjectProperty<GridShape.View> viewProperty() {
        return view.getReadOnlyProperty();
    }

    public ReadOnlyObjectProperty<List<Fact>> factsProperty() {
        return facts.getReadOnlyProperty();
    }

    public Session session() {
        return session;
    }
}
