package fuelwright.ui.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class StandingWordsTest {

    @Test
    void aThinCellSaysWhatItLacks() {
        assertEquals(
                "Thin: 45 independent readings, but ±2.6\u202f% is more than 2\u00a0%.", StandingWords.of(45.8, 2.6));
        assertEquals("Thin: 9.7 independent readings, fewer than 10.", StandingWords.of(9.79, 1.2));
        assertEquals(
                "Thin: 4.2 independent readings, fewer than 10, and ±3.0\u202f% is more than 2\u00a0%.",
                StandingWords.of(4.2, 3));
        assertEquals(
                "Thin: 45 independent readings, but ±2.01\u202f% is more than 2\u00a0%.", StandingWords.of(45, 2.01));
    }

    @Test
    void readingsAreNeverRoundedUpOverAStanding() {
        assertEquals("9.9", StandingWords.readings(9.96));
        assertEquals("2.9", StandingWords.readings(2.99));
        assertEquals("10", StandingWords.readings(10));
        assertEquals("10", StandingWords.readings(9.99999999));
        assertEquals("<0.1", StandingWords.readings(0.02));
        assertEquals("0", StandingWords.readings(0));
        assertEquals("152", StandingWords.readings(152.9));
    }

    @Test
    void aCellWithAReadingWasRidden() {
        assertEquals(
                "Inferred: 1.4 independent readings, fewer than 3, so neighbours and physics decide.",
                StandingWords.of(1.4, 4));
        assertEquals("Inferred: nobody rode it, so neighbours and physics decide.", StandingWords.of(0, 4));
    }
}
