package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.BoreForecast;
import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.issue.Loaded;
import fuelwright.mixture.Fuel;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class FirstRideTableTest {

    private static final Axis SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 1000, 2500, 4500, 7000, 9000);
    private static final Axis THROTTLE = new Axis(Axis.Kind.THROTTLE, 0, 3, 8, 20, 50, 100);
    private static final ProposalSettings SETTINGS = ProposalSettings.defaults();

    private static Machine machine(double before, double after) {
        return new Machine(
                OptionalDouble.of(720),
                2,
                Optional.of(new ThrottleBody(before, 8, 5, 85)),
                Optional.of(new ThrottleBody(after, 8, 5, 85)),
                Fuel.PETROL,
                OptionalDouble.of(9000));
    }

    private static Table table(Quantity quantity, Axis load, double value) {
        double[] values = new double[SPEED.size() * load.size()];
        java.util.Arrays.fill(values, value);
        return Table.of(quantity, SPEED, load, values);
    }

    @Test
    void aBiggerBodyGetsTheForecastAndDoubtOnTopAtHighLoad() {
        Machine machine = machine(38, 44);
        Table old = table(Quantity.VOLUMETRIC_EFFICIENCY, THROTTLE, 50);
        FirstRideTable first = FirstRideTable.of(old, machine, SETTINGS).value().orElseThrow();
        BoreForecast forecast = BoreForecast.of(machine).orElseThrow();
        HighLoad high = HighLoad.of(machine);
        int highCells = 0;
        for (int cell = 0; cell < old.cells(); cell++) {
            double n = old.speedAt(cell);
            double t = old.loadAt(cell);
            boolean isHigh = high.at(n, t, Double.NaN, Double.NaN);
            double expected = forecast.logFactor(n, t) + (isHigh ? 1.65 * forecast.logUncertainty(n, t) : 0);
            assertEquals(50 * Math.exp(expected), first.table().at(cell), 0.0011);
            assertEquals(100 * Math.expm1(expected), first.changePercent(cell), 1e-9);
            highCells += isHigh ? 1 : 0;
        }
        assertTrue(highCells > 5 && highCells < old.cells());
    }

    @Test
    void itIsNowhereLeanerThanTheOldTableEvenWithASmallerBody() {
        Machine machine = machine(44, 36);
        for (Quantity quantity : new Quantity[] {
            Quantity.VOLUMETRIC_EFFICIENCY, Quantity.INJECTOR_PULSE, Quantity.FUEL_TRIM, Quantity.MULTIPLIER
        }) {
            Table old = table(quantity, THROTTLE, 1.23456789);
            FirstRideTable first =
                    FirstRideTable.of(old, machine, SETTINGS).value().orElseThrow();
            for (int cell = 0; cell < old.cells(); cell++) {
                assertTrue(first.table().at(cell) >= old.at(cell) - 1e-9, quantity + " cell " + cell);
            }
        }
    }

    @Test
    void aTableIndexedByPressureStaysAsItIsAndSaysWhy() {
        Table old = table(Quantity.MULTIPLIER, new Axis(Axis.Kind.MANIFOLD_PRESSURE, 30, 60, 100), 1);
        Loaded<FirstRideTable> loaded = FirstRideTable.of(old, machine(38, 44), SETTINGS);
        assertEquals(old, loaded.value().orElseThrow().table());
        assertTrue(loaded.issues().get(0).what().contains("indexed by manifold pressure"));
    }

    @Test
    void withoutTheBodiesItIsRefused() {
        Loaded<FirstRideTable> loaded =
                FirstRideTable.of(table(Quantity.MULTIPLIER, THROTTLE, 1), Machine.unknown(), SETTINGS);
        assertTrue(loaded.value().isEmpty());
        assertTrue(loaded.issues().get(0).todo().contains("displacement"));
    }

    @Test
    void aPulseWithinItsDeadTimeIsRefused() {
        Table old = table(Quantity.INJECTOR_PULSE, THROTTLE, 0.8);
        Loaded<FirstRideTable> loaded = FirstRideTable.of(old, machine(38, 44), SETTINGS.withDeadTimeMs(0.9));
        assertTrue(loaded.value().isEmpty());
        assertTrue(FirstRideTable.of(table(Quantity.LAMBDA, THROTTLE, 1), machine(38, 44), SETTINGS)
                .value()
                .isEmpty());
    }

    @Test
    void thePulsesDeadTimeIsNotMultiplied() {
        Machine machine = machine(38, 44);
        Table old = table(Quantity.INJECTOR_PULSE, THROTTLE, 3);
        FirstRideTable first = FirstRideTable.of(old, machine, SETTINGS.withDeadTimeMs(1))
                .value()
                .orElseThrow();
        for (int cell = 0; cell < old.cells(); cell++) {
            assertEquals(1 + 2 * Math.exp(first.logFactor(cell)), first.table().at(cell), 1.1e-4);
        }
    }
}
