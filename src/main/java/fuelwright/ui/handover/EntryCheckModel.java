package fuelwright.ui.handover;

import fuelwright.handover.EntryDifference;
import fuelwright.handover.ToType;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.table.Table;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.work.CheckEntry;
import java.util.List;
import java.util.stream.Collectors;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/** The entry check without its looks: what was read back from the hardware, and what of it isn't what was meant. */
public final class EntryCheckModel {

    private final HandoverModel handover;
    private final StringProperty text = new SimpleStringProperty("");
    private final ObservableList<EntryDifference> found = FXCollections.observableArrayList();
    private final ReadOnlyObjectWrapper<HeatMap> map = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
    private final ReadOnlyStringWrapper remark = new ReadOnlyStringWrapper("");
    private final ReadOnlyBooleanWrapper stop = new ReadOnlyBooleanWrapper();
    private final ReadOnlyBooleanWrapper refused = new ReadOnlyBooleanWrapper();
    private boolean compared;

    EntryCheckModel(HandoverModel handover) {
        this.handover = handover;
        text.addListener((p, old, now) -> check());
        // What was read back belongs to the table that was meant then.
        handover.sheetProperty().addListener((p, old, now) -> {
            if (old != null && now != null && !old.after().equals(now.after())) {
                text.set("");
            }
            check();
        });
        session().themeProperty().addListener((p, old, now) -> draw());
        check();
    }

    private void check() {
        if (handover.sheetProperty().get() == null || text.get().isBlank()) {
            show(false, List.of(), "", "", false);
            return;
        }
        String asked = text.get();
        if (handover.wasCopied(asked)) {
            take(Loaded.refused(CheckEntry.ownTable("")));
            return;
        }
        session().outputs().check(asked, loaded -> {
            if (asked.equals(text.get())) {
                take(loaded);
            }
        });
    }

    private void take(Loaded<CheckEntry.Outcome> loaded) {
        String remarks = loaded.issues().stream()
                .filter(i -> i.severity() != Issue.Severity.NOTE)
                .map(i -> Parts.sentence(i.what()) + " " + Parts.sentence(i.todo()))
                .collect(Collectors.joining("\n"));
        if (loaded.value().isEmpty()) {
            show(false, List.of(), Words.of("check.refused"), remarks, true);
            return;
        }
        List<EntryDifference> all = loaded.value().get().differences();
        long stops = all.stream().filter(EntryDifference::isStop).count();
        int cells = loaded.value().get().meant().cells();
        String sentence = all.isEmpty()
                ? Words.of("check.none", cells)
                : stops > 0
                        ? Words.of("check.stops", all.size(), cells, stops)
                        : Words.of("check.found", all.size(), cells);
        show(true, all, sentence, remarks, false);
    }

    private void show(
            boolean isCompared, List<EntryDifference> all, String sentence, String remarks, boolean isRefused) {
        compared = isCompared;
        found.setAll(all);
        said.set(sentence);
        remark.set(remarks);
        refused.set(isRefused);
        stop.set(all.stream().anyMatch(EntryDifference::isStop));
        draw();
        if (!all.isEmpty()) {
            jump(all.get(0));
        }
    }

    private void draw() {
        ToType sheet = handover.sheetProperty().get();
        map.set(
                sheet == null || !compared
                        ? null
                        : TypingMap.checked(
                                sheet, found, session().themeProperty().get().palette()));
    }

    /** Shows the cell of a difference on the grid. */
    public void jump(EntryDifference difference) {
        handover.cellProperty().set(difference.cell());
    }

    private Table meant() {
        return handover.sheetProperty().get().after();
    }

    String place(EntryDifference d) {
        return TableWords.cell(meant(), d.cell());
    }

    String figures(EntryDifference d) {
        return Words.of(
                "check.figures",
                TypingMap.now(handover.sheetProperty().get(), d.cell()),
                TypingMap.typed(handover.sheetProperty().get(), d.typed()),
                d.detail());
    }

    /** What it does to the mixture. */
    String effect(EntryDifference d) {
        if (Double.isInfinite(d.mixturePercent())) {
            return Words.of("check.nofuel");
        }
        String size = Figures.plain(Math.abs(d.mixturePercent()), 1);
        return Words.of(d.isLean() ? "check.leaner" : "check.richer", size)
                + (d.place().words().isEmpty() ? "" : " " + d.place().words());
    }

    /** What was pasted. */
    public StringProperty textProperty() {
        return text;
    }

    /** Worst first. */
    public ObservableList<EntryDifference> found() {
        return found;
    }

    /** What was read back; null until it can be compared: what was meant must not look as if it had been typed. */
    ReadOnlyObjectProperty<HeatMap> mapProperty() {
        return map.getReadOnlyProperty();
    }

    /** The outcome in a sentence; empty where nothing was pasted. */
    public ReadOnlyStringProperty saidProperty() {
        return said.getReadOnlyProperty();
    }

    /** What was guessed, or why it can't be compared. */
    public ReadOnlyStringProperty remarkProperty() {
        return remark.getReadOnlyProperty();
    }

    /** Whether a cell is lean at high load. */
    ReadOnlyBooleanProperty stopProperty() {
        return stop.getReadOnlyProperty();
    }

    /** Whether what was pasted can't be compared. */
    ReadOnlyBooleanProperty refusedProperty() {
        return refused.getReadOnlyProperty();
    }

    IntegerProperty cellProperty() {
        return handover.cellProperty();
    }

    HandoverModel handover() {
        return handover;
    }

    Session session() {
        return handover.session();
    }
}
