package fuelwright.handover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.HighLoad;
import fuelwright.estimate.Decision;
import fuelwright.estimate.MadeUpEstimates;
import fuelwright.estimate.ProposalSettings;
import fuelwright.estimate.Standing;
import fuelwright.job.HardwareProfile;
import fuelwright.job.Job;
import fuelwright.safety.Caution;
import fuelwright.safety.UsualCautions;
import fuelwright.table.Axis;
import fuelwright.table.Bilinear;
import fuelwright.table.Table;
import java.io.StringReader;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class EntrySheetTest {

    private static final String NASTY = "<script>alert(1)</script> & \"quotes\" ${name}";

    @Test
    void everyFigureStandsInTheOrderOfTheTablesFileAndOnlyChangesHaveABox() throws Exception {
        Handed handed = handed("job", List.of());
        Table corrected = handed.proposal().corrected();
        Table before = handed.proposal().before();
        assertEquals(Table.Orientation.SPEED_DOWN, before.orientation());
        List<Element> rows = rows(handed);
        assertEquals(before.speed().size(), rows.size());
        int boxes = 0;
        for (int speed = 0; speed < rows.size(); speed++) {
            List<Element> cells = cells(rows.get(speed));
            for (int load = 0; load < before.load().size(); load++) {
                int cell = before.cell(load, speed);
                Element shown = cells.get(load);
                boolean changes = Math.abs(corrected.at(cell) - before.at(cell)) > 1e-9;
                boolean box = shown.getElementsByTagName("div").getLength() == 2;
                assertEquals(changes, box, () -> "cell " + cell);
                assertEquals(corrected.at(cell), typed(shown).doubleValue(), 5e-5);
                boxes += box ? 1 : 0;
            }
        }
        assertTrue(boxes > 0 && boxes < before.cells(), boxes + " boxes");
    }

    @Test
    void sumsAreThoseOfTheFiguresAsPrinted() throws Exception {
        Handed handed = handed("job", List.of());
        int across = handed.proposal().before().load().size();
        BigDecimal running = BigDecimal.ZERO;
        for (Element row : rows(handed)) {
            List<Element> cells = cells(row);
            BigDecimal typed = BigDecimal.ZERO;
            BigDecimal whole = BigDecimal.ZERO;
            for (Element cell : cells.subList(0, across)) {
                whole = whole.add(typed(cell));
                if (cell.getElementsByTagName("div").getLength() == 2) {
                    typed = typed.add(typed(cell));
                }
            }
            running = running.add(typed);
            String said = cells.get(across).getTextContent();
            assertEquals(0, typed.compareTo(said.equals("–") ? BigDecimal.ZERO : new BigDecimal(said)));
            assertEquals(
                    0, running.compareTo(new BigDecimal(cells.get(across + 1).getTextContent())));
            assertEquals(0, whole.compareTo(new BigDecimal(cells.get(across + 2).getTextContent())));
        }
    }

    @Test
    void aSlipInOneCellShowsInItsRowAndItsColumn() throws Exception {
        Handed handed = handed("job", List.of());
        Document page = page(handed);
        NodeList foot = ((Element) page.getElementsByTagName("tfoot").item(0)).getElementsByTagName("tr");
        List<Element> wholes = cells((Element) foot.item(1));
        List<Element> rows = rows(handed);
        int across = handed.proposal().before().load().size();
        for (int a = 0; a < across; a++) {
            BigDecimal sum = BigDecimal.ZERO;
            for (Element row : rows) {
                sum = sum.add(typed(cells(row).get(a)));
            }
            assertEquals(0, sum.compareTo(new BigDecimal(wholes.get(a).getTextContent())));
        }
    }

    @Test
    void theHardwaresOrientationTurnsTheSheet() throws Exception {
        HardwareProfile turnedProfile = profile(HardwareProfile.Holds.VALUE, Optional.empty(), true);
        Handed turned = on(turnedProfile, 0.1, List.of());
        Axis load = turned.proposal().before().load();
        assertEquals(load.size(), rows(turned).size());
        String text = rows(turned).get(0).getTextContent();
        assertTrue(text.contains(",") && !text.contains("."), text);
        assertFalse(text(turned).contains("the cells of your hardware"));
    }

    private static final Axis OWN_SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 1000, 2750, 4500, 6250, 8000);

    @Test
    void hardwareWithBreakpointsOfItsOwnIsTypedInItsOwnCells() throws Exception {
        for (HardwareProfile.Holds holds : HardwareProfile.Holds.values()) {
            Handed handed = on(
                    profile(holds, Optional.of(OWN_SPEED), false),
                    holds == HardwareProfile.Holds.MULTIPLIER ? 0.01 : 1,
                    List.of());
            Table meant = handed.hardware().orElseThrow().table();
            List<Element> rows = rows(handed);
            assertEquals(meant.load().size(), rows.size());
            for (int load = 0; load < rows.size(); load++) {
                List<Element> cells = cells(rows.get(load));
                assertEquals(OWN_SPEED.size() + 3, cells.size(), "cells and three sums");
                for (int speed = 0; speed < OWN_SPEED.size(); speed++) {
                    assertEquals(
                            meant.at(meant.cell(load, speed)),
                            typed(cells.get(speed)).doubleValue(),
                            1e-9,
                            holds + "");
                }
            }
            assertTrue(text(handed).contains("the cells of your hardware"), holds + "");
            assertTrue(text(handed).contains("compare it with hardware.csv"), holds + "");
            String report = Report.write(handed);
            assertTrue(report.contains("Type hardware.csv into the hardware"), holds + "");
            assertTrue(report.contains("added error"), holds + "");
        }
    }

    @Test
    void aChangeOfNothingIsNotTyped() throws Exception {
        Handed handed = on(profile(HardwareProfile.Holds.PERCENT_CHANGE, Optional.of(OWN_SPEED), false), 1, List.of());
        Table meant = handed.hardware().orElseThrow().table();
        List<Element> rows = rows(handed);
        for (int load = 0; load < meant.load().size(); load++) {
            for (int speed = 0; speed < OWN_SPEED.size(); speed++) {
                Element cell = cells(rows.get(load)).get(speed);
                boolean box = cell.getElementsByTagName("div").getLength() == 2;
                assertEquals(meant.at(meant.cell(load, speed)) != 0, box);
            }
        }
    }

    @Test
    void aStopFramesTheCellsOfTheHardwareThatFeedWhatItConcerns() {
        Caution stop = MadeUpHandover.stop("Lean under load");
        Handed handed =
                on(profile(HardwareProfile.Holds.PERCENT_CHANGE, Optional.of(OWN_SPEED), false), 1, List.of(stop));
        Table fuel = handed.proposal().before();
        ToType sheet = ToType.of(handed.proposal(), handed.hardware(), handed.cautions());
        assertFalse(sheet.stopped().isEmpty());
        for (int cell : stop.cells()) {
            int[] cells = new int[4];
            double[] weights = new double[4];
            Bilinear.locate(OWN_SPEED, sheet.after().load(), fuel.speedAt(cell), fuel.loadAt(cell), cells, weights);
            for (int k = 0; k < 4; k++) {
                assertTrue(weights[k] == 0 || sheet.stopped().contains(cells[k]));
            }
        }
        assertTrue(text(handed).contains("stopped\""));
    }

    @Test
    void cellsThatTheRangeHoldsBackAreMarkedInWords() {
        assertFalse(text(handed("job", List.of())).contains("class=\"bound\""));
        HardwareProfile narrow = new HardwareProfile(
                "",
                HardwareProfile.Holds.PERCENT_CHANGE,
                -1,
                1,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                false);
        Handed handed = on(narrow, 0.5, List.of());
        Map<Integer, HardwareTable.Bound> bounded =
                handed.hardware().orElseThrow().bounded();
        assertTrue(bounded.containsValue(HardwareTable.Bound.LIFTED));
        String html = text(handed);
        assertEquals(bounded.size(), html.split("<div class=\"bound\">", -1).length - 1);
        assertTrue(html.contains("Cells marked “cut” want more than the hardware takes"));
    }

    @Test
    void aFigureThatRestsOnWhatNobodyRodeIsMarkedAlsoInTheHardwaresOwnCells() throws Exception {
        Handed plain = handed("job", List.of());
        ToType own = ToType.of(plain.proposal(), Optional.empty(), List.of());
        for (int cell = 0; cell < own.after().cells(); cell++) {
            assertEquals(
                    plain.proposal().cell(cell).standing() == Standing.INFERRED,
                    own.inferred().contains(cell));
        }
        assertTrue(text(plain).contains("fewer than 3 independent readings where it comes from"));
        Handed handed = on(profile(HardwareProfile.Holds.PERCENT_CHANGE, Optional.of(OWN_SPEED), false), 1, List.of());
        Table fuel = handed.proposal().before();
        ToType sheet = ToType.of(handed.proposal(), handed.hardware(), List.of());
        assertFalse(sheet.inferred().isEmpty());
        assertTrue(sheet.inferred().size() < sheet.after().cells());
        for (int cell = 0; cell < sheet.after().cells(); cell++) {
            int[] cells = new int[4];
            double[] weights = new double[4];
            Bilinear.locate(
                    fuel.speed(),
                    fuel.load(),
                    sheet.after().speedAt(cell),
                    sheet.after().loadAt(cell),
                    cells,
                    weights);
            boolean rests = false;
            for (int k = 0; k < 4; k++) {
                rests |= weights[k] > 1e-6 && handed.estimate().independentReadings(cells[k]) < Standing.THIN_READINGS;
            }
            assertEquals(rests, sheet.inferred().contains(cell), "cell " + cell);
        }
        List<Element> rows = rows(handed);
        for (int load = 0; load < rows.size(); load++) {
            for (int speed = 0; speed < OWN_SPEED.size(); speed++) {
                assertEquals(
                        sheet.inferred().contains(sheet.after().cell(load, speed)),
                        isInferred(cells(rows.get(load)).get(speed)));
            }
        }
    }

    private static HardwareProfile profile(HardwareProfile.Holds holds, Optional<Axis> speed, boolean comma) {
        return new HardwareProfile(
                "",
                holds,
                Double.NEGATIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                speed,
                Optional.empty(),
                Optional.of(Table.Orientation.SPEED_ACROSS),
                comma);
    }

    /** Handed over to that hardware. */
    private static Handed on(HardwareProfile profile, double step, List<Caution> cautions) {
        Handed made = handed("job", cautions);
        HighLoad rule = HighLoad.of(made.job().machine());
        Job job = made.job()
                .withHardware(profile)
                .withProposal(made.job().proposal().withStep(step));
        return new Handed(
                job,
                made.screened(),
                made.estimate(),
                made.proposal(),
                made.validation(),
                cautions,
                List.of(),
                HardwareTable.of(job, made.proposal(), made.screened(), rule));
    }

    @Test
    void stopsStandFirstAndOnEveryPrintedPartAndTheUsualCautionsAreThere() {
        String html = text(handed("job", List.of(MadeUpHandover.stop("Lean under load"))));
        assertTrue(html.indexOf("Don&#39;t load the engine there") < html.indexOf("Type row by row"));
        assertEquals(2, html.split("<tr class=\"stopline\">", -1).length - 1, "in the head of each of the two tables");
        assertTrue(html.contains("thead { display: table-header-group; }"));
        for (String sentence : UsualCautions.sentences()) {
            assertTrue(html.contains(sentence.replace("'", "&#39;")), sentence);
        }
    }

    @Test
    void textOfTheJobIsEscapedAndThePageNeedsNoNetwork() throws Exception {
        Caution stop = MadeUpHandover.stop(NASTY);
        Handed handed = handed(NASTY, List.of(stop));
        String html = text(handed);
        assertFalse(html.contains("<script"));
        assertTrue(html.contains("&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;quotes&quot; ${name}"));
        for (String outside : List.of("http:", "https:", "src=", "@import", "<link", "url(")) {
            assertFalse(html.contains(outside), outside);
        }
        assertFalse(page(handed).getDocumentElement().getTextContent().isBlank());
    }

    @Test
    void isKeptForLookingAt() throws Exception {
        Path file = Path.of("target", "looked-at", "entry-sheet.html");
        Files.createDirectories(file.getParent());
        Files.writeString(file, text(handed("V-twin, 38 to 44 mm", List.of(MadeUpHandover.stop("Lean under load")))));
        assertTrue(Files.size(file) > 10_000);
    }

    /** Rounded to whole tenths, as typed; every fourth cell is held. */
    private static Handed handed(String name, List<Caution> cautions) {
        Handed made = MadeUpHandover.with(name, cautions);
        Table table = made.proposal().before();
        Map<Integer, Decision> held = new TreeMap<>();
        for (int c = 0; c < table.cells(); c += 4) {
            held.put(c, new Decision(Decision.Kind.HELD, table.at(c)));
        }
        ProposalSettings settings = ProposalSettings.defaults().withStep(0.1).withDecisions(held);
        return new Handed(
                made.job(),
                made.screened(),
                made.estimate(),
                MadeUpEstimates.proposal(made.estimate(), settings),
                made.validation(),
                made.cautions());
    }

    private static BigDecimal typed(Element cell) {
        NodeList parts = cell.getElementsByTagName("div");
        String text = parts.getLength() == 2 ? parts.item(1).getTextContent() : cell.getTextContent();
        return new BigDecimal(text.strip().replace('−', '-'));
    }

    private static boolean isInferred(Element cell) {
        NodeList spans = cell.getElementsByTagName("span");
        return IntStream.range(0, spans.getLength())
                .anyMatch(i -> ((Element) spans.item(i)).getAttribute("class").equals("inferred"));
    }

    @Test
    void aChangeHasItsSignAndAnInferredFigureNothingThatReadsAsOne() throws Exception {
        Handed handed = on(profile(HardwareProfile.Holds.PERCENT_CHANGE, Optional.of(OWN_SPEED), false), 1, List.of());
        int plus = 0;
        int inferred = 0;
        for (Element row : rows(handed)) {
            for (Element cell : cells(row).subList(0, OWN_SPEED.size())) {
                NodeList parts = cell.getElementsByTagName("div");
                String now = (parts.getLength() == 2 ? parts.item(1).getTextContent() : cell.getTextContent()).strip();
                assertTrue(now.matches("[+−][0-9.]+|0(\\.0+)?"), now);
                plus += now.startsWith("+") ? 1 : 0;
                inferred += isInferred(cell) ? 1 : 0;
            }
        }
        assertTrue(plus > 0 && inferred > 0, plus + " more, " + inferred + " inferred");
        assertTrue(text(handed).contains("Dots below"));
        assertFalse(text(handed("job", List.of())).contains("More is +"), "the fuel itself has no sign");
    }

    private static List<Element> rows(Handed handed) throws Exception {
        Element body = (Element) page(handed).getElementsByTagName("tbody").item(0);
        return elements(body.getElementsByTagName("tr"));
    }

    private static List<Element> cells(Element row) {
        return elements(row.getElementsByTagName("td"));
    }

    private static List<Element> elements(NodeList nodes) {
        List<Element> all = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            all.add((Element) nodes.item(i));
        }
        return all;
    }

    private static Document page(Handed handed) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(text(handed))));
    }

    private static String text(Handed handed) {
        return EntrySheet.write(handed);
    }
}
