package fuelwright.screen;

import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import java.util.Arrays;

/** What a ride tells of the trims of a closed loop. */
public enum LoggedTrims {
    /** None is logged. */
    NONE,
    /** The short trim works about nothing and the long one isn't logged: it may hold what the table lacks. */
    SHORT_ABOUT_NOTHING,
    /** The log holds them. */
    TOLD;

    /** In the second half of the ride, when a long trim has been learnt; where the loop rests the short one is nothing. */
    private static final double MOVES_PERCENT = 0.5;

    private static final double NOTHING_PERCENT = 1;

    public static LoggedTrims of(Ride ride) {
        if (!ride.hasTrims()) {
            return NONE;
        }
        double[] trim = ride.channel(Role.LONG_TRIM).isPresent()
                ? new double[0]
                : ride.column(Role.SHORT_TRIM)
                        .map(Column::shared)
                        .map(c -> Arrays.stream(c, c.length / 2, c.length)
                                .filter(v -> Math.abs(v) > 0)
                                .sorted()
                                .toArray())
                        .orElseGet(() -> new double[0]);
        int end = trim.length / 20;
        double[] inner = Arrays.copyOfRange(trim, end, trim.length - end);
        boolean moves = inner.length > 0 && inner[inner.length - 1] - inner[0] > MOVES_PERCENT;
        double mean = Arrays.stream(inner).average().orElse(Double.NaN);
        return moves && Math.abs(mean) < NOTHING_PERCENT ? SHORT_ABOUT_NOTHING : TOLD;
    }

    /** Whether readings where the loop works prove nothing of the table. */
    boolean proveNothing(ClosedLoopSign sign) {
        return this == NONE ? sign.isSure() : this == SHORT_ABOUT_NOTHING && sign.isControlled();
    }

    /** Whether it is worth asking. */
    public boolean isOdd(ClosedLoopSign sign) {
        return this == NONE ? sign.isLikely() : this == SHORT_ABOUT_NOTHING && sign.isControlled();
    }
}
