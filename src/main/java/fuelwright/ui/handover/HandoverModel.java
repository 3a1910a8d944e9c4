package fuelwright.ui.handover;

import fuelwright.handover.ToType;
import fuelwright.safety.Caution;
import fuelwright.table.Table;
import fuelwright.ui.plot.GridShape;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import fuelwright.work.HandOver;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleObjectProperty;

/** The stage Handover without its looks. While a Stop caution stands nothing goes out before the user has said that they read it. */
public final class HandoverModel {

    /** The steps of the stage. */
    public enum Step {
        HARDWARE,
        WRITE,
        CHECK;

        String key() {
            return "handover.step." + name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    private static final String PDF = ".pdf";

    private final Session session;
    private final ObjectProperty<Step> step = new SimpleObjectProperty<>(Step.HARDWARE);
    private final BooleanProperty stopsRead = new SimpleBooleanProperty();
    private final BooleanProperty pdf = new SimpleBooleanProperty();
    private final ReadOnlyObjectWrapper<ToType> sheet = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<HeatMap> map = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<GridShape.View> view = new ReadOnlyObjectWrapper<>(GridShape.View.CHART);
    private final ReadOnlyObjectWrapper<List<Caution>> stops = new ReadOnlyObjectWrapper<>(List.of());
    private final ReadOnlyIntegerWrapper leaned = new ReadOnlyIntegerWrapper();
    private final ReadOnlyStringWrapper outcome = new ReadOnlyStringWrapper("");
    private final IntegerProperty cell = new SimpleIntegerProperty(-1);
    private final ReadOnlyObjectWrapper<Optional<Typed>> selected = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final Set<String> copied = new HashSet<>();
    private Optional<Table> table = Optional.empty();
    private final HardwareModel hardware;
    private final EntryCheckModel check;

    public HandoverModel(Session session) {
        this.session = session;
        hardware = new HardwareModel(session);
        session.jobProperty().addListener((p, old, now) -> begin());
        session.analysisProperty().addListener((p, old, now) -> update());
        session.themeProperty().addListener((p, old, now) -> draw());
        session.cellProperty().addListener((p, old, now) -> follow());
        cell.addListener((p, old, now) -> {
            if (sharesCells()) {
                session.cellProperty().set(now.intValue());
            }
            selected.set(selected());
        });
        step.addListener((p, old, now) -> session.outputs().checkingProperty().set(now == Step.CHECK));
        session.outputs().checkingProperty().addListener((p, old, now) -> lead());
        lead();
        begin();
        update();
        check = new EntryCheckModel(this);
    }

    /** Goes to the check where that is the next step, and away from it where it isn't. */
    private void lead() {
        boolean check = session.outputs().checkingProperty().get();
        if (check != (step.get() == Step.CHECK)) {
            step.set(check ? Step.CHECK : first());
        }
    }

    /** What the hardware takes comes first until it was said once. */
    private Step first() {
        return session.job().isHardwareTold() ? Step.WRITE : Step.HARDWARE;
    }

    /** With another table the stage begins anew. */
    private void begin() {
        Optional<Table> now = session.job().fuelTable();
        if (!now.equals(table)) {
            table = now;
            if (step.get() != Step.CHECK) {
                step.set(first());
            }
        }
    }

    /** Whether a step is done for the job as it is. */
    public boolean isDone(Step which) {
        return switch (which) {
            case HARDWARE -> session.job().isHardwareTold() && hardware.isNowKnown();
            case WRITE -> session.outputs().isHandedOver();
            case CHECK -> session.outputs().isChecked();
        };
    }

    private void update() {
        Analysis analysis = session.analysis();
        List<Caution> now = analysis == null ? List.of() : analysis.stops();
        if (!now.equals(stops.get())) {
            stopsRead.set(false);
            stops.set(now);
        }
        leaned.set(
                analysis == null
                        ? 0
                        : (int) analysis.proposal().cells().stream()
                                        .filter(c -> c.changePercent() < 0)
                                        .count()
                                + analysis.proposal().notLeaned());
        outcome.set("");
        ToType typed = analysis == null ? null : HandOver.toType(analysis);
        if (typed != null) {
            view.set(TypingMap.view(typed.after()));
        }
        // What follows it must find the new grid: the map comes first, and no cell that the new grid lacks.
        if (typed == null || cell.get() >= typed.after().cells()) {
            cell.set(-1);
        }
        draw(typed);
        sheet.set(typed);
        follow();
        selected.set(selected());
    }

    private void draw() {
        draw(sheet.get());
    }

    private void draw(ToType typed) {
        map.set(
                typed == null
                        ? null
                        : TypingMap.toType(
                                typed,
                                typed.inferred()::contains,
                                session.themeProperty().get().palette()));
    }

    /** Whether the hardware's cells are those of the fuel table, so that one selection is enough. */
    private boolean sharesCells() {
        return sheet.get() != null
                && session.analysis() != null
                && sheet.get().after().sameAxes(session.analysis().proposal().before());
    }

    private void follow() {
        if (sharesCells()) {
            cell.set(session.cellProperty().get());
        }
    }

    /** Whether no cell is leaned; for while a Stop stands. One step of undo. */
    public void leanNoCell(boolean none) {
        if (none != isNoCellLeaned()) {
            session.edit(job -> job.withProposal(job.proposal().withLeanNoCell(none)));
        }
    }

    /** Whether it was chosen for this handover that no cell is leaned. */
    public boolean isNoCellLeaned() {
        return session.job().proposal().leanNoCell();
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
    private Optional<Typed> selected() {
        ToType typed = sheet.get();
        int at = cell.get();
        if (typed == null || at < 0 || at >= typed.after().cells()) {
            return Optional.empty();
        }
        Table table = typed.after();
        String unit =
                table.quantity().unit().equals("1") ? "" : table.quantity().unit();
        String before = TypingMap.figure(typed, typed.before().at(at));
        return Optional.of(new Typed(
                TableWords.cell(table, at),
                unit.isEmpty() ? before : before + " " + unit,
                TypingMap.now(typed, at),
                unit));
    }

    /**
     * Whether a table may go out now: there is one, it belongs to the job as it is, no Stop caution is unread, and it is known what it is typed
     * over.
     */
    public boolean mayLeave() {
        return whyNot().isEmpty();
    }

    /** Why nothing may go out yet, a sentence; empty where it may. */
    public String whyNot() {
        if (session.analysis() == null || session.staleProperty().get()) {
            return Words.of("handover.wait");
        }
        if (!hardware.isNowKnown()) {
            return Words.of("handover.sayfirst");
        }
        return stops.get().isEmpty() || stopsRead.get() ? "" : Words.of("handover.tickfirst");
    }

    /**
     * The table as text, to be put on the clipboard; while a Stop stands it says so above the grid.
     *
     * @throws IllegalStateException if it may not leave
     */
    public String copy() {
        if (!mayLeave()) {
            throw new IllegalStateException(whyNot());
        }
        outcome.set(Words.of(stops.get().isEmpty() ? "handover.copied" : "handover.copied.stop"));
        return copied(session.outputs().tableText());
    }

    /**
     * The figures alone, for a grid on another screen.
     *
     * @throws IllegalStateException if they may not leave, or a Stop stands, which they couldn't carry
     */
    public String copyCells() {
        if (!mayLeave() || !stops.get().isEmpty()) {
            throw new IllegalStateException("a Stop caution stands");
        }
        outcome.set(Words.of("handover.copied.cells"));
        return copied(session.outputs().cellsText());
    }

    /** Notes what goes onto the clipboard. */
    String copied(String text) {
        copied.add(text);
        return text;
    }

    /** Whether a text is, to the letter, what went onto the clipboard from here. */
    boolean wasCopied(String text) {
        return copied.contains(text);
    }

    /** Writes the entry sheet or the report by itself; {@link #outcomeProperty} says so. */
    public void writePdf(String name, Path file) {
        if (!mayLeave()) {
            throw new IllegalStateException(whyNot());
        }
        Path named = named(file);
        if (!named.equals(file) && Files.exists(named)) {
            outcome.set(Words.of("handover.pdf.exists", named.getFileName()));
            return;
        }
        session.outputs()
                .writePdf(name, named, done -> outcome.set(Words.of("handover.written.one", done.getFileName())));
    }

    /** A name without an ending gets the usual one. */
    private static Path named(Path file) {
        String name = String.valueOf(file.getFileName());
        return name.toLowerCase(java.util.Locale.ROOT).endsWith(PDF) ? file : file.resolveSibling(name + PDF);
    }

    /** Whether an earlier handover lies in that folder. */
    public boolean wouldReplace(Path folder) {
        return Files.exists(folder.resolve("corrected.csv"));
    }

    /** Writes the output folder; {@link #outcomeProperty} says what came of it. */
    public void export(Path folder, boolean replace) {
        if (!mayLeave()) {
            throw new IllegalStateException(whyNot());
        }
        session.outputs()
                .export(
                        folder,
                        replace,
                        pdf.get(),
                        files -> outcome.set(Words.of(
                                "handover.written", files.size(), folder.getFileName(), String.join(", ", files))));
    }

    /** Which step is open. */
    public ObjectProperty<Step> stepProperty() {
        return step;
    }

    /** What the hardware takes. */
    public HardwareModel hardware() {
        return hardware;
    }

    /** What was typed against what was meant. */
    public EntryCheckModel check() {
        return check;
    }

    /** What is typed; null where there is no proposal. */
    public ReadOnlyObjectProperty<ToType> sheetProperty() {
        return sheet.getReadOnlyProperty();
    }

    /** The selected cell of the hardware's grid, −1 where none is. */
    public IntegerProperty cellProperty() {
        return cell;
    }

    /** The selected cell as it is typed; empty where none is. */
    public ReadOnlyObjectProperty<Optional<Typed>> selectedProperty() {
        return selected.getReadOnlyProperty();
    }

    /** How many cells are leaned, or would be but for the choice that none is. */
    public ReadOnlyIntegerProperty leanedProperty() {
        return leaned.getReadOnlyProperty();
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
