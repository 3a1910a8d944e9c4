package fuelwright.ui.session;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Standing;
import fuelwright.safety.Caution;
import fuelwright.work.Analysis;
import java.util.Comparator;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleObjectProperty;

/** What is looked at: a cell, or a block of cells around it, and a moment of a ride. */
public final class Selection {

    private final IntegerProperty cell = new SimpleIntegerProperty(-1);
    private final ObjectProperty<Set<Integer>> block = new SimpleObjectProperty<>(Set.of());
    private final ObjectProperty<ShownTable> shownTable = new SimpleObjectProperty<>(ShownTable.FUEL);
    private final ReadOnlyIntegerWrapper checks = new ReadOnlyIntegerWrapper();
    private final ObjectProperty<Caution.Moment> moment = new SimpleObjectProperty<>();

    Selection() {
        cell.addListener((p, old, now) -> block.set(Set.of()));
    }

    /** The selected cell of the fuel table, −1 where none is. Setting it gives up the block. */
    public IntegerProperty cellProperty() {
        return cell;
    }

    /** The cells selected together, the selected one among them; empty where it is alone. */
    public ObjectProperty<Set<Integer>> blockProperty() {
        return block;
    }

    /** Everything selected: the block, or the one cell, or nothing. */
    public SortedSet<Integer> cells() {
        SortedSet<Integer> all = new TreeSet<>(block.get());
        if (all.isEmpty() && cell.get() >= 0) {
            all.add(cell.get());
        }
        return all;
    }

    /** Selects those cells; none of them: nothing. */
    public void select(SortedSet<Integer> cells) {
        cell.set(cells.isEmpty() ? -1 : cells.first());
        block.set(cells.size() > 1 ? Set.copyOf(cells) : Set.of());
    }

    /** The table that stage Tables shows. */
    public ObjectProperty<ShownTable> shownTableProperty() {
        return shownTable;
    }

    /** What is to be done before the first start shall be looked at. */
    void wantChecks() {
        checks.set(checks.get() + 1);
    }

    /** Changes each time what is to be done before the first start shall be looked at. */
    public ReadOnlyIntegerProperty checksProperty() {
        return checks.getReadOnlyProperty();
    }

    /** Selects the cell that needs most more fuel of those that were ridden; without an analysis or a ridden cell nothing changes. */
    public void selectLeanest(Analysis analysis) {
        if (analysis == null) {
            return;
        }
        analysis.proposal().cells().stream()
                .filter(c -> c.standing() != Standing.INFERRED)
                .max(Comparator.comparingDouble(CellProposal::neededFactor))
                .ifPresent(c -> cell.set(c.cell()));
    }

    /** The moment of a ride that is looked at; null where none is. */
    public ObjectProperty<Caution.Moment> momentProperty() {
        return moment;
    }

    void clear() {
        moment.set(null);
        cell.set(-1);
    }

    /** Gives up what a table of so many cells hasn't got. */
    void keepWithin(int cells) {
        if (cell.get() >= cells || block.get().stream().anyMatch(c -> c >= cells)) {
            cell.set(-1);
        }
    }
}
