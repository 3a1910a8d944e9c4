package fuelwright.handover;

import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;

/**
 * Compares what was typed into the hardware with what was meant. A cell differs when it is off by the hardware's step or more: what was
 * meant lies on those steps or was rounded to one, so less than a step is rounding and a whole step is a slip.
 */
public final class EntryCheck {

    /** Figures closer than this, relative, are the same figure written differently. */
    private static final double SAME = 1e-9;

    private EntryCheck() {}

    /**
     * @param meant the table that was handed over: fuel, change, or target mixture
     * @param typed what the hardware holds; same quantity, same axes
     * @param step the hardware's step in the table's own unit; 0: any difference counts
     * @param deadTimeMs injector dead time contained in pulses, ms; 0 where it isn't or for another quantity
     * @param place how a cell lies to high load
     * @return every difference, worst first: lean at high load before all else, then by effect on the mixture
     * @throws IllegalArgumentException if the two can't be compared, see {@link #comparable}
     */
    public static List<EntryDifference> compare(
            Table meant, Table typed, double step, double deadTimeMs, IntFunction<EntryDifference.Place> place) {
        return compare(meant, typed, Optional.empty(), step, deadTimeMs, place);
    }

    /**
     * The same where it is known what the hardware held before, so that cells that were passed over are known as such.
     *
     * @param old comparable with what was meant
     */
    public static List<EntryDifference> compare(
            Table meant,
            Table typed,
            Optional<Table> old,
            double step,
            double deadTimeMs,
            IntFunction<EntryDifference.Place> place) {
        if (!comparable(meant, typed)) {
            throw new IllegalArgumentException("typed " + typed + " can't be compared with meant " + meant);
        }
        if (old.isPresent() && !comparable(meant, old.get())) {
            throw new IllegalArgumentException("old " + old.get() + " can't be compared with meant " + meant);
        }
        if (!(step >= 0)) {
            throw new IllegalArgumentException("step " + step + " must be at least 0");
        }
        EntrySlips slips = new EntrySlips(meant, typed, step, old);
        List<EntryDifference> found = new ArrayList<>();
        for (int cell = 0; cell < meant.cells(); cell++) {
            if (!same(meant.at(cell), typed.at(cell), step)) {
                EntrySlips.Named named = slips.at(cell);
                found.add(new EntryDifference(
                        cell,
                        meant.at(cell),
                        typed.at(cell),
                        mixturePercent(meant.quantity(), meant.at(cell), typed.at(cell), deadTimeMs),
                        place.apply(cell),
                        named.slip(),
                        named.detail()));
            }
        }
        found.sort(Comparator.comparing((EntryDifference d) -> !d.isStop())
                .thenComparing(d -> -size(d))
                .thenComparing(EntryDifference::cell));
        return List.copyOf(found);
    }

    /** Whether both hold the same quantity, one that has an effect on the mixture, over the same breakpoints. */
    public static boolean comparable(Table meant, Table typed) {
        Quantity quantity = meant.quantity();
        boolean known = quantity.isFuel() || quantity.isMixture() || quantity == Quantity.CHANGE;
        return known && quantity == typed.quantity() && meant.sameAxes(typed);
    }

    static boolean same(double meant, double typed, double step) {
        double off = Math.abs(meant - typed);
        double alike = SAME * Math.max(1, Math.max(Math.abs(meant), Math.abs(typed)));
        return off <= alike || off < step - alike;
    }

    private static double mixturePercent(Quantity quantity, double meant, double typed, double deadTimeMs) {
        if (quantity.isMixture()) {
            return 100 * (typed / meant - 1);
        }
        Quantity arithmetic = quantity == Quantity.CHANGE ? Quantity.FUEL_TRIM : quantity;
        double wanted = arithmetic.delivered(meant, deadTimeMs);
        double got = arithmetic.delivered(typed, deadTimeMs);
        return got > 0 ? 100 * (wanted / got - 1) : Double.POSITIVE_INFINITY;
    }

    private static double size(EntryDifference difference) {
        return Math.abs(Math.log1p(difference.mixturePercent() / 100));
    }
}
