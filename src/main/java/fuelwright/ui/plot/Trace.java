package fuelwright.ui.plot;

import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntFunction;

/**
 * A ride as the timeline draws it.
 *
 * @param clock time of each row
 * @param lanes from top to bottom
 * @param shading which rows don't count, by reason
 * @param kinds the family of each reason
 * @param reason why a row doesn't count, in words; empty where it does
 * @param marks moments that are warned of, given in any order, kept Stop first, then by time
 */
public record Trace(
        RideClock clock,
        List<Lane> lanes,
        Shading shading,
        List<OutKind> kinds,
        IntFunction<String> reason,
        List<Mark> marks) {

    /**
     * A moment that is warned of.
     *
     * @param fromS shown second at which it starts
     * @param toS shown second at which it ends
     * @param stop whether it stands in the way of riding on
     * @param words what it is
     */
    public record Mark(double fromS, double toS, boolean stop, String words) {}

    private static final Comparator<Mark> ORDER =
            Comparator.comparing((Mark m) -> !m.stop()).thenComparing(Mark::fromS);

    public Trace {
        lanes = List.copyOf(lanes);
        kinds = List.copyOf(kinds);
        marks = marks.stream().sorted(ORDER).toList();
    }

    /** A ride whose reasons are not told apart. */
    public Trace(RideClock clock, List<Lane> lanes, BitSet screenedOut, IntFunction<String> reason) {
        this(
                clock,
                lanes,
                new Shading(clock.size(), 1, row -> screenedOut.get(row) ? 0 : -1),
                List.of(OutKind.DATA),
                reason,
                List.of());
    }

    /** Rows that don't count. */
    public BitSet screenedOut() {
        BitSet out = new BitSet(shading.rows());
        for (int row = 0; row < shading.rows(); row++) {
            out.set(row, shading.reason(row) >= 0);
        }
        return out;
    }

    /** The same lanes, otherwise shaded and marked. */
    public Trace shaded(Shading other, List<OutKind> otherKinds, IntFunction<String> why, List<Mark> warned) {
        return new Trace(clock, lanes, other, otherKinds, why, warned);
    }

    /** The row that a mark is about, by its start. */
    int rowOf(Mark mark) {
        return clock.nearest(mark.fromS());
    }
}
