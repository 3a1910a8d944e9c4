package fuelwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class QuantityTest {

    @Test
    void efficienciesAndMultipliersScale() {
        assertEquals(55, Quantity.VOLUMETRIC_EFFICIENCY.corrected(50, 1.1, 9), 1e-12);
        assertEquals(1.21, Quantity.MULTIPLIER.corrected(1.1, 1.1, 0), 1e-12);
    }

    @Test
    void thePartOfAPulseBeyondItsDeadTimeScales() {
        assertEquals(3.2, Quantity.INJECTOR_PULSE.corrected(3, 1.1, 1), 1e-12);
        assertEquals(3.3, Quantity.INJECTOR_PULSE.corrected(3, 1.1, 0), 1e-12);
    }

    @Test
    void trimsComposeRatherThanAdd() {
        double twice = Quantity.FUEL_TRIM.corrected(Quantity.FUEL_TRIM.corrected(0, 1.1, 0), 1.1, 0);
        assertEquals(21, twice, 1e-9);
        assertEquals(1.1 * 1.1, Quantity.FUEL_TRIM.factor(0, twice, 0), 1e-12);
    }

    @Test
    void correctingAndJudgingAreInverse() {
        for (Quantity quantity : Quantity.values()) {
            if (quantity.isFuel()) {
                double to = quantity.corrected(2.5, 0.93, 0.7);
                assertEquals(0.93, quantity.factor(2.5, to, 0.7), 1e-12, quantity.words());
            }
        }
    }

    @Test
    void otherQuantitiesDeliverNoFuel() {
        assertFalse(Quantity.LAMBDA.isFuel());
        assertTrue(Quantity.LAMBDA.isMixture());
        assertThrows(IllegalStateException.class, () -> Quantity.READINGS.delivered(1, 0));
        assertThrows(IllegalStateException.class, () -> Quantity.AFR.fromDelivered(1, 0));
    }

    @Test
    void aTablesOwnStepIsItsLastDigitUnlessThatMovesAUsualCellTooFar() {
        assertEquals(1, table(Quantity.VOLUMETRIC_EFFICIENCY, 62, 80).ownStep());
        assertEquals(0.1, table(Quantity.VOLUMETRIC_EFFICIENCY, 62.5, 80).ownStep());
        assertEquals(0.1, table(Quantity.VOLUMETRIC_EFFICIENCY, 30, 35).ownStep());
        assertEquals(0.01, table(Quantity.MULTIPLIER, 1, 1).ownStep());
        assertEquals(0.01, table(Quantity.INJECTOR_PULSE, 3, 6).ownStep());
        assertEquals(1, table(Quantity.FUEL_TRIM, 0, -4).ownStep());
        assertEquals(0.01, table(Quantity.VOLUMETRIC_EFFICIENCY, 62.51234, 80).ownStep());
    }

    private static Table table(Quantity quantity, double one, double other) {
        return Table.of(
                quantity,
                new Axis(Axis.Kind.ENGINE_SPEED, 1000, 8000),
                new Axis(Axis.Kind.THROTTLE, 0, 100),
                new double[] {one, other, one, other});
    }
}
