package fuelwright.ui.evidence;

import fuelwright.estimate.CellMeans;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.Standing;
import fuelwright.estimate.Validation;
import fuelwright.handover.CellLook;
import fuelwright.handover.RoundEnds;
import fuelwright.table.Table;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.session.StandingWords;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Colours;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.Optional;
import javafx.scene.paint.Color;

/** The evidence as a grid to be drawn. Pure. */
final class EvidenceMap {

    /** What the cells show. */
    enum Shown {
        SHORTFALL,
        READINGS,
        UNCERTAINTY,
        MEAN,
        UNSEEN
    }

    static final int RANGE = 40;

    private EvidenceMap() {}

    static HeatMap of(Analysis analysis, Shown shown, int range, Palette palette) {
        Table table = analysis.estimate().table();
        double most = most(analysis, shown);
        return TableWords.map(table, cell -> cell(analysis, shown, range, palette, cell, most));
    }

    private static HeatCell cell(Analysis analysis, Shown shown, int range, Palette palette, int cell, double most) {
        Estimate e = analysis.estimate();
        Standing standing = e.standing(cell);
        boolean high = analysis.proposal().cell(cell).highLoad();
        String place = TableWords.cell(e.table(), cell);
        switch (shown) {
            case READINGS:
                double readings = e.independentReadings(cell);
                return !(readings > 0)
                        ? none(place, palette, high, "evidence.cell.nobody")
                        : cell(
                                StandingWords.readings(readings),
                                "",
                                palette.sequential().at(Math.sqrt(readings / most)),
                                standing,
                                high,
                                Words.of("evidence.cell.readings", place, StandingWords.readings(readings)));
            case UNCERTAINTY:
                double uncertainty = e.uncertaintyPercent(cell);
                return cell(
                        Figures.plusMinus(uncertainty, 1),
                        "",
                        palette.sequential().at(uncertainty / most),
                        standing,
                        high,
                        Words.of("evidence.cell.uncertainty", place, Figures.plain(uncertainty, 1)));
            case MEAN:
                Optional<CellMeans.Mean> mean = analysis.means().at(cell);
                return mean.isEmpty()
                        ? none(place, palette, high, "evidence.cell.nobody")
                        : cell(
                                Figures.signed(mean.get().meanShortfallPercent(), 1),
                                Figures.count(mean.get().readings()),
                                palette.diverging().at(mean.get().meanShortfallPercent() / range),
                                standing,
                                high,
                                Words.of(
                                        "evidence.cell.mean",
                                        place,
                                        Figures.signed(mean.get().meanShortfallPercent(), 1)));
            case UNSEEN:
                Optional<Validation.Cell> judged = analysis.validation().flatMap(v -> v.at(cell));
                return judged.isEmpty()
                        ? none(place, palette, high, "evidence.cell.seen")
                        : cell(
                                Figures.plain(judged.get().errorAfterPercent(), 1),
                                Words.of(
                                        "evidence.was",
                                        Figures.plain(judged.get().errorBeforePercent(), 1)),
                                palette.sequential().at(judged.get().errorAfterPercent() / most),
                                standing,
                                high,
                                Words.of(
                                        "evidence.cell.unseen",
                                        place,
                                        Figures.plain(judged.get().errorAfterPercent(), 1),
                                        Figures.plain(judged.get().errorBeforePercent(), 1)));
            default:
                Color full = palette.diverging().at(e.shortfallPercent(cell) / range);
                return cell(
                        Figures.signed(e.shortfallPercent(cell), 1),
                        Figures.plusMinus(e.uncertaintyPercent(cell), 1),
                        Colours.mix(palette.faded(), full, CellLook.strength(standing, e.uncertaintyPercent(cell))),
                        standing,
                        high,
                        Words.of(
                                "evidence.cell.shortfall",
                                place,
                                Figures.signed(e.shortfallPercent(cell), 1),
                                Figures.plain(e.uncertaintyPercent(cell), 1),
                                standing.words()));
        }
    }

    private static HeatCell cell(
            String figure, String below, Color fill, Standing standing, boolean high, String words) {
        HeatCell.Weight weight = standing == Standing.MEASURED
                ? HeatCell.Weight.STRONG
                : standing == Standing.THIN ? HeatCell.Weight.NORMAL : HeatCell.Weight.SMALL;
        return new HeatCell(
                figure, below, fill, weight, standing == Standing.INFERRED, false, HeatCell.Mark.NONE, high, words);
    }

    /** A cell of which nothing is known has no figure at all; it is never shown as nothing needed. */
    private static HeatCell none(String place, Palette palette, boolean high, String words) {
        return new HeatCell(
                "–",
                "",
                palette.surface(),
                HeatCell.Weight.SMALL,
                true,
                false,
                HeatCell.Mark.NONE,
                high,
                Words.of(words, place));
    }

    /** Where the colours of a map of amounts end: a round figure that holds all; at least 1. */
    static double most(Analysis analysis, Shown shown) {
        double most = 1;
        Estimate e = analysis.estimate();
        for (int cell = 0; cell < e.table().cells(); cell++) {
            most = Math.max(most, amount(analysis, shown, cell));
        }
        return RoundEnds.of(0, most).high();
    }

    private static double amount(Analysis analysis, Shown shown, int cell) {
        switch (shown) {
            case READINGS:
                return analysis.estimate().independentReadings(cell);
            case UNSEEN:
                return analysis.validation()
                        .flatMap(v -> v.at(cell))
                        .map(Validation.Cell::errorAfterPercent)
                        .orElse(0.0);
            default:
                return analysis.estimate().uncertaintyPercent(cell);
        }
    }
}
