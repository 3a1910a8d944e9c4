package fuelwright.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.estimate.CellNeed;
import fuelwright.mixture.Fuel;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** 40 to 44 mm: the bore's area grows by 21 %. */
class BeyondBoreTest {

    private static Machine machine(double before, double after) {
        return new Machine(
                OptionalDouble.of(450),
                1,
                Optional.of(new ThrottleBody(before, 0, 5, 85)),
                Optional.of(new ThrottleBody(after, 0, 5, 85)),
                Fuel.PETROL,
                OptionalDouble.empty());
    }

    /** The first cell needs so much more, the others 10 %; the last one was hardly ridden. */
    private static Breathing gain(Axis.Kind load, double percent) {
        Axis speed = new Axis(Axis.Kind.ENGINE_SPEED, 6000, 7000);
        Axis loads = new Axis(load, 16, 38);
        Table before = Table.of(Quantity.INJECTOR_PULSE, speed, loads, new double[] {5, 5, 5, 5});
        CellNeed ten = new CellNeed(10, 1, 20);
        return Breathing.measured(
                        before,
                        before,
                        Optional.empty(),
                        0,
                        List.of(new CellNeed(percent, 1, 20), ten, ten, new CellNeed(80, 1, 2)))
                .orElseThrow();
    }

    @Test
    void moreFuelThanTheBoresAreaGrewByIsSaidWithFiguresAndPlace() {
        BeyondBore beyond =
                BeyondBore.of(machine(40, 44), gain(Axis.Kind.THROTTLE, 30.9)).orElseThrow();
        assertEquals(Set.of(0), beyond.cells());
        assertEquals(21, beyond.areaPercent(), 1e-9);
        assertEquals(
                "In 1 of 3 known cells more fuel is needed than the bore can give (its area grew by 21 %): then part of it is the old table or its target, or another part, not the bore's air. Most: +30.9 % at 6000 rpm, 16 %",
                beyond.sentence());
        assertEquals("in 1 cell more than the bore can give", beyond.words());
    }

    @Test
    void withinItsPlusMinusNothingIsSaid() {
        assertTrue(
                BeyondBore.of(machine(40, 44), gain(Axis.Kind.THROTTLE, 21.9)).isEmpty());
        assertTrue(
                BeyondBore.of(machine(40, 44), gain(Axis.Kind.THROTTLE, 22.1)).isPresent());
        assertTrue(BeyondBore.of(machine(40, 44), gain(Axis.Kind.MANIFOLD_PRESSURE, 22.1))
                .isPresent());
    }

    @Test
    void withoutBothBoresNothingIsKnownOfIt() {
        assertTrue(
                BeyondBore.of(Machine.unknown(), gain(Axis.Kind.THROTTLE, 60)).isEmpty());
    }
}
