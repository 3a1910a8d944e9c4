package fuelwright.ui.records;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.work.JobRecord;
import fuelwright.work.SampleJob;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordsModelTest {

    @TempDir
    Path folder;

    private final SameThreadRunner runner = new SameThreadRunner();
    private Session session;
    private RecordsModel model;

    /** The open job is saved beside another one and a damaged one. */
    @BeforeEach
    void threeJobs() throws Exception {
        session = new Session(
                new FixtureServices() {
                    @Override
                    public Loaded<Job> sample() {
                        return SampleJob.load();
                    }
                },
                runner);
        session.openSample();
        session.desk().saveAs(folder.resolve("other.fwjob"), done -> {});
        session.edit(job -> job.withName("mine"));
        session.desk().saveAs(folder.resolve("mine.fwjob"), done -> {});
        Files.writeString(folder.resolve("bad.fwjob"), "no zip");
        model = new RecordsModel(session);
    }

    private List<String> places() {
        return model.foundProperty().get().stream().map(JobRecord::place).toList();
    }

    @Test
    void theFolderOfTheOpenJobIsReadAndSavedJobsHaveTheirResults() {
        model.begin();
        assertEquals(List.of("bad.fwjob", "mine.fwjob", "other.fwjob"), places());
        assertEquals(folder, model.stateProperty().get().folder().orElseThrow());
        assertEquals(0, model.missing());
        assertTrue(model.foundProperty().get().get(1).gain().value().isPresent());
    }

    @Test
    void searchingNarrowsAndTwoChosenJobsAreComparedAlsoWhileTheListIsNarrowed() {
        model.begin();
        model.choose(model.foundProperty().get().subList(1, 3));
        assertTrue(model.compared().orElseThrow().difference().isPresent());
        model.find("MINE");
        assertEquals(List.of("mine.fwjob"), places());
        assertTrue(model.compared().isPresent());
        model.choose(model.foundProperty().get());
        assertTrue(model.compared().isEmpty());
    }

    @Test
    void theOpenJobAsksAndDoesntAnswerForItself() {
        model.begin();
        var like = model.like().orElseThrow();
        assertEquals(
                List.of("other.fwjob"),
                like.counted().stream().map(JobRecord::place).toList());
        assertEquals("can't be read", like.left().get(0).why());
        session.edit(job -> job.withMachine(Job.empty().machine()));
        assertTrue(model.like().isEmpty());
    }

    @Test
    void whileReadingTheListStaysAndAFolderThatIsGoneIsSaid() {
        model.begin();
        runner.hold();
        model.begin();
        assertTrue(model.stateProperty().get().reading());
        assertEquals(3, places().size());
        runner.release();
        assertFalse(model.stateProperty().get().reading());
        model.read(folder.resolve("gone"));
        assertEquals(List.of(), places());
        assertTrue(model.stateProperty().get().trouble().contains("no such folder"));
    }
}
