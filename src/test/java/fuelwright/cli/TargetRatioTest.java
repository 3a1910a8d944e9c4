package fuelwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.table.TableReader;
import fuelwright.table.TableWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** By which ratio an AFR target is lambda. */
class TargetRatioTest {

    private static final Path TABLE = Path.of("sample-logs/fuel-table.csv");
    private static final Path TARGET = Path.of("sample-logs/target-table.csv");
    private static final Path RIDE = Path.of("sample-logs/dyno-pull.csv");

    @TempDir
    Path home;

    private static Ran firstRide(Path target, Path out, Object... more) {
        List<Object> words = new ArrayList<>(List.of("first-ride", "--table", TABLE, "--target", target, "--out", out));
        words.addAll(Ran.BODIES);
        return Ran.of(words, more);
    }

    /** The sample's target as AFR, as a display set to so much would show it. */
    private Path afrTarget(double ratio) throws IOException {
        Table target = TableReader.read(TARGET).value().orElseThrow();
        double[] afr = Arrays.stream(target.toArray()).map(v -> v * ratio).toArray();
        return Files.writeString(home.resolve("afr.csv"), TableWriter.write(target.with(Quantity.AFR, afr)));
    }

    /** The same target in either form gives the same table; the display of a ride has no say in it. */
    @Test
    void ratio01_the_ratio_of_an_afr_target_is_its_own() throws IOException {
        Path plain = home.resolve("plain");
        Ran lambda = Ran.of("propose", "--table", TABLE, "--target", TARGET, "--ride", RIDE, "--out", plain);
        Path afr = afrTarget(14.7);
        List<Object> command = List.of("propose", "--table", TABLE, "--target", afr, "--ride", RIDE);
        Ran scaled = Ran.of(command, "--out", home.resolve("scaled"), "--afr-scale", "13.5");
        assertEquals(lambda.code(), scaled.code(), scaled.err());
        scaled.has("target table", "AFR", "divided by 14.7", "--target-ratio");
        assertFalse(lambda.err().contains("--target-ratio"), lambda.err());
        Table expected =
                TableReader.read(plain.resolve("corrected.csv")).value().orElseThrow();
        Table found = TableReader.read(home.resolve("scaled").resolve("corrected.csv"))
                .value()
                .orElseThrow();
        assertArrayEquals(expected.toArray(), found.toArray(), 0.0101);
        assertTrue(
                Files.readString(home.resolve("scaled").resolve("report.html")).contains("divided by 14.7"));
        Ran again = Ran.of("propose", "--job", home.resolve("scaled").resolve("job.fwjob"), "--out", home.resolve("a"));
        again.has("divided by 14.7");
        Ran told = Ran.of(command, "--out", home.resolve("told"), "--target-ratio", "14.7");
        assertFalse(told.err().contains("--target-ratio"), told.err());
    }

    @Test
    void ratio02_where_the_usual_ratio_would_be_the_leaner_guess_it_is_asked_for() throws IOException {
        Path afr = afrTarget(17);
        Ran.of(
                        "propose",
                        "--table",
                        TABLE,
                        "--target",
                        afr,
                        "--ride",
                        RIDE,
                        "--out",
                        home.resolve("out"),
                        "--afr-scale",
                        "17")
                .refused(Exit.INPUT, "--target-ratio", "leaner");
    }

    @Test
    void ratio03_a_first_ride_says_what_its_target_is_divided_by() throws IOException {
        Path afr = afrTarget(14.7);
        Ran untold = firstRide(afr, home.resolve("a"));
        assertEquals(Exit.DONE, untold.code(), untold.err());
        untold.has("divided by 14.7");
        // 12.79 at full throttle means lambda 1.02 there for a display that shows 12.5 at lambda 1.
        Ran told = firstRide(afr, home.resolve("b"), "--target-ratio", "12.5");
        assertEquals(Exit.STOP, told.code(), told.err());
        assertEquals(
                Exit.STOP,
                firstRide(afr, home.resolve("c"), "--afr-scale", "12.5").code());
    }
}
