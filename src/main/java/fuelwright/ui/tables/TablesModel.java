package fuelwright.ui.tables;

import fuelwright.table.Table;
import fuelwright.ui.plot.GridShape;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.session.Mixture;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Words;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleIntegerProperty;

/** The stage Tables without its looks. */
public final class TablesModel {

    /** A fact about the table: words and figure. */
    public record Fact(String words, String figure) {}

    private final Session session;
    private final BooleanProperty target = new SimpleBooleanProperty();
    private final BooleanProperty asFile = new SimpleBooleanProperty();
    private final IntegerProperty cell = new SimpleIntegerProperty(-1);
    private final ReadOnlyObjectWrapper<HeatMap> map = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<GridShape.View> view = new ReadOnlyObjectWrapper<>(GridShape.View.CHART);
    private final ReadOnlyObjectWrapper<List<Fact>> facts = new ReadOnlyObjectWrapper<>(List.of());

    public TablesModel(Session session) {
        this.session = session;
        session.jobProperty().addListener((p, old, now) -> update());
        session.themeProperty().addListener((p, old, now) -> update());
        session.afrProperty().addListener((p, old, now) -> update());
        target.addListener((p, old, now) -> update());
        asFile.addListener((p, old, now) -> update());
        cell.addListener((p, old, now) -> updateFacts());
        update();
    }

    /** The table that is looked at. */
    public Optional<Table> table() {
        return target.get() ? session.job().targetTable() : session.job().fuelTable();
    }

    private void update() {
        Optional<Table> table = table();
        boolean afr = session.afrProperty().get();
        view.set(table.filter(t -> asFile.get())
                .map(t -> t.orientation() == Table.Orientation.SPEED_DOWN
                        ? GridShape.View.SPEED_DOWN
                        : GridShape.View.LOAD_DOWN)
                .orElse(GridShape.View.CHART));
        map.set(table.map(t -> TableMap.of(t, afr, session.themeProperty().get().palette()))
                .orElse(null));
        if (table.isPresent() && cell.get() >= table.get().cells()) {
            cell.set(-1);
        }
        updateFacts();
    }

    private void updateFacts() {
        facts.set(table().map(this::facts).orElse(List.of()));
    }

    private List<Fact> facts(Table table) {
        boolean afr = session.afrProperty().get();
        List<Fact> all = new ArrayList<>();
        all.add(new Fact(Words.of("tables.holds"), quantity(table, afr)));
        all.add(new Fact(
                Words.of("tables.size"),
                Words.of(
                        "tables.size.figure", table.speed().size(), table.load().size())));
        double[] sorted = Arrays.stream(table.toArray()).sorted().toArray();
        all.add(new Fact(
                Words.of("tables.span"),
                TableMap.figure(table, sorted[0], afr) + " … "
                        + TableMap.figure(table, sorted[sorted.length - 1], afr)));
        all.add(new Fact(
                Words.of("tables.lies"),
                Words.of("tables.lies." + table.orientation().name())));
        for (Table.Note note : table.notes()) {
            all.add(new Fact(note.key(), note.value()));
        }
        return all;
    }

    private static String quantity(Table table, boolean afr) {
        if (table.quantity().isMixture()) {
            return Words.of(afr ? "tables.afr" : "tables.lambda");
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
                ? Mixture.words(session.afrProperty().get(), Mixture.lambdaOf(table.quantity(), table.at(at)))
                : TableWords.figure(table, table.at(at));
    }

    /** Whether the target table is looked at instead of the fuel table. */
    public BooleanProperty targetProperty() {
        return target;
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
