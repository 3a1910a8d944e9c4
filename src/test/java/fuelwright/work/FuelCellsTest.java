package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Issue;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class FuelCellsTest {

    private static final Table PULSES = Table.of(
            Quantity.INJECTOR_PULSE,
            new Axis(Axis.Kind.ENGINE_SPEED, 2500, 5000),
            new Axis(Axis.Kind.THROTTLE, 0, 100),
            new double[] {0.8, 2, 3, 4});

    @Test
    void aCellIsNamedWithoutNeedlessDecimals() {
        List<Issue> found = FuelCells.objections("t.csv", PULSES, OptionalDouble.of(1));
        assertEquals(
                "the cell at 2500 rpm, 0 % holds 0.8 ms, which delivers no fuel with a dead time of 1 ms",
                found.get(0).what());
    }

    @Test
    void noneIsAnAnswer() {
        assertEquals(
                1, FuelCells.objections("t.csv", PULSES, OptionalDouble.empty()).size());
        assertTrue(FuelCells.objections("t.csv", PULSES, OptionalDouble.of(0)).isEmpty());
    }
}
