package fuelwright.work;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fuelwright.job.Job;
import fuelwright.job.JobFile;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What the program keeps between two runs, in one folder of the user's: small settings, the jobs opened last, and, while a job is worked
 * on, a copy of it that outlives a crash. What can't be written there is given up quietly: the work itself never depends on it.
 *
 * <p>Thread safety: its methods exclude each other.
 */
public final class StateFolder {

    private static final int MOST_RECENT = 8;
    private static final String RECOVERY = "unsaved-";
    private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    private final Optional<Path> folder;
    private FileChannel owned;
    private Path mine;

    private StateFolder(Optional<Path> folder) {
        this.folder = folder;
    }

    public static StateFolder at(Path folder) {
        return new StateFolder(Optional.of(folder));
    }

    /** Keeps nothing. */
    public static StateFolder none() {
        return new StateFolder(Optional.empty());
    }

    /** The user's own: in {@code $XDG_STATE_HOME}, else in {@code ~/.local/state}. */
    public static StateFolder ofUser() {
        String state = System.getenv("XDG_STATE_HOME");
        Path folder = state == null || state.isBlank()
                ? Path.of(System.getProperty("user.home"), ".local", "state")
                : Path.of(state);
        return at(folder.resolve("fuelwright"));
    }

    /** A setting; empty where it was never kept. */
    public synchronized Optional<String> get(String name) {
        JsonNode value = settings().path(name);
        return value.isTextual() ? Optional.of(value.asText()) : Optional.empty();
    }

    /** Keeps a setting. */
    public synchronized void put(String name, String value) {
        ObjectNode settings = settings();
        settings.put(name, value);
        write(settings);
    }

    /** The jobs opened or saved last, newest first, as far as they are still there. */
    public synchronized List<Path> recentJobs() {
        List<Path> all = new ArrayList<>();
        for (JsonNode each : settings().path("recentJobs")) {
            try {
                Path file = Path.of(each.asText());
                if (Files.isRegularFile(file)) {
                    all.add(file);
                }
            } catch (InvalidPathException e) {
                continue;
            }
        }
        return all;
    }

    /** Puts a job at the head of {@link #recentJobs}. */
    public synchronized void opened(Path job) {
        Path file = job.toAbsolutePath().normalize();
        List<Path> all = new ArrayList<>(recentJobs());
        all.remove(file);
        all.add(0, file);
        ObjectNode settings = settings();
        var list = settings.putArray("recentJobs");
        all.stream().limit(MOST_RECENT).forEach(p -> list.add(p.toString()));
        write(settings);
    }

    private ObjectNode settings() {
        try {
            if (folder.isPresent() && Files.isRegularFile(file())) {
                JsonNode root = MAPPER.readTree(file().toFile());
                if (root instanceof ObjectNode object) {
                    return object;
                }
            }
        } catch (IOException e) {
            return MAPPER.createObjectNode();
        }
        return MAPPER.createObjectNode();
    }

    private Path file() {
        return folder.orElseThrow().resolve("settings.json");
    }

    private void write(ObjectNode settings) {
        if (folder.isEmpty()) {
            return;
        }
        try {
            Files.createDirectories(folder.get());
            Path part = folder.get().resolve("settings.json.part");
            Disk.REAL.write(part, MAPPER.writeValueAsBytes(settings));
            Disk.REAL.replace(part, file());
        } catch (IOException e) {
            return;
        }
    }

    /** Work that nobody saved, left by a run that ended without closing. */
    public record Left(Path copy, String name, Optional<Path> file) {}

    /**
     * Keeps a copy of a job that is worked on, in place of the one before.
     *
     * @param file where it was last saved
     */
    public synchronized void keep(Job job, Optional<Path> file) {
        if (folder.isEmpty() || !SaveJob.canSave(job)) {
            return;
        }
        try {
            if (mine == null) {
                own();
            }
            SaveJob.save(job, mine);
            ObjectNode about = MAPPER.createObjectNode().put("name", job.name());
            file.ifPresent(f -> about.put("file", f.toAbsolutePath().toString()));
            Disk.REAL.write(about(mine), MAPPER.writeValueAsBytes(about));
        } catch (IOException | WorkException e) {
            return;
        }
    }

    /** A name that no other run uses: its lock is held as long as this one lives. */
    private void own() throws IOException {
        Files.createDirectories(folder.get());
        for (int n = 1; mine == null; n++) {
            Path candidate = folder.get().resolve(RECOVERY + n + JobFile.SUFFIX);
            if (!Files.exists(candidate)) {
                FileChannel channel =
                        FileChannel.open(lock(candidate), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
                if (tryLock(channel) != null && !Files.exists(candidate)) {
                    owned = channel;
                    mine = candidate;
                } else {
                    channel.close();
                }
            }
        }
    }

    private static FileLock tryLock(FileChannel channel) throws IOException {
        try {
            return channel.tryLock();
        } catch (OverlappingFileLockException e) {
            return null;
        }
    }

    private static Path lock(Path copy) {
        return copy.resolveSibling(copy.getFileName() + ".lock");
    }

    private static Path about(Path copy) {
        return copy.resolveSibling(copy.getFileName() + ".json");
    }

    /** Nothing is unsaved any more: the copy goes. */
    public synchronized void settled() {
        if (mine != null) {
            drop(mine);
            try {
                owned.close();
                Files.deleteIfExists(lock(mine));
            } catch (IOException e) {
                // a left-over empty file does no harm
            }
            owned = null;
            mine = null;
        }
    }

    /** This run is over and its copy, if there is one, stays: work that was left. */
    public synchronized void leave() {
        if (mine != null) {
            try {
                owned.close();
            } catch (IOException e) {
                // it goes with the program
            }
            owned = null;
            mine = null;
        }
    }

    /** Work left by runs that are over, the newest first. */
    public synchronized List<Left> left() {
        List<Left> all = new ArrayList<>();
        if (folder.isEmpty() || !Files.isDirectory(folder.get())) {
            return all;
        }
        try (var files = Files.newDirectoryStream(folder.get(), RECOVERY + "*" + JobFile.SUFFIX)) {
            for (Path copy : files) {
                if (!copy.equals(mine) && isFree(copy) && Files.isRegularFile(about(copy))) {
                    JsonNode about = MAPPER.readTree(about(copy).toFile());
                    all.add(new Left(
                            copy,
                            about.path("name").asText(),
                            about.has("file")
                                    ? Optional.of(Path.of(about.path("file").asText()))
                                    : Optional.empty()));
                }
            }
        } catch (IOException | InvalidPathException e) {
            return List.of();
        }
        all.sort(Comparator.comparing((Left work) -> work.copy().toFile().lastModified())
                .reversed());
        return all;
    }

    private static boolean isFree(Path copy) throws IOException {
        try (FileChannel channel = FileChannel.open(lock(copy), StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            return tryLock(channel) != null;
        }
    }

    /** Removes work that was left. */
    public synchronized void drop(Path copy) {
        try {
            Files.deleteIfExists(copy);
            Files.deleteIfExists(about(copy));
            if (!copy.equals(mine)) {
                Files.deleteIfExists(lock(copy));
            }
        } catch (IOException e) {
            return;
        }
    }
}
