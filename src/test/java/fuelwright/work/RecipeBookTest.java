package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.ride.WidebandScale;
import fuelwright.unit.Unit;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What was said about a log is known again when one with the same headings comes, also by another book on the same folder. */
class RecipeBookTest {

    private static final List<String> HEADINGS = List.of("t", "rpm", "O2 front");
    private static final RideOptions SAID = RideOptions.defaults()
            .withRole("O2 front", Role.WIDEBAND_VOLTS)
            .withUnit("t", Unit.MILLISECOND)
            .withAfrScale(14.2)
            .withDelimiter(';')
            .withDecimalSign(',')
            .withCharset(Charset.forName("windows-1252"))
            .withSampleRate(12.5)
            .withWidebandScale(new WidebandScale(0.5, 0.7, 4.5, 1.3));

    @TempDir
    Path folder;

    private RecipeBook book() {
        return new RecipeBook(folder.resolve("not yet there"));
    }

    @Test
    void everythingSaidIsRemembered() {
        book().remember(HEADINGS, SAID);
        assertEquals(Optional.of(SAID), book().find(List.of("T", " RPM", "o2  front")));
        assertTrue(book().find(List.of("time", "rpm")).isEmpty());
    }

    @Test
    void aColumnIsKnownByItsNameInAnotherLogToo() throws IOException {
        book().remember(
                        List.of("t_ms", "K3", "BB 1", "K5"),
                        RideOptions.defaults()
                                .withRole("K3", Role.THROTTLE)
                                .withRole("K5", Role.COOLANT)
                                .withUnit("K5", Unit.FAHRENHEIT)
                                .withRole("BB 1", Role.WIDEBAND_VOLTS)
                                .withAfrScale(14.2));
        RideOptions one =
                book().find(List.of("t_ms", "k3", "BB 1", "K5", "more")).orElseThrow();
        assertEquals(
                RideOptions.defaults()
                        .withRole("k3", Role.THROTTLE)
                        .withRole("K5", Role.COOLANT)
                        .withUnit("K5", Unit.FAHRENHEIT),
                one,
                "neither the display's ratio nor volts without their scale");
        Path log = Files.writeString(folder.resolve("less.csv"), "t_ms;K3\n0;5\n50;6\n100;7\n");
        assertEquals(Optional.of(RideOptions.defaults().withRole("K3", Role.THROTTLE)), book().find(log));
        book().remember(List.of("t_ms", "K3"), RideOptions.defaults());
        assertTrue(book().find(log).isEmpty(), "forgotten for such logs");
        book().remember(List.of("K3", "x"), RideOptions.defaults().withRole("K3", Role.LAMBDA));
        assertTrue(book().find(List.of("K3", "y")).isEmpty(), "two loggers mean different things by it");
    }

    @Test
    void theNewerRecipeOfTheSameHeadingsReplacesTheOlder() {
        book().remember(HEADINGS, SAID);
        book().remember(List.of("a", "b"), SAID);
        book().remember(HEADINGS, RideOptions.defaults().withAfrScale(14.7));
        assertEquals(2, book().all().size());
        assertEquals(
                RideOptions.defaults().withAfrScale(14.7), book().find(HEADINGS).orElseThrow());
    }

    @Test
    void whatIsForgottenIsGoneAndNothingElseIs() {
        book().remember(HEADINGS, SAID);
        book().remember(List.of("a", "b"), SAID);
        assertTrue(book().forget(HEADINGS));
        assertFalse(book().forget(HEADINGS));
        assertEquals(1, book().all().size());
    }

    @Test
    void aLogIsKnownByItsHeadingsInWhateverDialectTheyWereSaidToBe() throws IOException {
        Path log = folder.resolve("log.csv");
        Files.writeString(log, "t;rpm;O2 front\n0;900;1,5\n20;910;1,6\n40;920;1,7\n", StandardCharsets.UTF_8);
        assertTrue(book().find(log).isEmpty());
        book().remember(HEADINGS, SAID);
        assertEquals(Optional.of(SAID), book().find(log));
        assertTrue(book().find(folder.resolve("nothing.csv")).isEmpty());
    }

    @Test
    void aDamagedBookCountsAsEmptyAndIsWrittenAnew() throws IOException {
        book().remember(HEADINGS, SAID);
        Path file = folder.resolve("not yet there").resolve("log-recipes.json");
        Files.writeString(file, "{\"recipes\": [{\"headings\": [\"x\"], \"afrScale\": -3}, {\"head");
        assertTrue(book().all().isEmpty());
        Files.writeString(
                file,
                "{\"recipes\": [{\"headings\": [\"x\"], \"afrScale\": -3}, {\"headings\": [\"y\"], \"roles\": {\"y\": \"LAMBDA\"}, \"later\": 1}]}");
        assertEquals(1, book().all().size());
        book().remember(HEADINGS, SAID);
        assertEquals(2, book().all().size());
    }

    @Test
    void whatIsSaidNowWinsOverWhatWasRemembered() {
        RideOptions both =
                RideOptions.defaults().withAfrScale(15).withRole("x", Role.GEAR).or(SAID);
        assertEquals(15, both.afrScale().getAsDouble());
        assertEquals(Role.WIDEBAND_VOLTS, both.roles().get("O2 front"));
        assertEquals(Role.GEAR, both.roles().get("x"));
        assertEquals(Optional.of(';'), both.delimiter());
        assertEquals(12.5, both.sampleRateHz().getAsDouble());
    }
}
