package fuelwright.estimate;

import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.List;

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

    /** How many cells would be leaned but for the choice that none is. */
    public int notLeaned() {
        return (int) cells.stream()
                .filter(c -> c.steps().stream().anyMatch(s -> s.kind() == CellProposal.Kind.NO_CELL_LEANED))
                .count();
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
