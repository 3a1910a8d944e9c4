package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.mixture.Fuel;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class MakeTargetTest {

    private static final Machine V_TWIN = new Machine(
            OptionalDouble.of(720),
            2,
            Optional.of(new ThrottleBody(38, 8, 5, 85)),
            Optional.of(new ThrottleBody(44, 8, 5, 85)),
            Fuel.PETROL,
            OptionalDouble.of(8500));
    private static final Axis SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 900, 1600, 2500, 3500, 4500, 6000, 8000);

    private static Table axes(Axis.Kind kind, double... loads) {
        Axis load = new Axis(kind, loads);
        return Table.of(Quantity.VOLUMETRIC_EFFICIENCY, SPEED, load, new double[SPEED.size() * load.size()]);
    }

    @Test
    void noPlaceAtHighLoadIsLeanerThanFullLoadBetweenTheCellsEither() {
        Table axes = axes(Axis.Kind.THROTTLE, 0, 2, 5, 10, 20, 35, 50, 70, 100);
        HighLoad highLoad = HighLoad.of(V_TWIN);
        Table target = MakeTarget.of(axes, highLoad, new MakeTarget.Choices(0.95, 0.98, 0.87, Fuel.PETROL));
        int seen = 0;
        for (double rpm = 900; rpm <= 8000; rpm += 50) {
            for (double load = 0; load <= 100; load += 0.5) {
                if (highLoad.at(rpm, load, Double.NaN, Double.NaN)) {
                    assertEquals(0.87, target.value(rpm, load), 1e-9, rpm + " rpm, " + load + " %");
                    seen++;
                }
            }
        }
        assertTrue(seen > 10_000, "points at high load: " + seen);
    }

    @Test
    void idleAndCruisingKeepTheirFiguresAndTheWayUpOnlyGetsRicher() {
        Table axes = axes(Axis.Kind.THROTTLE, 0, 2, 5, 10, 20, 35, 50, 60, 70, 100);
        Table target =
                MakeTarget.of(axes, HighLoad.byThrottle(), new MakeTarget.Choices(0.93, 0.99, 0.87, Fuel.PETROL));
        assertEquals(0.93, target.value(900, 0));
        assertEquals(0.93, target.value(1600, 2));
        assertEquals(0.99, target.value(2500, 0));
        assertEquals(0.99, target.value(4500, 20));
        // Halfway from 30 to 60 % is at 45: 35 % lies a sixth of the way.
        assertEquals(0.99 - 0.12 / 6, target.value(4500, 35), 1e-9);
        for (int cell = SPEED.size() * 2; cell < target.cells() - SPEED.size(); cell++) {
            assertTrue(target.at(cell + SPEED.size()) <= target.at(cell) + 1e-9);
        }
    }

    @Test
    void pressureTablesTurnRichBelowEightyFivePercentOfTheBarometer() {
        Table axes = axes(Axis.Kind.MANIFOLD_PRESSURE, 30, 45, 60, 75, 90, 100);
        Table target = MakeTarget.of(axes, HighLoad.of(V_TWIN), MakeTarget.Choices.usual(Fuel.PETROL));
        // 85 % of 101.325 kPa is 86.1: between 75 and 90, so 75 is rich already.
        assertEquals(0.87, target.value(4500, 75), 1e-9);
        assertTrue(target.value(4500, 60) > 0.87);
        assertEquals(0.98, target.value(4500, 30), 1e-9);
        assertEquals(0.95, target.value(900, 30), 1e-9);
    }

    @ParameterizedTest
    @EnumSource(Fuel.class)
    void whatIsUsualCanBeTakenWithEveryFuel(Fuel fuel) {
        assertEquals(Optional.empty(), MakeTarget.Choices.usual(fuel).problem());
    }

    /** Power on petrol is best at lambda 0.85 to 0.90 (the source is named in docs/cautions.md). */
    @Test
    void theUsualFullLoadOnPetrolLiesWherePowerIsBest() {
        double full = MakeTarget.Choices.usual(Fuel.PETROL).fullLoad();
        assertTrue(full >= 0.85 && full <= 0.90, "full load " + full);
    }

    @Test
    void leanFullLoadIsRefusedWithWords() {
        assertTrue(new MakeTarget.Choices(0.95, 1.0, 0.96, Fuel.PETROL)
                .problem()
                .orElseThrow()
                .toString()
                .contains("0.95"));
        assertTrue(
                new MakeTarget.Choices(0.95, 0.85, 0.90, Fuel.PETROL).problem().isPresent());
        assertTrue(new MakeTarget.Choices(1.2, 1.0, 0.87, Fuel.PETROL).problem().isPresent());
        assertTrue(new MakeTarget.Choices(Double.NaN, 1.0, 0.87, Fuel.PETROL)
                .problem()
                .isPresent());
        assertThrows(
                IllegalArgumentException.class,
                () -> MakeTarget.of(
                        axes(Axis.Kind.THROTTLE, 0, 100),
                        HighLoad.byThrottle(),
                        new MakeTarget.Choices(0.95, 1.0, 0.99, Fuel.PETROL)));
    }
}
