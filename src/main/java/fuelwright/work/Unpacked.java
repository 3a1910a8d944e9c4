package fuelwright.work;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Where the program puts down logs that it carries inside itself or inside a job file. One folder a run, removed when the program ends. */
final class Unpacked {

    private static Path folder;
    private static int count;

    private Unpacked() {}

    /**
     * A new folder inside it.
     *
     * @throws IOException if there can be none
     */
    static synchronized Path newFolder() throws IOException {
        if (folder == null) {
            folder = Files.createTempDirectory("fuelwright-logs");
            Path mine = folder;
            Runtime.getRuntime().addShutdownHook(new Thread(() -> remove(mine), "remove unpacked logs"));
        }
        count++;
        return Files.createDirectory(folder.resolve(Integer.toString(count)));
    }

    /** Whether a file lies there, so that it is gone when the program ends. */
    static synchronized boolean holds(Path file) {
        return folder != null && file.toAbsolutePath().startsWith(folder);
    }

    private static void remove(Path all) {
        try (var found = Files.walk(all)) {
            List<Path> deepestFirst = new ArrayList<>(found.toList());
            Collections.reverse(deepestFirst);
            for (Path each : deepestFirst) {
                Files.deleteIfExists(each);
            }
        } catch (IOException e) {
            // What stays in the folder for temporary files is the system's to clean.
            return;
        }
    }
}
