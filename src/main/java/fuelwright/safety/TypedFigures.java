package fuelwright.safety;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Decision;
import fuelwright.estimate.Proposal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/** Figures set by hand in which a digit or the decimal sign seems to have slipped. */
final class TypedFigures implements Rule {

    private static final double NEAR = 1.3;
    private static final double LARGE_FACTOR = 1.4;
    /** Digits that were swapped matter from here on, as a factor. */
    private static final double SWAPPED_FACTOR = 1.15;

    @Override
    public boolean looksAtProposal() {
        return true;
    }

    @Override
    public List<Caution> judge(Dossier d) {
        List<CellProposal> slipped = new ArrayList<>();
        d.proposal()
                .ifPresent(p -> p.cells().stream().filter(c -> isSlipped(d, c)).forEach(slipped::add));
        if (slipped.isEmpty()) {
            return List.of();
        }
        TreeSet<Integer> cells = new TreeSet<>();
        slipped.forEach(c -> cells.add(c.cell()));
        CellProposal first = slipped.get(0);
        return List.of(new Caution(
                "figure-slipped",
                Caution.Level.STOP,
                "Did a digit slip?",
                (cells.size() == 1
                                ? "A figure set by hand looks mistyped: "
                                : cells.size() + " figures set by hand look mistyped. First: ")
                        + Say.cell(d.fuel, first.cell()) + " was set to " + Say.figure(first.after())
                        + (isTenfold(first) ? "; the table has " : "; with two digits swapped it would be near the ")
                        + Say.figure(first.before()) + (isTenfold(first) ? "" : " that the table has"),
                "Type the figure again before anything is entered",
                cells,
                List.of()));
    }

    /** Whether a cell's figure is a slip of the hand rather than meant. */
    static boolean isSlipped(Dossier d, CellProposal cell) {
        boolean set = cell.decision().map(x -> x.kind() == Decision.Kind.SET).orElse(false);
        return set && d.fuel.quantity().isFuel() && (isTenfold(cell) || isSwapped(cell));
    }

    static boolean isSlipped(Dossier d, Proposal proposal, int cell) {
        return isSlipped(d, proposal.cell(cell));
    }

    /** About ten or a hundred times the old figure, or the part of it, in either direction; or so of what the evidence asks for. */
    private static boolean isTenfold(CellProposal cell) {
        for (double power : new double[] {0.01, 0.1, 10, 100}) {
            boolean written = isNear(cell.after() / cell.before(), power) && isLarge(cell);
            if (written || isNear(cell.factor() / cell.neededFactor(), power)) {
                return true;
            }
        }
        return false;
    }

    /** A correction in percent may well go from 1 to 10. */
    private static boolean isLarge(CellProposal cell) {
        return cell.factor() > LARGE_FACTOR || cell.factor() < 1 / LARGE_FACTOR;
    }

    private static boolean isNear(double ratio, double power) {
        return ratio > power / NEAR && ratio < power * NEAR;
    }

    /** Two neighbouring digits swapped back give nearly the old figure, or what is needed. */
    private static boolean isSwapped(CellProposal cell) {
        double factor = cell.factor();
        if (!(factor > SWAPPED_FACTOR || factor < 1 / SWAPPED_FACTOR) || cell.before() <= 0 || cell.after() <= 0) {
            return false;
        }
        char[] digits = String.format(Locale.ROOT, "%.3f", cell.after()).toCharArray();
        double old = Double.parseDouble(String.format(Locale.ROOT, "%.3f", cell.before()));
        for (int k = 0; k + 1 < digits.length; k++) {
            int next = Character.isDigit(digits[k + 1]) ? k + 1 : k + 2;
            if (next < digits.length && Character.isDigit(digits[k]) && digits[k] != digits[next]) {
                char[] back = digits.clone();
                back[k] = digits[next];
                back[next] = digits[k];
                if (Math.abs(Double.parseDouble(new String(back)) / old - 1) < 0.005) {
                    return true;
                }
            }
        }
        return false;
    }
}
