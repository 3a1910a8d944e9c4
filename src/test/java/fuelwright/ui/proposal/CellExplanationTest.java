package fuelwright.ui.proposal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Standing;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CellExplanationTest {

    private static final Table PULSES = new Table(
            Quantity.INJECTOR_PULSE,
            new Axis(Axis.Kind.ENGINE_SPEED, 1000, 2000),
            new Axis(Axis.Kind.THROTTLE, 10, 20),
            new double[] {3.45, 4, 5, 6},
            List.of(),
            Table.Orientation.SPEED_DOWN);

    private static CellProposal cell(double after, double factor, CellProposal.Step... steps) {
        return new CellProposal(
                0, 3, after, factor, factor, Standing.MEASURED, false, Optional.empty(), List.of(steps));
    }

    @Test
    void theFiguresOwnChangeStandsBesideTheFuelsWhereDeadTimeMakesItAnother() {
        CellProposal c = cell(3.45, 1.225);
        assertEquals(
                "3.00\u00a0ms → 3.45\u00a0ms: figure +15.0\u00a0%, fuel +22.5\u00a0%",
                CellExplanation.beforeAfter(PULSES, 1, c));
        assertEquals("3.00 ms → 3.45 ms", CellExplanation.beforeAfter(PULSES, 0, cell(3.45, 1.15)));
    }

    @Test
    void eachStepSaysWhatItDoesAndWhatItComesTo() {
        CellProposal c = cell(
                3.45,
                1.15,
                new CellProposal.Step(CellProposal.Kind.FITTED, 1.143),
                new CellProposal.Step(CellProposal.Kind.RICH_SIDE, 1.147),
                new CellProposal.Step(CellProposal.Kind.ROUNDED, 1.15));
        assertEquals(
                List.of("+14.3 %", "+0.4 → +14.7 %", "+0.3 → +15.0 %", "+15.0 %"),
                CellExplanation.steps(c, 0).stream()
                        .map(CellExplanation.Step::change)
                        .toList());
        assertEquals("proposed", CellExplanation.steps(c, 0).get(3).words());
    }
}
