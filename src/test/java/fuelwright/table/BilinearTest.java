package fuelwright.table;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.hipparchus.analysis.interpolation.BilinearInterpolatingFunction;
import org.junit.jupiter.api.Test;

class BilinearTest {

    private static final double[] SPEEDS = {1000, 2000, 4000, 8000};
    private static final double[] THROTTLES = {0, 10, 30, 100};
    private static final double[][] BY_SPEED = {{10, 20, 35, 50}, {12, 26, 48, 70}, {11, 30, 60, 88}, {8, 25, 66, 100}};

    private static Table table(double[] speeds, double[] loads, double[][] bySpeed) {
        double[] values = new double[speeds.length * loads.length];
        for (int i = 0; i < speeds.length; i++) {
            for (int j = 0; j < loads.length; j++) {
                values[j * speeds.length + i] = bySpeed[i][j];
            }
        }
        return Table.of(
                Quantity.VOLUMETRIC_EFFICIENCY,
                new Axis(Axis.Kind.ENGINE_SPEED, speeds),
                new Axis(Axis.Kind.THROTTLE, loads),
                values);
    }

    /** Values computed with SciPy 1.17.1, RegularGridInterpolator, linear. */
    @Test
    void workedCasesOfAReferenceLibraryAreMet() {
        Table table = table(SPEEDS, THROTTLES, BY_SPEED);
        assertEquals(17, table.value(1500, 5), 1e-12);
        assertEquals(41, table.value(3000, 20), 1e-12);
        assertEquals(78.5, table.value(6000, 65), 1e-12);
        assertEquals(26, table.value(2000, 10), 1e-12);
        assertEquals(13.25, table.value(1250, 2.5), 1e-12);
        assertEquals(99.51130714285715, table.value(7999, 99), 1e-11);
        assertEquals(100, table.value(8000, 100), 1e-12);
    }

    /** Reference: Hipparchus 4.0.3, BilinearInterpolatingFunction. */
    @Test
    void randomGridsAgreeWithAReferenceLibrary() {
        Random random = new Random(42);
        for (int round = 0; round < 50; round++) {
            double[] speeds = ascending(random, 2 + random.nextInt(10), 500);
            double[] loads = ascending(random, 2 + random.nextInt(10), 10);
            double[][] bySpeed = new double[speeds.length][loads.length];
            for (double[] row : bySpeed) {
                for (int j = 0; j < row.length; j++) {
                    row[j] = 100 * random.nextDouble();
                }
            }
            Table table = table(speeds, loads, bySpeed);
            BilinearInterpolatingFunction reference = new BilinearInterpolatingFunction(speeds, loads, bySpeed);
            for (int i = 0; i < 200; i++) {
                double x = between(random, speeds);
                double y = between(random, loads);
                assertEquals(reference.value(x, y), table.value(x, y), 1e-9);
            }
        }
    }

    private static double between(Random random, double[] axis) {
        return axis[0] + random.nextDouble() * (axis[axis.length - 1] - axis[0]);
    }

    private static double[] ascending(Random random, int size, double step) {
        double[] axis = new double[size];
        for (int i = 0; i < size; i++) {
            axis[i] = (i == 0 ? step : axis[i - 1]) + step * (0.1 + random.nextDouble());
        }
        return axis;
    }

    @Test
    void outsideTheAxesTheEdgeHolds() {
        Table table = table(SPEEDS, THROTTLES, BY_SPEED);
        assertEquals(10, table.value(0, -5));
        assertEquals(100, table.value(20000, 140));
        assertEquals(table.value(1500, 100), table.value(1500, 1e9));
        assertEquals(table.value(8000, 20), table.value(1e9, 20));
        assertTrue(Double.isNaN(table.value(Double.NaN, 10)));
        assertTrue(Double.isNaN(table.value(1000, Double.NaN)));
    }

    @Test
    void weightsAreNeverNegativeAndSumToOne() {
        Table table = table(SPEEDS, THROTTLES, BY_SPEED);
        Random random = new Random(7);
        int[] cells = new int[4];
        double[] weights = new double[4];
        for (int i = 0; i < 10_000; i++) {
            double speed = 12_000 * random.nextDouble() - 1000;
            double throttle = 140 * random.nextDouble() - 20;
            Bilinear.locate(table.speed(), table.load(), speed, throttle, cells, weights);
            double sum = 0;
            for (int k = 0; k < 4; k++) {
                assertTrue(weights[k] >= 0);
                assertTrue(cells[k] >= 0 && cells[k] < table.cells());
                sum += weights[k];
            }
            assertEquals(1, sum, 1e-14);
        }
    }

    @Test
    void atABreakpointTheCellItselfIsRead() {
        Table table = table(SPEEDS, THROTTLES, BY_SPEED);
        for (int cell = 0; cell < table.cells(); cell++) {
            assertEquals(table.at(cell), table.value(table.speedAt(cell), table.loadAt(cell)));
        }
    }

    @Test
    void samplingAtTheSameAxesChangesNothingAndAtFinerOnesInterpolates() {
        Table table = table(SPEEDS, THROTTLES, BY_SPEED);
        assertEquals(table, table.sampledAt(table.speed(), table.load()));
        Table finer =
                table.sampledAt(new Axis(Axis.Kind.ENGINE_SPEED, 1500, 3000), new Axis(Axis.Kind.THROTTLE, 5, 20));
        assertArrayEquals(new double[] {17, table.value(3000, 5), table.value(1500, 20), 41}, finer.toArray(), 1e-12);
        assertThrows(
                IllegalArgumentException.class,
                () -> table.sampledAt(table.speed(), new Axis(Axis.Kind.MANIFOLD_PRESSURE, 20, 100)));
    }
}
