package fuelwright.ui.plot;

import java.util.BitSet;
import java.util.List;
import java.util.function.IntFunction;

/**
 * A ride as the timeline draws it.
 *
 * @param clock time of each row
 * @param lanes from top to bottom
 * @param screenedOut rows that don't count
 * @param reason why a row doesn't count, in words; empty where it does
 */
public record Trace(RideClock clock, List<Lane> lanes, BitSet screenedOut, IntFunction<String> reason) {

    public Trace {
        lanes = List.copyOf(lanes);
        screenedOut = (BitSet) screenedOut.clone();
    }

    @Override
    public BitSet screenedOut() {
        return (BitSet) screenedOut.clone();
    }

    /** How many rows of that stretch don't count. */
    int screenedIn(int from, int to) {
        int count = 0;
        for (int row = screenedOut.nextSetBit(from); row >= 0 && row < to; row = screenedOut.nextSetBit(row)) {
            int end = Math.min(to, screenedOut.nextClearBit(row));
            count += end - row;
            row = end;
        }
        return count;
    }
}
