package fuelwright.ui.proposal;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Decision;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Words;
import java.util.Optional;

/**
 * A typed figure far both from the old one and from what was fitted: likelier a slip of a digit than a wish. Asked about, never refused.
 *
 * @param fromOld factor on the old figure's fuel
 * @param fromFitted factor on the fuel that was fitted
 */
record FarFigure(double fromOld, double fromFitted) {

    /** From here on it is asked about, either way (common practice, no source). */
    private static final double FAR = 1.25;

    /** Of a cell as it was decided about; empty where the figure isn't typed, or near one of both. */
    static Optional<FarFigure> of(CellProposal cell) {
        return cell.decision().filter(d -> d.kind() == Decision.Kind.SET).flatMap(d -> of(cell, cell.factor()));
    }

    /** @param factor on the old figure's fuel, of a figure for this cell */
    static Optional<FarFigure> of(CellProposal cell, double factor) {
        FarFigure far = new FarFigure(factor, factor / cell.neededFactor());
        return isFar(far.fromOld) && isFar(far.fromFitted) ? Optional.of(far) : Optional.empty();
    }

    private static boolean isFar(double factor) {
        return factor > FAR || factor < 1 / FAR;
    }

    String words() {
        return Words.of("proposal.far", against(fromOld), against(fromFitted));
    }

    private static String against(double factor) {
        double percent = 100 * (factor - 1);
        return Words.of(percent > 0 ? "proposal.far.more" : "proposal.far.less", Figures.plain(Math.abs(percent), 0));
    }
}
