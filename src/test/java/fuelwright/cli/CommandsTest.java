package fuelwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.table.TableReader;
import fuelwright.table.TableWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the commands do when all is well. */
class CommandsTest {

    private static final Path TABLE = Path.of("sample-logs/fuel-table.csv");
    private static final Path TARGET = Path.of("sample-logs/target-table.csv");
    private static final Path RIDE = Path.of("sample-logs/dyno-pull.csv");
    private static final List<String> FILES = List.of(
            "cautions.csv",
            "change.csv",
            "corrected.csv",
            "entry-sheet.html",
            "job.fwjob",
            "readings.csv",
            "report.html",
            "shortfall.csv",
            "uncertainty.csv");

    @TempDir
    Path home;

    private Ran propose(Path out, Object... more) {
        return propose(RIDE, out, more);
    }

    private static Ran propose(Path ride, Path out, Object... more) {
        return Ran.of(List.of("propose", "--table", TABLE, "--target", TARGET, "--ride", ride, "--out", out), more);
    }

    @Test
    void pdfs_are_written_on_request_and_renewed_where_they_lie() throws IOException {
        Path out = home.resolve("out");
        propose(out, "--step", "0.5", "--pdf");
        List<String> names = names(out);
        assertTrue(names.containsAll(List.of("report.pdf", "entry-sheet.pdf")), names.toString());
        byte[] sheet = Files.readAllBytes(out.resolve("entry-sheet.pdf"));
        propose(out, "--step", "1", "--replace");
        assertFalse(
                java.util.Arrays.equals(sheet, Files.readAllBytes(out.resolve("entry-sheet.pdf"))),
                "an old one stayed");
    }

    @Test
    void a_stored_job_gives_the_same_files_as_the_files_it_was_made_from() throws IOException {
        Path out = home.resolve("out");
        propose(
                out,
                Stream.concat(Stream.of("--step", "0.5"), Ran.BODIES.stream()).toArray());
        Path again = home.resolve("again");
        Ran ran = Ran.of("propose", "--job", out.resolve("job.fwjob"), "--out", again);
        assertTrue(ran.code() == Exit.DONE || ran.code() == Exit.STOP, ran.err());
        assertEquals(names(out), names(again));
        for (String name : names(out)) {
            assertTrue(
                    java.util.Arrays.equals(
                            Files.readAllBytes(out.resolve(name)), Files.readAllBytes(again.resolve(name))),
                    name);
        }
    }

    @Test
    void what_a_job_says_is_not_said_beside_it_and_without_one_the_files_are_needed() {
        Path job = home.resolve("a.fwjob");
        Ran.of("propose", "--job", job, "--step", "1", "--out", home.resolve("o"))
                .refused(Exit.USAGE, "--step", "--job");
        Ran.of("propose", "--table", TABLE, "--out", home.resolve("o"))
                .refused(Exit.USAGE, "--target", "--ride", "--job");
        Ran.of("propose", "--job", job, "--out", home.resolve("o")).refused(Exit.INPUT, "a.fwjob");
    }

    @Test
    void propose_tells_cells_on_unseen_stretches_and_the_moments_of_opening() throws IOException {
        Ran ran = propose(Path.of("sample-logs/ride-1-cold-start.csv"), home.resolve("sample"), "--json");
        JsonNode json = new ObjectMapper().readTree(ran.out());
        JsonNode cells = json.get("leftOutCheck").get("cells");
        assertTrue(cells.size() > 20, cells.size() + " cells");
        for (JsonNode cell : cells) {
            assertTrue(
                    cell.get("errorAfterPercent").asDouble() >= 0
                            && cell.get("blocks").asInt() > 0,
                    "" + cell);
        }
        JsonNode tipIn = json.get("tipIn");
        int openings = 0;
        for (JsonNode bin : tipIn.get("bins")) {
            assertTrue(bin.get("uncertaintyPercent").asDouble() > 0, "" + bin);
            openings += bin.get("openings").asInt();
        }
        assertTrue(
                openings > 0 && tipIn.get("leftOut").asInt() > openings,
                "a cold start: most can not be judged " + tipIn);
        assertEquals(openings, tipIn.get("openings").asInt());
    }

    @Test
    void do01_propose_writes_all_its_files_and_its_code_says_whether_a_stop_stands() throws IOException {
        Path out = home.resolve("out");
        Ran ran = propose(out, "--json", "--step", "0.5");
        assertEquals(FILES, names(out));
        JsonNode json = new ObjectMapper().readTree(ran.out());
        int stops = 0;
        for (JsonNode caution : json.get("cautions")) {
            stops += caution.get("level").asText().equals("Stop") ? 1 : 0;
        }
        assertEquals(stops > 0 ? Exit.STOP : Exit.DONE, ran.code());
        assertEquals(ran.code(), json.get("exit").asInt());
        for (JsonNode cell : json.get("leftOutCheck").get("cells")) {
            assertTrue(cell.get("independentReadings").asDouble() >= 2, "" + cell);
        }
        // Too short a ride for any opening to be judged: nothing is made up.
        assertEquals(0, json.get("tipIn").get("openings").asInt(), ran.out());
        assertTrue(json.get("tipIn").get("leftOut").asInt() > 0, ran.out());
        List<String> keys = new ArrayList<>();
        json.get("table").fieldNames().forEachRemaining(keys::add);
        assertEquals(List.of("quantity", "engineSpeeds", "loads"), keys, "a fixed order");
        assertEquals(
                stops,
                ran.errLines().stream().filter(l -> l.startsWith("Stop · ")).count());
        String corrected = Files.readString(out.resolve("corrected.csv"));
        assertEquals(
                stops,
                corrected
                        .lines()
                        .filter(l -> l.startsWith("# caution: Stop · "))
                        .count());
        Table table = TableReader.read(out.resolve("corrected.csv")).value().orElseThrow();
        assertEquals(Quantity.VOLUMETRIC_EFFICIENCY, table.quantity());
        for (double cell : table.toArray()) {
            assertEquals(Math.rint(cell * 2), cell * 2, 1e-9, "on steps of 0.5");
        }
    }

    @Test
    void do01a_only_richer_leans_no_cell_leaves_the_others_alone_and_says_how_many_it_kept() throws IOException {
        Path usual = home.resolve("usual");
        Path richer = home.resolve("richer");
        Table old = TableReader.read(TABLE).value().orElseThrow();
        double[] generous = old.toArray();
        for (int c = 0; c < generous.length; c++) {
            generous[c] = Math.rint(generous[c] * 2.6) / 2;
        }
        Table before = old.withValues(generous);
        Path table = Files.writeString(home.resolve("generous.csv"), TableWriter.write(before));
        Object[] words = {
            "propose",
            "--table",
            table,
            "--target",
            TARGET,
            "--ride",
            RIDE,
            "--ride-table",
            TABLE,
            "--step",
            "0.5",
            "--out"
        };
        Ran.of(Stream.concat(Stream.of(words), Stream.of(usual)).toArray());
        Ran ran = Ran.of(Stream.concat(Stream.of(words), Stream.of(richer, "--only-richer"))
                .toArray());
        Table a = TableReader.read(usual.resolve("corrected.csv")).value().orElseThrow();
        Table b = TableReader.read(richer.resolve("corrected.csv")).value().orElseThrow();
        int kept = 0;
        for (int c = 0; c < before.cells(); c++) {
            boolean leaned = a.at(c) < before.at(c);
            kept += leaned ? 1 : 0;
            assertEquals(leaned ? before.at(c) : a.at(c), b.at(c), "cell " + c);
        }
        assertTrue(kept > 0, "some of the generous cells would be leaned");
        assertTrue(ran.out().contains("Only richer: " + kept + " cells that would be leaned keep their old figure"));
    }

    @Test
    void do01b_a_hardware_table_has_its_breakpoints_steps_and_decimal_sign_and_its_error_is_said() throws IOException {
        Path axes = Files.writeString(
                home.resolve("axes.csv"),
                "# quantity: multiplier [1]\nengine speed [rpm] \\ throttle [%],0,5,15,40,80,100\n"
                        + "1000,1,1,1,1,1,1\n2500,1,1,1,1,1,1\n4000,1,1,1,1,1,1\n5500,1,1,1,1,1,1\n7500,1,1,1,1,1,1\n");
        Path out = home.resolve("out");
        Ran ran = propose(
                out,
                "--holds",
                "change",
                "--step",
                "1",
                "--breakpoints",
                axes,
                "--orientation",
                "speed-across",
                "--decimal-comma",
                "--range",
                "-20..100",
                "--json");
        String text = Files.readString(out.resolve("hardware.csv"));
        Table table = TableReader.read("hardware.csv", text).value().orElseThrow();
        assertEquals(Quantity.CHANGE, table.quantity());
        assertEquals(TableReader.read(axes).value().orElseThrow().speed(), table.speed());
        assertEquals(Table.Orientation.SPEED_ACROSS, table.orientation());
        assertTrue(text.contains(";"), text);
        for (double cell : table.toArray()) {
            assertEquals(Math.rint(cell), cell, 1e-9, "on steps of 1 %");
        }
        JsonNode json = new ObjectMapper().readTree(ran.out()).get("hardware");
        assertTrue(json.get("addedRmsPercent").asDouble() > 0, ran.out());
        String stops = Files.readString(out.resolve("corrected.csv"));
        assertEquals(
                stops.lines().filter(l -> l.startsWith("# caution:")).toList(),
                text.lines().filter(l -> l.startsWith("# caution:")).toList());
    }

    @Test
    void do01c_a_range_that_cuts_fuel_at_high_load_is_a_stop_in_every_table() throws IOException {
        Path out = home.resolve("out");
        Ran ran = propose(out, "--holds", "change", "--range", "-5..5");
        assertEquals(Exit.STOP, ran.code());
        ran.has("The hardware can't hold the fuel that high load needs");
        for (String name : List.of("hardware.csv", "corrected.csv", "change.csv", "cautions.csv")) {
            assertTrue(Files.readString(out.resolve(name)).contains("can't hold the fuel that high load needs"), name);
        }
        Ran again = propose(out, "--replace");
        again.refused(Exit.USAGE, "hardware.csv", "earlier handover");
    }

    @Test
    void do01d_what_the_hardware_takes_must_make_sense() {
        propose(home.resolve("a"), "--holds", "percent").refused(Exit.USAGE, "value, change or multiplier");
        propose(home.resolve("a"), "--range", "5").refused(Exit.USAGE, "-25..60");
        propose(home.resolve("a"), "--range", "9..2").refused(Exit.USAGE, "-25..60");
        propose(home.resolve("a"), "--orientation", "up").refused(Exit.USAGE, "speed-down or speed-across");
    }

    @Test
    void do02_nothing_there_is_overwritten_without_replace() throws IOException {
        Path out = Files.createDirectory(home.resolve("out"));
        Files.writeString(out.resolve("change.csv"), "mine");
        Files.writeString(out.resolve("notes.txt"), "mine too");
        propose(out).refused(Exit.USAGE, "change.csv", "--replace", "Nothing was written");
        assertEquals(List.of("change.csv", "notes.txt"), names(out));
        Ran ran = propose(out, "--replace");
        assertTrue(ran.code() == Exit.DONE || ran.code() == Exit.STOP, ran.err());
        assertEquals("mine too", Files.readString(out.resolve("notes.txt")));
        assertFalse(Files.readString(out.resolve("change.csv")).equals("mine"));
        assertTrue(ran.out().contains("Cells: "), ran.out());
    }

    @Test
    void do03_an_output_that_cant_be_is_told_before_anything_is_worked_out() throws IOException {
        Path out = Files.writeString(home.resolve("out"), "a file");
        propose(out, "--replace").refused(Exit.INPUT, "is a file, not a folder", "Nothing was written");
    }

    @Test
    void do04_the_same_inputs_give_the_same_bytes() throws IOException {
        propose(home.resolve("a"));
        propose(home.resolve("b"));
        for (String name : FILES) {
            assertEquals(
                    -1,
                    Files.mismatch(
                            home.resolve("a").resolve(name), home.resolve("b").resolve(name)),
                    name);
        }
    }

    @Test
    void do05_a_ride_table_goes_with_the_ride_before_it() throws IOException {
        Path halved = home.resolve("halved.csv");
        Table table = TableReader.read(TABLE).value().orElseThrow();
        double[] cells = table.toArray();
        for (int c = 0; c < cells.length; c++) {
            cells[c] /= 1.1;
        }
        Files.writeString(halved, fuelwright.table.TableWriter.write(table.withValues(cells)));
        propose(home.resolve("plain"));
        Ran ran = propose(home.resolve("with"), "--ride-table", halved);
        assertTrue(ran.code() == Exit.DONE || ran.code() == Exit.STOP, ran.err());
        Table plain =
                TableReader.read(home.resolve("plain/shortfall.csv")).value().orElseThrow();
        Table with =
                TableReader.read(home.resolve("with/shortfall.csv")).value().orElseThrow();
        int cell = plain.cell(12, 8);
        assertTrue(with.at(cell) < plain.at(cell) - 5, "less fuel was in the unit, so less is missing now");
    }

    @Test
    void do05c_logs_with_decimal_commas_give_a_table_with_decimal_commas() throws IOException {
        Path commas = home.resolve("commas.csv");
        Files.writeString(commas, Files.readString(RIDE).replace(',', ';').replace('.', ','));
        Path out = home.resolve("out");
        Ran ran = Ran.of(
                "propose",
                "--table",
                TABLE,
                "--target",
                TARGET,
                "--ride",
                commas,
                "--holds",
                "change",
                "--step",
                "0.5",
                "--out",
                out);
        assertTrue(ran.code() == Exit.DONE || ran.code() == Exit.STOP, ran.err());
        String written = Files.readString(out.resolve("hardware.csv"));
        assertTrue(written.lines().anyMatch(l -> l.matches("[0-9]+;(-?[0-9]+(,5)?;?)+")), written);
        assertTrue(ran.out().contains("nobody has said so"), ran.out());
        Ran said = Ran.of(
                "propose", "--job", out.resolve("job.fwjob"), "--cells-now", "none", "--out", home.resolve("said"));
        assertTrue(said.out().contains("It was said that every cell holds 0 now"), said.out() + said.err());
        Ran held = Ran.of(
                "propose", "--job", out.resolve("job.fwjob"), "--cells-now", TABLE, "--out", home.resolve("held"));
        assertEquals(Exit.INPUT, held.code(), "a fuel table is nothing that such cells hold");
    }

    @Test
    void do05b_the_same_log_under_another_name_is_refused() throws IOException {
        Path copy = Files.copy(RIDE, home.resolve("copy.csv"));
        propose(home.resolve("out"), "--ride", copy)
                .refused(Exit.INPUT, "copy.csv", "the same readings as " + RIDE.getFileName(), "count twice");
    }

    @Test
    void do06_first_ride_adds_where_the_bigger_body_flows_more_and_never_takes_away() throws IOException {
        Path out = home.resolve("out");
        Ran ran = Ran.of(
                "first-ride",
                "--table",
                TABLE,
                "--out",
                out,
                "--displacement",
                "720",
                "--bodies",
                "2",
                "--bore-before",
                "38",
                "--bore-after",
                "44");
        assertEquals(Exit.DONE, ran.code(), ran.err());
        assertEquals(List.of("change.csv", "first-ride.csv", "uncertainty.csv"), names(out));
        Table before = TableReader.read(TABLE).value().orElseThrow();
        Table after = TableReader.read(out.resolve("first-ride.csv")).value().orElseThrow();
        for (int c = 0; c < before.cells(); c++) {
            assertTrue(after.at(c) >= before.at(c));
        }
        int small = before.cell(2, 5);
        assertTrue(after.at(small) > 1.1 * before.at(small), "4 % throttle at 3000 rpm");
        for (int c = 0; c < before.cells(); c++) {
            assertEquals(10 * after.at(c), Math.rint(10 * after.at(c)), 1e-9, "as many decimals as the table has");
        }
        Table change = TableReader.read(out.resolve("change.csv")).value().orElseThrow();
        List<Table.Note> unknown =
                change.notes().stream().filter(n -> n.key().equals("unknown")).toList();
        boolean any = IntStream.range(0, change.cells()).anyMatch(c -> change.at(c) == 0);
        assertEquals(any ? 1 : 0, unknown.size());
        assertTrue(any && unknown.get(0).value().contains("nothing is known"), "the closed throttle is left alone");
    }

    @Test
    void do06b_first_ride_asks_about_bores_that_one_seldom_meets() {
        Ran far = firstRide("20", "60");
        assertEquals(Exit.STOP, far.code(), far.err());
        assertTrue(far.err().contains("The bores are far apart"), far.err());
        Ran swapped = firstRide("44", "38");
        assertEquals(Exit.DONE, swapped.code(), swapped.err());
        assertTrue(swapped.err().contains("Is the new bore really smaller?"), swapped.err());
    }

    private Ran firstRide(String before, String after) {
        return Ran.of(
                "first-ride",
                "--table",
                TABLE,
                "--out",
                home.resolve("bores-" + before),
                "--displacement",
                "720",
                "--bodies",
                "2",
                "--bore-before",
                before,
                "--bore-after",
                after);
    }

    @Test
    void do07_first_ride_leaves_a_pressure_table_alone_and_says_why() throws IOException {
        Path table = Files.writeString(
                home.resolve("map.csv"),
                "# quantity: volumetric efficiency [%]\nengine speed [rpm] \\ manifold pressure [kPa],30,100\n1000,20,60\n8000,25,70\n");
        Ran ran = Ran.of(
                "first-ride",
                "--table",
                table,
                "--out",
                home.resolve("out"),
                "--displacement",
                "720",
                "--bodies",
                "2",
                "--bore-before",
                "38",
                "--bore-after",
                "44",
                "--json");
        assertEquals(Exit.DONE, ran.code(), ran.err());
        JsonNode json = new ObjectMapper().readTree(ran.out());
        assertEquals(0, json.get("mostAddedPercent").asDouble());
        assertTrue(json.get("remark").asText().contains("manifold pressure"));
    }

    @Test
    void do08_inspect_names_channels_rates_and_what_would_be_screened_out() throws IOException {
        Ran ran = Ran.of("inspect", "--ride", RIDE, "--json");
        assertEquals(Exit.DONE, ran.code());
        JsonNode json = new ObjectMapper().readTree(ran.out());
        assertEquals(2660, json.get("rows").asInt());
        JsonNode lambda = null;
        for (JsonNode channel : json.get("channels")) {
            lambda = channel.get("role").asText().equals("lambda") ? channel : lambda;
        }
        assertEquals(20, lambda.get("rateHz").asDouble(), 1e-6);
        assertEquals(2660, lambda.get("values").asInt());
        assertTrue(json.get("screenedOut").get("fuel cut").asInt() > 0);
        assertTrue(Ran.of("inspect", "--ride", RIDE).out().contains("injector pulse [ms]"));
    }

    @Test
    void do09_entry_check_gives_0_for_none_1_for_a_difference_and_4_for_lean_at_high_load() throws IOException {
        assertEquals(
                "All 195 cells hold what was meant\n",
                unix(Ran.of("entry-check", "--meant", TABLE, "--typed", readBack())
                        .out()));
        Ran rich = Ran.of("entry-check", "--meant", TABLE, "--typed", typed(12, 10, 99.9));
        assertEquals(Exit.DIFFERENCE, rich.code());
        assertEquals("", rich.err());
        Ran lean = Ran.of("entry-check", "--meant", TABLE, "--typed", typed(12, 10, 28.9));
        assertEquals(Exit.STOP, lean.code());
        assertEquals(
                "1 of 195 cells differ, worst first:\n"
                        + "  5600 rpm, 100 %: meant 82.9, typed 28.9 (two digits swapped), 186.9 % leaner than meant at high load: Stop\n",
                unix(lean.out()));
        assertEquals(
                "Stop · leaner than meant at high load or its edge: 1 cell. Correct them before the engine is loaded\n",
                unix(lean.err()));
    }

    @Test
    void do09b_the_programs_own_table_is_not_taken_for_what_was_read_back() throws IOException {
        Path copy = Files.copy(TABLE, home.resolve("copy.csv"));
        Ran.of("entry-check", "--meant", TABLE, "--typed", copy).refused(Exit.INPUT, "copy.csv", "own table");
        Path carried = Files.writeString(
                home.resolve("carried.csv"), "# caution: Stop · Lean\n" + Files.readString(typed(12, 10, 99.9)));
        Ran.of("entry-check", "--meant", TABLE, "--typed", carried).refused(Exit.INPUT, "carried.csv", "own table");
    }

    @Test
    void do09c_a_cell_below_the_line_of_high_load_is_not_said_to_be_at_high_load() throws IOException {
        Ran beside = Ran.of("entry-check", "--meant", TABLE, "--typed", typed(9, 10, 88.0));
        assertEquals(Exit.STOP, beside.code());
        assertTrue(beside.out().contains("leaner than meant at the edge of high load: Stop"), beside.out());
        Ran below = Ran.of("entry-check", "--meant", TABLE, "--typed", typed(8, 10, 81.0));
        assertEquals(Exit.DIFFERENCE, below.code());
        assertTrue(below.out().strip().endsWith("leaner than meant"), below.out());
        Ran rich = Ran.of("entry-check", "--meant", TABLE, "--typed", typed(7, 10, 66.0), "--target", TARGET);
        assertEquals(Exit.STOP, rich.code());
        assertTrue(rich.out().contains("leaner than meant at the edge of high load: Stop"), rich.out());
    }

    @Test
    void do10_a_rich_target_makes_a_lean_slip_a_stop_where_the_throttle_alone_would_not() throws IOException {
        Path slip = typed(7, 1, 70);
        assertEquals(
                Exit.DIFFERENCE,
                Ran.of("entry-check", "--meant", TABLE, "--typed", slip).code());
        assertEquals(
                Exit.STOP,
                Ran.of("entry-check", "--meant", TABLE, "--typed", slip, "--target", TARGET)
                        .code());
        assertEquals(
                Exit.STOP,
                Ran.of(
                                "entry-check",
                                "--meant",
                                TABLE,
                                "--typed",
                                slip,
                                "--displacement",
                                "720",
                                "--bodies",
                                "2",
                                "--bore-before",
                                "38",
                                "--bore-after",
                                "44")
                        .code());
    }

    @Test
    void do11_a_table_that_carries_a_stop_says_so_when_it_is_used_again() throws IOException {
        Path carried = home.resolve("carried.csv");
        Files.writeString(carried, "# caution: Stop · Lean under load\n" + Files.readString(TABLE));
        Ran ran = Ran.of(
                "first-ride",
                "--table",
                carried,
                "--out",
                home.resolve("out"),
                "--displacement",
                "720",
                "--bodies",
                "2",
                "--bore-before",
                "38",
                "--bore-after",
                "44");
        ran.has("carried.csv", "Stop · Lean under load");
    }

    @Test
    void do12_a_ride_from_two_loggers_gives_what_one_logger_would_have() throws IOException {
        List<String> first = new ArrayList<>();
        List<String> second = new ArrayList<>();
        for (String line : Files.readAllLines(RIDE)) {
            String[] f = line.split(",");
            boolean head = first.isEmpty();
            first.add(String.join(",", f[0], f[1], f[2], f[3], f[5], f[6], f[9]));
            String later = head ? f[0] : String.format(java.util.Locale.ROOT, "%.2f", Double.parseDouble(f[0]) + 37.2);
            second.add(String.join(",", later, f[1], f[4]));
        }
        Path one = Files.write(home.resolve("one.csv"), first);
        Path two = Files.write(home.resolve("two.csv"), second);
        propose(home.resolve("whole"));
        Ran ran = propose(one, home.resolve("both"), "--with", two);
        assertTrue(ran.code() == Exit.DONE || ran.code() == Exit.STOP, ran.err());
        ran.has("two.csv", "offset -37.2");
        String[] byHand = {"--offset=-37.2", "--drift=0"};
        Ran given = propose(one, home.resolve("given"), "--with", two, byHand[0], byHand[1]);
        given.has("two.csv", "aligned by hand", "offset -37.2");
        assertEquals(Exit.USAGE, propose(one, home, byHand[0]).code());
        Table whole =
                TableReader.read(home.resolve("whole/shortfall.csv")).value().orElseThrow();
        Table both =
                TableReader.read(home.resolve("both/shortfall.csv")).value().orElseThrow();
        Table error =
                TableReader.read(home.resolve("whole/uncertainty.csv")).value().orElseThrow();
        for (int c = 0; c < whole.cells(); c++) {
            assertEquals(whole.at(c), both.at(c), error.at(c), "within the standard error, cell " + c);
        }
    }

    /** The cells alone, as a grid on a screen is copied. */
    private Path readBack() throws IOException {
        Table table = TableReader.read(TABLE).value().orElseThrow();
        return Files.writeString(home.resolve("back.csv"), TableWriter.cells(table, false));
    }

    private Path typed(int load, int speed, double value) throws IOException {
        Table table = TableReader.read(TABLE).value().orElseThrow();
        double[] cells = table.toArray();
        cells[table.cell(load, speed)] = value;
        Path file = home.resolve("typed-" + value + ".csv");
        Files.writeString(file, fuelwright.table.TableWriter.write(table.withValues(cells)));
        return file;
    }

    private static String unix(String text) {
        return text.replace("\r\n", "\n");
    }

    private static List<String> names(Path folder) throws IOException {
        try (var files = Files.list(folder)) {
            return files.map(f -> f.getFileName().toString()).sorted().toList();
        }
    }

    private Ran firstRide(Path out, Object... more) {
        return firstRide(TABLE, out, more);
    }

    private static Ran firstRide(Path table, Path out, Object... more) {
        List<Object> words = new ArrayList<>(List.of("first-ride", "--table", table, "--out", out));
        words.addAll(Ran.BODIES);
        return Ran.of(words, more);
    }

    @Test
    void do13_first_ride_says_what_nobody_has_measured_and_that_no_target_was_looked_at() throws IOException {
        Ran ran = firstRide(home.resolve("out"), "--json");
        assertEquals(Exit.DONE, ran.code(), ran.err());
        ran.has("Check · High load never ridden", "Note · Target not checked", "Give the target table as well");
        JsonNode json = new ObjectMapper().readTree(ran.out());
        assertEquals(ran.errLines().size(), json.get("cautions").size());
        assertFalse(Files.readString(home.resolve("out/first-ride.csv")).contains("# caution"));
        Ran told = firstRide(home.resolve("told"), "--target", TARGET);
        assertEquals(Exit.DONE, told.code(), told.err());
        assertFalse(told.err().contains("Target not checked"), told.err());
    }

    @Test
    void do14_a_target_leaner_than_safe_is_a_stop_in_every_file_of_a_first_ride() throws IOException {
        for (String target : List.of("# quantity: lambda [1]", "1.02", "# quantity: AFR [1]", "15")) {
            if (target.startsWith("#")) {
                Files.writeString(home.resolve("quantity"), target);
                continue;
            }
            String grid = "engine speed [rpm] \\ throttle [%],0,100\n1000,V,V\n8000,V,V\n".replace("V", target);
            Path lean = Files.writeString(
                    home.resolve("lean.csv"), Files.readString(home.resolve("quantity")) + "\n" + grid);
            Path out = home.resolve("out" + target);
            Ran ran = firstRide(out, "--target", lean);
            assertEquals(Exit.STOP, ran.code(), ran.err());
            ran.has("Stop · The target is leaner than safe");
            assertTrue(ran.out().contains("Cautions: 1 Stop"), ran.out());
            for (String name : names(out)) {
                assertTrue(Files.readString(out.resolve(name)).contains("# caution: Stop · The target"), name);
            }
        }
        firstRide(home.resolve("swapped"), "--target", TABLE).refused(Exit.INPUT, "fuel-table.csv", "not a target");
    }

    @Test
    void do14b_a_stop_that_the_table_came_with_goes_on_with_the_first_ride_table_and_is_said() throws IOException {
        Path carried = Files.writeString(
                home.resolve("carried.csv"),
                "# caution: Stop · Lean under load: at 6000 rpm.\n" + Files.readString(TABLE));
        Path out = home.resolve("out");
        Ran ran = firstRide(carried, out);
        assertEquals(Exit.STOP, ran.code(), ran.err());
        ran.has("Stop · The table came with a Stop caution", "Lean under load: at 6000 rpm");
        for (String name : names(out)) {
            assertEquals(1, Files.readString(out.resolve(name)).split("# caution:", -1).length - 1, name);
        }
    }

    @Test
    void do14c_a_limit_of_ones_own_is_kept_in_the_job_said_in_the_cautions_and_refused_outside_its_bounds()
            throws IOException {
        Path out = home.resolve("own");
        Ran ran = propose(out, "--limit", "cliff=5", "--limit", "lean excess = 0.08");
        assertTrue(ran.code() == Exit.DONE || ran.code() == Exit.STOP, ran.err());
        String cautions = Files.readString(out.resolve("cautions.csv"));
        assertTrue(cautions.contains("Check,limits-changed,"), cautions);
        assertTrue(cautions.contains("lean excess 0.08 lambda instead of 0.05"), cautions);
        for (String bad : List.of("lean-excess=0.5", "lean-excess", "no-such=1", "cliff=many")) {
            Path none = home.resolve("none");
            propose(none, "--limit", "cliff=5", "--limit", bad).refused(Exit.USAGE, bad);
            assertFalse(Files.exists(none));
        }
    }

    @Test
    void do15_wideband_volts_and_a_ride_without_a_clock_can_be_told_from_here() throws IOException {
        List<String> rows = Files.readAllLines(RIDE);
        StringBuilder text = new StringBuilder("engine speed [rpm],throttle [%],wideband [V]\n");
        for (String row : rows.subList(1, rows.size())) {
            String[] f = row.split(",");
            double volts = 0.5 + (Double.parseDouble(f[4]) - 0.7) / 0.15;
            text.append(f[1]).append(',').append(f[2]).append(',').append(volts).append('\n');
        }
        Path ride = Files.writeString(home.resolve("volts.csv"), text);
        Ran.of("inspect", "--ride", ride).refused(Exit.INPUT, "no time column", "--rate HZ");
        Ran blind = Ran.of("inspect", "--ride", ride, "--rate", "20");
        assertEquals(Exit.DONE, blind.code(), blind.err());
        blind.has("--volts");
        propose(ride, home.resolve("x"), "--rate", "20").refused(Exit.INPUT, "wideband [V] is left out", "scale");
        Ran told =
                Ran.of("inspect", "--ride", ride, "--rate", "20", "--volts", "0.5=0.7", "--volts", "4.5=1.3", "--json");
        JsonNode lambda =
                new ObjectMapper().readTree(told.out()).get("channels").get(2);
        assertEquals(0.65, lambda.get("least").asDouble(), 0.01);
        assertEquals(1.4, lambda.get("most").asDouble(), 0.01);
    }
}
