package fuelwright.work;

import fuelwright.handover.Exports;
import fuelwright.handover.Handed;
import fuelwright.handover.OutputException;
import fuelwright.handover.OutputFolder;
import fuelwright.handover.StopNotes;
import fuelwright.handover.ToType;
import fuelwright.job.JobFile;
import fuelwright.table.TableWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** Writes what an analysis hands over. */
public final class HandOver {

    /** The job itself, among the files; to go on with. */
    public static final String JOB = "job" + JobFile.SUFFIX;

    private HandOver() {}

    /** What was never judged must not leave. */
    private static void requireSettled(Analysis analysis) {
        if (!analysis.settled()) {
            throw new IllegalStateException("a first answer isn't settled yet");
        }
    }

    /** What the exports and the report are made from, today. */
    public static Handed of(Analysis analysis) {
        requireSettled(analysis);
        return new Handed(
                        analysis.job(),
                        analysis.screened(),
                        analysis.estimate(),
                        analysis.proposal(),
                        analysis.validation(),
                        analysis.cautions(),
                        IntStream.range(0, analysis.screened().size())
                                .mapToObj(ride -> analysis.expectedMixture(ride).summary())
                                .toList(),
                        analysis.hardware(),
                        analysis.nextRide(),
                        analysis.rideToRide().map(r -> r.words(!analysis.stops().isEmpty())))
                .on(LocalDate.now());
    }

    /**
     * Writes all files of a handover, whole or not at all.
     *
     * @param replace whether files of an earlier handover there may be replaced
     * @return the names of the files written; the job is among them where every ride was read from a log
     * @throws WorkException if nothing could be written
     */
    public static List<String> write(Analysis analysis, Path folder, boolean replace) {
        return write(analysis, folder, replace, false);
    }

    /**
     * As {@link #write(Analysis, Path, boolean)}.
     *
     * @param pdf whether report and entry sheet are wanted as PDF too; where earlier ones lie in the folder they are renewed anyway, so that
     *     none there says anything else than the table
     */
    public static List<String> write(Analysis analysis, Path folder, boolean replace, boolean pdf) {
        return write(analysis, of(analysis), folder, replace, pdf);
    }

    /** The same, with what {@link #of} made of it before. */
    public static List<String> write(Analysis analysis, Handed handed, Path folder, boolean replace, boolean pdf) {
        if (handed.hardware().isEmpty() && Files.exists(folder.resolve(Exports.HARDWARE))) {
            throw new WorkException(
                    folder.resolve(Exports.HARDWARE)
                            + " is of an earlier handover and would stand beside a table that it isn't made from."
                            + " Nothing was written: remove it, or say again what the hardware takes",
                    true,
                    null);
        }
        Map<String, byte[]> files = new LinkedHashMap<>();
        if (SaveJob.canSave(handed.job())) {
            files.put(JOB, SaveJob.bytes(handed.job(), Optional.of(analysis.results()), folder.resolve(JOB)));
        }
        if (pdf || Files.exists(folder.resolve(Exports.REPORT_PDF))) {
            files.put(Exports.REPORT_PDF, Exports.reportPdf(handed));
        }
        if (pdf || Files.exists(folder.resolve(Exports.ENTRY_SHEET_PDF))) {
            files.put(Exports.ENTRY_SHEET_PDF, Exports.entrySheetPdf(handed));
        }
        files.putAll(Exports.files(handed));
        return write(files, folder, replace);
    }

    /**
     * Writes the entry sheet or the report by itself as PDF, in place of an older one: the user chose the file.
     *
     * @param name {@link Exports#ENTRY_SHEET_PDF} or {@link Exports#REPORT_PDF}
     * @throws WorkException if it can't be written
     */
    public static void writePdf(Analysis analysis, String name, Path file) {
        Handed handed = of(analysis);
        byte[] bytes = name.equals(Exports.REPORT_PDF) ? Exports.reportPdf(handed) : Exports.entrySheetPdf(handed);
        try {
            Disk.REAL.put(file, bytes);
        } catch (IOException e) {
            throw WorkException.writing(file, e);
        }
    }

    /** What is typed into the hardware. */
    public static ToType toType(Analysis analysis) {
        return ToType.of(analysis.proposal(), analysis.hardware(), analysis.cautions());
    }

    /** The table as its file would be written, as the hardware takes it, Stop cautions above the grid. */
    public static String tableText(Analysis analysis) {
        requireSettled(analysis);
        return TableWriter.write(
                StopNotes.on(toType(analysis).after(), analysis.cautions()),
                analysis.job().decimalComma());
    }

    /**
     * Its figures alone, for a grid on another screen.
     *
     * @throws IllegalStateException while a Stop caution stands: figures alone can't carry it
     */
    public static String cellsText(Analysis analysis) {
        requireSettled(analysis);
        if (!analysis.stops().isEmpty()) {
            throw new IllegalStateException("a Stop caution stands");
        }
        return TableWriter.cells(toType(analysis).after(), analysis.job().decimalComma());
    }

    /**
     * Whether {@link #write} would be refused at once, so that nothing is worked out in vain.
     *
     * @throws WorkException as {@code write} would
     */
    public static void check(Path folder, boolean replace) {
        try {
            List<String> names = new ArrayList<>(Exports.NAMES);
            names.addAll(List.of(JOB, Exports.REPORT_PDF, Exports.ENTRY_SHEET_PDF));
            OutputFolder.check(folder, names, replace);
        } catch (OutputException e) {
            throw wrapped(e);
        }
    }

    static WorkException wrapped(OutputException e) {
        return new WorkException(e.getMessage(), e.why() == OutputException.Why.EXISTS, e);
    }

    static List<String> write(Map<String, byte[]> files, Path folder, boolean replace) {
        try {
            OutputFolder.write(folder, files, replace);
        } catch (OutputException e) {
            throw wrapped(e);
        }
        return List.copyOf(files.keySet());
    }
}
