package fuelwright.safety;

import static fuelwright.safety.PlantedCase.cell;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.estimate.Standing;
import fuelwright.mixture.Fuel;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ProposalShapeTest {

    private final PlantedCase planted =
            new PlantedCase().ride(new PlantedRide(20).clean(3).named("ride"));

    @Test
    void aCliffBetweenNeighboursNamesBoth() {
        planted.plant(cell(2, 4), 1.25, 1.25, Standing.INFERRED);
        Caution caution = planted.judge("cliff").orElseThrow();
        assertEquals(Caution.Level.CHECK, caution.level());
        assertEquals(Set.of(cell(2, 4), cell(2, 3), cell(2, 5), cell(1, 4), cell(3, 4)), caution.cells());
    }

    @Test
    void aStepJustBelowIsQuiet() {
        planted.plant(cell(2, 4), 1.19, 1.19, Standing.INFERRED);
        assertTrue(planted.judge("cliff").isEmpty());
    }

    @Test
    void betweenTwoMeasuredCellsMoreIsBelieved() {
        planted.plant(cell(2, 4), 1.25, 1.25, Standing.MEASURED);
        assertTrue(planted.judge("cliff").isEmpty());
        planted.plant(cell(2, 4), 1.35, 1.35, Standing.MEASURED);
        assertTrue(planted.judge("cliff").isPresent());
    }

    private void plantRegion(double needed, Standing standing) {
        for (int i = 3; i < 6; i++) {
            planted.plant(cell(2, i), Math.min(1.4, needed), needed, standing);
        }
    }

    @Test
    void aChangeTooLargeOverARegionAsksForTheMechanic() {
        plantRegion(1.65, Standing.MEASURED);
        assertTrue(planted.judge("proposal-too-large").orElseThrow().todo().contains("air leak"));
        plantRegion(1.58, Standing.MEASURED);
        assertTrue(planted.judge("proposal-too-large").isEmpty());
    }

    @Test
    void tooLargeACutDoesSoToo() {
        plantRegion(0.55, Standing.THIN);
        assertTrue(planted.judge("proposal-too-large").isPresent());
        plantRegion(0.65, Standing.THIN);
        assertTrue(planted.judge("proposal-too-large").isEmpty());
    }

    @Test
    void aForecastAloneIsNoSymptom() {
        plantRegion(2.0, Standing.INFERRED);
        assertTrue(planted.judge("proposal-too-large").isEmpty());
    }

    @Test
    void aMuchBiggerBodyExplainsMore() {
        planted.machine = new Machine(
                OptionalDouble.of(720),
                2,
                Optional.of(new ThrottleBody(38, 8, 5, 80)),
                Optional.of(new ThrottleBody(46, 8, 5, 80)),
                Fuel.PETROL,
                OptionalDouble.of(8000));
        plantRegion(1.65, Standing.MEASURED);
        assertTrue(planted.judge("proposal-too-large").isEmpty());
    }
}
