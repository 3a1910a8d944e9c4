package fuelwright.ui.session;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.ProposalSettings;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.ride.RideOptions;
import fuelwright.ui.FixtureServices;
import fuelwright.work.Cancellation;
import fuelwright.work.JobFiles;
import fuelwright.work.OpenJob;
import fuelwright.work.Progress;
import fuelwright.work.SampleJob;
import fuelwright.work.SaveJob;
import fuelwright.work.StateFolder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JobDeskTest {

    @TempDir
    Path folder;

    private Session session;

    /** As after a start of the program, with what earlier runs left in the state folder. */
    private Session start() {
        return start(new SameThreadRunner());
    }

    private Session start(Runner runner) {
        StateFolder state = StateFolder.at(folder.resolve("state"));
        return new Session(
                new FixtureServices() {
                    @Override
                    public Loaded<Job> sample() {
                        return SampleJob.load();
                    }

                    @Override
                    public StateFolder state() {
                        return state;
                    }
                },
                runner);
    }

    @BeforeEach
    void open() {
        session = start();
        session.openSample();
    }

    @Test
    void anotherJobThatUndoBringsBackIsNotSavedIntoThisOnesFile() throws IOException {
        session.startNew();
        session.edit(job -> session.job().withName("twin"));
        session.edit(job -> SampleJob.load().value().orElseThrow().withName("twin"));
        Path file = folder.resolve("twin.fwjob");
        session.desk().saveAs(file, done -> {});
        byte[] twin = Files.readAllBytes(file);
        while (session.canUndoProperty().get()) {
            session.undo();
        }
        assertEquals("Sample: V-twin with bigger throttle bodies", session.job().name());
        assertFalse(session.desk().save(), "this job has no file");
        assertArrayEquals(twin, Files.readAllBytes(file));
    }

    @Test
    void aJobThatUndoBringsBackHasItsFileAgain() {
        session.edit(job -> job.withName("mine"));
        Path file = folder.resolve("mine.fwjob");
        session.desk().saveAs(file, done -> {});
        session.startNew();
        session.edit(job -> job.withName("other"));
        assertTrue(session.desk().fileProperty().get().isEmpty());
        session.undo();
        session.undo();
        assertEquals("mine", session.job().name());
        assertEquals(Optional.of(file), session.desk().fileProperty().get());
        assertFalse(session.desk().unsavedProperty().get());
        session.redo();
        session.redo();
        assertEquals("other", session.job().name());
        assertTrue(session.desk().fileProperty().get().isEmpty());
        assertTrue(session.desk().unsavedProperty().get());
    }

    @Test
    void whatIsChangedIsUnsavedUntilItIsSaved() {
        assertFalse(session.desk().unsavedProperty().get());
        session.edit(job -> job.withName("mine"));
        assertTrue(session.desk().unsavedProperty().get());
        assertFalse(session.desk().save(), "it has no file yet");
        session.desk().saveAs(folder.resolve("mine"), done -> {});
        assertEquals("Saved mine.fwjob.", session.saidProperty().get());
        assertFalse(session.desk().unsavedProperty().get());
        Path file = folder.resolve("mine.fwjob");
        assertEquals(file, session.desk().fileProperty().get().orElseThrow());
        session.edit(job -> job.withName("mine again"));
        assertTrue(session.desk().save());
        assertEquals(List.of(file), session.desk().recent());
        session.close();

        Session later = start();
        later.open(List.of(file));
        assertEquals("mine again", later.job().name());
        assertEquals(2, later.job().rides().size());
        assertFalse(later.desk().unsavedProperty().get());
        later.close();
    }

    @Test
    void aJobsFileHasItsEndingOnce() {
        session = start();
        session.openSample();
        session.edit(job -> job.withRides(List.of()));
        session.desk().saveAs(folder.resolve("mine.fwjob.FWJOB"), done -> {});
        assertEquals(
                "mine.fwjob",
                session.desk().fileProperty().get().orElseThrow().getFileName().toString());
        assertEquals("my bike.fwjob", SaveJob.fileName("my bike.fwjob"));
    }

    @Test
    void dialoguesStartWhereTheLastFileWas() throws Exception {
        session = start();
        Path elsewhere = Files.createDirectories(folder.resolve("logs"));
        session.open(List.of(Files.writeString(elsewhere.resolve("r.csv"), "time [s],rpm\n0,1000\n")));
        assertEquals(Optional.of(elsewhere.toAbsolutePath()), fuelwright.ui.theme.AskFiles.start());
    }

    /** Its last work is still being done when it is closed. */
    private record Late(SameThreadRunner runner) implements Runner {
        @Override
        public <T> void latest(String lane, Duration delay, Work<T> work, Listener<T> listener) {
            runner.latest(lane, delay, work, listener);
        }

        @Override
        public void cancel(String lane) {
            runner.cancel(lane);
        }

        @Override
        public void close() {
            runner.release();
        }
    }

    @Test
    void aCopyThatIsJustBeingKeptDoesNotOutliveAJobThatIsGivenUp() throws IOException {
        SameThreadRunner runner = new SameThreadRunner();
        Session later = start(new Late(runner));
        later.openSample();
        runner.hold();
        later.edit(job -> job.withName("given up"));
        later.close();
        Path state = folder.resolve("state");
        try (var found = Files.list(Files.createDirectories(state))) {
            assertEquals(
                    List.of(),
                    found.filter(f -> f.getFileName().toString().startsWith("unsaved"))
                            .toList());
        }
    }

    @Test
    void aProgramEndedWithoutAskingKeepsWhatIsNotSaved() {
        session.edit(job -> job.withName("mine"));
        session.endUnasked();
        Session later = start();
        StateFolder.Left left = later.desk().left().get(0);
        assertEquals("mine", left.name());
        later.desk().drop(left);
        later.openSample();
        later.endUnasked();
        assertEquals(List.of(), start().desk().left());
    }

    /** A job whose log is remembered by its place only. */
    private Path jobWithLogOutside(Path log) throws Exception {
        Files.copy(Path.of("sample-logs/dyno-pull.csv"), log);
        Job job = new JobFiles(
                        "one",
                        Path.of("sample-logs/fuel-table.csv"),
                        Path.of("sample-logs/target-table.csv"),
                        List.of(new JobFiles.RideFiles(log, Optional.empty(), Optional.empty())),
                        SampleJob.MACHINE,
                        RideOptions.defaults(),
                        ProposalSettings.defaults())
                .load(Progress.NONE, Cancellation.NEVER)
                .value()
                .orElseThrow();
        Path kept = folder.resolve("kept.csv");
        Files.move(log, kept);
        Path file = folder.resolve("one.fwjob");
        SaveJob.save(job, file);
        Files.move(kept, log);
        return file;
    }

    @Test
    void aMovedLogIsAskedForAndKnownByItsContents() throws Exception {
        Path log = folder.resolve("pull.csv");
        Path file = jobWithLogOutside(log);
        Path moved = Files.createDirectory(folder.resolve("elsewhere")).resolve("other-name.csv");
        Files.move(log, moved);
        Session later = start();
        later.open(List.of(file));
        assertTrue(later.issues().get(0).what().contains("pull.csv"), "nobody answers: " + later.issues());
        List<OpenJob.Missing> asked = new ArrayList<>();
        later.desk().askForLogs(missing -> {
            asked.add(missing);
            return Optional.of(moved);
        });
        later.open(List.of(file));
        assertEquals(
                List.of("pull.csv"), asked.stream().map(OpenJob.Missing::name).toList());
        assertEquals("one", later.job().name());
        assertEquals(List.of(), later.issues());
        later.close();
    }

    @Test
    void anotherLogInItsPlaceIsTakenWithAWarning() throws Exception {
        Path log = folder.resolve("pull.csv");
        Path file = jobWithLogOutside(log);
        Files.delete(log);
        Session later = start();
        later.desk().askForLogs(missing -> Optional.of(Path.of("sample-logs/ride-2-corrected.csv")));
        later.open(List.of(file));
        assertEquals("one", later.job().name());
        assertTrue(
                later.issues().stream().anyMatch(i -> i.what().contains("isn't what the job was saved with")),
                () -> later.issues().toString());
        later.close();
    }

    @Test
    void aRideOpenedTogetherWithAJobThatDoesNotHoldItComesInAsOneFromTheChooser() throws Exception {
        Path file = jobWithLogOutside(folder.resolve("pull.csv"));
        Session later = start();
        later.open(List.of(file, Path.of("sample-logs/ride-2-corrected.csv")));
        assertEquals("one", later.job().name());
        List<String> rides = new ArrayList<>();
        later.job().rides().forEach(r -> rides.add(r.ride().name()));
        later.question().waitingProperty().get().forEach(r -> rides.add(r.name()));
        assertEquals(List.of("pull.csv", "ride-2-corrected.csv"), rides);
        later.close();
    }

    @Test
    void theSameJobInTwoWindowsIsTold() throws Exception {
        Path file = folder.resolve("a.fwjob");
        session.desk().saveAs(file, done -> {});
        Session second = start();
        second.open(List.of(file));
        assertTrue(
                second.issues().stream().anyMatch(i -> i.what().contains("another window")),
                () -> second.issues().toString());
        second.edit(job -> job.withName("x"));
        assertFalse(second.desk().save(), "not over the other's file");
        byte[] before = Files.readAllBytes(file);
        second.desk().saveAs(file, done -> {
            throw new AssertionError("saved over the other's file");
        });
        assertTrue(
                second.issues().stream().anyMatch(i -> i.what().contains("open in another window")),
                () -> second.issues().toString());
        assertArrayEquals(before, Files.readAllBytes(file));
        second.close();
        session.close();
        Session third = start();
        third.open(List.of(file));
        assertTrue(third.issues().isEmpty(), () -> third.issues().toString());
        third.close();
    }

    /** The copy of a run that is over, without the run having closed: as after a kill. */
    @Test
    void workThatNobodySavedIsOfferedAfterACrash() throws Exception {
        session.edit(job -> job.withName("worked on"));
        Path state = folder.resolve("state");
        Path crashed = Files.createDirectory(folder.resolve("crashed"));
        for (Path each : Files.list(state).toList()) {
            if (!each.toString().endsWith(".lock")) {
                Files.copy(each, crashed.resolve(each.getFileName()));
            }
        }
        session.close();
        assertTrue(start().desk().left().isEmpty(), "closed in order, nothing is left");
        for (Path each : Files.list(crashed).toList()) {
            Files.copy(each, state.resolve(each.getFileName()), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        }
        Session later = start();
        later.openSample();
        assertEquals(1, later.desk().left().size());
        later.desk().take(later.desk().left().get(0), () -> {});
        assertEquals("worked on", later.job().name());
        assertEquals(2, later.job().rides().size());
        assertTrue(later.desk().unsavedProperty().get());
        later.close();
        assertTrue(start().desk().left().isEmpty());
    }
}
