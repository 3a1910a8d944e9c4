package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class UnpackedTest {

    @TempDir
    Path temporary;

    private Path own;

    @BeforeEach
    void make() throws IOException {
        own = folder("fuelwright-logs1");
    }

    private Path folder(String name) throws IOException {
        Path folder = Files.createDirectories(temporary.resolve(name).resolve("1"));
        Files.writeString(folder.resolve("ride.csv"), "time [s],rpm\n");
        return folder.getParent();
    }

    private Path locked(String name, Duration age) throws IOException {
        Path folder = folder(name);
        Path lock = Files.createFile(folder.resolve(Unpacked.LOCK));
        Files.setLastModifiedTime(lock, FileTime.from(Instant.now().minus(age)));
        return folder;
    }

    @Test
    void whatAKilledRunLeftIsRemovedAndNothingElse() throws IOException {
        Path killed = locked("fuelwright-logs2", Duration.ofMinutes(2));
        List<Path> stay = List.of(
                own,
                locked("fuelwright-logs3", Duration.ofSeconds(2)),
                folder("fuelwright-logs4"),
                locked("others-logs", Duration.ofMinutes(2)));
        Unpacked.removeLeft(temporary, own);
        assertFalse(Files.exists(killed));
        for (Path each : stay) {
            assertTrue(Files.exists(each.resolve("1").resolve("ride.csv")), each::toString);
        }
    }

    @Test
    void whatARunThatLivesHasPutDownStays() throws IOException {
        Path living = locked("fuelwright-logs2", Duration.ofMinutes(2));
        try (FileChannel held = FileChannel.open(living.resolve(Unpacked.LOCK), StandardOpenOption.WRITE)) {
            held.lock();
            Unpacked.removeLeft(temporary, own);
        }
        assertTrue(Files.exists(living.resolve("1").resolve("ride.csv")));
    }

    @Test
    void aLinkToAFolderElsewhereIsNotFollowed() throws IOException {
        Path elsewhere = locked("elsewhere", Duration.ofMinutes(2));
        Files.createSymbolicLink(temporary.resolve("fuelwright-logs2"), elsewhere);
        Unpacked.removeLeft(temporary, own);
        assertTrue(Files.exists(elsewhere.resolve("1").resolve("ride.csv")));
    }

    @Test
    void aRunHoldsTheLockOfItsFolder() throws IOException {
        Path lock = Unpacked.newFolder().resolveSibling(Unpacked.LOCK);
        Process other = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xshare:auto",
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        TriesLock.class.getName(),
                        lock.toString())
                .redirectErrorStream(true)
                .start();
        String said = new String(other.getInputStream().readAllBytes()).strip();
        assertEquals("held", said);
    }

    /** Another process: a run sees its own lock in another way. */
    static final class TriesLock {
        private TriesLock() {}

        public static void main(String[] args) throws IOException {
            try (FileChannel channel = FileChannel.open(Path.of(args[0]), StandardOpenOption.WRITE)) {
                System.out.println(channel.tryLock() == null ? "held" : "free");
            }
        }
    }
}
