package fuelwright.safety;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Decision;
import fuelwright.estimate.Proposal;
import fuelwright.estimate.Standing;
import fuelwright.unit.Sentence;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/**
 * Cells that the proposal leaves leaner than they should be, by what leaves them so: a cap, a hand, or something else; and cells that it
 * makes leaner at high load without the evidence for it.
 */
final class ProposalLean implements Rule {

    /** Smaller changes than this are rounding, as a factor. */
    private static final double ROUNDING = 5e-4;

    private enum Cause {
        CAP(
                "cap-holds-back-fuel",
                "A cap holds back fuel",
                "The cap on adding leaves %s %s short of fuel",
                "Enter this table, ride gently and propose again, or raise the cap once you know why so much is missing"),
        HAND(
                "held-lean",
                "Held or set by hand: lean",
                "What was held or set by hand leaves %s %s short of fuel",
                "Let those cells go, or set them richer"),
        OTHER(
                "proposal-lean",
                "The proposal stays lean",
                "The proposal leaves %s %s short of fuel",
                "Don't enter those cells; look at what made them in the cell's steps");

        private final String rule;
        private final String title;
        private final String what;
        private final String todo;

        Cause(String rule, String title, String what, String todo) {
            this.rule = rule;
            this.title = title;
            this.what = what;
            this.todo = todo;
        }

        static Cause of(CellProposal cell) {
            if (cell.decision().isPresent()) {
                return HAND;
            }
            boolean capped = cell.steps().stream().anyMatch(s -> s.kind() == CellProposal.Kind.CAP_ON_ADDING);
            return capped ? CAP : OTHER;
        }
    }

    private enum Place {
        BEYOND_LIMIT(Caution.Level.STOP, "at high load beyond the lean limit", "beyond the lean limit"),
        HIGH_LOAD(Caution.Level.CHECK, "at high load, within the lean limit,", "high load"),
        LIGHT_LOAD(Caution.Level.CHECK, "at light load", "light load");

        private final Caution.Level level;
        private final String words;
        private final String about;

        Place(Caution.Level level, String words, String about) {
            this.level = level;
            this.words = words;
            this.about = about;
        }
    }

    @Override
    public boolean looksAtProposal() {
        return true;
    }

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        if (d.proposal().isEmpty()) {
            return out;
        }
        Proposal proposal = d.proposal().get();
        for (Place place : Place.values()) {
            for (Cause cause : Cause.values()) {
                List<CellProposal> cells = proposal.cells().stream()
                        .filter(c -> place == placeOf(d, c) && cause == Cause.of(c))
                        .sorted(Comparator.comparingDouble(CellProposal::leftLeanPercent)
                                .reversed())
                        .toList();
                if (!cells.isEmpty()) {
                    out.add(caution(d, place, cause, cells));
                }
            }
        }
        leaned(d, proposal, out);
        return out;
    }

    /** Where a cell stays short of fuel by more than matters; null where it doesn't. */
    private static Place placeOf(Dossier d, CellProposal cell) {
        double left = cell.leftLeanPercent();
        if (!(left > d.limits.of(Limit.LEFT_LEAN))) {
            return null;
        }
        double target = d.targetAt(cell.cell());
        double after = target * (1 + left / 100);
        if (!isHigh(d, cell)) {
            return after > target + d.limits.of(Limit.LIGHT_LOAD_EXCESS) ? Place.LIGHT_LOAD : null;
        }
        return after > d.limitAt(cell.cell()) || Double.isNaN(after) ? Place.BEYOND_LIMIT : Place.HIGH_LOAD;
    }

    private static boolean isHigh(Dossier d, CellProposal cell) {
        return cell.highLoad() || d.isHigh(cell.cell());
    }

    private static Caution caution(Dossier d, Place place, Cause cause, List<CellProposal> cells) {
        CellProposal worst = cells.get(0);
        double after = d.targetAt(worst.cell()) * (1 + worst.leftLeanPercent() / 100);
        Sentence what = Sentence.of(
                cause.what + ". Worst: %s stays %s lean, %s for a target of %s%s",
                Say.cells(cells.size()),
                place.words,
                Say.cell(d.fuel, worst.cell()),
                Say.percent(worst.leftLeanPercent()),
                Say.lambda(after),
                Say.lambda(d.targetAt(worst.cell())).alone(),
                place == Place.BEYOND_LIMIT
                        ? Sentence.of(
                                ", limit %s",
                                Say.lambda(d.limitAt(worst.cell())).alone())
                        : "");
        return new Caution(cause.rule, place.level, cause.title, what, cause.todo, numbers(cells), List.of())
                .about(place.about);
    }

    private static void leaned(Dossier d, Proposal proposal, List<Caution> out) {
        List<CellProposal> blind = new ArrayList<>();
        List<CellProposal> doubtful = new ArrayList<>();
        for (CellProposal cell : proposal.cells()) {
            if (!isHigh(d, cell) || !(cell.factor() < 1 - ROUNDING)) {
                continue;
            }
            if (cell.standing() != Standing.MEASURED) {
                blind.add(cell);
            } else if (Math.log(cell.neededFactor()) + 2 * uncertainty(d, cell) > 0) {
                doubtful.add(cell);
            }
        }
        if (!blind.isEmpty()) {
            out.add(leaning(
                    d,
                    "leaned-unmeasured",
                    Caution.Level.STOP,
                    "Leaner at high load without measurement",
                    blind,
                    "Ride those cells first, or hold them"));
        }
        if (!doubtful.isEmpty()) {
            out.add(leaning(
                    d,
                    "leaned-in-doubt",
                    Caution.Level.CHECK,
                    "Leaner at high load than the evidence is sure of",
                    doubtful,
                    "Hold those cells until more readings say that they are rich"));
        }
    }

    private static double uncertainty(Dossier d, CellProposal cell) {
        return d.estimate().map(e -> e.logUncertainty(cell.cell())).orElse(0.0);
    }

    private static Caution leaning(
            Dossier d, String rule, Caution.Level level, String title, List<CellProposal> cells, String todo) {
        CellProposal worst = cells.stream()
                .min(Comparator.comparingDouble(CellProposal::factor))
                .orElseThrow();
        boolean byHand = cells.stream()
                .allMatch(c ->
                        c.decision().map(x -> x.kind() == Decision.Kind.SET).orElse(false));
        String what = Say.cells(cells.size()) + " at high load would get less fuel"
                + (byHand ? " because they were set by hand" : "") + ". Most: " + Say.cell(d.fuel, worst.cell())
                + " by "
                + Say.signed(worst.changePercent()) + ", standing "
                + worst.standing().words();
        return new Caution(rule, level, title, what, todo, numbers(cells), List.of());
    }

    private static TreeSet<Integer> numbers(List<CellProposal> cells) {
        TreeSet<Integer> numbers = new TreeSet<>();
        cells.forEach(c -> numbers.add(c.cell()));
        return numbers;
    }
}
