package fuelwright.estimate;

/**
 * How much of a table's high load is measured.
 *
 * @param cells cells at high load
 * @param notMeasured those of them that aren't measured
 */
public record HighLoadCells(int cells, int notMeasured) {

    public HighLoadCells {
        if (notMeasured < 0 || notMeasured > cells) {
            throw new IllegalArgumentException("notMeasured " + notMeasured + " must be from 0 to " + cells);
        }
    }

    public static HighLoadCells of(Proposal proposal) {
        int cells = 0;
        int not = 0;
        for (CellProposal cell : proposal.cells()) {
            cells += cell.highLoad() ? 1 : 0;
            not += cell.highLoad() && cell.standing() != Standing.MEASURED ? 1 : 0;
        }
        return new HighLoadCells(cells, not);
    }

    /** Such as "25 of 45 high-load cells aren't measured". */
    public String words() {
        return notMeasured + " of " + cells + " high-load cells " + (notMeasured == 1 ? "isn't" : "aren't")
                + " measured";
    }
}
