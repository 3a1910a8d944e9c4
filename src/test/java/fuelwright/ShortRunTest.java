package fuelwright;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ShortRunTest {

    private static final Path JAVA = Path.of("java");

    @TempDir
    private Path folder;

    private Optional<List<String>> command(String[] started, Map<String, String> environment, String... args) {
        return ShortRun.command(started, environment, JAVA, jar(), 7, args);
    }

    private String jar() {
        return folder.resolve("fuelwright.jar").toString();
    }

    @Test
    void aCommandOfTheJarGoesOnInASecondMachineWithAllItsArguments() {
        String[] started = {"-jar", jar(), "propose", "--table", "a b.csv"};
        List<String> command =
                command(started, Map.of(), "propose", "--table", "a b.csv").orElseThrow();
        assertEquals("java", command.get(0));
        assertEquals(
                List.of("-Dfuelwright.for=7", "-jar", jar(), "propose", "--table", "a b.csv"),
                command.subList(command.size() - 6, command.size()));
    }

    @Test
    void theLaidDownClassesAreUsedWhereTheyLieBesideTheJar() throws IOException {
        String[] started = {"-jar", jar(), "demo"};
        assertTrue(command(started, Map.of(), "demo").orElseThrow().stream().noneMatch(o -> o.contains("Archive")));
        Path classes = Files.createFile(folder.resolve("fuelwright.jsa"));
        assertTrue(command(started, Map.of(), "demo").orElseThrow().contains("-XX:SharedArchiveFile=" + classes));
    }

    @Test
    void whoeverChoseOptionsOfHisOwnKeepsThem() {
        String[] started = {"-Xmx1g", "-jar", jar(), "demo"};
        assertEquals(Optional.empty(), command(started, Map.of(), "demo"));
        String[] plain = {"-jar", jar(), "demo"};
        assertEquals(Optional.empty(), command(plain, Map.of("JDK_JAVA_OPTIONS", "-Xmx1g"), "demo"));
        assertEquals(Optional.empty(), command(plain, Map.of("JAVA_TOOL_OPTIONS", "-Xmx1g"), "demo"));
    }

    @Test
    void whereTheSystemDoesNotTellHowItWasStartedTheCommandRunsHere() {
        assertEquals(Optional.empty(), command(new String[0], Map.of(), "demo"));
    }

    @Test
    void longLogsRunHereWhereCodeMadeWellPays() throws IOException {
        Path log = folder.resolve("long.csv");
        try (RandomAccessFile file = new RandomAccessFile(log.toFile(), "rw")) {
            file.setLength(300L << 20);
        }
        String[] started = {"-jar", jar(), "propose"};
        assertEquals(Optional.empty(), command(started, Map.of(), "propose", "--ride", log.toString()));
        assertEquals(Optional.empty(), command(started, Map.of(), "propose", "--ride=" + log));
    }
}
