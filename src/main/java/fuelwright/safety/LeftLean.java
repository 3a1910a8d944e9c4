package fuelwright.safety;

import fuelwright.estimate.CellProposal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * A cell that a proposal leaves short of fuel by more than matters, and how grave that is: what the cautions say of it, and what is said beside the
 * cell.
 *
 * @param cell the cell's proposal
 * @param place where that is, with its level
 * @param target what lambda the cell should give; NaN where it has no target
 * @param limit the leanest allowed there, lambda; NaN without a target
 */
public record LeftLean(CellProposal cell, Place place, double target, double limit) {

    /** Rules that name the cells in which the rides were lean under load. */
    private static final Set<String> SEEN =
            Set.of("lean-under-load", "fuel-supply-fading", "lean-moment", "lean-tip-in");

    /** Where a cell stays lean, worst first. */
    public enum Place {
        BEYOND_LIMIT(Caution.Level.STOP, "at high load beyond the lean limit", "beyond the lean limit"),
        SEEN_LEAN(Caution.Level.STOP, "where the rides were lean under load", "where it was seen lean"),
        BESIDE(
                Caution.Level.STOP,
                "at the edge of high load, beyond the lean limit,",
                "at the edge, beyond the lean limit"),
        HIGH_LOAD(Caution.Level.CHECK, "at high load, within the lean limit,", "high load"),
        HIGH_SEEN_LEAN(Caution.Level.CHECK, "at high load where the rides were lean", "high load, seen lean"),
        BESIDE_WITHIN(Caution.Level.CHECK, "at the edge of high load, within the lean limit,", "edge of high load"),
        LIGHT_LOAD(Caution.Level.CHECK, "at light load", "light load");

        private final Caution.Level level;
        private final String words;
        private final String about;

        Place(Caution.Level level, String words, String about) {
            this.level = level;
            this.words = words;
            this.about = about;
        }

        public Caution.Level level() {
            return level;
        }

        /** As part of a sentence. */
        public String words() {
            return words;
        }

        String about() {
            return about;
        }

        boolean isBeyondLimit() {
            return this == BEYOND_LIMIT || this == BESIDE;
        }
    }

    /** The cells in which the rides were lean under load, so that a Stop stands there. */
    public static SortedSet<Integer> seenLean(List<Caution> cautions) {
        SortedSet<Integer> cells = new TreeSet<>();
        cautions.stream().filter(c -> c.isStop() && SEEN.contains(c.rule())).forEach(c -> cells.addAll(c.cells()));
        return cells;
    }

    /**
     * Of one cell; empty where it doesn't stay lean by more than matters.
     *
     * <p>What a hand holds back counts as at the edge of high load also in a cell beside it, and is a Stop wherever the rides were lean: there the
     * proposal was the cure.
     *
     * @param seenLean see {@link #seenLean}
     */
    public static Optional<LeftLean> of(CellLoads loads, Limits limits, Set<Integer> seenLean, CellProposal cell) {
        double left = cell.leftLeanPercent();
        if (!(left > limits.of(Limit.LEFT_LEAN))) {
            return Optional.empty();
        }
        double target = loads.targetAt(cell.cell());
        double limit = loads.limitAt(cell.cell());
        return place(loads, limits, seenLean.contains(cell.cell()), cell)
                .map(place -> new LeftLean(cell, place, target, limit));
    }

    private static Optional<Place> place(CellLoads loads, Limits limits, boolean seenLean, CellProposal cell) {
        double target = loads.targetAt(cell.cell());
        double after = target * (1 + cell.leftLeanPercent() / 100);
        boolean beyond = after > loads.limitAt(cell.cell()) || Double.isNaN(after);
        boolean high = cell.highLoad() || loads.isHigh(cell.cell());
        boolean byHand = cell.decision().isPresent();
        if (high && beyond) {
            return Optional.of(Place.BEYOND_LIMIT);
        }
        if (byHand && seenLean) {
            return Optional.of(Place.SEEN_LEAN);
        }
        if (high) {
            return Optional.of(seenLean ? Place.HIGH_SEEN_LEAN : Place.HIGH_LOAD);
        }
        if (byHand && loads.isBeside(cell.cell())) {
            return Optional.of(beyond ? Place.BESIDE : Place.BESIDE_WITHIN);
        }
        return after > target + limits.of(Limit.LIGHT_LOAD_EXCESS) ? Optional.of(Place.LIGHT_LOAD) : Optional.empty();
    }

    public Caution.Level level() {
        return place.level();
    }

    /** How much leaner than needed it stays, %. */
    public double leftPercent() {
        return cell.leftLeanPercent();
    }

    /** The mixture that it stays at, lambda; NaN without a target. */
    public double lambda() {
        return target * (1 + leftPercent() / 100);
    }
}
