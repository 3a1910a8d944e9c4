package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.estimate.CellNeed;
import fuelwright.job.Answer;
import fuelwright.job.Job;
import fuelwright.job.JobFile;
import fuelwright.job.PastTable;
import fuelwright.job.Results;
import fuelwright.job.StoredJob;
import fuelwright.job.StoredRide;
import fuelwright.mixture.Fuel;
import fuelwright.ride.RideOptions;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A folder of jobs says what it holds. */
class RecordsTest {

    private static final Axis SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 2000, 4000, 8000);
    private static final Axis THROTTLE = new Axis(Axis.Kind.THROTTLE, 0, 15, 30, 100);

    @TempDir
    Path folder;

    private static Table table(Axis load, double figure) {
        double[] cells = new double[SPEED.size() * load.size()];
        Arrays.fill(cells, figure);
        return Table.of(Quantity.VOLUMETRIC_EFFICIENCY, SPEED, load, cells);
    }

    private static Job job(String name, double cc, double before, double after, Axis load) {
        return Job.empty()
                .withName(name)
                .withMachine(new Machine(
                        OptionalDouble.of(cc),
                        2,
                        Optional.of(new ThrottleBody(before, 8, 5, 85)),
                        Optional.of(new ThrottleBody(after, 8, 5, 85)),
                        Fuel.PETROL,
                        OptionalDouble.empty()))
                .withFuelTable(table(load, 55))
                .withPast(List.of(new PastTable(table(load, 50), 1, 1.5)));
    }

    /** Needs everywhere the same; the first cell was never ridden. */
    private static Results results(Job job, double shortfallPercent) {
        List<CellNeed> needs = new ArrayList<>();
        for (int c = 0; c < job.fuelTable().orElseThrow().cells(); c++) {
            needs.add(new CellNeed(shortfallPercent, 1, c == 0 ? 0 : 20));
        }
        return new Results(
                needs, OptionalDouble.of(2.25), true, 0, List.of(new Results.Peak("pull", 40.04, 0.3, 7300)));
    }

    private void put(String place, Job job, double shortfallPercent) throws IOException {
        Path file = folder.resolve(place);
        Files.createDirectories(file.getParent());
        Files.write(file, JobFile.write(new StoredJob(job, List.of(), Optional.of(results(job, shortfallPercent)))));
    }

    private List<JobRecord> read() {
        return Records.read(folder, Progress.NONE, Cancellation.NEVER);
    }

    private JobRecord only() {
        assertEquals(1, read().size());
        return read().get(0);
    }

    @Test
    void jobsInSubfoldersAreFoundInOrderAndHiddenOnesPassedOver() throws IOException {
        Job job = job("j", 720, 38, 44, THROTTLE);
        for (String place : List.of("b.fwjob", "a/later.FWJOB", ".trash/old.fwjob", ".b.fwjob.part", "a/.x.fwjob")) {
            put(place, job, 0);
        }
        Files.writeString(folder.resolve("note.txt"), "no job");
        assertEquals(
                List.of("a/later.FWJOB", "b.fwjob"),
                read().stream().map(JobRecord::place).toList());
    }

    private void put(String place, Job job, long second, String... rides) throws IOException {
        Path file = folder.resolve(place);
        Files.createDirectories(file.getParent());
        List<StoredRide> all = Stream.of(rides)
                .map(r -> new StoredRide(
                        r,
                        new StoredRide.Log(
                                r, r + ".csv", Fingerprint.of(r.getBytes(StandardCharsets.UTF_8)), Optional.empty()),
                        Optional.empty(),
                        Optional.empty(),
                        RideOptions.defaults(),
                        Optional.empty()))
                .toList();
        Files.write(file, JobFile.write(new StoredJob(job, all)));
        Files.setLastModifiedTime(file, FileTime.fromMillis(1000 * second));
    }

    @Test
    void oneJobInTwoFilesCountsOnceAndTheNewestSpeaksForIt() throws IOException {
        Job job = job("one", 720, 38, 44, THROTTLE);
        put("one.fwjob", job, 10, "a");
        put("out/job.fwjob", job, 20, "a", "b");
        put("twin.fwjob", job("twin", 720, 38, 46, THROTTLE), 15, "a");
        put(
                "front.fwjob",
                job.withFuelTable(job.fuelTable().orElseThrow().ofCylinder(OptionalInt.of(1))),
                15,
                "a",
                "b");
        assertEquals(
                List.of("front.fwjob", "out/job.fwjob", "twin.fwjob"),
                read().stream().map(JobRecord::place).toList());
        assertTrue(JobFacts.line(read().get(1)).endsWith("also in one.fwjob"), JobFacts.line(read().get(1)));
    }

    @Test
    void aDamagedAndALaterJobAreListedWithTheirReasonAndHideNothing() throws IOException {
        put("good.fwjob", job("good", 720, 38, 44, THROTTLE), 0);
        byte[] good = Files.readAllBytes(folder.resolve("good.fwjob"));
        Files.write(folder.resolve("cut.fwjob"), Arrays.copyOf(good, good.length / 2));
        Files.write(folder.resolve("empty.fwjob"), new byte[0]);
        Files.write(folder.resolve("text.fwjob"), "hello".getBytes(java.nio.charset.StandardCharsets.UTF_8));
        try (var zip = new java.util.zip.ZipOutputStream(Files.newOutputStream(folder.resolve("later.fwjob")))) {
            zip.putNextEntry(new java.util.zip.ZipEntry("job.json"));
            zip.write(
                    "{\"format\":\"fuelwright job\",\"version\":99}".getBytes(java.nio.charset.StandardCharsets.UTF_8));
        }
        List<JobRecord> all = read();
        assertEquals(5, all.size());
        for (JobRecord each : all) {
            boolean whole = each.place().equals("good.fwjob");
            assertEquals(whole, each.trouble().isEmpty(), each.place());
            assertEquals(whole, !JobFacts.line(each).startsWith("can't be read: "), each.place());
            assertEquals(!whole, JobFacts.of(each).isEmpty());
        }
        assertTrue(JobFacts.line(all.get(3)).contains("later version"), JobFacts.line(all.get(3)));
    }

    @Test
    void lookingThroughAFolderLeavesEveryFileAsItWas() throws IOException {
        put("a.fwjob", job("a", 720, 38, 44, THROTTLE), 3);
        Path file = folder.resolve("a.fwjob");
        FileTime then = FileTime.fromMillis(1_000_000_000_000L);
        Files.setLastModifiedTime(file, then);
        byte[] bytes = Files.readAllBytes(file);
        file.toFile().setReadOnly();
        Records.workedOut(only(), Progress.NONE, Cancellation.NEVER);
        assertArrayEquals(bytes, Files.readAllBytes(file));
        assertEquals(then, Files.getLastModifiedTime(file));
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(List.of(file), files.toList(), "no lock, no part, nothing beside it");
        }
    }

    @Test
    void aFolderThatIsntThereIsAFailureInWords() {
        WorkException failure = assertThrows(
                WorkException.class, () -> Records.read(folder.resolve("none"), Progress.NONE, Cancellation.NEVER));
        assertTrue(failure.getMessage().contains("no such folder"), failure.getMessage());
    }

    @Test
    void allWordsMustBeMentionedInNameMachineTableOrAnswerWhateverTheCapitals() throws IOException {
        Job job = job("Red twin", 720, 38, 44, THROTTLE)
                .withAnswers(List.of(
                        new Answer("lean-under-load", "Lean", Answer.Kind.CAUSE_FOUND, "fuel filter was blocked")));
        put("shop/a.fwjob", job, 0);
        JobRecord record = only();
        for (String words : List.of("", "red", "720 CC", "38 44", "filter RED", "throttle", "shop")) {
            assertTrue(record.mentions(words), words);
        }
        for (String words : List.of("blue", "red 50", "manifold", "displacement")) {
            assertFalse(record.mentions(words), words);
        }
    }

    /** 50 became 55, and 2 % more is needed: 12.2 % more air, by hand. */
    @Test
    void whatThePartGaveCountsFromTheOldestTableAndOnlyWhereRidesTell() throws IOException {
        put("a.fwjob", job("a", 720, 38, 44, THROTTLE), 2);
        JobRecord record = only();
        var gain = record.gain().value().orElseThrow();
        assertEquals(11, gain.knownCells());
        assertFalse(gain.isKnown(0));
        assertEquals(12.2, gain.gainPercent(5), 1e-9);
        assertEquals(1.122 / 1.02, gain.gainErrorPercent(5), 1e-9);
        assertEquals(50, gain.before(5).getAsDouble(), 1e-9);
        assertEquals(56.1, gain.after(5).getAsDouble(), 1e-9);
        assertTrue(Double.isNaN(gain.gainPercentAt(2000, 0)));
        assertTrue(Double.isNaN(gain.gainPercentAt(2500, 5)), "beside a cell that isn't known");
        assertTrue(Double.isNaN(gain.gainPercentAt(9000, 50)), "beyond the table");
        assertEquals(12.2, gain.gainPercentAt(5000, 100), 1e-9);
        assertEquals(
                List.of("throttle 0 to 4 %", "throttle 9 to 18 %", "throttle 18 to 35 %", "throttle 85 % and more"),
                GainBands.of(gain).stream().map(g -> g.band().words()).toList());
        assertEquals(2, GainBands.of(gain).get(0).cells());
        assertTrue(
                JobFacts.line(record).endsWith("error 2.3 %, done, part gave +12.2 % air on average"),
                JobFacts.line(record));
    }

    @Test
    void aForecastInThePlaceOfTheOldTableIsNoBaseForWhatThePartGave() throws IOException {
        Job job = job("a", 720, 38, 44, THROTTLE);
        Table forecast = job.past().get(0).table().withNotes(List.of(new Table.Note("forecast", "first ride")));
        put("a.fwjob", job.withPast(List.of(new PastTable(forecast, 1, 1))), 2);
        assertTrue(only().whyNoGain().contains("first-ride table"), only().whyNoGain());
    }

    @Test
    void twoJobsStandSideBySideAndTheirMapsAreSubtractedWhereBothAreKnown() throws IOException {
        put("a.fwjob", job("a", 720, 38, 44, THROTTLE), 2);
        put("b.fwjob", job("b", 650, 38, 44, new Axis(Axis.Kind.THROTTLE, 0, 50, 100)), 4);
        put("c.fwjob", job("c", 650, 38, 44, new Axis(Axis.Kind.MANIFOLD_PRESSURE, 20, 50, 100)), 4);
        List<JobRecord> all = read();
        JobsCompared compared = JobsCompared.of(all.get(0), all.get(1));
        assertEquals(
                List.of("720 cm³", "650 cm³"),
                List.of(
                        compared.rows().get(0).first().toString(),
                        compared.rows().get(0).second().toString()));
        assertTrue(compared.rows().stream().anyMatch(r -> r.what().equals("Bore") && r.same()));
        JobsCompared.Difference difference = compared.difference().orElseThrow();
        assertEquals(10 * 1.1 * 0.2, difference.points().get(11), 1e-9);
        assertTrue(difference.points().get(0).isNaN());
        assertTrue(JobsCompared.of(all.get(0), all.get(2)).difference().isEmpty(), "load isn't the same thing");
    }

    @Test
    void enginesLikeThisOneAreThoseWithinTheBandsAndTheOthersSayWhyNot() throws IOException {
        put("1.fwjob", job("1", 720, 38, 44, THROTTLE), 0);
        put("2.fwjob", job("2", 800, 38.5, 44, THROTTLE), 10);
        put("3.fwjob", job("3", 1000, 38, 44, THROTTLE), 0);
        put("4.fwjob", job("4", 720, 38, 46, THROTTLE), 0);
        put("5.fwjob", job("5", 720, 38, 44, THROTTLE), 4);
        Job bare = job("6", 720, 38, 44, THROTTLE);
        Files.write(folder.resolve("6.fwjob"), JobFile.write(new StoredJob(bare, List.of())));
        Machine like = job("", 720, 38, 44, THROTTLE).machine();
        EnginesLike.Question question = EnginesLike.Question.of(like, Optional.of(folder.resolve("5.fwjob")));
        EnginesLike two = EnginesLike.of(read(), question);
        assertEquals(
                List.of("1.fwjob", "2.fwjob"),
                two.counted().stream().map(JobRecord::place).toList(),
                "not itself");
        assertEquals(
                List.of("3.fwjob: has 1000 cm³", "4.fwjob: had 46 mm after", "6.fwjob: a table or a ride is missing"),
                two.left().stream().map(l -> l.job().place() + ": " + l.why()).toList());
        EnginesLike.Band band = two.bands().get(0);
        assertEquals(2, band.jobs());
        assertTrue(band.isFew(), "two jobs are no range");
        assertEquals(10, band.leastPercent(), 1e-9);
        assertEquals(15.5, band.middlePercent(), 1e-9);
        assertEquals(21, band.mostPercent(), 1e-9);

        EnginesLike three = EnginesLike.of(read(), EnginesLike.Question.of(like, Optional.empty()));
        assertFalse(three.bands().get(0).isFew());
        assertEquals(14.4, three.bands().get(0).middlePercent(), 1e-9);
        EnginesLike.Question any = new EnginesLike.Question(
                OptionalDouble.empty(),
                25,
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(46),
                Optional.empty());
        assertEquals("bore any → 46 mm ±1", any.words());
        assertEquals(1, EnginesLike.of(read(), any).counted().size());
    }
}
