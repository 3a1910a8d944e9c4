package fuelwright.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LocatorTest {

    private static final Table TABLE = Table.of(
            Quantity.LAMBDA,
            new Axis(Axis.Kind.ENGINE_SPEED, 1000, 2000, 4000, 8000),
            new Axis(Axis.Kind.THROTTLE, 0, 10, 30, 100),
            new double[] {10, 12, 11, 8, 20, 26, 30, 25, 35, 48, 60, 66, 50, 70, 88, 100});

    /** Values of scipy.interpolate.RegularGridInterpolator 1.17.1 (computed outside the program). */
    @Test
    void agreesWithAnotherLibrarysBilinearInterpolation() {
        Locator locator = new Locator(TABLE);
        assertEquals(17, locator.value(1500, 5), 1e-12);
        assertEquals(41, locator.value(3000, 20), 1e-12);
        assertEquals(78.5, locator.value(6000, 65), 1e-12);
        assertEquals(26, locator.value(2000, 10), 1e-12);
        assertEquals(13.25, locator.value(1250, 2.5), 1e-12);
        assertEquals(99.51130714285715, locator.value(7999, 99), 1e-10);
        assertEquals(100, locator.value(8000, 100), 1e-12);
    }

    @Test
    void givesWhatTheTableGivesWhereverItComesFrom() {
        Locator locator = new Locator(TABLE);
        Random random = new Random(7);
        for (int k = 0; k < 2000; k++) {
            double rpm = 500 + 9000 * random.nextDouble();
            double load = -10 + 130 * random.nextDouble();
            assertEquals(TABLE.value(rpm, load), locator.value(rpm, load), 1e-10);
        }
        assertTrue(Double.isNaN(locator.value(3000, Double.NaN)));
        assertEquals(TABLE.cell(3, 1), locator.nearest(2100, Double.NaN));
        assertEquals(TABLE.cell(0, 0), locator.nearest(200, -3));
    }
}
