package fuelwright.handover;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.safety.Caution;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.table.TableReader;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

class ExportsTest {

    private static final List<String> TABLES =
            List.of(Exports.CORRECTED, Exports.CHANGE, Exports.SHORTFALL, Exports.UNCERTAINTY, Exports.READINGS);

    @Test
    void export01_all_files_are_there_and_the_corrected_table_is_the_last() {
        Map<String, byte[]> files = Exports.files(MadeUpHandover.with("job", List.of()));
        assertEquals(
                Exports.NAMES.stream().filter(n -> !n.equals(Exports.HARDWARE)).toList(), List.copyOf(files.keySet()));
        assertEquals(Exports.CORRECTED, Exports.NAMES.get(Exports.NAMES.size() - 1));
    }

    @Test
    void export02_every_table_reads_back_with_its_quantity_and_axes() {
        Handed handed = MadeUpHandover.with("job", List.of());
        Map<String, byte[]> files = Exports.files(handed);
        List<Quantity> quantities = List.of(
                Quantity.VOLUMETRIC_EFFICIENCY,
                Quantity.CHANGE,
                Quantity.SHORTFALL,
                Quantity.UNCERTAINTY,
                Quantity.READINGS);
        for (int i = 0; i < TABLES.size(); i++) {
            Table table = read(files, TABLES.get(i));
            assertEquals(quantities.get(i), table.quantity());
            assertTrue(table.sameAxes(handed.proposal().before()));
        }
        assertEquals(handed.proposal().corrected(), read(files, Exports.CORRECTED));
    }

    @Test
    void export03_before_times_change_is_the_corrected_table() {
        Handed handed = MadeUpHandover.with("job", List.of());
        Map<String, byte[]> files = Exports.files(handed);
        Table corrected = read(files, Exports.CORRECTED);
        Table change = read(files, Exports.CHANGE);
        for (int c = 0; c < corrected.cells(); c++) {
            double expected = handed.proposal().before().at(c) * (1 + change.at(c) / 100);
            assertEquals(expected, corrected.at(c), 1e-4, "change.csv is rounded to 0.0001 %");
        }
    }

    @Test
    void export03b_where_pulses_contain_dead_time_it_is_said_that_the_change_is_of_the_fuel() {
        String plain = text(Exports.files(MadeUpHandover.with("job", List.of())), Exports.CHANGE);
        assertFalse(plain.contains("# of:"), plain);
        String pulses = text(Exports.files(MadeUpHandover.ofPulses(0.85)), Exports.CHANGE);
        assertTrue(
                pulses.contains("# of: the fuel; the figures change by less, their dead time of 0.85 ms stays"),
                pulses);
    }

    @Test
    void export04_while_a_stop_stands_every_table_carries_it_above_its_grid() {
        Map<String, byte[]> files = Exports.files(MadeUpHandover.with(
                "job", List.of(MadeUpHandover.stop("Lean\r\nunder load"), MadeUpHandover.check("Unridden"))));
        for (String name : TABLES) {
            String text = text(files, name);
            String carried =
                    "# caution: Stop · Lean under load: The engine was fed lambda 0.98 where 0.87 is wanted, for 1.4 s."
                            + " Don't load the engine there until the table is corrected.\n";
            assertTrue(text.contains(carried), name);
            assertTrue(text.indexOf(carried) < text.indexOf("engine speed [rpm] \\"), name);
            assertFalse(text.contains("Unridden"), name);
        }
    }

    @Test
    void noPieceOfACautionsLineAboveATableBeginsLikeAFormula() {
        String text = text(
                Exports.files(MadeUpHandover.with("job", List.of(MadeUpHandover.stop("a,=1+1; @x, -2")))),
                Exports.CORRECTED);
        String line =
                text.lines().filter(l -> l.startsWith("# caution:")).findFirst().orElseThrow();
        for (String piece : line.split("[,;]")) {
            assertFalse(piece.strip().matches("^[=+@-].*"), line);
        }
    }

    /** Notes of the user's file go out again with the table; a spreadsheet splits them at commas. */
    @Test
    void noPieceOfANoteThatCameWithTheTableBeginsLikeAFormula() {
        Table with = MadeUpHandover.fuelTable()
                .withNotes(List.of(
                        new Table.Note("from", "x,=cmd|' /C calc'!A0;@SUM(1), +1,-1"), new Table.Note("", "a,=1")));
        for (Table.Note note : StopNotes.on(with, List.of()).notes()) {
            for (String piece : note.value().split("[,;]")) {
                assertFalse(piece.strip().matches("^[=+@-].*"), note.value());
            }
        }
        Table plain = with.withNotes(List.of(new Table.Note("from", "our shop, bench 2; -")));
        assertEquals(
                "our shop, bench 2; '-",
                StopNotes.on(plain, List.of()).notes().get(0).value());
    }

    @Test
    void export05_a_caution_of_an_earlier_judgement_goes_when_it_no_longer_stands() {
        Table old = StopNotes.on(MadeUpHandover.fuelTable(), List.of(MadeUpHandover.stop("Old")));
        assertEquals(1, StopNotes.carriedBy(old).size());
        assertEquals(List.of(), StopNotes.carriedBy(StopNotes.on(old, List.of())));
    }

    @Test
    void export06_a_cell_without_evidence_holds_zero_readings_and_the_least_evidence_does_not() {
        Handed handed = MadeUpHandover.with("job", List.of());
        Table readings = read(Exports.files(handed), Exports.READINGS);
        for (int c = 0; c < readings.cells(); c++) {
            assertEquals(handed.estimate().independentReadings(c) > 0, readings.at(c) > 0);
        }
    }

    @Test
    void export06b_a_caution_about_the_target_gives_the_targets_figures() throws Exception {
        Table fuel = MadeUpHandover.fuelTable();
        double[] lambda = new double[fuel.cells()];
        Arrays.fill(lambda, 0.88);
        lambda[3] = 1.02;
        lambda[4] = 1.04;
        Caution lean = new Caution(
                "target-lean",
                Caution.Level.STOP,
                "The target is leaner than safe",
                "2 cells",
                "Make it richer",
                new TreeSet<>(List.of(3, 4)),
                List.of());
        Handed made = MadeUpHandover.with("job", List.of(lean));
        Handed handed = new Handed(
                made.job().withTargetTable(fuel.with(Quantity.LAMBDA, lambda)),
                made.screened(),
                made.estimate(),
                made.proposal(),
                made.validation(),
                made.cautions());
        List<CSVRecord> lines = CSVFormat.RFC4180
                .parse(new StringReader(text(Exports.files(handed), Exports.CAUTIONS)))
                .getRecords();
        assertEquals("worst of 2 cells: target lambda 1.040", lines.get(1).get(6));
        assertEquals("target lambda 1.020", lines.get(2).get(6));
    }

    @Test
    void export07_a_caution_is_said_once_with_a_short_line_for_each_further_place_and_survives_any_text()
            throws Exception {
        Caution nasty = new Caution(
                "rule",
                Caution.Level.CHECK,
                "=HYPERLINK(\"http://x\")",
                "commas, \"quotes\"\nand lines",
                "+1",
                new TreeSet<>(List.of(3, 4)),
                List.of(new Caution.Moment(0, "=cmd|' /C calc'!A0.csv", 1.5, 0.75, 0.99, 6000, 100)));
        Handed handed = MadeUpHandover.with("job", List.of(nasty));
        List<CSVRecord> lines = CSVFormat.RFC4180
                .parse(new StringReader(text(Exports.files(handed), Exports.CAUTIONS)))
                .getRecords();
        assertEquals(
                List.of(
                        "level",
                        "rule",
                        "what",
                        "load [%]",
                        "engine speed [rpm]",
                        "when",
                        "figures",
                        "what to do",
                        "answer",
                        "note"),
                lines.get(0).toList());
        assertEquals(4, lines.size());
        assertEquals(
                "'=HYPERLINK(\"http://x\"): commas, \"quotes\"\nand lines",
                lines.get(1).get(2));
        assertEquals("'=cmd|' /C calc'!A0.csv at 0:01.5", lines.get(1).get(5));
        assertEquals(
                "worst of 1 moment in 2 cells: lambda 0.99 for 0.75 s",
                lines.get(1).get(6));
        assertEquals("'+1", lines.get(1).get(7));
        assertEquals("2000", lines.get(2).get(4));
        assertEquals("'=HYPERLINK(\"http://x\")", lines.get(2).get(2));
        assertEquals("", lines.get(2).get(7));
    }

    /** OWASP, "CSV Injection": fields that begin with one of these characters may be run as formulas. */
    @Test
    void export08_no_text_that_a_spreadsheet_would_run_is_left() {
        for (String start : List.of("=", "+", "-", "@", "\t", "\r")) {
            assertEquals("'" + start + "1", CautionSheet.harmless(start + "1"));
        }
        assertEquals("plain", CautionSheet.harmless("plain"));
        assertEquals("", CautionSheet.harmless(""));
    }

    @Test
    void export09_a_caution_without_a_place_has_one_line() {
        Caution plain = new Caution("rule", Caution.Level.NOTE, "Title", "What.", "Do.", new TreeSet<>(), List.of());
        String text = text(Exports.files(MadeUpHandover.with("job", List.of(plain))), Exports.CAUTIONS);
        assertEquals("Note,rule,Title: What.,,,,,Do.,,", text.split("\r\n")[1]);
    }

    @Test
    void export10_the_same_handover_gives_the_same_bytes() {
        Map<String, byte[]> first = Exports.files(MadeUpHandover.with("job", List.of(MadeUpHandover.stop("Lean"))));
        Map<String, byte[]> second = Exports.files(MadeUpHandover.with("job", List.of(MadeUpHandover.stop("Lean"))));
        first.forEach((name, bytes) -> assertArrayEquals(bytes, second.get(name), name));
    }

    private static Table read(Map<String, byte[]> files, String name) {
        return TableReader.read(name, files.get(name)).value().orElseThrow();
    }

    private static String text(Map<String, byte[]> files, String name) {
        return new String(files.get(name), StandardCharsets.UTF_8);
    }
}
