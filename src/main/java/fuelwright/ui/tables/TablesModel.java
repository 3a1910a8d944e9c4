package fuelwright.ui.tables;

import fuelwright.estimate.Decision;
import fuelwright.handover.StopNotes;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.table.Axis;
import fuelwright.table.OddCells;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.ui.plot.Curves;
import fuelwright.ui.plot.GridShape;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.plot.Surface;
import fuelwright.ui.session.Mixture;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.ShownTable;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Words;
import fuelwright.work.FirstRide;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
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

    /** How it is looked at. */
    public enum Form {
        MAP,
        CURVES,
        SURFACE
    }

    /** A fact about the table: words and figure. */
    public record Fact(String words, String figure) {}

    /** Some fuel's stoichiometric ratio: about 6.5 for methanol, 14.7 for petrol, 17 for methane (handbook values). */
    static final int LEAST_RATIO = 6;

    static final int MOST_RATIO = 20;

    static final int MOST_DEAD_TIME_MS = 10;

    private final Session session;
    private Job asked;
    private final ObjectProperty<ShownTable> shown;
    private final BooleanProperty asFile = new SimpleBooleanProperty();
    private final IntegerProperty cell = new SimpleIntegerProperty(-1);
    private final ObjectProperty<Set<Integer>> block = new SimpleObjectProperty<>(Set.of());
    private final ObjectProperty<Form> form = new SimpleObjectProperty<>(Form.MAP);
    private final BooleanProperty alongLoad = new SimpleBooleanProperty();
    private final TableEditor editor = new TableEditor(this);
    private final TargetModel target;
    private final ReadOnlyObjectWrapper<HeatMap> map = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<GridShape.View> view = new ReadOnlyObjectWrapper<>(GridShape.View.CHART);
    private final ReadOnlyObjectWrapper<FirstRide.Outcome> firstRide = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyStringWrapper outcome = new ReadOnlyStringWrapper("");
    private final ReadOnlyObjectWrapper<List<Fact>> facts = new ReadOnlyObjectWrapper<>(List.of());

    public TablesModel(Session session) {
        this.session = session;
        this.shown = session.selection().shownTableProperty();
        this.target = new TargetModel(this);
        session.jobProperty().addListener((p, old, now) -> {
            forgetFirstRide(old, now);
            update();
        });
        session.themeProperty().addListener((p, old, now) -> update());
        session.afrProperty().addListener((p, old, now) -> update());
        shown.addListener((p, old, now) -> {
            editor.forget();
            target.openProperty().set(false);
            block.set(Set.of());
            update();
        });
        target.previewProperty().addListener((p, old, now) -> update());
        firstRide.addListener((p, old, now) -> {
            session.outputs().shownFirstRide(now);
            update();
        });
        asFile.addListener((p, old, now) -> update());
        cell.addListener((p, old, now) -> updateFacts());
        update();
    }

    /** The table that is looked at; for the first ride the table to be put into the control unit. */
    public Optional<Table> table() {
        switch (shown.get()) {
            case TARGET:
                return Optional.ofNullable(target.previewProperty().get())
                        .or(() -> session.job().targetTable());
            case FIRST_RIDE:
                return Optional.ofNullable(firstRide.get()).map(FirstRide.Outcome::after);
            default:
                return session.job().fuelTable();
        }
    }

    /**
     * Puts an edited table into the job. Rides of which nothing else was said were made with the table as it was before, and keep it: what they
     * showed must not be read as if the new figures had been in the control unit. Decisions about changed cells, or all where the axes changed,
     * are given up: they were about other figures.
     */
    void put(Table changed) {
        if (shown.get() == ShownTable.TARGET) {
            session.edit(job -> job.withTargetTable(changed));
            return;
        }
        session.edit(job -> {
            Table old = job.fuelTable().orElseThrow();
            List<JobRide> rides = job.rides().stream()
                    .map(r -> r.madeWith().isPresent() ? r : new JobRide(r.ride(), Optional.of(old), r.source()))
                    .toList();
            Map<Integer, Decision> kept = new TreeMap<>();
            if (old.sameAxes(changed)) {
                job.proposal().decisions().forEach((c, decision) -> {
                    if (old.at(c) == changed.at(c)) {
                        kept.put(c, decision);
                    }
                });
            }
            return job.withFuelTable(changed)
                    .withRides(rides)
                    .withProposal(job.proposal().withDecisions(kept));
        });
    }

    /** Whether rides were made with another fuel table than the one that is shown, by hand or otherwise. */
    public boolean ridesKeepAnotherTable() {
        return shown.get() == ShownTable.FUEL
                && session.job().rides().stream()
                        .anyMatch(r -> r.madeWith().isPresent()
                                && !r.madeWith().equals(session.job().fuelTable()));
    }

    /** Moves the selection by so many breakpoints of engine speed and load; the middle cell where none is selected. */
    void step(int speeds, int loads) {
        table().ifPresent(t -> {
            int from = cell.get() >= 0
                    ? cell.get()
                    : t.cell(t.load().size() / 2, t.speed().size() / 2);
            int speed =
                    Math.min(Math.max(t.speedIndex(from) + speeds, 0), t.speed().size() - 1);
            int load = Math.min(Math.max(t.loadIndex(from) + loads, 0), t.load().size() - 1);
            block.set(Set.of());
            cell.set(t.cell(load, speed));
        });
    }

    String placeOf(int at) {
        return table().map(t -> TableWords.cell(t, at)).orElse("");
    }

    /** The table as curves; empty where there is none. */
    public Optional<Curves> curves() {
        return pictured()
                .map(t -> TablePictures.curves(
                        t, alongLoad.get(), cell.get(), block.get(), v -> shownFigure(t, v), figuresTitle(t)));
    }

    /** The table as a landscape; empty where there is none. */
    public Optional<Surface> surface() {
        return map.get() == null
                ? Optional.empty()
                : pictured()
                        .map(t -> TablePictures.surface(
                                t,
                                map.get(),
                                new TreeSet<>(editor.cells()),
                                v -> shownFigure(t, v),
                                decimals(t),
                                figuresTitle(t)));
    }

    /** What curves and landscape show: the table, for the first ride its change. */
    private Optional<Table> pictured() {
        return shown.get() == ShownTable.FIRST_RIDE
                ? Optional.ofNullable(firstRide.get()).map(FirstRide.Outcome::change)
                : table();
    }

    /** How the mixtures of a table are shown. */
    Mixture notation(Table table) {
        return session.mixture().in(table.quantity());
    }

    private double shownFigure(Table table, double value) {
        return new CellFigures(table.quantity(), notation(table), 0).shown(value);
    }

    private int decimals(Table table) {
        return table.quantity().isMixture() ? notation(table).decimals() : TableWords.decimals(table);
    }

    private String figuresTitle(Table table) {
        if (table.quantity().isMixture()) {
            return session.mixture().afr() ? "AFR" : "λ";
        }
        String unit = table.quantity().unit();
        return table.quantity().words() + (unit.equals("1") ? "" : ", " + unit);
    }

    private void forgetFirstRide(Job old, Job now) {
        if (!basis(old).equals(basis(now))) {
            asked = null;
            firstRide.set(null);
        }
    }

    /** Everything that the first-ride table and its cautions follow from. */
    private static List<Object> basis(Job job) {
        return List.of(
                job.fuelTable(),
                job.targetTable(),
                job.targetRatio(),
                job.machine(),
                job.proposal().deadTimeToldMs());
    }

    private void workOutFirstRide() {
        Job job = session.job();
        if (isDeadTimeUntold()) {
            return;
        }
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
            session.outputs().firstRide(made -> {
                // What comes late belongs to the job as it was asked for.
                if (basis(session.job()).equals(basis(job))) {
                    firstRide.set(made);
                }
            });
        }
    }

    /** The Stop cautions that stand against the table that is shown, each in one line. */
    List<String> stops() {
        FirstRide.Outcome first = firstRide.get();
        return shown.get() == ShownTable.FIRST_RIDE && first != null
                ? StopNotes.texts(first.cautions())
                : session.outputs().stops();
    }

    /** Writes the first-ride table; {@link #outcomeProperty} says what came of it. */
    public void writeFirstRide(Path folder) {
        FirstRide.Outcome newest = firstRide.get();
        if (newest == null) {
            return;
        }
        session.outputs()
                .writeFirstRide(
                        newest,
                        folder,
                        files -> outcome.set(Words.of("tables.first.written", String.join(", ", files))));
    }

    /** Cells that stand alone among their neighbours, as a slip of the finger leaves them: place and figures. */
    public List<Fact> oddCells() {
        if (shown.get() == ShownTable.FIRST_RIDE) {
            return List.of();
        }
        return table().map(t -> OddCells.of(t).stream()
                        .map(odd -> new Fact(TableWords.cell(t, odd.cell()), odd.words(t)))
                        .toList())
                .orElse(List.of());
    }

    /** Whether the target that is shown is AFR, so that its figures rest on a ratio. */
    public boolean isTargetRatioNeeded() {
        return shown.get() == ShownTable.TARGET
                && table().filter(t -> t.quantity() == Quantity.AFR).isPresent();
    }

    /** What below and above mean, in what is shown. */
    String targetWords() {
        return Words.of(
                "tables.explain.target",
                table().map(this::notation).orElse(session.mixture()).figure(1));
    }

    /** Takes the ratio of an AFR target as typed, empty for not known; false where it can't be one. */
    public boolean targetRatio(String typed) {
        OptionalDouble ratio = CellFigures.number(typed.strip());
        boolean empty = typed.isBlank();
        if (!empty && !(ratio.isPresent() && ratio.getAsDouble() >= LEAST_RATIO && ratio.getAsDouble() <= MOST_RATIO)) {
            return false;
        }
        session.edit(job -> job.withTargetRatio(ratio));
        return true;
    }

    /** Whether the dead time of the injectors has to be asked for. */
    public boolean asksForDeadTime() {
        return shown.get() != ShownTable.TARGET
                && session.job()
                        .fuelTable()
                        .filter(t -> t.quantity() == Quantity.INJECTOR_PULSE)
                        .isPresent();
    }

    /** Whether the fuel table holds pulses of which nobody has said what dead time they contain. */
    boolean isDeadTimeUntold() {
        return asksForDeadTime() && session.job().asksForDeadTime();
    }

    /** What the pulses are reckoned to contain. */
    public double deadTimeMs() {
        return session.job().proposal().deadTimeMs();
    }

    /** What dead time the pulses contain; empty until it is told. */
    public OptionalDouble deadTimeToldMs() {
        return session.job().proposal().deadTimeToldMs();
    }

    /** The injectors' own dead time, to be offered; empty where it isn't known or nothing. */
    OptionalDouble injectorDeadTimeMs() {
        OptionalDouble own = session.job().machine().injectors().deadTimeMs();
        return own.orElse(0) > 0 ? own : OptionalDouble.empty();
    }

    /** Takes the dead time in the pulses as typed, empty for not known; false where it can't be one. */
    public boolean deadTime(String typed) {
        OptionalDouble ms = CellFigures.number(typed.strip());
        if (!typed.isBlank() && !(ms.isPresent() && ms.getAsDouble() >= 0 && ms.getAsDouble() < MOST_DEAD_TIME_MS)) {
            return false;
        }
        session.edit(job -> job.withProposal(job.proposal().withDeadTimeMs(ms)));
        if (ms.isPresent()) {
            session.issues().removeIf(i -> i.todo().equals(Words.of("open.deadtime.todo")));
        }
        return true;
    }

    private void update() {
        if (shown.get() == ShownTable.FIRST_RIDE) {
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
        map.set(table.map(t -> shown.get() == ShownTable.FIRST_RIDE
                        ? TableMap.firstRide(firstRide.get(), palette)
                        : TableMap.of(t, notation(t), palette))
                .orElse(null));
        int cells = table.map(Table::cells).orElse(0);
        if (cell.get() >= cells || block.get().stream().anyMatch(c -> c >= cells)) {
            block.set(Set.of());
            cell.set(-1);
        }
        updateFacts();
    }

    /** What the colours of the map go from and to; empty where there is none. */
    List<String> scale() {
        if (shown.get() == ShownTable.FIRST_RIDE) {
            int range = firstRide.get() == null ? 0 : TableMap.firstRideRange(firstRide.get());
            return range == 0 ? List.of() : List.of("−" + range + "\u202f%", "0", "+" + range + "\u202f%");
        }
        return table().map(t -> {
                    double low = Arrays.stream(t.toArray()).min().orElse(0);
                    double high = Arrays.stream(t.toArray()).max().orElse(1);
                    return List.of(
                            TableMap.figure(t, low, notation(t)),
                            TableMap.figure(t, (low + high) / 2, notation(t)),
                            TableMap.figure(t, high, notation(t)));
                })
                .orElse(List.of());
    }

    private void updateFacts() {
        facts.set(table().map(shown.get() == ShownTable.FIRST_RIDE ? t -> firstRideFacts() : this::facts)
                .orElse(List.of()));
    }

    private List<Fact> firstRideFacts() {
        FirstRide.Outcome first = firstRide.get();
        return List.of(
                new Fact(Words.of("tables.first.most"), Figures.signed(first.mostAddedPercent(), 1) + " %"),
                new Fact(Words.of("tables.first.range"), "±" + TableMap.firstRideRange(first) + " %"));
    }

    private List<Fact> facts(Table table) {
        Mixture notation = notation(table);
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
                ? notation(table).words(notation(table).lambdaOf(table.quantity(), table.at(at)))
                : TableWords.figure(table, table.at(at));
    }

    /** Editing the table. */
    public TableEditor editor() {
        return editor;
    }

    /** Making a target table. */
    public TargetModel target() {
        return target;
    }

    /** A target table that is only looked at; null where none is. */
    ReadOnlyObjectProperty<Table> previewProperty() {
        return target.previewProperty();
    }

    /** The cells selected together. */
    public ObjectProperty<Set<Integer>> blockProperty() {
        return block;
    }

    public ObjectProperty<Form> formProperty() {
        return form;
    }

    /** Whether curves go over load instead of engine speed. */
    public BooleanProperty alongLoadProperty() {
        return alongLoad;
    }

    public ObjectProperty<ShownTable> shownProperty() {
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
