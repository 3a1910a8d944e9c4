package fuelwright.ui.proposal;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Decision;
import fuelwright.estimate.Standing;
import fuelwright.handover.CellLook;
import fuelwright.handover.RoundEnds;
import fuelwright.safety.Caution;
import fuelwright.safety.LeftLean;
import fuelwright.table.Table;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Colours;
import fuelwright.ui.theme.DivergingScale;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.SequentialScale;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** An analysis as a grid to be drawn. Pure. */
public final class ProposalMap {

    /** What the cells show. */
    public enum Shown {
        CHANGE,
        BEFORE,
        AFTER,
        DIFFERENCE,
        UNCERTAINTY
    }

    /** The ranges that a change map may have, ±%. */
    public static final List<Integer> RANGES = List.of(10, 20, 40);

    private ProposalMap() {}

    /** The smallest range that holds all changes; the largest where none does. */
    public static int rangeFor(Analysis analysis) {
        double most = analysis.proposal().cells().stream()
                .mapToDouble(c -> Math.abs(c.changePercent()))
                .max()
                .orElse(0);
        return RANGES.stream().filter(r -> most <= r).findFirst().orElse(40);
    }

    /** Cells that a Stop caution names. */
    public static Set<Integer> stopCells(Analysis analysis) {
        Set<Integer> cells = new HashSet<>();
        for (Caution caution : analysis.stops()) {
            cells.addAll(caution.cells());
        }
        return cells;
    }

    public static HeatMap of(Analysis analysis, Shown shown, int range, Palette palette) {
        Table table = analysis.proposal().before();
        Set<Integer> stops = stopCells(analysis);
        Map<Integer, LeftLean> lean = analysis.leftLean().stream()
                .collect(Collectors.toMap(l -> l.cell().cell(), l -> l));
        RoundEnds span = ends(analysis, shown);
        int decimals = decimals(analysis);
        return TableWords.map(
                table,
                cell -> cell(
                        analysis, shown, range, palette, cell, stops.contains(cell), lean.get(cell), span, decimals));
    }

    /** As many as the figures before and after need: a table in whole numbers stays one. */
    static int decimals(Analysis analysis) {
        return analysis.proposal().cells().stream()
                .mapToInt(c -> Math.max(Figures.decimals(c.before()), Figures.decimals(c.after())))
                .max()
                .orElse(0);
    }

    private static HeatCell cell(
            Analysis analysis,
            Shown shown,
            int range,
            Palette palette,
            int cell,
            boolean stop,
            LeftLean lean,
            RoundEnds span,
            int decimals) {
        CellProposal c = analysis.proposal().cell(cell);
        double uncertainty = analysis.estimate().uncertaintyPercent(cell);
        DivergingScale diverging = palette.diverging();
        SequentialScale sequential = palette.sequential();
        javafx.scene.paint.Color fill;
        String figure;
        String below = "";
        switch (shown) {
            case BEFORE:
                fill = sequential.at(span.share(c.before()));
                figure = Figures.plain(c.before(), decimals);
                break;
            case AFTER:
                fill = sequential.at(span.share(c.after()));
                figure = Figures.plain(c.after(), decimals);
                break;
            case DIFFERENCE:
                fill = diverging.at((c.after() - c.before()) / span.high());
                figure = CellLook.unknown(c) ? CellLook.UNKNOWN : Figures.signed(c.after() - c.before(), decimals);
                break;
            case UNCERTAINTY:
                fill = sequential.at(span.share(uncertainty));
                figure = Figures.plusMinus(uncertainty, 1);
                break;
            default:
                fill = Colours.mix(
                        palette.faded(),
                        diverging.at(c.changePercent() / range),
                        CellLook.strength(c.standing(), uncertainty));
                figure = CellLook.unknown(c) ? CellLook.UNKNOWN : Figures.signed(c.changePercent(), 1);
                below = Figures.plusMinus(uncertainty, 1);
        }
        return new HeatCell(
                figure,
                below,
                fill,
                weight(c.standing()),
                c.standing() == Standing.INFERRED,
                stop,
                mark(c, lean != null),
                c.highLoad(),
                words(analysis, cell, stop, lean != null && c.decision().isPresent()));
    }

    private static HeatCell.Weight weight(Standing standing) {
        switch (standing) {
            case MEASURED:
                return HeatCell.Weight.STRONG;
            case THIN:
                return HeatCell.Weight.NORMAL;
            default:
                return HeatCell.Weight.SMALL;
        }
    }

    private static HeatCell.Mark mark(CellProposal c, boolean lean) {
        return c.decision()
                .map(d -> d.kind() == Decision.Kind.HELD
                        ? lean ? HeatCell.Mark.HELD_LEAN : HeatCell.Mark.HELD
                        : lean
                                ? HeatCell.Mark.SET_LEAN
                                : FarFigure.of(c).isPresent() ? HeatCell.Mark.FAR : HeatCell.Mark.SET)
                .orElse(HeatCell.Mark.NONE);
    }

    private static String words(Analysis analysis, int cell, boolean stop, boolean lean) {
        CellProposal c = analysis.proposal().cell(cell);
        String place = TableWords.cell(analysis.proposal().before(), cell);
        String change = Figures.signed(c.changePercent(), 1);
        String text = c.decision()
                .map(d -> Words.of(
                        "proposal.cell." + d.kind().name().toLowerCase(Locale.ROOT),
                        place,
                        change,
                        c.standing().words(),
                        Figures.plain(analysis.estimate().uncertaintyPercent(cell), 1)))
                .orElseGet(() -> Words.of(
                        CellLook.unknown(c) ? "proposal.cell.unknown" : "proposal.cell.words",
                        place,
                        change,
                        Figures.plain(analysis.estimate().uncertaintyPercent(cell), 1),
                        c.standing().words()));
        String said = lean ? text + " " + Words.of("proposal.cell.lean", Figures.plain(c.leftLeanPercent(), 1)) : text;
        String all = FarFigure.of(c).map(f -> said + " " + f.words()).orElse(said);
        return stop ? all + " " + Words.of("proposal.cell.stop") : all;
    }

    /** Round ends of the colours of a map of amounts; of differences, as far in both directions. */
    public static RoundEnds ends(Analysis analysis, Shown shown) {
        if (shown == Shown.DIFFERENCE) {
            double most = analysis.proposal().cells().stream()
                    .mapToDouble(c -> Math.abs(c.after() - c.before()))
                    .max()
                    .orElse(0);
            RoundEnds half = RoundEnds.of(
                    0, Math.max(most, analysis.proposal().before().quantity().finestStep()));
            return new RoundEnds(-half.high(), half.high(), half.decimals());
        }
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (CellProposal c : analysis.proposal().cells()) {
            double least = shown == Shown.UNCERTAINTY ? 0 : Math.min(c.before(), c.after());
            double most = shown == Shown.UNCERTAINTY
                    ? analysis.estimate().uncertaintyPercent(c.cell())
                    : Math.max(c.before(), c.after());
            low = Math.min(low, least);
            high = Math.max(high, most);
        }
        return RoundEnds.of(low, high);
    }
}
