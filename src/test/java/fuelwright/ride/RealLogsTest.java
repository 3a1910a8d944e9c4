package fuelwright.ride;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.BinMeans;
import fuelwright.issue.Issue;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Logs of a real car, of the carOBD collection (free to everyone; its authors ask for a citation of IEEE paper 8891367). They aren't part
 * of the project: the folder is given by the system property {@code fuelwright.realLogs}, and without it these checks are skipped.
 */
class RealLogsTest {

    static Path log(String name) {
        String folder = System.getProperty("fuelwright.realLogs");
        Assumptions.assumeTrue(folder != null, "skipped: no -Dfuelwright.realLogs=FOLDER");
        Path path = Path.of(folder).resolve(name);
        Assumptions.assumeTrue(Files.isReadable(path), "skipped: there is no " + path);
        return path;
    }

    static Ride read(String name) {
        return RideReader.read(log(name), RideOptions.defaults(), p -> {}, () -> false)
                .value()
                .orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(strings = {"drive1.csv", "idle1.csv", "live6.csv"})
    void roles_are_right_and_look_alikes_are_not_taken(String name) {
        Ride ride = read(name);
        assertTrue(ride.remarks().stream().map(Issue::what).anyMatch(w -> w.equals("Time is ENGINE_RUN_TINE ()")));
        assertEquals(
                "ENGINE_RPM ()", ride.channel(Role.ENGINE_SPEED).orElseThrow().heading());
        assertEquals("THROTTLE ()", ride.channel(Role.THROTTLE).orElseThrow().heading());
        assertEquals(
                "INTAKE_MANIFOLD_PRESSURE ()",
                ride.channel(Role.MANIFOLD_PRESSURE).orElseThrow().heading());
        assertEquals(
                "COOLANT_TEMPERATURE ()",
                ride.channel(Role.COOLANT).orElseThrow().heading());
        assertEquals(
                "SHORT_TERM_FUEL_TRIM_BANK_1 ()",
                ride.channel(Role.SHORT_TRIM).orElseThrow().heading());
        assertEquals(
                "LONG_TERM_FUEL_TRIM_BANK_1 ()",
                ride.channel(Role.LONG_TRIM).orElseThrow().heading());
        assertTrue(ride.channel(Role.COMMANDED_LAMBDA).isEmpty());
        assertTrue(ride.mixtures().isEmpty());
    }

    /**
     * Computed with SciPy 1.10 {@code binned_statistic_2d} (coolant at least 70 °C, engine speed at least 500 rpm, mean of short and
     * long trim added, left-closed cells).
     */
    @Test
    void plain_mean_of_the_raw_rows_is_what_scipy_gives() {
        Ride ride = read("drive1.csv");
        BinMeans bins =
                new BinMeans(new double[] {1250, 1500, 1750}, new double[] {25, 35, 45, 55, 65, 75, 85, 95, 105});
        for (int i = 0; i < ride.size(); i++) {
            double rpm = at(ride, Role.ENGINE_SPEED, i);
            if (at(ride, Role.COOLANT, i) >= 70 && rpm >= 500) {
                double trim = at(ride, Role.SHORT_TRIM, i) + at(ride, Role.LONG_TRIM, i);
                bins.add(rpm, at(ride, Role.MANIFOLD_PRESSURE, i), trim);
            }
        }
        assertEquals(142, bins.count(0, 0));
        assertEquals(3.03, bins.mean(0, 0), 0.005);
        assertEquals(15, bins.count(0, 6));
        assertEquals(-7.45, bins.mean(0, 6), 0.005);
    }

    private static double at(Ride ride, Role role, int row) {
        return ride.column(role).orElseThrow().at(row);
    }

    @Test
    void engine_speed_is_renewed_every_fourth_row_or_so() {
        Ride ride = read("drive1.csv");
        HeldValues held = HeldValues.of(ride.column(Role.ENGINE_SPEED).orElseThrow(), ride.segmentStarts());
        assertTrue(held.periodRows() >= 3 && held.periodRows() <= 4, "period " + held.periodRows());
        assertTrue(held.newCount() > ride.size() / 5 && held.newCount() < ride.size() / 2, "new " + held.newCount());
    }

    @Test
    void the_truncated_last_line_is_left_out_and_listed() {
        assertTrue(read("idle1.csv").remarks().stream()
                .anyMatch(i -> i.what().equals("Line cut short skipped: line 1214")));
    }
}
