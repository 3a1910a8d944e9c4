package fuelwright.ui.shell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.work.SampleJob;
import fuelwright.work.StateFolder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.layout.Pane;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JobActionsTest {

    @TempDir
    Path folder;

    private final List<String> asked = new ArrayList<>();
    private JobActions.Unsaved answer = JobActions.Unsaved.STAY;
    private Session session;
    private JobActions actions;

    @BeforeEach
    void open() {
        start();
        session.openSample();
    }

    private void start() {
        StateFolder state = StateFolder.at(folder.resolve("state"));
        session = new Session(
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
                new SameThreadRunner());
        actions = new JobActions(session, new Pane(), title -> {
            asked.add(title);
            return answer;
        });
    }

    private void change() {
        session.edit(job -> job.withName("mine"));
    }

    @Test
    void theUntouchedSampleAndASavedJobGiveWayUnasked() {
        actions.startNew();
        assertEquals(Job.empty(), session.job());
        actions.openSample();
        assertFalse(session.desk().unsavedProperty().get(), "the sample is never the user's own");
        change();
        session.desk().saveAs(folder.resolve("mine"), done -> {});
        actions.startNew();
        assertEquals(Job.empty(), session.job());
        assertEquals(List.of(), asked);
    }

    @Test
    void whatIsNotSavedStaysUntilTheUserSaysSo() {
        change();
        Job before = session.job();
        actions.startNew();
        actions.openSample();
        session.open(List.of(folder.resolve("other.fwjob")));
        assertEquals(before, session.job());
        assertEquals(List.of("job.new.title", "job.other.title", "job.other.title"), asked);
        answer = JobActions.Unsaved.LEAVE;
        actions.startNew();
        assertEquals(Job.empty(), session.job());
    }

    @Test
    void savingFirstSavesAndThenGoesOn() {
        session.desk().saveAs(folder.resolve("mine"), done -> {});
        change();
        answer = JobActions.Unsaved.SAVE;
        actions.startNew();
        assertEquals(Job.empty(), session.job());
        session.open(List.of(folder.resolve("mine.fwjob")));
        assertEquals("mine", session.job().name());
    }

    @Test
    void aWindowWhoseJobIsToBeSavedFirstClosesOnceItIs() throws IOException {
        session.desk().saveAs(folder.resolve("mine"), done -> {});
        change();
        answer = JobActions.Unsaved.SAVE;
        List<String> closed = new ArrayList<>();
        assertFalse(actions.mayClose(() -> closed.add(session.job().name())));
        assertEquals(List.of("mine"), closed);
        session.close();
        start();
        session.open(List.of(folder.resolve("mine.fwjob")));
        session.open(List.of(Files.writeString(folder.resolve("new.csv"), "time [s],rpm\n0,1000\n")));
        assertEquals(1, session.desk().waiting());
        assertFalse(actions.mayClose(() -> closed.add("with a ride that waits")));
        assertEquals(List.of("mine"), closed);
    }

    @Test
    void aRideThatWaitsForItsTableIsSaidBeforeItIsLost() throws IOException {
        session.desk().saveAs(folder.resolve("mine"), done -> {});
        session.close();
        start();
        session.open(List.of(folder.resolve("mine.fwjob")));
        session.open(List.of(Files.writeString(folder.resolve("new.csv"), "time [s],rpm\n0,1000\n")));
        assertEquals(1, session.desk().waiting());
        assertFalse(session.desk().unsavedProperty().get());
        assertFalse(actions.mayClose(() -> {}));
        actions.startNew();
        session.open(List.of(folder.resolve("mine.fwjob")));
        assertEquals(1, session.desk().waiting());
        assertEquals(List.of("job.close.title", "job.new.title", "job.other.title"), asked);
        assertTrue(actions.lost().startsWith("A new ride waits until you say"), actions.lost());
        assertFalse(actions.lost().contains("not saved"), actions.lost());
        actions.save();
        String said = session.saidProperty().get();
        assertTrue(said.startsWith("Saved mine.fwjob. The new ride isn't in it"), said);
        session.question().madeWithFuelTable();
        change();
        assertEquals("What was changed in \"mine\" is not saved.", actions.lost());
        actions.save();
        assertEquals("Saved mine.fwjob.", session.saidProperty().get());
        assertTrue(actions.mayClose(() -> {}));
    }

    @Test
    void undoAsksBeforeItLeavesTheJobForAnother() {
        session.desk().saveAs(folder.resolve("first"), done -> {});
        Job first = session.job();
        actions.startNew();
        change();
        session.undo();
        assertEquals(List.of(), asked, "within the job");
        session.redo();
        session.edit(job -> job.withDisplayRatio(14.2));
        session.undo();
        session.undo();
        session.undo();
        assertEquals(first.name(), session.job().name(), "an empty job is left unasked");
        session.redo();
        assertEquals(List.of("job.back.title"), asked);
        assertEquals(first.name(), session.job().name(), "stays");
        answer = JobActions.Unsaved.LEAVE;
        session.redo();
        session.redo();
        assertEquals("mine", session.job().name());
    }

    @Test
    void workThatWasLeftAsksBeforeItTakesThePlaceOfAJob() {
        String left = session.job().name();
        session.desk().saveAs(folder.resolve("left"), done -> {});
        StateFolder.Left work = new StateFolder.Left(folder.resolve("left.fwjob"), left, Optional.empty());
        change();
        List<StateFolder.Left> taken = new ArrayList<>();
        session.desk().take(work, () -> taken.add(work));
        assertEquals("mine", session.job().name());
        assertEquals(List.of(), taken, "still offered");
        assertEquals(List.of("job.other.title"), asked);
        answer = JobActions.Unsaved.LEAVE;
        session.desk().take(work, () -> taken.add(work));
        assertEquals(left, session.job().name());
        assertEquals(List.of(work), taken);
    }

    @Test
    void theSampleIsNeverSavedOverTheJobThatItTookThePlaceOf() {
        change();
        session.desk().saveAs(folder.resolve("mine"), done -> {});
        actions.openSample();
        assertTrue(session.desk().fileProperty().get().isEmpty());
        assertFalse(session.desk().save());
    }
}
