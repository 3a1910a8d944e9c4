package fuelwright.ui.proposal;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Decision;
import fuelwright.estimate.Standing;
import fuelwright.safety.Caution;
import fuelwright.table.Table;
import fuelwright.ui.session.ShownIn;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.List;
import java.util.SortedSet;

/**
 * Several cells of the proposal in words. Pure.
 *
 * @param title how many cells
 * @param place from which corner to which
 * @param changes least and greatest change
 * @param standings how many of each standing
 * @param decisions how many are held and set; empty where none is
 * @param cautions those that concern one of the cells
 */
public record BlockExplanation(
        String title, String place, String changes, String standings, String decisions, List<Caution> cautions) {

    public BlockExplanation {
        cautions = List.copyOf(cautions);
    }

    public static BlockExplanation of(Analysis analysis, SortedSet<Integer> cells, ShownIn shownIn) {
        Table table = analysis.proposal().before();
        List<CellProposal> all = cells.stream().map(analysis.proposal()::cell).toList();
        double least =
                all.stream().mapToDouble(CellProposal::changePercent).min().orElse(0);
        double most =
                all.stream().mapToDouble(CellProposal::changePercent).max().orElse(0);
        long held = decided(all, Decision.Kind.HELD);
        long set = decided(all, Decision.Kind.SET);
        return new BlockExplanation(
                Words.of("block.title", cells.size()),
                Words.of("block.place", TableWords.cell(table, cells.first()), TableWords.cell(table, cells.last())),
                Words.of("block.changes", Figures.signed(least, 1), Figures.signed(most, 1)),
                Words.of(
                        "block.standings",
                        standing(all, Standing.MEASURED),
                        standing(all, Standing.THIN),
                        standing(all, Standing.INFERRED)),
                held + set == 0 ? "" : Words.of("block.decisions", held, set),
                analysis.cautions().stream()
                        .filter(c -> c.cells().stream().anyMatch(cells::contains))
                        .map(c -> c.in(shownIn))
                        .toList());
    }

    private static long decided(List<CellProposal> all, Decision.Kind kind) {
        return all.stream()
                .filter(c ->
                        c.decision().map(Decision::kind).filter(kind::equals).isPresent())
                .count();
    }

    private static long standing(List<CellProposal> all, Standing standing) {
        return all.stream().filter(c -> c.standing() == standing).count();
    }
}
