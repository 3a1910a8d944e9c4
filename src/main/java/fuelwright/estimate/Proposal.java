package fuelwright.estimate;

import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The proposed table, cell by cell. Immutable. */
public final class Proposal {

    private final Table before;
    private final ProposalSettings settings;
    private final List<CellProposal> cells;

    Proposal(Table before, ProposalSettings settings, List<CellProposal> cells) {
        if (cells.size() != before.cells()) {
            throw new IllegalArgumentException("cells: " + cells.size() + ", needed " + before.cells());
        }
        this.before = before;
        this.settings = settings;
        this.cells = List.copyOf(cells);
    }

    /** The table as it is in the control unit now. */
    public Table before() {
        return before;
    }

    public ProposalSettings settings() {
        return settings;
    }

    public CellProposal cell(int cell) {
        return cells.get(cell);
    }

    /** All cells, in the table's order. */
    public List<CellProposal> cells() {
        return cells;
    }

    /**
     * The decisions with which nothing is leaned: every cell that this proposal would lean is held at its old figure, one that was set by hand
     * to a leaner figure included; all other decisions stay.
     */
    public Map<Integer, Decision> onlyRicher() {
        Map<Integer, Decision> decisions = new TreeMap<>(settings.decisions());
        for (CellProposal cell : cells) {
            if (cell.changePercent() < 0) {
                decisions.put(cell.cell(), new Decision(Decision.Kind.HELD, cell.before()));
            }
        }
        return decisions;
    }

    /** The corrected table, in the same quantity, with the notes of the old one. */
    public Table corrected() {
        return before.withValues(cells.stream().mapToDouble(CellProposal::after).toArray());
    }

    /** Proposed change of delivered fuel, %. */
    public Table change() {
        return before.with(
                Quantity.CHANGE,
                cells.stream().mapToDouble(CellProposal::changePercent).toArray());
    }
}
