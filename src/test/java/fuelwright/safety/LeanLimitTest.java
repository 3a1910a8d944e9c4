package fuelwright.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.HighLoad;
import fuelwright.mixture.Fuel;
import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.unit.Unit;
import java.util.List;
import org.junit.jupiter.api.Test;

class LeanLimitTest {

    private static final Table TARGET = Table.of(
            Quantity.LAMBDA,
            new Axis(Axis.Kind.ENGINE_SPEED, 1000, 8000),
            new Axis(Axis.Kind.THROTTLE, 0, 100),
            new double[] {0.87, 0.87, 0.87, 0.87});

    private static Channel channel(Role role, Unit unit, double... values) {
        return new Channel(role.words(), role, unit, Column.of(values), Channel.Confidence.SURE, "");
    }

    @Test
    void aLimitStandsOnlyAtHighLoadAndIsThatOfTheCautions() {
        Ride ride = new Ride(
                "r",
                Column.of(new double[] {0, 1, 2}),
                List.of(
                        channel(Role.ENGINE_SPEED, Unit.RPM, 5000, 5000, 5000),
                        channel(Role.THROTTLE, Unit.PERCENT, 20, 61, 95)),
                List.of(0),
                List.of());
        Limits limits = Limits.usual(Fuel.PETROL);
        LeanLimit limit = LeanLimit.of(ride, TARGET, HighLoad.byThrottle(), limits);
        assertTrue(Double.isNaN(limit.at(0)));
        assertEquals(limits.leanest(0.87, false), limit.at(1), 1e-12);
        assertEquals(limits.leanest(0.87, true), limit.at(2), 1e-12);
    }

    @Test
    void withoutAThrottleThereIsNoLimit() {
        Ride ride = new Ride(
                "r",
                Column.of(new double[] {0}),
                List.of(channel(Role.ENGINE_SPEED, Unit.RPM, 5000)),
                List.of(0),
                List.of());
        assertTrue(Double.isNaN(LeanLimit.of(ride, TARGET, HighLoad.byThrottle(), Limits.usual(Fuel.PETROL))
                .at(0)));
    }
}
