package fuelwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Wrong usage: exit code 2, one clear line, nothing written. */
class UsageTest {

    private static final Path TABLE = Path.of("sample-logs/fuel-table.csv");
    private static final Path TARGET = Path.of("sample-logs/target-table.csv");
    private static final Path RIDE = Path.of("sample-logs/dyno-pull.csv");

    @TempDir
    Path home;

    @Test
    void use01_help_is_no_failure_and_names_every_command() {
        Ran ran = Ran.of("--help");
        assertEquals(Exit.DONE, ran.code());
        for (String command : List.of("propose", "first-ride", "inspect", "entry-check", "pulls", "demo")) {
            assertTrue(ran.out().contains(command), command);
            assertEquals(Exit.DONE, Ran.of(command, "--help").code());
        }
    }

    @Test
    void use02_an_unknown_command_or_option_is_named() {
        Ran.of("improve").refused(Exit.USAGE, "improve", "fuelwright --help");
        Ran.of("demo", "--out", home.resolve("x"), "--faster")
                .refused(Exit.USAGE, "--faster", "fuelwright demo --help");
        assertFalse(Files.exists(home.resolve("x")));
    }

    @Test
    void use03_what_is_missing_is_named() {
        Ran.of("propose", "--table", TABLE, "--ride", RIDE, "--out", home.resolve("x"))
                .refused(Exit.USAGE, "--target is missing", "Make a target");
        Ran.of("propose", "--table", TABLE, "--target", TARGET, "--out", home.resolve("x"))
                .refused(Exit.USAGE, "--ride is missing");
        Ran.of("propose", "--target", TARGET, "--out", home.resolve("x"))
                .refused(Exit.USAGE, "--table and --ride are missing");
        Ran.of("propose", "--table", TABLE, "--target", TARGET, "--ride", RIDE).refused(Exit.USAGE, "--out");
        Ran.of("first-ride", "--table", TABLE, "--out", home.resolve("x"))
                .refused(Exit.USAGE, "--displacement", "--bore-after");
        Ran.of("inspect").refused(Exit.USAGE, "--ride");
        Ran.of("entry-check", "--meant", TABLE).refused(Exit.USAGE, "--typed");
        assertFalse(Files.exists(home.resolve("x")));
    }

    @Test
    void use04_figures_that_cant_be_are_named_with_their_bounds() {
        refusedOption("--step", "-1", "at least 0");
        refusedOption("--step", "many", "many");
        refusedOption("--cylinder", "0", "from 1 to 19");
        refusedOption("--max-add", "-3", "at least 0");
        refusedOption("--max-cut", "100", "below 100");
        refusedOption("--dead-time", "-0.1", "from 0 to 100");
        refusedOption("--afr-scale", "0", "from 1 to 40");
        refusedOption("--target-ratio", "147", "from 1 to 40");
        refusedOption("--displacement", "0", "above 0");
        refusedOption("--bodies", "0", "at least 1");
        refusedOption("--redline", "NaN", "above 0");
        refusedOption("--fuel", "lamp oil", "petrol, E5, E10");
        refusedOption("--bore-after", "44", "--bore-before");
        refusedOption("--shaft", "8", "--bore-before");
        refusedOption("--role", "just a word", "COLUMN=ROLE");
        refusedOption("--role", "O2=lambada", "engine speed", "lambda");
        refusedOption("--unit", "MAP", "COLUMN=UNIT");
        refusedOption("--unit", "MAP=barn", "kPa", "mbar");
        refusedOption("--delimiter", "colon", "comma, semicolon, tab or bar");
        refusedOption("--decimal", "dash", "point or comma");
        refusedOption("--encoding", "runes", "UTF-8");
        assertFalse(Files.exists(home.resolve("x")));
    }

    @Test
    void use20_bores_and_displacement_without_the_number_of_bodies_ask_for_it() {
        Ran.of(
                        "propose",
                        "--table",
                        TABLE,
                        "--target",
                        TARGET,
                        "--ride",
                        RIDE,
                        "--out",
                        home.resolve("x"),
                        "--displacement",
                        "720",
                        "--bore-before",
                        "38",
                        "--bore-after",
                        "44")
                .refused(Exit.USAGE, "--bodies");
    }

    @Test
    void use21_bores_without_the_displacement_are_not_ignored() {
        Ran.of(
                        "propose",
                        "--table",
                        TABLE,
                        "--target",
                        TARGET,
                        "--ride",
                        RIDE,
                        "--out",
                        home.resolve("x"),
                        "--bore-before",
                        "38",
                        "--bore-after",
                        "44")
                .refused(Exit.USAGE, "--displacement");
    }

    private void refusedOption(String option, String value, String... words) {
        Ran ran = Ran.of(
                "propose",
                "--table",
                TABLE,
                "--target",
                TARGET,
                "--ride",
                RIDE,
                "--out",
                home.resolve("x"),
                option,
                value);
        ran.refused(Exit.USAGE, option);
        ran.has(words);
    }

    @Test
    void use05_bodies_that_cant_be_are_named() {
        Ran.of(bodies("--shaft", "50")).refused(Exit.USAGE, "--shaft", "38.0 mm");
        Ran.of(bodies("--shaft-after", "50")).refused(Exit.USAGE, "--shaft-after", "44.0 mm");
        Ran.of(bodies("--closed-angle", "60")).refused(Exit.USAGE, "--closed-angle");
        Ran.of(bodies("--open-angle", "3")).refused(Exit.USAGE, "--open-angle");
        assertFalse(Files.exists(home.resolve("x")));
    }

    private Object[] bodies(String option, String value) {
        List<Object> words = new ArrayList<>(List.of("first-ride", "--table", TABLE, "--out", home.resolve("x")));
        words.addAll(Ran.BODIES);
        words.addAll(List.of(option, value));
        return words.toArray();
    }

    @Test
    void once_a_ride_names_its_table_every_earlier_ride_has_to() {
        Ran.of(
                        "propose",
                        "--table",
                        TABLE,
                        "--target",
                        TARGET,
                        "--ride",
                        RIDE,
                        "--ride",
                        RIDE,
                        "--ride-table",
                        TABLE,
                        "--out",
                        home.resolve("x"))
                .refused(Exit.USAGE, "--ride-table", "earlier ride", "name the table");
        assertFalse(Files.exists(home.resolve("x")));
    }

    @Test
    void use06_a_ride_table_belongs_after_its_ride() {
        Ran.of(
                        "propose",
                        "--table",
                        TABLE,
                        "--target",
                        TARGET,
                        "--ride-table",
                        TABLE,
                        "--ride",
                        RIDE,
                        "--out",
                        home.resolve("x"))
                .refused(Exit.USAGE, "--ride-table", "after");
        assertFalse(Files.exists(home.resolve("x")));
    }

    @Test
    void use07_a_scale_of_volts_needs_two_points_and_a_rate_a_figure() {
        for (String volts : List.of("1", "x=1", "1=", "0.5=0.7")) {
            Ran.of("inspect", "--ride", "none.csv", "--volts", volts).refused(Exit.USAGE, "--volts");
        }
        Ran.of("inspect", "--ride", "none.csv", "--volts", "1=0.7", "--volts", "1=1.3")
                .refused(Exit.USAGE, "two different voltages");
        Ran.of("inspect", "--ride", "none.csv", "--volts", "1=0.7", "--volts", "NaN=1.3")
                .refused(Exit.USAGE, "--volts");
        Ran.of("inspect", "--ride", "none.csv", "--rate", "0").refused(Exit.USAGE, "--rate");
    }

    @Test
    void use08_an_empty_output_folder_is_not_taken_for_the_working_directory() {
        Ran.of("demo", "--out", "").refused(Exit.USAGE, "--out is empty");
    }
}
