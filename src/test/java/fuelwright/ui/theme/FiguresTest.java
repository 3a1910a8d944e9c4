package fuelwright.ui.theme;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FiguresTest {

    @Test
    void nothingHasNoSign() {
        assertEquals("0.0", Figures.signed(-0.0, 1));
        assertEquals("0.0", Figures.signed(-0.04, 1));
        assertEquals("0.0", Figures.signed(0.04, 1));
        assertEquals("0.0", Figures.plain(-0.049, 1));
        assertEquals("0", Figures.plain(-0.2, 0));
    }

    @Test
    void signsAreShownAndMinusIsARealOne() {
        assertEquals("+3.4", Figures.signed(3.41, 1));
        assertEquals("−0.1", Figures.signed(-0.06, 1));
        assertEquals("−12.5", Figures.plain(-12.5, 1));
        assertEquals("±1.2", Figures.plusMinus(1.2, 1));
    }

    @Test
    void whatIsMissingIsADash() {
        assertEquals("–", Figures.plain(Double.NaN, 1));
        assertEquals("–", Figures.signed(Double.NaN, 1).replace("+", ""));
    }

    @Test
    void breakpointsTakeAsFewDecimalsAsTheyNeed() {
        assertEquals("900", Figures.shortest(900));
        assertEquals("2.5", Figures.shortest(2.5));
        assertEquals("0.333", Figures.shortest(1.0 / 3));
    }

    @Test
    void figuresAreRoundedAsTheStandardFormatDoes() {
        Random random = new Random(5);
        for (int i = 0; i < 20_000; i++) {
            double value = Math.rint(random.nextGaussian() * 1e5) / Math.pow(10, random.nextInt(6));
            int decimals = random.nextInt(4);
            String expected = String.format(Locale.ROOT, "%." + decimals + "f", Math.abs(value));
            assertEquals(expected, Figures.plain(Math.abs(value), decimals), value + " to " + decimals);
        }
    }

    @Test
    void timesCarryIntoMinutes() {
        assertEquals("1:00.0", Figures.clock(59.96, 1));
        assertEquals("12:41.32", Figures.clock(761.32, 2));
        assertEquals("0:05", Figures.clock(5, 0));
        assertEquals("59:59", Figures.clock(3599, 0));
        assertEquals("1:00:00", Figures.clock(3599.6, 0));
        assertEquals("13:53:20", Figures.clock(50_000, 0));
        assertEquals("13:53:20.5", Figures.clock(50_000.5, 1));
    }

    @Test
    void countsAreGrouped() {
        assertEquals("41\u202f822", Figures.count(41822));
    }
}
