package fuelwright.handover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.Standing;
import java.util.List;
import org.junit.jupiter.api.Test;

class CellLookTest {

    @Test
    void readingsHaveOneDecimalBelowTenAndNoneAbove() {
        assertEquals("0", CellLook.readings(0));
        assertEquals("<0.1", CellLook.readings(0.04));
        assertEquals("8.0", CellLook.readings(8));
        assertEquals("8.8", CellLook.readings(8.83));
        assertEquals("9.9", CellLook.readings(9.97), "not the 10 that a measured cell has");
        assertEquals("10", CellLook.readings(10));
        assertEquals("18", CellLook.readings(18.96));
        assertEquals("10", CellLook.readings(10 - 1e-9), "a sum of shares lacks a hair");
    }

    @Test
    void noLineEndPartsAnUncertaintyFromItsFigureOrUnit() {
        assertEquals("±0.4\u202f%", CellLook.plusMinus(0.41));
        assertEquals(
                "good to ±0.8\u202f%, delay 62 ms ±16 at", CellLook.joined("good to ± 0.8 %, delay 62 ms ± 16 at"));
        assertEquals("+1.5\u202f±1.8\u202f%", CellLook.plusMinus(1.5, 1.8));
    }

    @Test
    void doubtMakesAFillPalerAndPalerButNeverAsPaleAsThePage() {
        for (Standing standing : Standing.values()) {
            double before = 2;
            for (double unsure = Standing.MEASURED_PERCENT; unsure < 40; unsure += 0.5) {
                double now = CellLook.strength(standing, unsure);
                assertTrue(now < before && now > 0.05, standing + " ±" + unsure);
                before = now;
            }
        }
        assertEquals(1, CellLook.strength(Standing.MEASURED, 1.9));
        assertTrue(CellLook.strength(Standing.INFERRED, 15) < 0.25);
    }

    @Test
    void aScaleEndsInRoundFiguresThatHoldWhatItShows() {
        assertEquals(
                List.of("0", "10\u202f%", "20\u202f%").get(2),
                RoundEnds.of(0, 13.8).labels("%").get(2));
        for (double most = 0.013; most < 5000; most *= 1.3) {
            RoundEnds ends = RoundEnds.of(0, most);
            assertTrue(ends.high() >= most && ends.high() < 2.1 * most, most + " → " + ends);
            assertEquals(1, ends.share(ends.high()));
        }
        RoundEnds table = RoundEnds.of(11.2, 98.7);
        assertEquals(List.of("0", "50", "100"), table.labels("1"));
        assertTrue(RoundEnds.of(5, 5).high() > 5);
    }
}
