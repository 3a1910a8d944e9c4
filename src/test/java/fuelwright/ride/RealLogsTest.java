package fuelwright.ride;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Issue;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Logs of a real car, of the carOBD collection (free to everyone; its authors ask for a citation of IEEE paper 8891367). They aren't part
 * of the project: the folder is given by the system property {@code fuelwright.realLogs}, and without it these checks are skipped.
 */
class RealLogsTest {

    static Path log(String name) {
        String folder = System.getProperty("fuelwright.realLogs");
        Path path = (folder == null ? Path.of("..", "shared", "real-logs") : Path.of(folder)).resolve(name);
        Assumptions.assumeTrue(
                Files.isReadable(path), "skipped: there is no " + path + " (set -Dfuelwright.realLogs=FOLDER)");
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
        if (Boolean.getBoolean("fuelwright.print")) {
            ride.channels()
                    .forEach(c -> System.out.println(c.heading() + " | " + c.role() + " " + c.unit() + " "
                            + c.confidence() + " | " + c.remark()));
            ride.remarks().forEach(i -> System.out.println(i.severity() + " " + i.sentence()));
        }
        assertTrue(ride.remarks().stream().map(Issue::what).anyMatch(w -> w.equals("time is ENGINE_RUN_TINE ()")));
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
}
