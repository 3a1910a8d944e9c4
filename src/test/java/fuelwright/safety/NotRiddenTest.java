package fuelwright.safety;

import static fuelwright.safety.PlantedCase.cell;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Set;
import org.junit.jupiter.api.Test;

class NotRiddenTest {

    private final PlantedCase planted =
            new PlantedCase().ride(new PlantedRide(20).clean(3).named("ride"));

    @Test
    void everythingRiddenIsQuiet() {
        assertTrue(planted.judge("high-load-not-ridden").isEmpty());
    }

    @Test
    void oneUnriddenCellAtHighLoadIsACheck() {
        planted.readings[cell(6, 5)] = 2;
        Caution caution = planted.judge("high-load-not-ridden").orElseThrow();
        assertEquals(Caution.Level.CHECK, caution.level());
        assertEquals(Set.of(cell(6, 5)), caution.cells());
        assertTrue(planted.judge("not-ridden-beside-lean").isEmpty());
    }

    @Test
    void threeIndependentReadingsAreThinButRidden() {
        planted.readings[cell(6, 5)] = 3;
        assertTrue(planted.judge("high-load-not-ridden").isEmpty());
    }

    @Test
    void besideALeanCellItSaysSoFirst() {
        planted.readings[cell(6, 5)] = 0;
        planted.logFactors[cell(5, 4)] = 0.05;
        assertEquals(
                Set.of(cell(6, 5)),
                planted.judge("not-ridden-beside-lean").orElseThrow().cells());
    }

    @Test
    void unriddenLightLoadAndUnreachableSpeedsAreNoCaution() {
        Arrays.fill(planted.readings, 0, cell(4, 0), 0);
        planted.readings[cell(6, 0)] = 0;
        assertTrue(planted.judge("high-load-not-ridden").isEmpty());
    }

    @Test
    void unriddenHighLoadAtLowSpeedIsNamedInANote() {
        assertTrue(planted.judge("low-speed-not-ridden").isEmpty());
        planted.readings[cell(6, 0)] = 2;
        planted.readings[cell(3, 0)] = 0;
        Caution slow = planted.judge("low-speed-not-ridden").orElseThrow();
        assertEquals(Caution.Level.NOTE, slow.level());
        assertEquals(Set.of(cell(6, 0)), slow.cells());
    }

    @Test
    void neverRiddenAtAllIsSaidInOneCautionWithAllCells() {
        Arrays.fill(planted.readings, 0);
        Caution caution = planted.judge("high-load-not-ridden").orElseThrow();
        assertEquals("High load never ridden", caution.title());
        assertEquals(3 * 7, caution.cells().size());
    }

    @Test
    void tooFewReadingsAreNotCalledNone() {
        Arrays.fill(planted.readings, 2.5);
        Caution few = planted.judge("high-load-not-ridden").orElseThrow();
        assertEquals("High load as good as unridden", few.title());
        assertTrue(few.what().startsWith("Fewer than 3 independent readings in any of the 21 cells"), few.what());
        Arrays.fill(planted.readings, 0);
        assertTrue(planted.judge("high-load-not-ridden").orElseThrow().what().startsWith("No readings in any"));
    }

    @Test
    void withoutAnEstimateTheReadingsThemselvesAreCounted() {
        planted.withEstimate = false;
        Caution caution = planted.judge("high-load-not-ridden").orElseThrow();
        assertTrue(caution.cells().contains(cell(5, 4)), "80 % throttle was never held");
        assertTrue(!caution.cells().contains(cell(6, 4)), "full throttle at 5000 rpm was");
    }
}
