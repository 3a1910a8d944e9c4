package fuelwright.screen;

import fuelwright.ride.Ride;
import java.util.Optional;

/** A ride with the reason, if any, for which each row is kept out of the evidence. Immutable. */
public final class ScreenedRide {

    static final byte COUNTS = -1;
    private static final Screen[] SCREENS = Screen.values();

    private final Ride ride;
    private final byte[] reasons;
    private final int[] counts = new int[SCREENS.length];
    private final int kept;

    /**
     * @param reasons one for each row: the ordinal of the first screen that applies, or −1 where the row counts; copied
     */
    ScreenedRide(Ride ride, byte[] reasons) {
        this.ride = ride;
        this.reasons = reasons.clone();
        int all = 0;
        for (byte reason : reasons) {
            if (reason == COUNTS) {
                all++;
            } else {
                counts[reason]++;
            }
        }
        this.kept = all;
    }

    /** The same ride under another name, with the same kept out. */
    public ScreenedRide named(String name) {
        return new ScreenedRide(ride.named(name), reasons);
    }

    public Ride ride() {
        return ride;
    }

    /** Whether the row is evidence. */
    public boolean counts(int row) {
        return reasons[row] == COUNTS;
    }

    /** Why the row is kept out; empty where it counts. */
    public Optional<Screen> reason(int row) {
        return counts(row) ? Optional.empty() : Optional.of(SCREENS[reasons[row]]);
    }

    /** Whether the row is kept out for this reason. */
    public boolean isKeptOutBy(int row, Screen screen) {
        return reasons[row] == screen.ordinal();
    }

    /** Rows kept out for this reason. */
    public int count(Screen screen) {
        return counts[screen.ordinal()];
    }

    /** Rows that count. */
    public int kept() {
        return kept;
    }
}
