package fuelwright.ui.proposal;

import fuelwright.estimate.CellProposal;
import fuelwright.safety.Caution;
import fuelwright.safety.LeftLean;
import fuelwright.ui.session.Mixture;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;

/**
 * What a cell that stays leaner than fitted comes to, in a sentence, at the level of the caution that says so.
 *
 * @param words empty where nothing stays lean
 * @param level of the caution; empty where there is none
 */
record LeftWords(String words, Optional<Caution.Level> level) {

    /** Lean by more than this is said, %. */
    private static final double SAID_FROM_PERCENT = 0.5;

    static LeftWords of(Analysis analysis, int cell, Mixture notation) {
        CellProposal c = analysis.proposal().cell(cell);
        Optional<LeftLean> lean = analysis.leftLean().stream()
                .filter(l -> l.cell().cell() == cell)
                .findFirst();
        if (lean.isEmpty() && !(c.leftLeanPercent() > SAID_FROM_PERCENT)) {
            return new LeftWords("", Optional.empty());
        }
        return new LeftWords(
                stays(c, analysis.cellLoads().targetAt(cell), notation)
                        + lean.map(l -> ", " + place(l)).orElse("") + ".",
                lean.map(LeftLean::level));
    }

    /** Of several cells: how many stay lean by more than matters, and the worst. */
    static LeftWords of(Analysis analysis, SortedSet<Integer> cells, Mixture notation) {
        List<LeftLean> lean = analysis.leftLean().stream()
                .filter(l -> cells.contains(l.cell().cell()))
                .sorted(Comparator.comparing(LeftLean::place)
                        .thenComparing(Comparator.comparingDouble(LeftLean::leftPercent)
                                .reversed()))
                .toList();
        if (lean.isEmpty()) {
            return new LeftWords("", Optional.empty());
        }
        LeftLean worst = lean.get(0);
        return new LeftWords(
                Words.of("block.left", lean.size(), stays(worst.cell(), worst.target(), notation), place(worst)),
                Optional.of(worst.level()));
    }

    private static String stays(CellProposal c, double target, Mixture notation) {
        String percent = Figures.plain(c.leftLeanPercent(), c.leftLeanPercent() < 9.95 ? 1 : 0);
        return Double.isNaN(target)
                ? Words.of("explain.left.alone", percent)
                : Words.of(
                        "explain.left",
                        percent,
                        notation.words(target * (1 + c.leftLeanPercent() / 100)),
                        notation.figure(target));
    }

    private static String place(LeftLean lean) {
        String words = lean.place().words();
        return words.endsWith(",") ? words.substring(0, words.length() - 1) : words;
    }
}
