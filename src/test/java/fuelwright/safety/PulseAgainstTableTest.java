package fuelwright.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.ride.Role;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

class PulseAgainstTableTest {

    private static final Table TARGET = PlantedCase.targetOn(PlantedCase.THROTTLE);
    private static final double DEAD_MS = 0.9;
    private static final double[] EFFICIENCY = {10, 28, 50, 78, 84, 86, 87};

    /** Efficiency that rises with load, most at small openings. */
    static Table table() {
        return PlantedCase.table(Quantity.VOLUMETRIC_EFFICIENCY, PlantedCase.THROTTLE, c -> {
            int load = c / PlantedCase.SPEED.size();
            int speed = c % PlantedCase.SPEED.size();
            return EFFICIENCY[load] + 2 * speed - 0.3 * speed * speed;
        });
    }

    /** Every cell from 10 % throttle and 2000 rpm on for some seconds. */
    static PlantedRide ride(IntToDoubleFunction fuelled) {
        PlantedRide ride = new PlantedRide(20).steady(Role.COOLANT, 85).steady(Role.INJECTOR_PULSE, 0.006);
        for (int j = 1; j < PlantedCase.THROTTLE.size(); j++) {
            for (int i = 1; i < PlantedCase.SPEED.size(); i++) {
                int cell = PlantedCase.cell(j, i);
                double lambda = TARGET.at(cell);
                double ms = DEAD_MS + 0.08 * table().at(cell) / lambda * fuelled.applyAsDouble(cell);
                ride.phase(
                        4,
                        PlantedCase.SPEED.at(i),
                        PlantedCase.SPEED.at(i),
                        PlantedCase.THROTTLE.at(j),
                        lambda,
                        lambda,
                        Map.of(Role.INJECTOR_PULSE, Math.rint(100 * ms) / 1e5));
            }
        }
        return ride;
    }

    private static Optional<Caution> judged(PlantedRide ride) {
        PlantedCase planted = new PlantedCase();
        planted.fuelTable = table();
        planted.evidence(0, 0.005, 50);
        return planted.ride(ride.named("ride")).judge("wrong-table-by-pulse");
    }

    private static boolean isOpen(int cell) {
        return cell >= PlantedCase.cell(3, 0);
    }

    @Test
    void aRegionThatGotOtherFuelThanTheTableHoldsIsAsked() {
        Caution more = judged(ride(c -> isOpen(c) ? 1.11 : 1)).orElseThrow();
        assertEquals(Caution.Level.CHECK, more.level());
        assertTrue(more.cells().size() >= 4, more.sentence());
        assertTrue(judged(ride(c -> isOpen(c) && c % 8 < 5 ? 0.9 : 1)).isPresent());
    }

    @Test
    void theRightTableIsQuietWhateverItsInjectorsAreAndItsUnitMakesOfTheTarget() {
        assertTrue(judged(ride(c -> 1)).isEmpty());
        assertTrue(judged(ride(c -> 1.4)).isEmpty(), "one factor is the injectors' size");
        assertTrue(judged(ride(TARGET::at)).isEmpty(), "a unit that doesn't ask for the target");
    }

    @Test
    void loggedTrimsColdRowsAndSmallDifferencesAreQuiet() {
        PlantedRide trimmed = ride(c -> 1.1).steady(Role.LONG_TRIM, 10);
        assertTrue(judged(trimmed).isEmpty());
        assertTrue(
                judged(ride(c -> isOpen(c) ? 1.11 : 1).steady(Role.COOLANT, 40)).isEmpty());
        assertTrue(judged(ride(c -> isOpen(c) ? 1.04 : 1)).isEmpty());
        assertTrue(judged(ride(c -> c == 30 ? 1.3 : 1)).isEmpty(), "one cell is no region");
    }
}
