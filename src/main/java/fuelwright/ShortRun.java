package fuelwright;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.TimeUnit;

/**
 * Runs a command in a Java machine set up for work that ends after seconds. The options can't be set from inside a running machine nor by the
 * jar, so the one that {@code java -jar} started starts a second and waits for it: machine code made quickly rather than well, a collector
 * for one thread that gives memory back, and the classes as the build laid them down. Whoever chose options of his own keeps them: the
 * command then runs where it is.
 */
final class ShortRun {

    /** Name of the property that tells the second machine whom it works for. */
    private static final String FOR = "fuelwright.for";

    private static final String CLASSES = "fuelwright.jsa";
    /** Logs larger than this keep a machine busy for long enough that code made well pays. */
    private static final long LONG_BYTES = 250L << 20;

    private static final List<String> OWN_OPTIONS = List.of("JDK_JAVA_OPTIONS", "JAVA_TOOL_OPTIONS", "_JAVA_OPTIONS");
    private static final int KILLED = 143;
    private static final long ENDING_S = 5;

    private ShortRun() {}

    /** The exit code of the second machine; empty where there is to be none, or none could be started. */
    static OptionalInt of(String... args) {
        ProcessHandle here = ProcessHandle.current();
        String mine = System.getProperty(FOR);
        if (mine != null) {
            endWith(Long.parseLong(mine));
            return OptionalInt.empty();
        }
        Optional<List<String>> command = command(
                here.info().arguments().orElse(new String[0]),
                System.getenv(),
                Path.of(System.getProperty("java.home"), "bin", "java"),
                System.getProperty("java.class.path", ""),
                here.pid(),
                args);
        return command.map(ShortRun::run).orElse(OptionalInt.empty());
    }

    /**
     * What to start; empty where the command had better run here.
     *
     * @param started the arguments of this machine, its options first; none where the system doesn't tell
     */
    static Optional<List<String>> command(
            String[] started, Map<String, String> environment, Path java, String classPath, long pid, String... args) {
        boolean plain = started.length > 1 && started[0].equals("-jar") && started[1].equals(classPath);
        if (!plain || OWN_OPTIONS.stream().anyMatch(environment::containsKey) || bytes(args) > LONG_BYTES) {
            return Optional.empty();
        }
        List<String> command = new ArrayList<>(List.of(
                java.toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xms48m",
                "-XX:MaxNewSize=32m",
                "-XX:MinHeapFreeRatio=5",
                "-XX:MaxHeapFreeRatio=20",
                "-Xlog:disable"));
        Path classes = Path.of(classPath).resolveSibling(CLASSES);
        if (Files.exists(classes)) {
            command.add("-XX:SharedArchiveFile=" + classes);
        }
        command.addAll(List.of("-D" + FOR + "=" + pid, "-jar", classPath));
        command.addAll(List.of(args));
        return Optional.of(command);
    }

    /** Of the files that are named. */
    private static long bytes(String... args) {
        long bytes = 0;
        for (String arg : args) {
            try {
                Path file = Path.of(arg.substring(arg.indexOf('=') + 1));
                bytes += Files.isRegularFile(file) ? Files.size(file) : 0;
            } catch (IOException | IllegalArgumentException e) {
                continue; // no file, then
            }
        }
        return bytes;
    }

    private static OptionalInt run(List<String> command) {
        Process second;
        try {
            second = new ProcessBuilder(command).inheritIO().start();
        } catch (IOException e) {
            return OptionalInt.empty();
        }
        Thread ending = new Thread(() -> end(second));
        Runtime.getRuntime().addShutdownHook(ending);
        try {
            int code = second.waitFor();
            Runtime.getRuntime().removeShutdownHook(ending);
            return OptionalInt.of(code);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            end(second);
            return OptionalInt.of(KILLED);
        } catch (IllegalStateException e) {
            return OptionalInt.of(KILLED);
        }
    }

    private static void end(Process second) {
        second.destroy();
        try {
            if (!second.waitFor(ENDING_S, TimeUnit.SECONDS)) {
                second.destroyForcibly();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Nobody waits for an answer when the first machine has been killed. */
    private static void endWith(long first) {
        ProcessHandle.of(first).ifPresent(p -> p.onExit().thenRun(() -> System.exit(KILLED)));
    }
}
