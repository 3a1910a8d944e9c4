package fuelwright.ui.handover;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Standing;
import fuelwright.safety.Caution;
import fuelwright.table.Table;
import fuelwright.ui.plot.GridShape;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Colours;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;

/** The stage Handover without its looks. While a Stop caution stands nothing goes out before the user has said that they read it. */
public final class HandoverModel {

    private static final double CHANGED_TINT = 0.55;

    private final Session session;
    private final BooleanProperty stopsRead = new SimpleBooleanProperty();
    private final BooleanProperty pdf = new SimpleBooleanProperty();
    private final ReadOnlyObjectWrapper<HeatMap> map = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<GridShape.View> view = new ReadOnlyObjectWrapper<>(GridShape.View.CHART);
    private final ReadOnlyObjectWrapper<List<Caution>> stops = new ReadOnlyObjectWrapper<>(List.of());
    private final ReadOnlyStringWrapper outcome = new ReadOnlyStringWrapper("");

    public HandoverModel(Session session) {
        this.session = session;
        session.analysisProperty().addListener((p, old, now) -> update());
        session.themeProperty().addListener((p, old, now) -> update());
        update();
    }

    private void update() {
        Analysis analysis = session.analysis();
        List<Caution> now = analysis == null ? List.of() : analysis.stops();
        if (!now.equals(stops.get())) {
            stopsRead.set(false);
            stops.set(now);
        }
        outcome.set("");
        map.set(
                analysis == null
                        ? null
                        : sheet(analysis, session.themeProperty().get().palette()));
        if (analysis != null) {
            boolean down = analysis.proposal().before().orientation() == Table.Orientation.SPEED_DOWN;
            view.set(down ? GridShape.View.SPEED_DOWN : GridShape.View.LOAD_DOWN);
        }
    }

    /** The figures to be typed; those that change are tinted, with the old one below. */
    private static HeatMap sheet(Analysis analysis, Palette palette) {
        Table table = analysis.proposal().before();
        int decimals = TableWords.decimals(analysis.proposal().corrected());
        List<HeatCell> cells = new ArrayList<>();
        for (CellProposal c : analysis.proposal().cells()) {
            String after = Figures.plain(c.after(), decimals);
            String before = Figures.plain(c.before(), decimals);
            boolean changed = !after.equals(before);
            boolean stop = analysis.stops().stream().anyMatch(s -> s.cells().contains(c.cell()));
            cells.add(new HeatCell(
                    after,
                    "",
                    changed ? Colours.mix(palette.card(), palette.role("accent-soft"), CHANGED_TINT) : palette.card(),
                    changed ? HeatCell.Weight.STRONG : HeatCell.Weight.NORMAL,
                    !changed
                            && c.standing() == Standing.INFERRED
                            && c.decision().isEmpty(),
                    stop,
                    HeatCell.Mark.NONE,
                    false,
                    Words.of("handover.cell.words", TableWords.cell(table, c.cell()), before, after)));
        }
        return new HeatMap(
                TableWords.breakpoints(table.speed()),
                TableWords.breakpoints(table.load()),
                TableWords.axisTitle(table.speed()),
                TableWords.axisTitle(table.load()),
                cells);
    }

    /**
     * A cell as it is typed.
     *
     * @param place which one
     * @param before the old figure with its unit
     * @param after the figure to type
     * @param unit its unit; empty where it has none
     */
    public record Typed(String place, String before, String after, String unit) {}

    /** The selected cell; empty where none is. */
    public Optional<Typed> selected() {
        Analysis analysis = session.analysis();
        int cell = session.cellProperty().get();
        if (analysis == null || cell < 0 || cell >= analysis.proposal().cells().size()) {
            return Optional.empty();
        }
        Table table = analysis.proposal().corrected();
        CellProposal c = analysis.proposal().cell(cell);
        return Optional.of(new Typed(
                TableWords.cell(table, cell),
                TableWords.figure(table, c.before()),
                Figures.plain(c.after(), TableWords.decimals(table)),
                table.quantity().unit().equals("1") ? "" : table.quantity().unit()));
    }

    /** Whether a table may go out now: there is one, it belongs to the job as it is, and no Stop caution is unread. */
    public boolean mayLeave() {
        return session.analysis() != null
                && !session.staleProperty().get()
                && (stops.get().isEmpty() || stopsRead.get());
    }

    /**
     * The table as text, to be put on the clipboard; while a Stop stands it says so above the grid.
     *
     * @throws IllegalStateException if it may not leave
     */
    public String copy() {
        if (!mayLeave()) {
            throw new IllegalStateException("a Stop caution is unread");
        }
        outcome.set(Words.of(stops.get().isEmpty() ? "handover.copied" : "handover.copied.stop"));
        return session.outputs().tableText();
    }

    /** Whether an earlier handover lies in that folder. */
    public boolean wouldReplace(Path folder) {
        return Files.exists(folder.resolve("corrected.csv"));
    }

    /** Writes the output folder; {@link #outcomeProperty} says what came of it. */
    public void export(Path folder, boolean replace) {
        if (!mayLeave()) {
            throw new IllegalStateException("a Stop caution is unread");
        }
        session.outputs()
                .export(
                        folder,
                        replace,
                        pdf.get(),
                        files -> outcome.set(Words.of(
                                "handover.written", files.size(), folder.getFileName(), String.join(", ", files))));
    }

    /** Null where there is no proposal. */
    public ReadOnlyObjectProperty<HeatMap> mapProperty() {
        return map.getReadOnlyProperty();
    }

    public ReadOnlyObjectProperty<GridShape.View> viewProperty() {
        return view.getReadOnlyProperty();
    }

    public ReadOnlyObjectProperty<List<Caution>> stopsProperty() {
        return stops.getReadOnlyProperty();
    }

    /** Whether the user has said that they read the Stop cautions. */
    public BooleanProperty stopsReadProperty() {
        return stopsRead;
    }

    /** Whether report and entry sheet are written as PDF too. */
    public BooleanProperty pdfProperty() {
        return pdf;
    }

    public ReadOnlyStringProperty outcomeProperty() {
        return outcome.getReadOnlyProperty();
    }

    public Session session() {
        return session;
    }
}
