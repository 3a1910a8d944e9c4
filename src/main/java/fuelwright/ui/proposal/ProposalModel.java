package fuelwright.ui.proposal;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Decision;
import fuelwright.estimate.NextRide;
import fuelwright.estimate.ProposalMaker;
import fuelwright.estimate.ProposalSettings;
import fuelwright.estimate.Standing;
import fuelwright.handover.CellLook;
import fuelwright.job.HardwareProfile;
import fuelwright.table.Table;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.plot.Slice;
import fuelwright.ui.session.CellReadings;
import fuelwright.ui.session.NearReadings;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Measures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.unit.Unit;
import fuelwright.work.Analysis;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleObjectProperty;

/** The stage Proposal without its looks. */
public final class ProposalModel {

    private final Session session;
    private final NearReadings near;
    private final ObjectProperty<ProposalMap.Shown> shown = new SimpleObjectProperty<>(ProposalMap.Shown.CHANGE);
    private final IntegerProperty range = new SimpleIntegerProperty(0);
    private final ReadOnlyObjectWrapper<HeatMap> map = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<BlockExplanation> block = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<CellExplanation> explanation = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyStringWrapper summary = new ReadOnlyStringWrapper("");
    private final ReadOnlyStringWrapper message = new ReadOnlyStringWrapper("");
    private final ReadOnlyBooleanWrapper slip = new ReadOnlyBooleanWrapper();

    public ProposalModel(Session session) {
        this.session = session;
        this.near = new NearReadings(session, "proposal");
        session.analysisProperty().addListener((p, old, now) -> update());
        session.cellProperty().addListener((p, old, now) -> select());
        session.jobProperty().addListener((p, old, now) -> unsay());
        session.themeProperty().addListener((p, old, now) -> update());
        session.whenShownOtherwise(this::updateCell);
        session.selection().blockProperty().addListener((p, old, now) -> select());
        shown.addListener((p, old, now) -> update());
        range.addListener((p, old, now) -> update());
        update();
    }

    private void update() {
        Analysis analysis = session.analysis();
        if (analysis == null) {
            map.set(null);
            summary.set("");
        } else {
            map.set(ProposalMap.of(
                    analysis,
                    shown.get(),
                    shownRange(),
                    session.themeProperty().get().palette()));
            summary.set(summary(analysis));
        }
        updateCell();
    }

    private void unsay() {
        message.set("");
        slip.set(false);
    }

    private void select() {
        unsay();
        updateCell();
    }

    private void updateCell() {
        Analysis analysis = session.analysis();
        int cell = session.cellProperty().get();
        boolean there = analysis != null
                && cell >= 0
                && cell < analysis.proposal().cells().size();
        SortedSet<Integer> cells = session.selection().cells();
        block.set(there && cells.size() > 1 ? BlockExplanation.of(analysis, cells, session.shownIn()) : null);
        explanation.set(there ? CellExplanation.of(analysis, cell, session.shownIn()) : null);
    }

    private static String summary(Analysis analysis) {
        long[] counts = new long[Standing.values().length];
        for (int cell = 0; cell < analysis.proposal().cells().size(); cell++) {
            counts[analysis.proposal().cell(cell).standing().ordinal()]++;
        }
        String cells = Words.of("proposal.counts", counts[0], counts[1], counts[2]);
        return analysis.validation()
                .map(v -> Words.of(
                                "proposal.validation",
                                Figures.plain(v.errorBeforePercent(), 1),
                                Figures.plain(v.errorAfterPercent(), 1))
                        + " " + cells)
                .orElse(cells);
    }

    /** What to ride next: where, gear and road speed, how long, how unsure it is now; empty where there is no proposal. */
    List<List<String>> nextRide() {
        if (session.analysis() == null) {
            return List.of();
        }
        List<NextRide.Region> regions = session.analysis().nextRide().regions();
        return IntStream.range(0, regions.size())
                .mapToObj(i -> nextRide(i + 1, regions.get(i)))
                .toList();
    }

    private List<String> nextRide(int number, NextRide.Region r) {
        Measures measures = session.measuresProperty().get();
        return List.of(
                Integer.toString(number),
                Words.of(
                                r.pulls() ? "nextride.pull" : "nextride.where",
                                span(r.speedFromRpm(), r.speedToRpm()),
                                span(r.loadFrom(), r.loadTo()),
                                r.load().unit().symbol())
                        + r.gear()
                                .map(g -> "\n"
                                        + Words.of(
                                                "nextride.gear",
                                                g.number(),
                                                measures.figure(Unit.KILOMETRE_PER_HOUR, g.roadSpeedKmh(), 0)))
                                .orElse(""),
                Words.of("nextride.seconds", r.seconds()),
                CellLook.plusMinus(r.uncertaintyPercent()),
                r.highLoad() ? Words.of("nextride.dyno") : "");
    }

    private static String span(double from, double to) {
        String low = Figures.plain(from, 0);
        String high = Figures.plain(to, 0);
        return low.equals(high) ? low : low + "–" + high;
    }

    /** Headings of {@link #nextRide}. */
    List<String> nextRideHeadings() {
        return List.of(
                "",
                Words.of("nextride.heading.where"),
                Words.of("nextride.heading.hold"),
                Words.of("nextride.heading.now"),
                "");
    }

    /** Where figures are rounded, and to what; empty where no step is set. */
    String roundedWords() {
        double step = settings().step();
        if (step <= 0) {
            return "";
        }
        HardwareProfile hardware = session.job().hardware();
        String unit = hardware.keepsCells()
                ? session.job().fuelTable().map(t -> t.quantity().unit()).orElse("1")
                : hardware.holds() == HardwareProfile.Holds.PERCENT_CHANGE ? "%" : "1";
        return Words.of(
                hardware.keepsCells() ? "proposal.rounded.here" : "proposal.rounded",
                Figures.shortest(step) + (unit.equals("1") ? "" : "\u202f" + unit));
    }

    /** How the newest ride did; empty where there is no proposal. */
    Optional<String> rideToRide() {
        return Optional.ofNullable(session.analysis())
                .flatMap(a -> a.rideToRide()
                        .map(r -> Parts.sentence(r.words(!a.stops().isEmpty()))));
    }

    /** The readings near the selected cell; null while they aren't there. */
    ReadOnlyObjectProperty<CellReadings> nearProperty() {
        return near.readingsProperty();
    }

    /** How many readings near the cell count, and what was screened out there and why. */
    String outWords(CellReadings near) {
        String counts = Words.of("strip.counts", near.counting(), Figures.count(near.counting()));
        if (near.screenedOut() == 0) {
            return counts;
        }
        String reasons = near.out().entrySet().stream()
                .map(e -> e.getKey().words() + " " + Figures.count(e.getValue()))
                .collect(Collectors.joining(", "));
        return counts + " " + Words.of("strip.out", Figures.count(near.screenedOut()), reasons);
    }

    /** The range in use: the chosen one, or the smallest that holds everything. */
    public int shownRange() {
        return range.get() > 0
                ? range.get()
                : session.analysis() == null ? 20 : ProposalMap.rangeFor(session.analysis());
    }

    /** Keeps the old figures of what is selected. */
    public void hold() {
        decide(table -> cell -> new Decision(Decision.Kind.HELD, table.at(cell)));
    }

    /**
     * Gives what is selected a typed figure, or changes the old figures by a typed percentage; says so in {@link #messageProperty} where
     * that can't be.
     *
     * @return whether it was
     */
    public boolean set(String typed) {
        slip.set(false);
        if (session.selection().cells().isEmpty()) {
            return false;
        }
        Optional<TypedFigure> figure = TypedFigure.parse(typed);
        if (figure.isEmpty()) {
            message.set(Words.of(typed.strip().endsWith("%") ? "proposal.set.sign" : "proposal.set.nonumber"));
            return false;
        }
        double dead = session.job().proposal().deadTimeMs();
        boolean fuel = session.job().fuelTable().stream()
                .allMatch(t -> session.selection().cells().stream()
                        .allMatch(c -> t.quantity().delivered(figure.get().from(t.at(c)), dead) > 0));
        if (!fuel) {
            message.set(Words.of("proposal.set.nofuel"));
            return false;
        }
        String far = far(figure.get(), dead);
        decide(table -> cell -> new Decision(Decision.Kind.SET, figure(figure.get(), table, cell)));
        if (!far.isEmpty()) {
            message.set(far);
            slip.set(true);
            session.say(far);
        }
        return true;
    }

    /** What has to be asked about a figure before it is worked with; empty where nothing has. */
    private String far(TypedFigure figure, double deadTimeMs) {
        Analysis analysis = session.analysis();
        SortedSet<Integer> cells = session.selection().cells();
        if (analysis == null || analysis.proposal().cells().size() <= cells.last()) {
            return "";
        }
        Table table = analysis.proposal().before();
        List<FarFigure> far = cells.stream()
                .flatMap(cell -> {
                    double before = table.at(cell);
                    double factor = table.quantity().factor(before, figure.from(before), deadTimeMs);
                    return FarFigure.of(analysis.proposal().cell(cell), factor).stream();
                })
                .toList();
        return far.isEmpty()
                ? ""
                : far.size() == 1
                        ? far.get(0).words()
                        : Words.of(
                                "proposal.far.several", far.size(), far.get(0).words());
    }

    /** Whether {@link #messageProperty} asks about a figure that was just typed: undo takes it back. */
    ReadOnlyBooleanProperty slipProperty() {
        return slip.getReadOnlyProperty();
    }

    /** A typed change is reckoned, so it goes to the step; a typed figure stays as it was typed. */
    private double figure(TypedFigure typed, Table table, int cell) {
        double value = typed.from(table.at(cell));
        Analysis analysis = session.analysis();
        return typed.isChange()
                        && analysis != null
                        && analysis.proposal().cells().size() == table.cells()
                ? ProposalMaker.rounded(
                        table.quantity(),
                        analysis.proposal().settings(),
                        analysis.proposal().cell(cell),
                        value)
                : value;
    }

    /**
     * Takes what was fitted for what is selected, without caps, to the step. Cells at high load that would get less fuel than the program
     * proposes are left as they are; {@link #messageProperty} says how many.
     */
    public void takeFitted() {
        byFactor(CellProposal::neededFactor);
    }

    /**
     * Evens out what is selected: each change becomes the mean (of logs) of itself, twice, and its neighbours'. Cells at high load that would
     * get less fuel than the program proposes are left as they are; {@link #messageProperty} says how many.
     */
    public void soften() {
        Analysis analysis = session.analysis();
        if (analysis != null) {
            byFactor(c -> Softened.factor(analysis.proposal(), c.cell()));
        }
    }

    private void byFactor(ToDoubleFunction<CellProposal> wanted) {
        Analysis analysis = session.analysis();
        if (analysis == null || session.staleProperty().get()) {
            return;
        }
        double dead = session.job().proposal().deadTimeMs();
        SortedSet<Integer> all = session.selection().cells();
        SortedSet<Integer> taken = all.stream()
                .filter(cell -> {
                    CellProposal c = analysis.proposal().cell(cell);
                    return !c.highLoad() || wanted.applyAsDouble(c) >= c.factor();
                })
                .collect(Collectors.toCollection(TreeSet::new));
        decide(taken, table -> cell -> {
            CellProposal c = analysis.proposal().cell(cell);
            double figure = table.quantity().corrected(table.at(cell), wanted.applyAsDouble(c), dead);
            return new Decision(
                    Decision.Kind.SET,
                    ProposalMaker.rounded(table.quantity(), analysis.proposal().settings(), c, figure));
        });
        if (taken.size() < all.size()) {
            message.set(Words.of("proposal.left", all.size() - taken.size(), all.size()));
        }
    }

    /** How many cells a rule means. */
    int count(CellRule rule) {
        return session.analysis() == null ? 0 : rule.cells(session.analysis()).size();
    }

    /** Selects the cells that a rule means. */
    void select(CellRule rule) {
        if (session.analysis() != null) {
            session.selection().select(rule.cells(session.analysis()));
        }
    }

    /**
     * The selected cell's row or column as curves, worked out beside the window's thread. Without a selected cell: the middle one's.
     *
     * @param then told the newest one asked for; null where there is no proposal
     */
    void slice(boolean alongSpeed, Consumer<Slice> then) {
        Analysis analysis = session.analysis();
        if (analysis == null) {
            then.accept(null);
            return;
        }
        Table table = analysis.proposal().before();
        int cell = session.cellProperty().get() >= 0
                ? session.cellProperty().get()
                : table.cell(table.load().size() / 2, table.speed().size() / 2);
        session.look("look-slice", (p, c) -> ProposalSlice.of(analysis, cell, alongSpeed), then);
    }

    /** Gives what is selected back to the program. */
    public void release() {
        decide(table -> cell -> null);
    }

    private void decide(Function<Table, IntFunction<Decision>> decision) {
        decide(session.selection().cells(), decision);
    }

    /** One step of undo, however many cells. */
    private void decide(SortedSet<Integer> cells, Function<Table, IntFunction<Decision>> decision) {
        Optional<Table> table = session.job().fuelTable();
        if (cells.isEmpty() || table.isEmpty()) {
            return;
        }
        message.set("");
        Map<Integer, Decision> all = new TreeMap<>(session.job().proposal().decisions());
        for (int cell : cells) {
            Decision one = decision.apply(table.get()).apply(cell);
            if (one == null) {
                all.remove(cell);
            } else {
                all.put(cell, one);
            }
        }
        session.edit(job -> job.withProposal(job.proposal().withDecisions(all)));
    }

    /** Changes one of the caps or the step; what can't be is left as it was. */
    public void rules(double maxAddPercent, double maxCutPercent, double step) {
        boolean finite = Double.isFinite(maxAddPercent) && Double.isFinite(step);
        if (finite && maxAddPercent >= 0 && maxCutPercent >= 0 && maxCutPercent < 100 && step >= 0) {
            session.edit(job -> job.withProposal(
                    job.proposal().withCaps(maxAddPercent, maxCutPercent).withStep(step)));
        }
    }

    /** The step of the table's own figures, which counts where none is told; empty where the hardware's own cells are rounded instead. */
    Optional<Double> ownStep() {
        return session.job().hardware().keepsCells() ? session.job().fuelTable().map(Table::ownStep) : Optional.empty();
    }

    public ProposalSettings settings() {
        return session.job().proposal();
    }

    public ObjectProperty<ProposalMap.Shown> shownProperty() {
        return shown;
    }

    /** ±%; 0: by itself. */
    public IntegerProperty rangeProperty() {
        return range;
    }

    /** Null where there is no proposal. */
    public ReadOnlyObjectProperty<HeatMap> mapProperty() {
        return map.getReadOnlyProperty();
    }

    /** Null where no cell is selected. */
    public ReadOnlyObjectProperty<CellExplanation> explanationProperty() {
        return explanation.getReadOnlyProperty();
    }

    public ReadOnlyStringProperty summaryProperty() {
        return summary.getReadOnlyProperty();
    }

    /** Null where fewer than two cells are selected. */
    public ReadOnlyObjectProperty<BlockExplanation> blockProperty() {
        return block.getReadOnlyProperty();
    }

    /** What is wrong with what was typed. */
    public ReadOnlyStringProperty messageProperty() {
        return message.getReadOnlyProperty();
    }

    public Session session() {
        return session;
    }
}
