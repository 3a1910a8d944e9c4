package fuelwright.handover;

import fuelwright.estimate.Estimate;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.table.TableWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntToDoubleFunction;

/**
 * The files of a handover. The same job gives the same bytes, but for the day on the report: no other clock, no machine name. While a Stop caution stands, every table carries it
 * in {@code # caution:} lines above its grid.
 */
public final class Exports {

    public static final String CORRECTED = "corrected.csv";
    /** Only where the hardware doesn't take the corrected table as it is. */
    public static final String HARDWARE = "hardware.csv";

    public static final String CHANGE = "change.csv";
    public static final String SHORTFALL = "shortfall.csv";
    public static final String UNCERTAINTY = "uncertainty.csv";
    public static final String READINGS = "readings.csv";
    public static final String CAUTIONS = "cautions.csv";
    public static final String REPORT = "report.html";
    public static final String ENTRY_SHEET = "entry-sheet.html";

    public static final String ENTRY_SHEET_PDF = "entry-sheet.pdf";
    public static final String REPORT_PDF = "report.pdf";

    /** The names of the files that are always written. */
    public static final List<String> NAMES =
            List.of(CAUTIONS, REPORT, ENTRY_SHEET, READINGS, UNCERTAINTY, SHORTFALL, CHANGE, HARDWARE, CORRECTED);

    private static final int DECIMALS = 4;
    private static final double LEAST_READINGS = 1e-4;

    private Exports() {}

    /** File contents by name, the corrected table last so that it never stands in a folder without its cautions. */
    public static Map<String, byte[]> files(Handed handed) {
        Estimate estimate = handed.estimate();
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put(CAUTIONS, utf8(CautionSheet.write(handed)));
        files.put(REPORT, utf8(Report.write(handed)));
        files.put(ENTRY_SHEET, utf8(EntrySheet.write(handed)));
        files.put(
                READINGS, table(handed, of(handed, Quantity.READINGS, c -> readings(estimate.independentReadings(c)))));
        files.put(UNCERTAINTY, table(handed, of(handed, Quantity.UNCERTAINTY, estimate::uncertaintyPercent)));
        files.put(SHORTFALL, table(handed, of(handed, Quantity.SHORTFALL, estimate::shortfallPercent)));
        files.put(CHANGE, table(handed, change(handed)));
        handed.hardware()
                .ifPresent(h -> files.put(
                        HARDWARE,
                        utf8(TableWriter.write(
                                StopNotes.on(
                                        h.table()
                                                .ofCylinder(handed.proposal()
                                                        .before()
                                                        .cylinder()),
                                        handed.cautions()),
                                handed.job().decimalComma()))));
        files.put(CORRECTED, table(handed, handed.proposal().corrected()));
        return files;
    }

    /** The entry sheet as PDF; takes its time. */
    public static byte[] entrySheetPdf(Handed handed) {
        return Pdf.of(EntrySheet.forPaper(handed));
    }

    /** The report as PDF; takes its time. */
    public static byte[] reportPdf(Handed handed) {
        return Pdf.of(Report.forPaper(handed));
    }

    private static Table of(Handed handed, Quantity quantity, IntToDoubleFunction figure) {
        Table like = handed.proposal().before();
        double[] cells = new double[like.cells()];
        for (int c = 0; c < cells.length; c++) {
            cells[c] = Figures.rounded(figure.applyAsDouble(c), DECIMALS);
        }
        return like.with(quantity, cells).ofCylinder(like.cylinder());
    }

    /** Of the fuel; where dead time in the pulses makes the figures change by less, that is said. */
    private static Table change(Handed handed) {
        Table change = Unknown.noted(
                of(handed, Quantity.CHANGE, c -> handed.proposal().cell(c).changePercent()),
                c -> CellLook.unknown(handed.proposal().cell(c)));
        double deadMs = handed.proposal().settings().deadTimeMs();
        if (handed.proposal().before().quantity() != Quantity.INJECTOR_PULSE || !(deadMs > 0)) {
            return change;
        }
        List<Table.Note> notes = new ArrayList<>(change.notes());
        notes.add(new Table.Note(
                "of",
                "the fuel; the figures change by less, their dead time of " + Figures.trimmed(deadMs, 3)
                        + " ms stays"));
        return change.withNotes(notes);
    }

    /** 0 means 'without evidence', so the least evidence must not round to it. */
    private static double readings(double independent) {
        return independent > 0 ? Math.max(independent, LEAST_READINGS) : 0;
    }

    private static byte[] table(Handed handed, Table table) {
        return utf8(TableWriter.write(StopNotes.on(table, handed.cautions())));
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
