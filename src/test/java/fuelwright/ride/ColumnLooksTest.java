package fuelwright.ride;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Plain German words are known, and what isn't known is guessed by its figures. */
class ColumnLooksTest {

    @TempDir
    Path folder;

    /** A log over 200 s as a small logger writes it. */
    private static String log(String headings) {
        StringBuilder text = new StringBuilder(headings + "\n");
        for (int i = 0; i < 2000; i++) {
            text.append(String.format(
                            Locale.GERMANY,
                            "%d;%d;%.1f;%.2f;%.1f;%.1f;%.0f",
                            i * 100,
                            4000 + Math.round(2500 * Math.sin(i / 31.0)),
                            Math.max(0, 30 + 45 * Math.sin(i / 23.0)),
                            13.1 + 0.4 * Math.sin(i / 5.0),
                            Math.min(88, 45 + i * 0.05),
                            24 + 3 * Math.sin(i / 400.0),
                            60 + 30 * Math.sin(i / 60.0)))
                    .append('\n');
        }
        return text.toString();
    }

    private static Ride read(String headings) {
        return RideReader.read("log.csv", log(headings).getBytes(StandardCharsets.UTF_8), RideOptions.defaults())
                .value()
                .orElseThrow();
    }

    @Test
    void plainGermanWordsAreKnown() {
        Ride ride = read("t_ms;Umdr;Griff_pct;BB_AFR_1;Wasser;Ansaug;kmh");
        assertEquals(199.9, ride.durationS(), 1e-6);
        for (Role role :
                List.of(Role.ENGINE_SPEED, Role.THROTTLE, Role.AFR, Role.COOLANT, Role.INTAKE_AIR, Role.ROAD_SPEED)) {
            assertEquals(true, ride.channel(role).isPresent(), role.words());
        }
        assertEquals(
                Channel.Confidence.LOOK,
                ride.channel(Role.THROTTLE).orElseThrow().confidence(),
                "a twist grip needn't be the throttle");
        Ride other = read("Zeit_ms;Drehz;Gasgriff;Lambda 1 [AFR];Wassertemp;Ansaugluft;Geschwindigkeit");
        for (Role role : List.of(Role.ENGINE_SPEED, Role.THROTTLE, Role.COOLANT, Role.INTAKE_AIR)) {
            assertEquals(true, other.channel(role).isPresent(), role.words());
        }
        assertEquals(
                Optional.empty(),
                read("Zeit_ms;Drehz;Griff;afr;Wasserdruck;Ansaugdruck;kmh").channel(Role.COOLANT));
    }

    @Test
    void aThrottleByItsOwnNameGoesBeforeTheGrip() {
        Ride ride = read("Zeit_ms;Drehzahl;Drosselklappe;AFR;Wasser;x;Griff");
        assertEquals("Drosselklappe", ride.channel(Role.THROTTLE).orElseThrow().heading());
    }

    @Test
    void whatIsMissingIsToldAtOnceAndGuessedByItsFigures() throws Exception {
        Path file = Files.writeString(folder.resolve("odd.csv"), log("K1;K2;K3;K4;K5;K6;K7"));
        Set<Role> needed = new TreeSet<>(Set.of(Role.TIME, Role.ENGINE_SPEED, Role.THROTTLE, Role.LAMBDA));
        LogColumns found = LogColumns.of(file, RideOptions.defaults(), needed);
        assertEquals(List.of(Role.TIME, Role.ENGINE_SPEED, Role.THROTTLE, Role.LAMBDA), found.missing());
        List<String> guesses = found.missing().stream()
                .map(role -> ColumnLooks.best(role, found.columns())
                        .map(LogColumn::heading)
                        .orElse("-"))
                .toList();
        assertEquals(List.of("K1", "K2", "K3", "K4"), guesses);
        assertEquals(
                "K5",
                ColumnLooks.best(Role.COOLANT, found.columns()).orElseThrow().heading());
        assertEquals(List.of(45.0, 88.0, 88.0), found.columns().get(4).examples());
        assertEquals(Role.AFR, ColumnLooks.told(Role.LAMBDA, found.columns().get(3)));
        RideOptions said = RideOptions.defaults().withRole("K1", Role.TIME);
        assertEquals(
                List.of(Role.ENGINE_SPEED, Role.THROTTLE, Role.LAMBDA),
                LogColumns.of(file, said, needed).missing());
    }
}
