package fuelwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class NumeralsTest {

    @Test
    void theShortestDigitsThatReadBackAreWritten() {
        assertEquals("0", Numerals.shortest(-0.0));
        assertEquals("100", Numerals.shortest(100));
        assertEquals("0.1", Numerals.shortest(0.1));
        assertEquals("12000000", Numerals.shortest(1.2e7));
        assertEquals("0.00001", Numerals.shortest(1e-5));
        assertEquals("0.30000000000000004", Numerals.shortest(0.1 + 0.2));
        assertEquals("200000000000000000000000", Numerals.shortest(2e23));
    }

    @Test
    void everyDoubleComesBackAndNoExponentIsWritten() {
        Random random = new Random(3);
        for (int i = 0; i < 20_000; i++) {
            double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(20) - 8);
            String text = Numerals.shortest(value);
            assertEquals(value, Numerals.parse(text, false).orElseThrow());
            assertFalse(text.contains("E"), text);
            assertTrue(text.length() <= Double.toString(value).length() + 12, text);
        }
    }
}
