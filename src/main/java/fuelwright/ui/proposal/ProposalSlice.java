package fuelwright.ui.proposal;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Standing;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import fuelwright.ui.plot.Slice;
import fuelwright.ui.session.SliceReadings;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.ArrayList;
import java.util.List;

/** The row or column of the proposal through a cell, as curves. Pure. */
final class ProposalSlice {

    private ProposalSlice() {}

    /** @param alongSpeed along engine speed at the cell's load, or along load at its engine speed */
    static Slice of(Analysis analysis, int cell, boolean alongSpeed) {
        Table table = analysis.proposal().before();
        Axis along = alongSpeed ? table.speed() : table.load();
        Axis across = alongSpeed ? table.load() : table.speed();
        int line = alongSpeed ? table.loadIndex(cell) : table.speedIndex(cell);
        List<Slice.Point> points = new ArrayList<>();
        List<Integer> cells = new ArrayList<>();
        for (int i = 0; i < along.size(); i++) {
            int at = alongSpeed ? table.cell(line, i) : table.cell(i, line);
            CellProposal c = analysis.proposal().cell(at);
            cells.add(at);
            points.add(new Slice.Point(
                    analysis.estimate().shortfallPercent(at),
                    analysis.estimate().uncertaintyPercent(at),
                    c.changePercent(),
                    c.standing() == Standing.INFERRED));
        }
        SliceReadings readings = SliceReadings.of(analysis, cell, alongSpeed);
        return new Slice(
                Words.of(
                                "slice.title",
                                Parts.capital(across.kind().words()),
                                TableWords.breakpoints(across).get(line),
                                across.kind().unit().symbol())
                        + (readings.rebased() ? Words.of("slice.rebased") : ""),
                TableWords.axisTitle(along),
                TableWords.breakpoints(along),
                points,
                readings.dots().stream()
                        .map(d -> new Slice.Dot(along.position(d.at()), d.shortfallPercent()))
                        .toList(),
                cells);
    }
}
