package fuelwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordsCommandTest {

    @TempDir
    static Path home;

    private static Path jobs;

    /** One job with results, by {@code propose}; one of the first version, which keeps none. */
    @BeforeAll
    static void proposeAJob() throws IOException {
        List<Object> words = new ArrayList<>(List.of(
                "propose",
                "--table",
                "sample-logs/fuel-table.csv",
                "--target",
                "sample-logs/target-table.csv",
                "--ride",
                "sample-logs/ride-1-cold-start.csv"));
        words.addAll(Ran.BODIES);
        Ran.of(words, "--out", home.resolve("out"));
        jobs = Files.createDirectories(home.resolve("jobs/twins")).getParent();
        Files.copy(home.resolve("out/job.fwjob"), jobs.resolve("twins/a.fwjob"));
        Files.copy(Path.of("src/test/resources/fuelwright/job/version-1.fwjob"), jobs.resolve("old.fwjob"));
        Files.writeString(jobs.resolve("bad.fwjob"), "no zip");
    }

    private static JsonNode json(Object... args) throws IOException {
        Ran ran = Ran.of(args);
        assertEquals(Exit.DONE, ran.code(), ran.err());
        return new ObjectMapper().readTree(ran.out());
    }

    @Test
    void jobsAreListedTheDamagedOneWithItsReason() throws IOException {
        Ran ran = Ran.of("records", jobs);
        assertEquals(Exit.DONE, ran.code());
        List<String> lines = ran.out().lines().toList();
        assertEquals("3 jobs in " + jobs, lines.get(0));
        assertTrue(lines.contains("  can't be read: this isn't a job file, or it is damaged"), ran.out());
        assertTrue(ran.out().contains("38 → 44 mm, 1 ride, error "), ran.out());
        assertTrue(ran.out().contains("no results are kept with it"), ran.out());
        JsonNode all = json("records", jobs, "--json");
        assertEquals("twins/a.fwjob", all.at("/jobs/2/place").asText());
        assertEquals(44, all.at("/jobs/2/boreAfterMm").asDouble());
        assertTrue(all.at("/jobs/2/partGave/knownCells").asInt() > 40);
        assertEquals(
                "no results are kept with it",
                all.at("/jobs/1/partGave/unknown").asText());
    }

    @Test
    void wordsNarrowTheListAndOneJobIsToldWhole() {
        Ran ran = Ran.of("records", jobs, "--find", "TWINS petrol");
        assertTrue(ran.out().startsWith("1 job in " + jobs + ", of 3 altogether"), ran.out());
        assertTrue(ran.out().contains("What the part gave"), ran.out());
        assertTrue(Ran.of("records", jobs, "--find", "diesel").out().startsWith("0 jobs"));
    }

    @Test
    void twoJobsAreComparedByPlaceOrName() throws IOException {
        Ran ran = Ran.of("records", jobs, "--compare", "a.fwjob", "old");
        assertTrue(ran.out().contains("1  twins/a.fwjob"), ran.out());
        assertTrue(ran.out().contains("can't be laid over each other"), ran.out());
        JsonNode itself = json("records", jobs, "--compare", "twins/a", "twins/a.fwjob", "--json");
        JsonNode difference = itself.get("difference");
        assertEquals(195, difference.size());
        difference.forEach(d -> assertTrue(d.isNull() || Math.abs(d.asDouble()) < 1e-9));
        Ran.of("records", jobs, "--compare", "a.fwjob", "lost").refused(Exit.USAGE, "no job lost");
        Ran.of("records", jobs, "--compare", "a.fwjob", "old", "--find", "x").refused(Exit.USAGE, "stands alone");
        Ran.of("records", jobs, "--compare", "a.fwjob").refused(Exit.USAGE, "--compare");
    }

    @Test
    void enginesLikeOneAreFoundFewJobsAreCalledExamplesAndTheOthersSayWhyNot() throws IOException {
        Ran ran = Ran.of("records", jobs, "--bores", "38:44", "--displacement", 700);
        assertTrue(ran.out().contains("1 job counts: twins/a.fwjob"), ran.out());
        assertTrue(ran.out().contains("examples, not a range"), ran.out());
        assertTrue(ran.out().contains("left out  old.fwjob: no results are kept with it"), ran.out());
        assertTrue(ran.out().contains("no evidence about this one"), ran.out());
        JsonNode like = json("records", jobs, "--like", "old", "--json");
        assertEquals("twins/a.fwjob", like.at("/counted/0").asText());
        assertTrue(like.at("/bands/0/few").asBoolean());
        assertEquals(
                0,
                json("records", jobs, "--bores", ":50", "--json").get("counted").size());
        Ran.of("records", jobs, "--bores", "38-44").refused(Exit.USAGE, "--bores 38-44", "38:44");
        Ran.of("records", jobs, "--bodies", 0).refused(Exit.USAGE, "--bodies", "above 0");
        Ran.of("records", jobs, "--within", 10).refused(Exit.USAGE, "--within");
        Ran.of("records", jobs, "--like", "bad").refused(Exit.USAGE, "says nothing of its engine");
    }

    @Test
    void aJobWithoutResultsIsWorkedOutForThisOnceWhenAskedFor() throws IOException {
        byte[] before = Files.readAllBytes(jobs.resolve("old.fwjob"));
        Ran ran = Ran.of("records", jobs, "--find", "old.fwjob", "--work-out");
        assertTrue(ran.out().contains("of 195 cells"), ran.out());
        assertEquals(-1, java.util.Arrays.mismatch(before, Files.readAllBytes(jobs.resolve("old.fwjob"))));
        assertFalse(Ran.of("records", jobs, "--find", "old.fwjob").out().contains("of 195 cells"));
    }

    @Test
    void aFolderThatIsntThereIsRefused() {
        Ran.of("records", home.resolve("none")).refused(Exit.INPUT, "no such folder");
    }
}
