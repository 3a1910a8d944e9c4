package fuelwright.table;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class TableEditTest {

    private static final Axis SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 1000, 1500, 3000, 7000);
    private static final Axis LOAD = new Axis(Axis.Kind.THROTTLE, 0, 10, 50, 100);
    private static final DoubleBinaryOperator PLANE = (rpm, load) -> 20 + rpm / 200 + load / 4;

    private static Table table(DoubleBinaryOperator surface) {
        return Table.of(
                Quantity.VOLUMETRIC_EFFICIENCY,
                SPEED,
                LOAD,
                IntStream.range(0, 16)
                        .mapToDouble(c -> surface.applyAsDouble(SPEED.at(c % 4), LOAD.at(c / 4)))
                        .toArray());
    }

    private static List<Integer> all() {
        return IntStream.range(0, 16).boxed().toList();
    }

    @Test
    void fillScaleAndAddTouchOnlyWhatIsNamed() {
        Table table = table(PLANE);
        Table filled = TableEdit.fill(table, Set.of(3, 7), 55);
        Table scaled = TableEdit.scale(table, Set.of(3, 7), 1.1);
        Table added = TableEdit.add(table, Set.of(3, 7), -2.5);
        for (int cell = 0; cell < 16; cell++) {
            boolean named = cell == 3 || cell == 7;
            double old = table.at(cell);
            assertEquals(named ? 55 : old, filled.at(cell));
            assertEquals(named ? old * 1.1 : old, scaled.at(cell), 1e-9);
            assertEquals(named ? old - 2.5 : old, added.at(cell), 1e-9);
        }
    }

    @Test
    void whatIsTypedInTenthsStaysInTenths() {
        Table table = TableEdit.fill(table(PLANE), Set.of(0), 0.1);
        assertEquals(0.3, TableEdit.add(table, Set.of(0), 0.2).at(0));
    }

    @Test
    void aPlaneComesBackFromItsCornersAndFromItsEdgesAndSofteningLeavesIt() {
        Table plane = table(PLANE);
        Table bent = TableEdit.fill(plane, Set.of(5, 6, 9, 10), 3);
        assertArrayEquals(plane.toArray(), TableEdit.betweenCorners(bent, all()).toArray(), 1e-9);
        assertArrayEquals(plane.toArray(), TableEdit.betweenEdges(bent, all()).toArray(), 1e-9);
        assertArrayEquals(plane.toArray(), TableEdit.soften(plane, all()).toArray(), 1e-9);
    }

    @Test
    void edgesAreKeptWhateverTheyAre() {
        Table wild = table((rpm, load) -> 50 + 20 * Math.sin(rpm / 900) * Math.cos(load / 30));
        Table patched = TableEdit.betweenEdges(wild, all());
        for (int cell : all()) {
            boolean edge = cell % 4 == 0 || cell % 4 == 3 || cell / 4 == 0 || cell / 4 == 3;
            if (edge) {
                assertEquals(wild.at(cell), patched.at(cell), 1e-9);
            }
        }
    }

    @Test
    void oneRowGoesStraightFromEndToEndByTheAxisNotByTheCount() {
        Table row =
                TableEdit.betweenCorners(table((rpm, load) -> rpm == 1000 ? 10 : rpm == 7000 ? 70 : 0), List.of(0, 3));
        assertEquals(15, row.at(1), 1e-9);
        assertEquals(30, row.at(2), 1e-9);
        assertEquals(0, row.at(5), 1e-9);
    }

    @Test
    void softeningMovesASpikeHalfwayToItsNeighbours() {
        Table spike = TableEdit.fill(table((rpm, load) -> 40), Set.of(5), 60);
        assertEquals(50, TableEdit.soften(spike, Set.of(5)).at(5), 1e-9);
    }

    @Test
    void theNearerNeighbourWeighsMore() {
        Table table = table((rpm, load) -> rpm == 1000 ? 100 : rpm == 3000 ? 0 : 50);
        // 1500 rpm is a quarter of the way from 1000 to 3000: the straight line there is at 75; on the lowest row only
        // that line counts.
        assertEquals((50 + 75) / 2.0, TableEdit.soften(table, Set.of(1)).at(1), 1e-9);
    }

    @Test
    void nothingSelectedIsTheProgrammersMistake() {
        assertThrows(IllegalArgumentException.class, () -> TableEdit.betweenCorners(table(PLANE), List.of()));
    }

    @Test
    void aBreakpointPutInLeavesTheSurfaceAsItWas() {
        Table wild = table((rpm, load) -> 50 + 20 * Math.sin(rpm / 900) * Math.cos(load / 30));
        Table finer = AxisEdit.insert(AxisEdit.insert(wild, AxisEdit.Side.SPEED, 2200), AxisEdit.Side.LOAD, 33);
        assertEquals(5, finer.speed().size());
        for (double rpm = 800; rpm < 7500; rpm += 137) {
            for (double load = 0; load <= 100; load += 7) {
                assertEquals(wild.value(rpm, load), finer.value(rpm, load), 1e-9);
            }
        }
        assertArrayEquals(
                wild.toArray(),
                AxisEdit.remove(AxisEdit.remove(finer, AxisEdit.Side.SPEED, 2), AxisEdit.Side.LOAD, 2)
                        .toArray(),
                1e-9);
    }

    @Test
    void aMovedBreakpointReadsItsCellsOffTheOldSurface() {
        Table plane = table(PLANE);
        Table moved = AxisEdit.change(plane, AxisEdit.Side.LOAD, 1, 20);
        assertEquals(20, moved.load().at(1));
        assertArrayEquals(table(PLANE).sampledAt(SPEED, moved.load()).toArray(), moved.toArray(), 1e-9);
        assertEquals(PLANE.applyAsDouble(1500, 20), moved.at(5), 1e-9);
    }

    @Test
    void axesThatCannotBeAreRefusedWithASentence() {
        Table table = table(PLANE);
        assertSaid("already", () -> AxisEdit.insert(table, AxisEdit.Side.SPEED, 1500));
        assertSaid("less than 3000", () -> AxisEdit.change(table, AxisEdit.Side.SPEED, 1, 3000));
        assertSaid("more than 1000", () -> AxisEdit.change(table, AxisEdit.Side.SPEED, 1, 900));
        assertSaid("from 0 to 110", () -> AxisEdit.insert(table, AxisEdit.Side.LOAD, 150));
        Table two = Table.of(
                Quantity.LAMBDA,
                new Axis(Axis.Kind.ENGINE_SPEED, 1000, 2000),
                new Axis(Axis.Kind.THROTTLE, 0, 100),
                new double[] {1, 1, 1, 1});
        assertSaid("at least 2", () -> AxisEdit.remove(two, AxisEdit.Side.LOAD, 0));
        Table full = two;
        for (int i = 0; i < 62; i++) {
            full = AxisEdit.insert(full, AxisEdit.Side.LOAD, i + 1);
        }
        Table most = full;
        assertEquals(64, most.load().size());
        assertSaid("at most 64", () -> AxisEdit.insert(most, AxisEdit.Side.LOAD, 80));
    }

    private static void assertSaid(String part, org.junit.jupiter.api.function.Executable edit) {
        String said = assertThrows(IllegalArgumentException.class, edit).getMessage();
        assertTrue(said.contains(part), said);
    }
}
