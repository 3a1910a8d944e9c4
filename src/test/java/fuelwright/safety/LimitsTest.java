package fuelwright.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.mixture.Fuel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class LimitsTest {

    @Test
    void everyUsualFigureLiesWithinItsOwnBounds() {
        for (Fuel fuel : Fuel.values()) {
            for (Limit limit : Limit.values()) {
                double usual = limit.usual(fuel);
                assertTrue(usual >= limit.least() && usual <= limit.most(), limit.key() + " " + fuel);
                assertEquals(limit, Limit.ofKey(limit.key()).orElseThrow());
                assertFalse(limit.origin().toString().isBlank());
            }
        }
    }

    @Test
    void noLimitCanBeSwitchedOff() {
        Limits limits = Limits.usual(Fuel.PETROL);
        assertThrows(IllegalArgumentException.class, () -> limits.with(Limit.LEAN_EXCESS, 1));
        assertThrows(IllegalArgumentException.class, () -> limits.with(Limit.DUTY_STOP, Double.POSITIVE_INFINITY));
        assertThrows(IllegalArgumentException.class, () -> limits.with(Limit.LEAN_FOR, Double.NaN));
        assertEquals(0.04, limits.with(Limit.LEAN_EXCESS, 0.04).of(Limit.LEAN_EXCESS));
    }

    /** Power is best at lambda 0.85 to 0.90 (checked against published tables); the limit must lie lean of that and rich of 1. */
    @Test
    void theLimitFollowsTheTargetUpToTheCeiling() {
        Limits petrol = Limits.usual(Fuel.PETROL);
        assertEquals(0.92, petrol.leanest(0.87, true), 1e-12);
        assertEquals(0.95, petrol.leanest(0.93, true), 1e-12);
        assertEquals(0.95, petrol.leanest(Double.NaN, true), 1e-12);
        assertEquals(0.95, petrol.leanest(0.87, false), 1e-12);
        assertEquals(1.02, petrol.leanest(0.97, false), 1e-12);
        assertEquals(1.03, petrol.leanest(1.00, false), 1e-12);
        assertTrue(Limits.usual(Fuel.METHANOL).leanest(1, true) < petrol.leanest(1, true));
    }

    @Test
    void changesStayWhenTheFuelChanges() {
        Limits limits = Limits.usual(Fuel.PETROL).with(Limit.DUTY_CHECK, 80).withFuel(Fuel.E85);
        assertEquals(80, limits.of(Limit.DUTY_CHECK));
        assertEquals(0.93, limits.of(Limit.LEAN_CEILING));
        assertEquals(limits, Limits.usual(Fuel.E85).with(Limit.DUTY_CHECK, 80));
    }

    @Test
    void theDocumentNamesEveryLimitAndItsUsualFigure() throws IOException {
        String text = Files.readString(Path.of("docs", "cautions.md"));
        for (Limit limit : Limit.values()) {
            assertTrue(text.contains("`" + limit.key() + "`"), limit.key());
        }
    }

    @Test
    void theDocumentNamesEveryRule() throws IOException {
        String text = Files.readString(Path.of("docs", "cautions.md"));
        Path sources = Path.of("src", "main", "java", "fuelwright", "safety");
        Pattern rule = Pattern.compile("\"(cliff|leak|misfire|knock|[a-z]+(?:-[a-z]+)+)\"");
        try (Stream<Path> files = Files.list(sources)) {
            for (Path file : files.filter(f -> !f.endsWith("Limit.java")).toList()) {
                Matcher matcher = rule.matcher(Files.readString(file));
                while (matcher.find()) {
                    assertTrue(text.contains("`" + matcher.group(1) + "`"), matcher.group(1) + " of " + file);
                }
            }
        }
    }

    @Test
    void theUsualCautionsNameWhatTheTradeWarnsOf() {
        String all = String.join(" ", UsualCautions.sentences());
        for (String word : new String[] {
            "dynamometer",
            "closed course",
            "watch a screen",
            "carbon monoxide",
            "burn",
            "emission",
            "law",
            "licensed",
            "builder"
        }) {
            assertTrue(all.contains(word), word);
        }
    }
}
