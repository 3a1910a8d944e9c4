package fuelwright.ui.session;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.Results;
import fuelwright.ride.ClockAlignment;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.table.Table;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.CheckEntry;
import fuelwright.work.FirstRide;
import fuelwright.work.HandOver;
import fuelwright.work.OpenJob;
import fuelwright.work.OpenRide;
import fuelwright.work.OpenTable;
import fuelwright.work.Progress;
import fuelwright.work.SaveJob;
import fuelwright.work.SecondLogger;
import fuelwright.work.StateFolder;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** What the window has done by the layers below it. Called off the window's thread. */
public interface Services {

    /** The job that the window opens on. */
    Loaded<Job> sample() throws IOException;

    /** The same before its rides are read: there at once. */
    Loaded<Job> sampleTables() throws IOException;

    Loaded<Analysis> analyse(Job job, Progress progress, Cancellation cancellation);

    /** What can be said before {@link #analyse}, not {@link Analysis#settled}; empty where that is as quick. */
    default Optional<Analysis> firstAnswer(Job job, Cancellation cancellation) {
        return Optional.empty();
    }

    /** @param options what the user says about the log */
    Loaded<Ride> readRide(Path file, RideOptions options, Progress progress, Cancellation cancellation)
            throws IOException;

    /** A ride of the sample job, by its name, read in another way. */
    Loaded<Ride> readSampleRide(String name, RideOptions options, Progress progress, Cancellation cancellation)
            throws IOException;

    /** What is said about a log, together with what was remembered about logs with the same headings. */
    default RideOptions remembered(Path file, RideOptions said) {
        return said;
    }

    /** Remembers what was said about logs with these headings; nothing said is forgotten. */
    default void remember(List<String> headings, RideOptions said) {}

    /**
     * Adds the log of a second logger to a ride.
     *
     * @param byHand how its clock runs; empty: found from what both logged, or refused
     */
    default Loaded<SecondLogger> readSecond(
            Ride first,
            Path file,
            RideOptions options,
            Optional<ClockAlignment> byHand,
            Progress progress,
            Cancellation cancellation)
            throws IOException {
        return OpenRide.second(first, file, options, byHand, progress, cancellation);
    }

    /** @param target whether it is a target table by what it names itself */
    Loaded<Table> readTable(Path file, boolean target) throws IOException;

    /** What the bore forecast says before anybody has ridden; refused where too little is known. */
    Loaded<FirstRide.Outcome> firstRide(Job job);

    /** @return the names of the files written */
    List<String> writeFirstRide(FirstRide.Outcome outcome, Path folder, boolean replace) throws IOException;

    /** A table as its file would be written, cautions above the grid. */
    String tableText(Analysis analysis);

    /**
     * Writes the whole output folder, or nothing.
     *
     * @param pdf whether report and entry sheet are wanted as PDF too
     * @return the names of the files written
     */
    List<String> export(Analysis analysis, Path folder, boolean replace, boolean pdf) throws IOException;

    /** The figures alone, as the hardware takes them; not while a Stop stands. */
    default String cellsText(Analysis analysis) {
        return HandOver.cellsText(analysis);
    }

    /**
     * Writes the entry sheet or the report by itself as PDF.
     *
     * @param name which, by the name that it has in the output folder
     */
    default void writePdf(Analysis analysis, String name, Path file) throws IOException {
        HandOver.writePdf(analysis, name, file);
    }

    /** What was read back from the hardware, as text, against what was handed over. */
    default Loaded<CheckEntry.Outcome> checkEntry(String text, Analysis analysis) {
        return CheckEntry.pasted(text, analysis);
    }

    /** Any table, for its breakpoints. */
    default Loaded<Table> readBreakpoints(Path file) throws IOException {
        return OpenTable.read(file);
    }

    /**
     * Saves a job as a file.
     *
     * @param results what came out of this very job, where that is known
     * @return logs that are gone or have changed since they were read
     * @throws IOException never; a {@link fuelwright.work.WorkException} says what went wrong
     */
    default List<Issue> saveJob(Job job, Optional<Results> results, Path file) throws IOException {
        return SaveJob.save(job, results, file);
    }

    /** @param locate asked for a log that isn't where it was */
    default Loaded<OpenJob.Opened> openJob(
            Path file, Function<OpenJob.Missing, Optional<Path>> locate, Progress progress, Cancellation cancellation)
            throws IOException {
        return OpenJob.withLoggers(file, locate, progress, cancellation);
    }

    /** What is kept between two runs of the program; in memory only, where a test or the user wants none. */
    default StateFolder state() {
        return StateFolder.none();
    }
}
