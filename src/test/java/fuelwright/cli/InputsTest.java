package fuelwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Inputs that can't be used: exit code 3, file, place, why and what to do, nothing written. */
class InputsTest {

    private static final Path TABLE = Path.of("sample-logs/fuel-table.csv");
    private static final Path TARGET = Path.of("sample-logs/target-table.csv");
    private static final Path RIDE = Path.of("sample-logs/dyno-pull.csv");

    @TempDir
    Path home;

    private Ran propose(Object table, Object target, Object... ride) {
        List<Object> words = new ArrayList<>(List.of("propose", "--table", table, "--target", target, "--ride"));
        words.addAll(List.of(ride));
        words.addAll(List.of("--out", home.resolve("x")));
        Ran ran = Ran.of(words.toArray());
        assertFalse(Files.exists(home.resolve("x")), "nothing may be written");
        return ran;
    }

    private Path file(String name, String text) {
        try {
            return Files.writeString(home.resolve(name), text);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void in01_a_missing_file_is_named() {
        propose(home.resolve("none.csv"), TARGET, RIDE).refused(Exit.INPUT, "none.csv", "no such file");
        propose(TABLE, home.resolve("none.csv"), RIDE).refused(Exit.INPUT, "none.csv", "no such file");
        Ran ran = propose(TABLE, TARGET, home.resolve("none.csv"));
        ran.refused(Exit.INPUT, "none.csv");
        Ran.of("inspect", "--ride", home.resolve("none.csv")).refused(Exit.INPUT, "none.csv");
    }

    @Test
    void in02_a_ragged_table_is_refused_with_line_and_column() throws IOException {
        List<String> lines = new ArrayList<>(Files.readAllLines(TABLE));
        lines.set(4, lines.get(4).substring(0, lines.get(4).lastIndexOf(',')));
        propose(file("ragged.csv", String.join("\n", lines)), TARGET, RIDE)
                .refused(Exit.INPUT, "ragged.csv:5:14:", "fields");
    }

    @Test
    void in03_fuel_and_target_table_swapped_are_named_as_such() {
        Ran ran = propose(TARGET, TABLE, RIDE);
        assertEquals(Exit.INPUT, ran.code());
        ran.has("target-table.csv", "holds lambda", "fuel-table.csv", "swapped");
        propose(TABLE, TABLE, RIDE).refused(Exit.INPUT, "holds volumetric efficiency", "lambda or AFR");
    }

    @Test
    void in04_a_ride_given_as_a_table_is_named_as_such() {
        propose(RIDE, TARGET, RIDE).refused(Exit.INPUT, "dyno-pull.csv", "this is a ride", "fuel table");
        propose(TABLE, RIDE, RIDE).refused(Exit.INPUT, "dyno-pull.csv", "this is a ride", "target table");
        propose(TABLE, TARGET, RIDE, "--ride-table", RIDE).refused(Exit.INPUT, "dyno-pull.csv", "this is a ride");
    }

    @Test
    void in05_a_table_given_as_a_ride_is_named_as_such() {
        propose(TABLE, TARGET, TABLE).refused(Exit.INPUT, "fuel-table.csv", "this is a table", "as a ride");
        Ran.of("inspect", "--ride", TARGET).refused(Exit.INPUT, "target-table.csv", "this is a table");
    }

    @Test
    void in06_every_swapped_file_is_named_not_only_the_first() {
        Ran ran = propose(RIDE, TARGET, TABLE);
        assertEquals(Exit.INPUT, ran.code());
        ran.has("dyno-pull.csv: this is a ride", "fuel-table.csv: this is a table");
    }

    @Test
    void in07_an_empty_ride_is_refused() {
        propose(TABLE, TARGET, file("empty.csv", "")).refused(Exit.INPUT, "empty.csv");
        propose(TABLE, TARGET, file("head.csv", "time [s],engine speed [rpm],throttle [%],lambda [1]\n"))
                .refused(Exit.INPUT, "head.csv");
    }

    @Test
    void in08_a_ride_with_neither_mixture_nor_trims_is_refused() {
        StringBuilder text = new StringBuilder("time [s],engine speed [rpm],throttle [%],coolant [°C]\n");
        for (int i = 0; i < 400; i++) {
            text.append(i / 20.0)
                    .append(",")
                    .append(3000 + i)
                    .append(",")
                    .append(20 + i % 7)
                    .append(",85\n");
        }
        propose(TABLE, TARGET, file("blind.csv", text.toString())).refused(Exit.INPUT, "blind.csv", "mixture", "trim");
    }

    @Test
    void in09_a_second_logger_that_cant_be_aligned_is_refused() {
        StringBuilder text = new StringBuilder("time [s],intake air [°C]\n");
        for (int i = 0; i < 400; i++) {
            text.append(i / 10.0).append(",").append(20 + i % 3).append("\n");
        }
        Ran ran = propose(TABLE, TARGET, RIDE, "--with", file("second.csv", text.toString()));
        assertEquals(Exit.INPUT, ran.code(), ran.err());
        ran.has("second.csv", "engine speed");
    }

    @Test
    void in10_dead_time_is_asked_for_with_pulses_never_assumed() {
        String pulses =
                "# quantity: injector pulse [ms]\nengine speed [rpm] \\ throttle [%],0,100\n1000,2,6\n8000,2.5,7\n";
        Path table = file("pulse.csv", pulses);
        propose(table, TARGET, RIDE).refused(Exit.INPUT, "pulse.csv", "dead time", "--dead-time");
        propose(table, TARGET, RIDE, "--dead-time", "2")
                .refused(Exit.INPUT, "pulse.csv", "delivers no fuel", "dead time");
        Path typed = file("back.csv", "2,6\n2.5,7\n");
        Ran bare = Ran.of("entry-check", "--meant", table, "--typed", typed);
        assertEquals(Exit.INPUT, bare.code(), bare.err());
        bare.has("--dead-time");
        assertEquals(
                Exit.DONE,
                Ran.of("entry-check", "--meant", table, "--typed", typed, "--dead-time", "0")
                        .code());
    }

    @Test
    void in11_a_ride_made_with_a_table_of_another_quantity_is_refused() {
        Path other = file(
                "multiplier.csv",
                "# quantity: multiplier [1]\nengine speed [rpm] \\ throttle [%],0,100\n1000,1,1\n8000,1,1\n");
        propose(TABLE, TARGET, RIDE, "--ride-table", other)
                .refused(Exit.INPUT, "multiplier.csv", "volumetric efficiency");
    }

    @Test
    void in12_a_role_for_a_column_that_isnt_there_is_not_silently_dropped() {
        Ran ran = propose(TABLE, TARGET, RIDE, "--role", "no such column=lambda");
        assertEquals(Exit.INPUT, ran.code(), ran.err());
        ran.has("no such column");
        Ran.of("inspect", "--ride", RIDE, "--role", "no such column=lambda").refused(Exit.INPUT, "no such column");
        assertEquals(
                Exit.DONE,
                Ran.of("inspect", "--ride", RIDE, "--role", "LAMBDA=lambda").code());
    }

    @Test
    void in13_tables_that_cant_be_compared_are_refused() {
        Path small = file(
                "small.csv",
                "# quantity: volumetric efficiency [%]\nengine speed [rpm] \\ throttle [%],0,100\n1000,20,60\n8000,25,70\n");
        Ran.of("entry-check", "--meant", TABLE, "--typed", small).refused(Exit.INPUT, "small.csv", "breakpoints");
        Ran.of("entry-check", "--meant", TABLE, "--typed", TARGET).refused(Exit.INPUT, "target-table.csv", "lambda");
        Ran.of("entry-check", "--meant", RIDE, "--typed", TABLE).refused(Exit.INPUT, "dyno-pull.csv");
    }

    @Test
    void in14_a_column_that_is_there_but_cant_be_used_is_named_with_the_reason() {
        StringBuilder still = new StringBuilder("time [s],engine speed [rpm],throttle [%],lambda [1]\n");
        StringBuilder fast = new StringBuilder(still);
        StringBuilder blind = new StringBuilder(still);
        for (int i = 0; i < 200; i++) {
            still.append("5,3000,20,0.9\n");
            fast.append(i / 10.0).append(",1e30,20,0.9\n");
            blind.append(i / 10.0).append(",").append(3000 + i).append(",20,NaN\n");
        }
        propose(TABLE, TARGET, file("still.csv", still.toString()))
                .refused(Exit.INPUT, "no time column that runs forward", "--rate");
        propose(TABLE, TARGET, file("fast.csv", fast.toString()))
                .refused(Exit.INPUT, "engine speed [rpm] holds no figure that could be one");
        propose(TABLE, TARGET, file("blind.csv", blind.toString()))
                .refused(Exit.INPUT, "lambda [1] is left out", "holds nothing");
    }

    @Test
    void in15_a_step_larger_than_a_cell_is_refused_not_rounded_to() {
        propose(TABLE, TARGET, RIDE, "--step", "500")
                .refused(Exit.INPUT, "step of 500 %", "8200 rpm and 0 %, 3.5 %", "--step");
        Path tiny = file(
                "tiny.csv",
                "# quantity: multiplier [1]\nengine speed [rpm] \\ throttle [%],0,100\n1000,0.00001,1\n8000,1,1\n");
        Ran ran = propose(tiny, TARGET, RIDE);
        assertEquals(Exit.INPUT, ran.code(), ran.err());
        ran.has("last digit", "1000 rpm and 0 %, 0.00001");
    }

    @Test
    void in16_a_unit_that_a_column_cant_have_is_refused() {
        propose(TABLE, TARGET, RIDE, "--unit", "throttle=kPa")
                .refused(Exit.INPUT, "kPa", "throttle", "Correct the unit");
        Ran.of("inspect", "--ride", RIDE, "--unit", "throttle=kPa").refused(Exit.INPUT, "kPa");
    }

    @Test
    void in17_a_file_of_which_hardly_a_line_is_a_row_is_refused() throws IOException {
        StringBuilder text = new StringBuilder();
        List<String> lines = Files.readAllLines(RIDE);
        text.append(lines.get(0)).append('\n');
        for (int i = 1; i < 300; i++) {
            text.append(lines.get(i).replaceFirst("^[^,]*", (i - 1) * 5e13 + ""))
                    .append('\n');
        }
        propose(TABLE, TARGET, file("clock.csv", text.toString()))
                .refused(Exit.INPUT, "clock.csv", "of 299 lines could be read as rows");
    }
}
