package fuelwright.handover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.ExpectedMixture;
import fuelwright.estimate.NextRide;
import fuelwright.job.Answer;
import fuelwright.safety.Caution;
import fuelwright.table.Axis;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.xml.sax.InputSource;

class ReportTest {

    private static final String NASTY = "<script>alert(1)</script> & \"quotes\" ${name} =1+1";

    @Test
    void report01_stops_come_before_everything_else() {
        String html = report(List.of(MadeUpHandover.check("Nobody rode"), MadeUpHandover.stop("Lean under load")));
        assertTrue(html.indexOf("Lean under load") < html.indexOf("In short"));
        assertTrue(html.indexOf("Nobody rode") > html.indexOf("In short"));
        assertTrue(html.contains("Don&#39;t load the engine there"));
    }

    @Test
    void report02_text_of_the_job_is_escaped_everywhere() {
        Handed handed = MadeUpHandover.with(NASTY, List.of(MadeUpHandover.stop(NASTY)));
        String html = text(handed);
        assertFalse(html.contains("<script"));
        assertTrue(html.contains("&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;quotes&quot; ${name} =1+1"));
    }

    @Test
    void report03_needs_no_network() {
        String html = report(List.of(MadeUpHandover.stop("Lean under load")))
                .replace("xmlns=\"http://www.w3.org/2000/svg\"", "");
        for (String outside : List.of("http:", "https:", "src=", "@import", "<link", "<script", "url(h")) {
            assertFalse(html.contains(outside), outside);
        }
    }

    @Test
    void report04_every_picture_is_well_formed_xml_with_a_label() throws Exception {
        String html = report(List.of(MadeUpHandover.stop("Lean under load")));
        int pictures = 0;
        for (int from = html.indexOf("<svg"); from >= 0; from = html.indexOf("<svg", from + 1)) {
            String svg = html.substring(from, html.indexOf("</svg>", from) + 6);
            var root = DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new InputSource(new StringReader(svg)))
                    .getDocumentElement();
            assertFalse(root.getAttribute("aria-label").isBlank());
            pictures++;
        }
        assertEquals(11, pictures, "maps and their scales");
    }

    @Test
    void report05_the_same_handover_gives_the_same_bytes() {
        assertEquals(report(List.of()), report(List.of()));
    }

    @Test
    void report06_without_a_stop_it_says_so_without_calling_the_table_safe() {
        String html = report(List.of());
        assertTrue(html.contains("No Stop caution stands against this table. The other cautions below still hold."));
    }

    @Test
    void report07_a_cell_that_nobody_rode_is_hatched_and_has_no_count() {
        Handed handed = MadeUpHandover.with("job", List.of());
        String html = text(handed);
        long unridden = handed.proposal().cells().stream()
                .filter(c -> handed.estimate().independentReadings(c.cell()) == 0)
                .count();
        String readings = html.substring(html.indexOf("Independent readings in each cell"));
        readings = readings.substring(0, readings.indexOf("</svg>"));
        assertEquals(unridden, readings.split("fill=\"url\\(#readings-hatch\\)", -1).length - 1);
        assertEquals(unridden, readings.split(">–</text>", -1).length - 1);
    }

    @Test
    void report08_is_kept_for_looking_at() throws Exception {
        Path file = Path.of("target", "looked-at", "report.html");
        Files.createDirectories(file.getParent());
        Files.writeString(
                file,
                report(List.of(MadeUpHandover.stop("Lean under load"), MadeUpHandover.check("Unridden at high load"))));
        assertTrue(Files.size(file) > 10_000);
    }

    @Test
    void report09_an_answer_stands_with_its_caution_which_stays() {
        Caution stop = MadeUpHandover.stop("Lean under load");
        Handed made = MadeUpHandover.with("job", List.of(stop));
        Handed answered = new Handed(
                made.job().withAnswers(List.of(Answer.to(stop, Answer.Kind.CAUSE_FOUND, "<b>fuel filter</b>"))),
                made.screened(),
                made.estimate(),
                made.proposal(),
                made.validation(),
                made.cautions());
        String html = text(answered);
        assertTrue(html.contains("<b>Answered:</b> cause found: &lt;b&gt;fuel filter&lt;/b&gt;"), html);
        assertTrue(html.indexOf("Lean under load") < html.indexOf("In short"));
        assertTrue(html.contains("fed lambda 0.98"));
    }

    @Test
    void report10_the_expected_mixture_is_said_for_each_ride() {
        Handed made = MadeUpHandover.with("job", List.of());
        Handed with = new Handed(
                made.job(),
                made.screened(),
                made.estimate(),
                made.proposal(),
                made.validation(),
                made.cautions(),
                List.of(new ExpectedMixture.Summary(300, 11.24, 2.13, 12, 3.42, 7)),
                Optional.empty(),
                new NextRide(
                        List.of(new NextRide.Region(
                                List.of(1),
                                Axis.Kind.THROTTLE,
                                2000,
                                3000,
                                4,
                                4,
                                20,
                                false,
                                false,
                                Optional.empty(),
                                3.2,
                                1.1)),
                        3,
                        2,
                        List.of()),
                Optional.of("mixture error 6.0 %"));
        String html = text(with);
        assertTrue(html.contains("<td class=\"n\">11.2 %</td><td class=\"n\">2.1 %</td><td>3.4 % lean of target</td>"));
        assertTrue(html.contains("<p>Mixture error 6.0 %.</p>"), html);
        assertTrue(
                html.contains("<li>At least 20 s at 2000 to 3000 rpm with throttle 4 %: uncertainty now ±3.2 %.</li>"),
                html);
        assertFalse(text(made).contains("The same rides with the proposed table"));
        assertFalse(text(made).contains("What to ride next"));
    }

    private static String report(List<Caution> cautions) {
        return text(MadeUpHandover.with("V-twin, 38 to 44 mm", cautions));
    }

    private static String text(Handed handed) {
        return new String(Exports.files(handed).get(Exports.REPORT), StandardCharsets.UTF_8);
    }

    @Test
    void report11_what_nobody_knows_is_a_question_mark_as_in_the_window() {
        Handed handed = MadeUpHandover.with("job", List.of());
        int unknown = IntStream.range(0, handed.proposal().cells().size())
                .filter(c -> CellLook.unknown(handed.proposal().cell(c)))
                .findFirst()
                .orElse(-1);
        assertTrue(unknown >= 0, "the made-up handover has a cell of which nothing is known");
        String html = text(handed);
        String map = html.substring(html.indexOf("Proposed change of fuel in each cell"));
        String cell = map.split("<g><title>", -1)[1 + unknown];
        assertTrue(cell.contains("unknown, left as it is"), cell);
        assertTrue(cell.contains(">?</text>"), cell);
        assertTrue(cell.contains("hatch"), cell);
        assertTrue(html.contains("</b>too little ridden to tell, left as it is"));
    }

    @Test
    void report12_names_job_machine_and_day_and_every_map_has_a_scale() {
        Handed handed = MadeUpHandover.with("V-twin", List.of());
        assertFalse(text(handed).contains("2026"));
        String html = text(handed.on(LocalDate.of(2026, 3, 9)));
        assertTrue(
                html.contains("V-twin · 720\u202fcm³, bodies 38 → 44\u202fmm · 9 March 2026"),
                html.substring(5000, 9000));
        int maps = html.split("<svg class=\"map\"", -1).length - 1;
        int scales = html.split("<svg class=\"scale\"", -1).length - 1;
        assertEquals(maps - 1, scales, "before and after share one");
    }

    @Test
    void report13_the_frame_of_a_stop_lies_between_the_cells() {
        String html = report(List.of(MadeUpHandover.stop("Lean under load")));
        assertTrue(html.contains("<rect class=\"frame\""));
        for (String frame : html.split("<rect class=\"frame\"", -1)) {
            if (frame.startsWith(" x=")) {
                assertTrue(frame.contains("width=\"46\""), frame.substring(0, 60));
            }
        }
    }
}
