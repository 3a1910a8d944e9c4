package fuelwright.handover;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.HighLoad;
import fuelwright.job.HardwareProfile;
import fuelwright.job.Job;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PdfTest {

    private static final String NASTY = "<script>alert(1)</script> & \"quotes\" ${name}";

    @Test
    void theSamePageGivesTheSameBytes() {
        Handed handed = MadeUpHandover.with("job", List.of(MadeUpHandover.stop("Lean under load")));
        assertArrayEquals(Exports.entrySheetPdf(handed), Exports.entrySheetPdf(handed));
        assertArrayEquals(Exports.reportPdf(handed), Exports.reportPdf(handed));
    }

    @Test
    void theStopStandsOnEveryPageOfTheEntrySheet() throws Exception {
        byte[] pdf =
                Exports.entrySheetPdf(MadeUpHandover.with("V-twin", List.of(MadeUpHandover.stop("Lean under load"))));
        keep("entry-sheet.pdf", pdf);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertTrue(document.getNumberOfPages() >= 1);
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                String text = text(document, page);
                assertTrue(text.contains("Lean under load"), text);
            }
        }
    }

    @Test
    void aSheetOfUsualSizeStandsOnOnePageWithItsSumsAndSaysTheStopOnce() throws Exception {
        Handed handed = MadeUpHandover.with("V-twin", List.of(MadeUpHandover.stop("Lean under load")));
        Table table = handed.proposal().before();
        assertTrue(table.speed().size() <= 16);
        try (PDDocument document = Loader.loadPDF(Exports.entrySheetPdf(handed))) {
            String first = text(document, 1);
            assertTrue(first.contains("whole"), first);
            String lastRow = Figures.trimmed(table.speed().at(table.speed().size() - 1), 2);
            assertTrue(first.contains(" " + lastRow + " "), first);
            assertTrue(first.lastIndexOf("typed") > first.lastIndexOf(" " + lastRow + " "), first);
            assertFalse(first.contains("Read it on the first page"), first);
        }
    }

    @Test
    void noRowStandsAloneWithTheSumsOnALastPage() throws Exception {
        Handed made = MadeUpHandover.with("V-twin", List.of(MadeUpHandover.stop("Lean under load")));
        for (int rows = 17; rows <= 23; rows++) {
            double[] speeds =
                    IntStream.range(0, rows).mapToDouble(i -> 1001 + 307 * i).toArray();
            HardwareProfile profile = new HardwareProfile(
                    "",
                    HardwareProfile.Holds.PERCENT_CHANGE,
                    Double.NEGATIVE_INFINITY,
                    Double.POSITIVE_INFINITY,
                    Optional.of(new Axis(Axis.Kind.ENGINE_SPEED, speeds)),
                    Optional.empty(),
                    Optional.of(Table.Orientation.SPEED_DOWN),
                    false);
            Handed handed = with(made, profile, 1);
            try (PDDocument document = Loader.loadPDF(Exports.entrySheetPdf(handed))) {
                int sums = 1;
                while (!text(document, sums).contains(" whole ") || !hasSums(text(document, sums))) {
                    sums++;
                }
                String page = " " + text(document, sums) + " ";
                long together = Arrays.stream(speeds)
                        .filter(s -> page.contains(" " + Figures.trimmed(s, 0) + " "))
                        .count();
                assertTrue(together >= 3, rows + " rows: " + together + " with the sums: " + page);
            }
        }
    }

    /** A made-up handover to other hardware. */
    private static Handed with(Handed made, HardwareProfile profile, double step) {
        Job job = made.job()
                .withHardware(profile)
                .withProposal(made.job().proposal().withStep(step));
        return new Handed(
                job,
                made.screened(),
                made.estimate(),
                made.proposal(),
                made.validation(),
                made.cautions(),
                List.of(),
                HardwareTable.of(job, made.proposal(), made.screened(), HighLoad.of(job.machine())));
    }

    /** With few rows too, where what stands above the table takes up more than they do. */
    @Test
    void noRowStandsAloneWhateverStandsAboveTheTable() throws Exception {
        for (int stops = 0; stops <= 3; stops++) {
            Handed made = MadeUpHandover.with(
                    "V-twin",
                    IntStream.range(0, stops)
                            .mapToObj(i -> MadeUpHandover.stop("Lean under load, the " + (i + 1) + ". of several"))
                            .toList());
            for (int rows = 9; rows <= 16; rows++) {
                double[] speeds = IntStream.range(0, rows)
                        .mapToDouble(i -> 1001 + 307 * i)
                        .toArray();
                HardwareProfile profile = new HardwareProfile(
                        "",
                        HardwareProfile.Holds.PERCENT_CHANGE,
                        -4,
                        12,
                        Optional.of(new Axis(Axis.Kind.ENGINE_SPEED, speeds)),
                        Optional.of(new Axis(Axis.Kind.THROTTLE, 0, 3, 5, 8, 11, 16, 25, 38, 75, 100)),
                        Optional.of(Table.Orientation.SPEED_DOWN),
                        true);
                Handed handed = with(made, profile, 0.5);
                byte[] pdf = Exports.entrySheetPdf(handed);
                if (rows == 13) {
                    keep("entry-sheet-change-" + stops + ".pdf", pdf);
                }
                try (PDDocument document = Loader.loadPDF(pdf)) {
                    for (int page = 1; page <= document.getNumberOfPages(); page++) {
                        String text = " " + text(document, page) + " ";
                        long together = Arrays.stream(speeds)
                                .filter(s -> text.contains(" " + Figures.trimmed(s, 0) + " "))
                                .count();
                        assertTrue(
                                together != 1 && together != 2,
                                stops + " Stops, " + rows + " rows: " + together + " on page " + page + ": " + text);
                    }
                }
            }
        }
    }

    /** The row of sums begins with the word that also heads its column. */
    private static boolean hasSums(String page) {
        return page.lastIndexOf("typed ") > page.indexOf("running ");
    }

    @Test
    void figuresArrowsAndGreekLettersAreText() throws Exception {
        Handed handed = MadeUpHandover.with("λ 0.88 ± 0.02 → 1", List.of());
        try (PDDocument document = Loader.loadPDF(Exports.entrySheetPdf(handed))) {
            String text = text(document, 1);
            assertTrue(text.contains("λ 0.88 ± 0.02 → 1"), text);
            assertFalse(text.contains("#"), text);
        }
        byte[] report = Exports.reportPdf(handed);
        keep("report.pdf", report);
        try (PDDocument document = Loader.loadPDF(report)) {
            String text = text(document, 1);
            assertTrue(text.contains("λ 0.88 ± 0.02 → 1"), text);
        }
    }

    @Test
    void textOfTheJobStaysText() throws Exception {
        Handed handed = MadeUpHandover.with(NASTY, List.of(MadeUpHandover.stop(NASTY)));
        try (PDDocument document = Loader.loadPDF(Exports.reportPdf(handed))) {
            assertTrue(text(document, 1).contains("<script>alert(1)</script>"));
        }
    }

    @Test
    void aPageThatAsksForAFileOrTheNetworkGetsNothing(@TempDir Path folder) throws Exception {
        Path secret = folder.resolve("secret.svg");
        Files.writeString(
                secret,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"90\" height=\"20\"><text y=\"15\">hidden</text></svg>");
        String page = "<html><body style=\"font-family: Sheet\">seen<img src=\"" + secret.toUri()
                + "\"/><img src=\"http://localhost:9/x.png\"/></body></html>";
        try (PDDocument document = Loader.loadPDF(Pdf.of(page))) {
            assertEquals("seen", text(document, 1).strip());
        }
    }

    private static void keep(String name, byte[] pdf) throws IOException {
        Path file = Path.of("target", "looked-at", name);
        Files.createDirectories(file.getParent());
        Files.write(file, pdf);
        assertEquals("%PDF-", new String(pdf, 0, 5, StandardCharsets.US_ASCII));
    }

    private static String text(PDDocument document, int page) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        return stripper.getText(document).replaceAll("\\s+", " ");
    }
}
