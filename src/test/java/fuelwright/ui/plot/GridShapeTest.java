package fuelwright.ui.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class GridShapeTest {

    @ParameterizedTest
    @EnumSource
    void placeAndCellAreInverse(GridShape.View view) {
        GridShape shape = new GridShape(5, 3, view);
        for (int cell = 0; cell < 15; cell++) {
            assertEquals(cell, shape.cell(shape.column(cell), shape.row(cell)));
        }
        assertEquals(-1, shape.cell(shape.columns(), 0));
        assertEquals(-1, shape.cell(0, -1));
    }

    @Test
    void asAChartLoadGrowsUpwardsAndSpeedToTheRight() {
        GridShape shape = new GridShape(5, 3, GridShape.View.CHART);
        assertEquals(0, shape.cell(0, 2));
        assertEquals(14, shape.cell(4, 0));
        assertEquals(5, shape.moved(0, 0, -1));
        assertEquals(1, shape.moved(0, 1, 0));
        assertEquals(0, shape.moved(0, -1, 0));
    }

    @Test
    void asAFileEachSpeedIsARow() {
        GridShape shape = new GridShape(5, 3, GridShape.View.SPEED_DOWN);
        assertEquals(3, shape.columns());
        assertEquals(1, shape.cell(0, 1));
        assertEquals(5, shape.cell(1, 0));
    }
}
