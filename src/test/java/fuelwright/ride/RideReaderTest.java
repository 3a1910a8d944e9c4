package fuelwright.ride;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.unit.Unit;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class RideReaderTest {

    private static final String PLAIN = """
            time [s],engine speed [rpm],throttle [%],manifold pressure [kPa],AFR,coolant [°F],speed [mph],ignition [°]
            0.00,1200,0.0,38.5,14.7,180,0,12
            0.05,2405.5,50.0,80.25,13.2,181,10,14.5
            0.10,5200,100,,12.8,182,20,30
            """;

    private static Loaded<Ride> read(String text) {
        return RideReader.read("ride.csv", text.getBytes(StandardCharsets.UTF_8), RideOptions.defaults());
    }

    @Test
    void reads_a_well_formed_log_into_canonical_units() {
        Ride ride = read(PLAIN).value().orElseThrow();
        assertEquals(3, ride.size());
        assertEquals(0.05, ride.timeS().at(1));
        assertEquals(2405.5, ride.column(Role.ENGINE_SPEED).orElseThrow().at(1));
        assertEquals(50, ride.column(Role.THROTTLE).orElseThrow().at(1));
        assertEquals(80.25, ride.column(Role.MANIFOLD_PRESSURE).orElseThrow().at(1));
        assertEquals(
                Unit.FAHRENHEIT.toCanonical(181),
                ride.column(Role.COOLANT).orElseThrow().at(1));
        assertEquals(10 * 1.609344, ride.column(Role.ROAD_SPEED).orElseThrow().at(1));
        assertEquals(14.5, ride.column(Role.IGNITION).orElseThrow().at(1));
    }

    @Test
    void mixture_channels_hold_lambda_by_the_ratio_the_display_was_set_to() {
        Ride usual = read(PLAIN).value().orElseThrow();
        assertEquals(13.2 / 14.7, usual.mixtures().get(0).values().at(1));
        assertEquals(Role.AFR, usual.mixtures().get(0).role());
        assertTrue(usual.remarks().stream()
                .anyMatch(
                        i -> i.severity() == Issue.Severity.WARNING && i.what().contains("14.7")));
        Ride said = RideReader.read(
                        "ride.csv",
                        PLAIN.getBytes(StandardCharsets.UTF_8),
                        RideOptions.defaults().withAfrScale(14.1))
                .value()
                .orElseThrow();
        assertEquals(13.2 / 14.1, said.mixtures().get(0).values().at(1));
    }

    @Test
    void an_empty_cell_is_missing_and_nothing_else_is() {
        Column pressure =
                read(PLAIN).value().orElseThrow().column(Role.MANIFOLD_PRESSURE).orElseThrow();
        assertTrue(pressure.has(0) && pressure.has(1));
        assertTrue(!pressure.has(2));
    }

    @Test
    void a_missing_file_is_refused_in_words() {
        Loaded<Ride> loaded = RideReader.read(Path.of("no-such-log.csv"), RideOptions.defaults(), p -> {}, () -> false);
        assertEquals(
                "no-such-log.csv: There is no such file. Check the name and the folder",
                loaded.issues().get(0).sentence());
    }

    @Test
    void a_role_by_hand_wins_and_a_column_that_is_not_there_is_said() {
        RideOptions options =
                RideOptions.defaults().withRole("throttle", Role.OTHER).withRole("nothing", Role.GEAR);
        Ride ride = RideReader.read("ride.csv", PLAIN.getBytes(StandardCharsets.UTF_8), options)
                .value()
                .orElseThrow();
        assertTrue(ride.channel(Role.THROTTLE).isEmpty());
        assertTrue(ride.remarks().stream().anyMatch(i -> i.what().contains("no column nothing")));
    }

    @Test
    void a_ride_whose_channels_come_in_different_rows_can_be_filled_but_never_its_readings() {
        Ride ride = read("time [s],rpm,lambda,gear\n0,900,,1\n0.1,,0.9,\n0.2,920,,2\n0.3,,0.95,\n9,950,,2\n9.1,,1,\n")
                .value()
                .orElseThrow();
        Ride filled = ride.filled();
        assertEquals(910, filled.column(Role.ENGINE_SPEED).orElseThrow().at(1));
        assertEquals(1, filled.column(Role.GEAR).orElseThrow().at(1));
        assertEquals(0.9, filled.mixtures().get(0).values().at(1));
        assertTrue(!filled.mixtures().get(0).values().has(2));
        assertTrue(!filled.column(Role.ENGINE_SPEED).orElseThrow().has(5));
        assertTrue(!ride.column(Role.ENGINE_SPEED).orElseThrow().has(1));
    }

    @Test
    void a_recipe_fits_the_same_headings_again_and_no_others() {
        LogRecipe recipe = new LogRecipe(
                java.util.List.of("time [s]", "rpm"), RideOptions.defaults().withAfrScale(14.1));
        assertTrue(recipe.fits(java.util.List.of("Time  [s]", "RPM")));
        assertTrue(!recipe.fits(java.util.List.of("rpm", "time [s]")) && !recipe.fits(java.util.List.of("time [s]")));
    }

    @Test
    void a_role_is_written_by_its_words() {
        assertEquals(Role.ENGINE_SPEED, Role.parse("Engine speed").orElseThrow());
        assertEquals(Role.AFR, Role.parse("afr").orElseThrow());
        assertTrue(Role.parse("something").isEmpty());
    }

    @Test
    void a_cancelled_read_is_refused_as_cancelled() throws java.io.IOException {
        Path file = java.nio.file.Files.createTempFile("ride", ".csv");
        try {
            java.nio.file.Files.writeString(file, PLAIN);
            assertEquals(
                    "Reading was cancelled",
                    RideReader.read(file, RideOptions.defaults(), p -> {}, () -> true)
                            .issues()
                            .get(0)
                            .what());
            double[] most = new double[1];
            assertEquals(
                    3,
                    RideReader.read(file, RideOptions.defaults(), p -> most[0] = Math.max(most[0], p), () -> false)
                            .value()
                            .orElseThrow()
                            .size());
            assertEquals(1, most[0]);
        } finally {
            java.nio.file.Files.delete(file);
        }
    }
}
