package fuelwright.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import fuelwright.work.StateFolder;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The window as a process of its own; {@code .ci/close-check} does the same, and more, with a real screen. */
class EndingTest {

    private static final List<String> HEADLESS = List.of(
            "-Dglass.platform=Monocle",
            "-Dmonocle.platform=Headless",
            "-Dprism.order=sw",
            "-Dprism.text=t2k",
            "-Djava.awt.headless=true");

    @TempDir
    Path folder;

    private Process start(String... options) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(HEADLESS);
        command.add("-Djava.io.tmpdir=" + Files.createDirectory(folder.resolve("temporary")));
        command.addAll(List.of(options));
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), EndedWindow.Start.class.getName()));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        // It would be told in the log.
        builder.environment().remove("JAVA_TOOL_OPTIONS");
        builder.environment().put("XDG_STATE_HOME", folder.resolve("state").toString());
        return builder.start();
    }

    private static BufferedReader said(Process window) {
        return new BufferedReader(new InputStreamReader(window.getInputStream(), StandardCharsets.UTF_8));
    }

    private int code(Process window) throws InterruptedException {
        assertTrue(window.waitFor(1, TimeUnit.MINUTES), "it doesn't end");
        return window.exitValue();
    }

    private List<String> names(String in, String begin) throws IOException {
        try (var found = Files.list(folder.resolve(in))) {
            return found.map(f -> f.getFileName().toString())
                    .filter(n -> n.startsWith(begin))
                    .toList();
        }
    }

    @Test
    void aWindowClosedWhileItDrawsAndWorksLeavesNothing() throws IOException, InterruptedException {
        Process window = start("-Dclosed=true");
        try (BufferedReader said = said(window)) {
            assertEquals("", said.lines().collect(Collectors.joining("\n")));
            assertEquals(0, code(window));
        } finally {
            window.destroyForcibly();
        }
        assertEquals(List.of(), names("temporary", "fuelwright"));
        assertEquals(List.of(), names("state/fuelwright", "unsaved"));
    }

    @Test
    void aWindowEndedFromOutsideKeepsAtOnceWhatIsNotSaved() throws IOException, InterruptedException {
        Process window = start();
        assumeTrue(window.supportsNormalTermination(), "no such end on this system");
        try (BufferedReader said = said(window)) {
            assertEquals("ready", said.readLine());
            // Not by the process itself, which would no longer listen.
            window.toHandle().destroy();
            assertEquals("", said.lines().collect(Collectors.joining("\n")));
            assertEquals(143, code(window));
        } finally {
            window.destroyForcibly();
        }
        assertEquals(List.of(), names("temporary", "fuelwright"));
        StateFolder state = StateFolder.at(folder.resolve("state").resolve("fuelwright"));
        assertEquals(
                List.of("not saved yet"),
                state.left().stream().map(StateFolder.Left::name).toList());
    }
}
