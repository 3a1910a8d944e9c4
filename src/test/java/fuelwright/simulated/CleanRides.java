package fuelwright.simulated;

import java.util.ArrayList;
import java.util.List;

/**
 * Trials with nothing wrong: the table is within 2 % of the truth, the machine has no leak and no odd cylinder, trims are in the log
 * where there are any, and the ride has no flaw. Nothing here deserves a Stop.
 */
public final class CleanRides {
    /** Errors are cut off at twice the standard deviation; the unit's rounding adds the rest. */
    private static final TableFlaw WITHIN_TWO_PERCENT = TableFlaw.wobble(0.008);

    private CleanRides() {}

    public static List<Trial> all() {
        List<Trial> trials = new ArrayList<>();
        long seed = 201;
        for (Machine machine : SimulatedMachines.all()) {
            boolean clean =
                    machine.cylinderShare().isEmpty() && machine.exhaust().leakGPerS() == 0;
            if (clean) {
                RideProfile road = RideProfile.road(10 + seed % 5);
                RideProfile profile = seed % 3 == 0 ? road.cold(25) : seed % 4 == 0 ? road.sparse(45, 0.8) : road;
                trials.add(Trial.withNearlyRightTable(machine.name(), machine, WITHIN_TWO_PERCENT, seed, profile));
            }
            seed++;
        }
        trials.add(Trial.withNearlyRightTable(
                "demo machine, dyno",
                SimulatedMachines.vTwin720(),
                WITHIN_TWO_PERCENT,
                301,
                RideProfile.dyno(100.0, 100.0, 70.0, 50.0, 35.0)));
        return List.copyOf(trials);
    }
}
