package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A program killed while it saves leaves a job that opens. A few kills here; {@code -Dkills=300} for many. */
class KilledSavesTest {

    private static final int KILLS = Integer.getInteger("kills", 3);

    @TempDir
    Path folder;

    @Test
    void aKillAtAnyInstantLeavesAJobThatOpens() throws IOException, InterruptedException {
        Random random = new Random(11);
        Path file = folder.resolve("killed.fwjob");
        Path part = folder.resolve(".killed.fwjob.part");
        int cut = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            Process process = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-XX:TieredStopAtLevel=1",
                            "-Xmx256m",
                            // What a killed program has unpacked stays there.
                            "-Djava.io.tmpdir=" + folder,
                            "-cp",
                            System.getProperty("java.class.path"),
                            SavingForEver.class.getName(),
                            file.toString())
                    .redirectErrorStream(true)
                    .start();
            try (BufferedReader out =
                    new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
                assertEquals("saving", out.readLine());
                process.waitFor(random.nextInt(400), TimeUnit.MILLISECONDS);
                process.destroyForcibly();
                process.waitFor();
            }
            Loaded<Job> opened = OpenJob.open(file, name -> Optional.empty(), Progress.NONE, Cancellation.NEVER);
            assertTrue(opened.value().isPresent(), () -> opened.issues().toString());
            assertEquals(2, opened.value().get().rides().size());
            cut += Files.deleteIfExists(part) ? 1 : 0;
        }
        assertTrue(KILLS < 50 || cut > 0, KILLS + " kills, none of them in the middle of a write");
    }
}
