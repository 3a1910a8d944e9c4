package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.Machine;
import fuelwright.estimate.CellNeed;
import fuelwright.estimate.Decision;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Answer;
import fuelwright.job.AnswerBasis;
import fuelwright.job.FirstStart;
import fuelwright.job.HardwareProfile;
import fuelwright.job.Job;
import fuelwright.job.JobFile;
import fuelwright.job.JobRide;
import fuelwright.job.PastTable;
import fuelwright.job.Results;
import fuelwright.job.StoredJob;
import fuelwright.ride.Channel;
import fuelwright.safety.Caution;
import fuelwright.safety.Limit;
import fuelwright.screen.Screen;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.TimeZone;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A job that is saved and opened is the job it was. */
class JobFileTest {

    @TempDir
    Path folder;

    /** The sample job with something in every field. */
    private static Job full() {
        Job job = SampleJob.load().value().orElseThrow();
        Table fuel = job.fuelTable().orElseThrow();
        Table old =
                fuel.withValues(Arrays.stream(fuel.toArray()).map(v -> v * 0.97).toArray());
        JobRide first = job.rides().get(0);
        return job.withName("<job> \"№ 1\"\n= 1 + 1")
                .withRides(List.of(
                        new JobRide(first.ride(), Optional.of(old), first.source()),
                        job.rides().get(1)))
                .withScreens(job.screens().with(Screen.SPIKE, false))
                .withProposal(job.proposal()
                        .withCaps(33.25, 4)
                        .withStep(0.1)
                        .withDecisions(Map.of(3, new Decision(Decision.Kind.SET, 44.123456789))))
                .withLimits(job.limits().with(Limit.LEAN_EXCESS, 0.03))
                .withHardware(new HardwareProfile(
                                "box",
                                HardwareProfile.Holds.PERCENT_CHANGE,
                                -20,
                                Double.POSITIVE_INFINITY,
                                Optional.of(new Axis(Axis.Kind.ENGINE_SPEED, 1000, 3000, 8000)),
                                Optional.empty(),
                                Optional.of(Table.Orientation.SPEED_DOWN),
                                true)
                        .withCells(Optional.of(Table.of(
                                Quantity.CHANGE,
                                new Axis(Axis.Kind.ENGINE_SPEED, 1000, 3000, 8000),
                                new Axis(Axis.Kind.THROTTLE, 0, 100),
                                new double[] {0, 31.5, -2, 1e-9, 8, 3}))))
                .withAnswers(List.of(new Answer("lean-under-load", "Lean", Answer.Kind.CAUSE_FOUND, "pump, \"old\"")))
                .withPast(List.of(new PastTable(old, 1, Double.NaN), new PastTable(fuel, 2, 1.25)))
                .withFirstStart(EnumSet.of(FirstStart.TRIMS, FirstStart.SENSOR));
    }

    private static void same(Job expected, Job found) {
        assertEquals(expected.withRides(List.of()), found.withRides(List.of()));
        assertEquals(expected.rides().size(), found.rides().size());
        for (int i = 0; i < expected.rides().size(); i++) {
            JobRide a = expected.rides().get(i);
            JobRide b = found.rides().get(i);
            assertEquals(a.madeWith(), b.madeWith());
            assertEquals(
                    a.source().orElseThrow().options(), b.source().orElseThrow().options());
            assertEquals(a.ride().name(), b.ride().name());
            assertArrayEquals(a.ride().timeS().toArray(), b.ride().timeS().toArray());
            // The sample's dyno logs torque only since the kept file was made.
            for (Channel read : b.ride().channels()) {
                Channel meant = a.ride().channels().stream()
                        .filter(c -> c.heading().equals(read.heading()))
                        .findFirst()
                        .orElseThrow();
                assertEquals(meant.role(), read.role());
                assertArrayEquals(meant.values().toArray(), read.values().toArray());
            }
        }
    }

    private Loaded<Job> open(Path file) {
        return OpenJob.open(file, name -> Optional.empty(), Progress.NONE, Cancellation.NEVER);
    }

    @Test
    void everythingInAJobComesBack() {
        Job job = full();
        Path file = folder.resolve("a.fwjob");
        SaveJob.save(job, file);
        Loaded<Job> opened = open(file);
        assertEquals(
                List.of(),
                opened.issues().stream()
                        .filter(i -> i.severity() == Issue.Severity.ERROR)
                        .toList());
        same(job, opened.value().orElseThrow());
        for (int i = 0; i < job.rides().size(); i++) {
            assertEquals(
                    job.rides().get(i).ride().channels().size(),
                    opened.value().get().rides().get(i).ride().channels().size());
        }
    }

    @Test
    void theSameJobGivesTheSameBytesAlsoAfterItWasOpened() throws IOException {
        Path file = folder.resolve("a.fwjob");
        Path again = folder.resolve("b.fwjob");
        SaveJob.save(full(), file);
        SaveJob.save(full(), again);
        assertArrayEquals(Files.readAllBytes(file), Files.readAllBytes(again));
        SaveJob.save(open(file).value().orElseThrow(), again);
        assertArrayEquals(Files.readAllBytes(file), Files.readAllBytes(again));
    }

    @Test
    void theBytesDoNotDependOnTheTimeZone() {
        TimeZone zone = TimeZone.getDefault();
        byte[] here = bytes(Job.empty(), folder.resolve("a.fwjob"));
        try {
            TimeZone.setDefault(TimeZone.getTimeZone("GMT+13:00"));
            assertArrayEquals(here, bytes(Job.empty(), folder.resolve("a.fwjob")));
        } finally {
            TimeZone.setDefault(zone);
        }
    }

    @Test
    void figuresThatJsonCannotWriteComeBack() {
        Job job = Job.empty()
                .withScreens(Job.empty().screens().withLambda(0.7, Double.POSITIVE_INFINITY))
                .withProposal(Job.empty().proposal().withCaps(Double.POSITIVE_INFINITY, 5));
        StoredJob read =
                JobFile.read("x", bytes(job, folder.resolve("a.fwjob"))).value().orElseThrow();
        assertEquals(job, read.job());
    }

    @Test
    void aFigureThatIsNoneIsNamedAndNeverReplacedByTheUsualOne() throws IOException {
        byte[] good = bytes(full(), folder.resolve("a.fwjob"));
        Map<String, String> cases = Map.of(
                "\"maxCutPercent\" : 4.0", "\"maxCutPercent\" : \"four\"",
                "\"lambdaTo\" : 1.35", "\"lambdaTo\" : null",
                "\"cell\" : 3", "\"cell\" : \"third\"",
                "\"lean-excess\" : 0.03", "\"lean-excess\" : true");
        for (Map.Entry<String, String> each : cases.entrySet()) {
            Loaded<StoredJob> read = JobFile.read("x", edited(good, each.getKey(), each.getValue()));
            assertTrue(read.value().isEmpty(), each.getValue());
            String name = each.getKey().substring(1, each.getKey().indexOf('"', 1));
            assertTrue(read.issues().get(0).what().contains(name), read.issues().toString());
        }
    }

    @Test
    void whatACautionSaidWhenItWasAnsweredComesBack() {
        AnswerBasis lean = new AnswerBasis(
                Caution.Level.STOP,
                new TreeSet<>(List.of(3, 7)),
                1.02,
                "41 times",
                Optional.of(new AnswerBasis.Extent(41, 63.8, 6051, 100)));
        AnswerBasis none = new AnswerBasis(Caution.Level.NOTE, new TreeSet<>(), Double.NaN, "");
        Job job = full().withAnswers(Stream.of(lean, none)
                .map(b -> new Answer("lean-under-load", "Lean", Answer.Kind.SEEN, "", Optional.of(b)))
                .toList());
        Path file = folder.resolve("a.fwjob");
        SaveJob.save(job, file);
        assertEquals(job.answers(), open(file).value().orElseThrow().answers());
    }

    /** One file of each version that was ever written; they must open for ever. Made by saving {@link #full}. */
    @Test
    void aJobOfEveryVersionOpens() throws IOException {
        for (int version = 1; version <= JobFile.VERSION; version++) {
            Path kept = Path.of("src/test/resources/fuelwright/job/version-" + version + ".fwjob");
            if (System.getProperty("keep") != null && version == JobFile.VERSION) {
                SaveJob.save(full(), kept);
            }
            Job read = open(kept).value().orElseThrow();
            // What is ticked off before the first start, and what the hardware's cells hold, is written only since
            // those were kept.
            assertEquals(Set.of(), read.firstStart());
            Job then = full().withFirstStart(Set.of());
            same(then.withHardware(then.hardware().withCells(Optional.empty())), read);
        }
    }

    @Test
    void aFileNameIsSafeWhateverTheJobIsCalled() {
        assertEquals("V-twin 38 to 44.fwjob", SaveJob.fileName("V-twin 38 to 44"));
        assertEquals("job.fwjob", SaveJob.fileName("  "));
        assertEquals("job.fwjob", SaveJob.fileName("../.."));
        for (String name : List.of(
                "=1+1",
                "-rf",
                "+x",
                "@x",
                "<script>",
                "../../etc/passwd",
                "a:b*c?d\"e|f",
                ".hidden",
                "x".repeat(500))) {
            String file = SaveJob.fileName(name);
            assertTrue(file.matches("[\\p{L}\\p{N}][\\p{L}\\p{N} _-]{0,90}\\.fwjob"), file);
        }
    }

    @Test
    void anEmptyJobCanBeSavedToo() {
        Path file = folder.resolve("empty.fwjob");
        SaveJob.save(Job.empty(), file);
        assertEquals(Job.empty(), open(file).value().orElseThrow());
    }

    @Test
    void aDeadTimeOfNoneIsKeptAsAnAnswer() throws IOException {
        for (OptionalDouble told : List.of(OptionalDouble.empty(), OptionalDouble.of(0), OptionalDouble.of(0.85))) {
            Path file = folder.resolve("told-" + told.isPresent() + told.orElse(-1) + ".fwjob");
            Job job = Job.empty().withProposal(Job.empty().proposal().withDeadTimeMs(told));
            assertEquals(
                    job,
                    JobFile.read("x", bytes(job, file)).value().orElseThrow().job());
        }
    }

    @Test
    void theProposalOfAnOpenedJobIsTheSame() {
        Job job = SampleJob.load().value().orElseThrow();
        Path file = folder.resolve("a.fwjob");
        SaveJob.save(job, file);
        Job opened = open(file).value().orElseThrow();
        Analysis a = Analyse.run(job, Progress.NONE, Cancellation.NEVER).value().orElseThrow();
        Analysis b =
                Analyse.run(opened, Progress.NONE, Cancellation.NEVER).value().orElseThrow();
        assertEquals(a.proposal().corrected(), b.proposal().corrected());
        assertEquals(a.cautions(), b.cautions());
    }

    /** A big log is remembered by its place: the job with it moved, changed and lost. */
    @Test
    void aLogOutsideIsFoundBesideTheJobAndAskedForAndItsChangeIsSaid() throws IOException {
        Job job = SampleJob.load().value().orElseThrow();
        Path file = folder.resolve("a.fwjob");
        StoredJob inside = JobFile.read("a", bytes(job, file)).value().orElseThrow();
        var log = inside.rides().get(0).first();
        StoredJob outside = new StoredJob(
                inside.job(),
                List.of(new fuelwright.job.StoredRide(
                        "r",
                        new fuelwright.job.StoredRide.Log(
                                log.name(), "logs/" + log.name(), log.sha256(), Optional.empty()),
                        Optional.empty(),
                        Optional.empty(),
                        inside.rides().get(0).options(),
                        Optional.empty())));
        Files.write(file, JobFile.write(outside));
        Loaded<Job> lost = open(file);
        assertTrue(lost.value().isEmpty());
        assertTrue(
                lost.issues().get(0).sentence().contains(log.name()),
                lost.issues().toString());

        Path elsewhere = Files.createDirectory(folder.resolve("else")).resolve("moved.csv");
        Files.write(elsewhere, log.content().orElseThrow());
        assertTrue(OpenJob.open(file, name -> Optional.of(elsewhere), Progress.NONE, Cancellation.NEVER)
                .value()
                .isPresent());

        Path beside = folder.resolve(log.name());
        Files.write(beside, log.content().orElseThrow());
        Loaded<Job> found = open(file);
        assertTrue(found.value().isPresent());
        assertTrue(found.issues().stream().noneMatch(i -> i.what().contains("changed")));

        byte[] cut = Arrays.copyOf(log.content().orElseThrow(), log.content().orElseThrow().length / 2);
        Files.write(beside, cut);
        assertTrue(open(file).issues().stream().anyMatch(i -> i.what().contains("changed")));
    }

    /** The sample's dyno pull as a job from a file of its own. */
    private Job ofOneLog(Path log) throws IOException {
        Files.copy(Path.of("sample-logs/dyno-pull.csv"), log);
        return new JobFiles(
                        "one",
                        Path.of("sample-logs/fuel-table.csv"),
                        Path.of("sample-logs/target-table.csv"),
                        List.of(new JobFiles.RideFiles(log, Optional.empty(), Optional.empty())),
                        SampleJob.MACHINE,
                        fuelwright.ride.RideOptions.defaults(),
                        fuelwright.estimate.ProposalSettings.defaults())
                .load(Progress.NONE, Cancellation.NEVER)
                .value()
                .orElseThrow();
    }

    @Test
    void aLogThatChangedAfterItWasReadIsToldWhenTheJobIsSavedAndWhenItIsOpened() throws IOException {
        Path log = folder.resolve("pull.csv");
        Job job = ofOneLog(log);
        Path file = folder.resolve("a.fwjob");
        assertEquals(List.of(), SaveJob.save(job, file));
        Files.writeString(log, Files.readString(log).replaceFirst("\\d(?=\\R)", "0"));
        Files.writeString(log, "\n", java.nio.file.StandardOpenOption.APPEND);
        List<Issue> said = SaveJob.save(job, file);
        assertTrue(said.get(0).what().contains("changed since it was read"), said.toString());
        StoredJob stored = JobFile.read("a", Files.readAllBytes(file)).value().orElseThrow();
        assertEquals(
                job.rides().get(0).ride().fingerprint(),
                stored.rides().get(0).first().sha256());
        assertTrue(
                stored.rides().get(0).first().content().isEmpty(),
                "other bytes must not pass for those that were read");
        Loaded<Job> opened = open(file);
        assertTrue(opened.value().isPresent());
        assertTrue(
                opened.issues().stream().anyMatch(i -> i.what().contains("changed")),
                opened.issues().toString());
    }

    @Test
    void aLogThatIsGoneDoesNotKeepAJobFromBeingSavedAndIsKnownAgainByItsContents() throws IOException {
        Path log = folder.resolve("pull.csv");
        Job job = ofOneLog(log);
        Path moved = folder.resolve("renamed.txt");
        Files.move(log, moved);
        Path file = folder.resolve("a.fwjob");
        List<Issue> said = SaveJob.save(job, file);
        assertTrue(said.get(0).what().contains("keeps its fingerprint"), said.toString());
        List<OpenJob.Missing> asked = new java.util.ArrayList<>();
        Loaded<Job> opened = OpenJob.open(
                file,
                missing -> {
                    asked.add(missing);
                    return missing.among(List.of(file, moved));
                },
                Progress.NONE,
                Cancellation.NEVER);
        assertEquals("pull.csv", asked.get(0).name());
        assertTrue(opened.value().isPresent(), opened.issues().toString());
        assertTrue(
                opened.issues().stream().noneMatch(i -> i.what().contains("changed")),
                opened.issues().toString());
    }

    private static byte[] bytes(Job job, Path file) {
        return SaveJob.bytes(job, Optional.empty(), file);
    }

    @Test
    void damagedFilesAreRefusedInWordsAndNeverThrow() throws IOException {
        byte[] good = bytes(full(), folder.resolve("a.fwjob"));
        Random random = new Random(5);
        for (int n = 0; n < 300; n++) {
            byte[] bad = good.clone();
            if (n % 3 == 0) {
                bad = Arrays.copyOf(bad, random.nextInt(bad.length));
            } else {
                for (int k = 0; k <= n % 5; k++) {
                    bad[random.nextInt(bad.length)] ^= (byte) (1 << random.nextInt(8));
                }
            }
            Loaded<StoredJob> read = JobFile.read("bad.fwjob", bad);
            assertTrue(read.value().isPresent() || !read.issues().isEmpty());
        }
        assertTrue(JobFile.read("x", new byte[0]).value().isEmpty());
        assertTrue(JobFile.read("x", "hello".getBytes(StandardCharsets.UTF_8))
                .value()
                .isEmpty());
    }

    @Test
    void resultsComeBackAndDamagedOnesAreSaidWhileTheJobStaysWhole() throws IOException {
        Job job = full();
        int cells = job.fuelTable().orElseThrow().cells();
        Results results = new Results(
                Collections.nCopies(cells, new CellNeed(-1.25, 0.75, 12.5)),
                OptionalDouble.of(2.5),
                true,
                3,
                List.of(new Results.Peak("a \"ride\"", 41.5, 0.25, 7200)),
                Optional.of(new fuelwright.estimate.HighLoadCells(12, 5)));
        Path file = folder.resolve("a.fwjob");
        SaveJob.save(job, Optional.of(results), file);
        StoredJob looked = JobFile.readWithoutLogs(file).value().orElseThrow();
        assertEquals(Optional.of(results), looked.results());
        assertEquals(job.withRides(List.of()), looked.job());
        assertEquals(0, looked.rides().get(0).first().content().orElseThrow().length, "logs aren't unpacked");
        same(job, open(file).value().orElseThrow());

        byte[] good = Files.readAllBytes(file);
        for (String name : List.of("\"shortfallPercent\" : [", "\"rpm\" : ")) {
            Loaded<StoredJob> read =
                    JobFile.read("x", edited(good, name, "\"lost\" : " + name.substring(name.indexOf(':') + 2)));
            assertTrue(read.value().orElseThrow().results().isEmpty(), name);
            assertTrue(read.issues().get(0).sentence().contains("results are damaged"), name);
        }
    }

    @Test
    void aLaterFormatIsRefusedAndUnknownNamesArePassedOver() throws IOException {
        byte[] good = bytes(Job.empty(), folder.resolve("a.fwjob"));
        Loaded<StoredJob> later = JobFile.read("x", edited(good, "\"version\" : 2", "\"version\" : 99"));
        assertTrue(later.value().isEmpty());
        assertTrue(
                later.issues().get(0).sentence().contains("later version"),
                later.issues().toString());
        assertEquals(
                Job.empty(),
                JobFile.read("x", edited(good, "\"version\" : 2", "\"version\" : 2, \"unheardOf\" : [1]"))
                        .value()
                        .orElseThrow()
                        .job());
        byte[] two = bytes(
                Job.empty().withMachine(Machine.unknown().withBodies(OptionalInt.of(2))), folder.resolve("b.fwjob"));
        Loaded<StoredJob> impossible = JobFile.read("x", edited(two, "\"bodies\" : 2", "\"bodies\" : -4"));
        assertTrue(impossible.value().isEmpty());
        assertTrue(impossible.issues().get(0).sentence().contains("bodies"));
    }

    /** Up to version 1 one ratio served the displays and the target, and the form began with one throttle body. */
    @Test
    void aJobOfTheFirstVersionKeepsItsTargetAndLeavesOpenWhatNobodySaid() throws IOException {
        Table afr = new Table(
                Quantity.AFR,
                new Axis(Axis.Kind.ENGINE_SPEED, 1000, 8000),
                new Axis(Axis.Kind.THROTTLE, 0, 100),
                new double[] {13.5, 13.5, 12.15, 12.15},
                List.of(),
                Table.Orientation.SPEED_DOWN);
        Job job = Job.empty().withTargetTable(afr).withDisplayRatio(13.5);
        byte[] now = bytes(job, folder.resolve("a.fwjob"));
        Job old = JobFile.read("x", edited(now, "\"version\" : 2", "\"version\" : 1"))
                .value()
                .orElseThrow()
                .job();
        assertEquals(0.9, old.targetLambda().orElseThrow().at(2), 1e-9);
        Job read = JobFile.read("x", now).value().orElseThrow().job();
        assertEquals(12.15 / 14.7, read.targetLambda().orElseThrow().at(2), 1e-9);
        Job told = job.withTargetRatio(OptionalDouble.of(14.1));
        assertEquals(
                told,
                JobFile.read("x", bytes(told, folder.resolve("b.fwjob")))
                        .value()
                        .orElseThrow()
                        .job());
        byte[] one = edited(now, "\"version\" : 2", "\"version\" : 1");
        byte[] prefilled = edited(one, "\"machine\" : {", "\"machine\" : { \"bodies\" : 1,");
        assertTrue(JobFile.read("x", prefilled)
                .value()
                .orElseThrow()
                .job()
                .machine()
                .bodies()
                .isEmpty());
        byte[] bored = edited(
                prefilled,
                "\"bodies\" : 1,",
                "\"bodies\" : 1, \"after\" : {\"boreMm\":44,\"shaftMm\":8,\"closedAngleDeg\":5,\"openAngleDeg\":85},");
        assertEquals(
                OptionalInt.of(1),
                JobFile.read("x", bored).value().orElseThrow().job().machine().bodies());
    }

    private static byte[] edited(byte[] zip, String from, String to) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip));
                ZipOutputStream copy = new ZipOutputStream(out)) {
            for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry()) {
                copy.putNextEntry(new ZipEntry(e.getName()));
                String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
                assertTrue(!e.getName().equals("job.json") || text.contains(from), text);
                copy.write(text.replace(from, to).getBytes(StandardCharsets.UTF_8));
            }
        }
        return out.toByteArray();
    }

    /** Names in the archive that point out of it are never followed: nothing is unpacked by its name. */
    @Test
    void anArchiveCannotWriteOutsideItsFolder() throws IOException {
        Job job = SampleJob.load().value().orElseThrow();
        StoredJob stored =
                JobFile.read("a", bytes(job, folder.resolve("a"))).value().orElseThrow();
        var ride = stored.rides().get(0);
        var evil = new fuelwright.job.StoredRide.Log(
                "../../../evil.csv", "", ride.first().sha256(), ride.first().content());
        Path file = folder.resolve("evil.fwjob");
        Files.write(
                file,
                JobFile.write(new StoredJob(
                        stored.job(),
                        List.of(new fuelwright.job.StoredRide(
                                "r", evil, Optional.empty(), Optional.empty(), ride.options(), Optional.empty())))));
        Job opened = open(file).value().orElseThrow();
        Path put = opened.rides().get(0).source().orElseThrow().file();
        assertEquals("evil.csv", put.getFileName().toString());
        assertTrue(Unpacked.holds(put));
    }

    /** A disk on which the n-th step fails. */
    private static final class FailingDisk implements Disk {
        private int left;

        FailingDisk(int stepsUntilFailure) {
            left = stepsUntilFailure;
        }

        private void step() throws IOException {
            if (left-- <= 0) {
                throw new IOException("No space left on device");
            }
        }

        @Override
        public void write(Path file, byte[] bytes) throws IOException {
            try {
                step();
            } catch (IOException e) {
                Files.write(file, Arrays.copyOf(bytes, bytes.length / 2));
                throw e;
            }
            REAL.write(file, bytes);
        }

        @Override
        public void replace(Path from, Path to) throws IOException {
            step();
            REAL.replace(from, to);
        }

        @Override
        public void remove(Path file) throws IOException {
            step();
            REAL.remove(file);
        }
    }

    @Test
    void aFullDiskLeavesTheOldJobAsItWas() throws IOException {
        Path file = folder.resolve("a.fwjob");
        Job old = Job.empty().withName("old");
        SaveJob.save(old, file);
        for (int step = 0; step < 2; step++) {
            FailingDisk disk = new FailingDisk(step);
            WorkException failure = assertThrows(
                    WorkException.class, () -> SaveJob.save(Job.empty().withName("new"), Optional.empty(), file, disk));
            assertTrue(failure.getMessage().contains("can't be written"), failure.getMessage());
            assertEquals("old", open(file).value().orElseThrow().name());
        }
        SaveJob.save(Job.empty().withName("new"), Optional.empty(), file, new FailingDisk(2));
        assertEquals("new", open(file).value().orElseThrow().name());
        assertFalse(Files.exists(folder.resolve(".a.fwjob.part")));
    }
}
