package fuelwright.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.ride.Ride;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class HighLoadOfRidesTest {

    private static final double NAN = Double.NaN;
    private static final Table FLAT = PlantedCase.table(Quantity.LAMBDA, PlantedCase.THROTTLE, c -> 0.88);

    /** The target turns 0.88 at 40 % throttle, its load index 3. */
    private static final Table EARLY = PlantedCase.table(
            Quantity.LAMBDA, PlantedCase.THROTTLE, c -> c / PlantedCase.SPEED.size() >= 3 ? 0.88 : 1.0);

    private static PlantedRide opening() {
        PlantedRide ride = new PlantedRide(20).withPressure();
        for (int percent = 2; percent <= 100; percent += 4) {
            ride.phase(3, 3500, 4500, percent, 1.0, 1.0, Map.of());
        }
        return ride;
    }

    private static HighLoad of(Table target, Ride... rides) {
        return HighLoadOfRides.of(Machine.unknown(), target.load(), target, List.of(rides));
    }

    @Test
    void aMeasuredPressureDrawsTheLineForCells() {
        HighLoad rule = of(FLAT, opening().named("ride"));
        assertEquals(HighLoad.Basis.PRESSURE, rule.basis());
        assertTrue(rule.at(4000, 50, NAN, NAN), "86 kPa from 48 % on");
        assertFalse(rule.at(4000, 40, NAN, NAN), "77 kPa");
    }

    @Test
    void whereTheTargetTurnsRichLoadIsHigh() {
        HighLoad rule = of(EARLY);
        assertEquals(HighLoad.Basis.THROTTLE, rule.basis());
        assertTrue(rule.at(4000, 40, NAN, NAN));
        assertFalse(rule.at(4000, 30, NAN, NAN));
        assertTrue(of(EARLY, opening().named("ride")).at(4000, 42, NAN, NAN), "whichever says more counts");
    }

    @Test
    void onHighGroundAPressureTableThatEndsEarlySaysWhatFullLoadIs() {
        Axis high = new Axis(Axis.Kind.MANIFOLD_PRESSURE, 20, 40, 60, 76);
        assertTrue(HighLoadOfRides.of(Machine.unknown(), high, FLAT, List.of()).at(4000, NAN, 66, NAN));
        assertFalse(HighLoadOfRides.of(Machine.unknown(), high, FLAT, List.of()).at(4000, NAN, 60, NAN));
        Axis sea = PlantedCase.PRESSURE;
        assertFalse(HighLoadOfRides.of(Machine.unknown(), sea, FLAT, List.of()).at(4000, NAN, 80, NAN));
        assertTrue(HighLoadOfRides.of(Machine.unknown(), sea, FLAT, List.of()).at(4000, NAN, 90, NAN));
    }

    @Test
    void aTargetThatIsRichThroughoutTellsNothing() {
        assertFalse(of(FLAT).at(4000, 50, NAN, NAN));
    }

    @Test
    void aRichIdleIsNoHighLoad() {
        Table idle = PlantedCase.table(
                Quantity.LAMBDA, PlantedCase.THROTTLE, c -> c < PlantedCase.SPEED.size() ? 0.88 : 1.0);
        assertFalse(of(idle).at(1000, 0, NAN, NAN));
    }

    @Test
    void leanWhereTheTargetIsRichIsAStopThoughNobodyDescribedTheEngine() {
        PlantedCase planted = new PlantedCase();
        planted.target = EARLY;
        planted.highLoad = of(EARLY);
        planted.ride(new PlantedRide(20)
                .phase(20, 4000, 15, 1.0)
                .phase(30, 5000, 46, 1.01)
                .phase(20, 4000, 15, 1.0)
                .named("ride"));
        assertEquals(
                Caution.Level.STOP,
                planted.judge("lean-under-load").orElseThrow().level());
    }

    @Test
    void whereNeitherEngineNorPressureIsKnownItIsSaid() {
        PlantedCase planted =
                new PlantedCase().ride(new PlantedRide(20).clean(3).named("ride"));
        assertTrue(planted.judge("high-load-unknown").isEmpty());
        planted.highLoad = of(planted.target);
        Caution unknown = planted.judge("high-load-unknown").orElseThrow();
        assertEquals(Caution.Level.CHECK, unknown.level());
        assertTrue(unknown.what().contains("60 % throttle and more"), unknown.what());
        planted.highLoad = of(planted.target, opening().named("ride"));
        assertTrue(planted.judge("high-load-unknown").isEmpty());
    }
}
