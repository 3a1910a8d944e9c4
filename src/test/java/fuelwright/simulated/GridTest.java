package fuelwright.simulated;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GridTest {
    private static final double[] SPEED = {1000, 2000, 4000, 8000};
    private static final double[] LOAD = {0, 10, 30, 100};
    private static final Grid GRID =
            Grid.of(SPEED, LOAD, new double[] {10, 12, 11, 8, 20, 26, 30, 25, 35, 48, 60, 66, 50, 70, 88, 100});

    /** Computed with SciPy 1.17.1, RegularGridInterpolator, method linear. */
    @ParameterizedTest
    @CsvSource({
        "1500, 5, 17",
        "3000, 20, 41",
        "6000, 65, 78.5",
        "2000, 10, 26",
        "1250, 2.5, 13.25",
        "7999, 99, 99.51130714285715",
        "8000, 100, 100"
    })
    void interpolatesAsAReferenceLibraryDoes(double rpm, double load, double value) {
        assertEquals(value, GRID.value(rpm, load), 1e-11);
    }

    @Test
    void clampsAtItsEdges() {
        assertEquals(10, GRID.value(200, -5), 0);
        assertEquals(100, GRID.value(9000, 120), 1e-12);
    }

    @Test
    void theFittedTableOfABilinearSurfaceIsThatSurface() {
        Grid fitted = NodeFit.fit(GRID, GRID::value, UnaryOperator.identity());
        for (int c = 0; c < GRID.cells(); c++) {
            assertEquals(GRID.at(c), fitted.at(c), 1e-6);
        }
    }
}
