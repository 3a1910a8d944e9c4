package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.BoreForecast;
import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.mixture.Fuel;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class FirstRideTableTest {

    private static final Axis SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 1000, 2500, 4500, 7000, 9000);
    private static final Axis THROTTLE = new Axis(Axis.Kind.THROTTLE, 0, 3, 8, 20, 50, 100);
    private static final ProposalSettings SETTINGS = ProposalSettings.defaults();
    private static final Machine BIGGER = machine(38, 44);

    private static Machine machine(double before, double after) {
        return new Machine(
                OptionalDouble.of(720),
                2,
                Optional.of(new ThrottleBody(before, 8, 5, 85)),
                Optional.of(new ThrottleBody(after, 8, 5, 85)),
                Fuel.PETROL,
                OptionalDouble.of(9000));
    }

    private static Table table(Quantity quantity, double value) {
        double[] values = new double[SPEED.size() * THROTTLE.size()];
        Arrays.fill(values, value);
        return Table.of(quantity, SPEED, THROTTLE, values);
    }

    private static FirstRideTable first(Table old, Machine machine, ProposalSettings settings) {
        return FirstRideTable.of(old, BoreForecast.of(machine).orElseThrow(), HighLoad.of(machine), settings);
    }

    @Test
    void atHighLoadTheWholeDoubtIsAddedAndAtLightLoadNone() {
        Table old = table(Quantity.VOLUMETRIC_EFFICIENCY, 50);
        FirstRideTable first = first(old, BIGGER, SETTINGS.withStep(0.1));
        BoreForecast forecast = BoreForecast.of(BIGGER).orElseThrow();
        HighLoad high = HighLoad.of(BIGGER);
        int highCells = 0;
        int lightCells = 0;
        for (int cell = 0; cell < old.cells(); cell++) {
            double n = old.speedAt(cell);
            double t = old.loadAt(cell);
            double log = forecast.logFactor(n, t);
            double most = log + 1.65 * forecast.logUncertainty(n, t);
            double got = first.table().at(cell);
            assertTrue(got >= 50 * Math.exp(log) - 1e-9 && got <= 50 * Math.exp(most) + 0.1001);
            assertEquals(100 * (got / 50 - 1), first.changePercent(cell), 1e-9);
            assertEquals(100 * Math.expm1(log), first.forecastPercent(cell), 1e-9);
            if (high.at(n, t, Double.NaN, Double.NaN)) {
                assertEquals(50 * Math.exp(most), got, 0.1001);
                highCells++;
            } else if (forecast.pressureRatio(n, t) <= 0.5) {
                assertEquals(50 * Math.exp(log), got, 0.1001);
                lightCells++;
            }
        }
        assertTrue(highCells > 5 && lightCells > 5, highCells + " high, " + lightCells + " light");
    }

    @Test
    void itIsNowhereLeanerThanTheOldTableEvenWithASmallerBody() {
        for (Quantity quantity : Quantity.values()) {
            if (quantity.isFuel()) {
                Table old = table(quantity, 1.23456789);
                FirstRideTable first = first(old, machine(44, 36), SETTINGS);
                for (int cell = 0; cell < old.cells(); cell++) {
                    assertTrue(first.table().at(cell) >= old.at(cell) - 1e-9, quantity + " cell " + cell);
                }
            }
        }
    }

    /** As many decimals as the table has, or the step asked for; always up, so at high load never to the lean side. */
    @Test
    void figuresHaveNoMoreDecimalsThanTheTableAndAreRoundedUp() {
        Table old = table(Quantity.VOLUMETRIC_EFFICIENCY, 50.5);
        BoreForecast forecast = BoreForecast.of(BIGGER).orElseThrow();
        for (double step : new double[] {0, 0.5}) {
            FirstRideTable first = first(old, BIGGER, SETTINGS.withStep(step));
            double grid = step > 0 ? step : 0.1;
            for (int cell = 0; cell < old.cells(); cell++) {
                double got = first.table().at(cell);
                assertEquals(Math.rint(got / grid), got / grid, 1e-6, "cell " + cell);
                double exact = 50.5 * Math.exp(forecast.logFactor(old.speedAt(cell), old.loadAt(cell)));
                assertTrue(got >= exact - 1e-6, "cell " + cell);
            }
        }
    }

    @Test
    void thePulsesDeadTimeIsNotMultiplied() {
        Table old = table(Quantity.INJECTOR_PULSE, 3);
        FirstRideTable with = first(old, BIGGER, SETTINGS.withStep(0.001).withDeadTimeMs(1));
        FirstRideTable without = first(old, BIGGER, SETTINGS.withStep(0.001));
        for (int cell = 0; cell < old.cells(); cell++) {
            double gain = without.table().at(cell) / 3;
            assertEquals(1 + 2 * gain, with.table().at(cell), 2e-3);
        }
    }

    @Test
    void tablesItHasNoRuleForAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> first(table(Quantity.LAMBDA, 1), BIGGER, SETTINGS));
        Table tooShort = table(Quantity.INJECTOR_PULSE, 0.8);
        assertThrows(IllegalArgumentException.class, () -> first(tooShort, BIGGER, SETTINGS.withDeadTimeMs(0.9)));
        Table byPressure = Table.of(
                Quantity.MULTIPLIER,
                new Axis(Axis.Kind.ENGINE_SPEED, 1000, 2000),
                new Axis(Axis.Kind.MANIFOLD_PRESSURE, 30, 100),
                new double[] {1, 1, 1, 1});
        assertThrows(IllegalArgumentException.class, () -> first(byPressure, BIGGER, SETTINGS));
    }
}
