package fuelwright.safety;

import fuelwright.ride.Role;
import fuelwright.screen.Screen;
import java.util.Arrays;

/**
 * Which rows of a ride may have been enriched for warm-up: coolant below the least that counts as warm, or well below where it settles. Rows without a
 * coolant temperature are called warm, since nobody knows.
 */
final class Warming {

    /** Enrichment ends a little before the coolant settles (common practice, no source), K. */
    private static final double SETTLES_K = 5;

    private static final double SETTLED_SHARE = 0.9;
    /** Above this no unit enriches (common practice, no source), °C. */
    private static final double WARM_C = 80;

    private final RideRows rows;
    private final double[] coolant;
    private final double warmC;

    Warming(RideRows rows, Limits limits) {
        this.rows = rows;
        coolant = rows.values(Role.COOLANT);
        double[] known =
                Arrays.stream(coolant).filter(Double::isFinite).sorted().toArray();
        double settled = known.length == 0 ? Double.NaN : known[(int) (SETTLED_SHARE * (known.length - 1))];
        double warm = Math.min(settled - SETTLES_K, WARM_C);
        warmC = Math.max(limits.of(Limit.COOLANT_LEAST), Double.isNaN(warm) ? 0 : warm);
    }

    boolean at(int row) {
        return coolant[row] < warmC || rows.isScreened(row, Screen.TOO_COLD);
    }
}
