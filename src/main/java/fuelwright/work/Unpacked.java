package fuelwright.work;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Where the program puts down logs that it carries inside itself or inside a job file. One folder a run, removed when the program ends; what a
 * run left that was killed, the next one removes: a run holds a lock in its folder as long as it lives.
 */
final class Unpacked {

    static final String LOCK = "in-use";

    private static final String NAME = "fuelwright-logs";
    /** A younger lock may be one whose owner has made it and is about to hold it. */
    private static final Duration SETTLED = Duration.ofMinutes(1);

    private static final int TRIES = 5;
    private static final long BETWEEN_TRIES_MS = 40;

    private static Path folder;
    private static FileChannel lock;
    private static boolean over;
    private static int count;

    private Unpacked() {}

    /**
     * A new folder inside it.
     *
     * @throws IOException if there can be none
     */
    static synchronized Path newFolder() throws IOException {
        if (over) {
            throw new IOException("the program is ending");
        }
        if (folder == null) {
            folder = Files.createTempDirectory(NAME);
            Runtime.getRuntime().addShutdownHook(new Thread(Unpacked::end, "remove unpacked logs"));
            hold(folder.resolve(LOCK));
            removeLeft(folder.getParent(), folder);
        }
        count++;
        return Files.createDirectory(folder.resolve(Integer.toString(count)));
    }

    /** Whether a file lies there, so that it is gone when the program ends. */
    static synchronized boolean holds(Path file) {
        return folder != null && file.toAbsolutePath().startsWith(folder);
    }

    /** A lock that isn't held would have the folder removed: where it can't be held there must be none. */
    private static void hold(Path file) throws IOException {
        lock = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        try {
            lock.lock();
        } catch (IOException e) {
            lock.close();
            Files.deleteIfExists(file);
        }
    }

    /** Nothing may be put there any more; what still is being written while it is removed is removed after it. */
    private static synchronized void end() {
        over = true;
        try {
            lock.close();
            for (int i = 0; i < TRIES && !remove(folder); i++) {
                Thread.sleep(BETWEEN_TRIES_MS);
            }
        } catch (IOException | InterruptedException e) {
            return; // the next run removes it
        }
    }

    /**
     * Removes the folders of runs that are over.
     *
     * @param own stays
     */
    static void removeLeft(Path temporary, Path own) {
        try (var found = Files.newDirectoryStream(temporary, NAME + "*")) {
            for (Path each : found) {
                if (!each.equals(own) && isLeft(each, own)) {
                    remove(each);
                }
            }
        } catch (IOException | UncheckedIOException e) {
            return; // what stays in the folder for temporary files is the system's to clean
        }
    }

    /** Anybody may write in the folder for temporary files: only what belongs to the same user is taken for ours. */
    private static boolean isLeft(Path each, Path own) {
        Path held = each.resolve(LOCK);
        try {
            return Files.isDirectory(each, LinkOption.NOFOLLOW_LINKS)
                    && Files.isRegularFile(held, LinkOption.NOFOLLOW_LINKS)
                    && Files.getOwner(each, LinkOption.NOFOLLOW_LINKS).equals(Files.getOwner(own))
                    && Files.getLastModifiedTime(held)
                            .toInstant()
                            .isBefore(Instant.now().minus(SETTLED))
                    && isFree(held);
        } catch (IOException | UnsupportedOperationException e) {
            return false;
        }
    }

    private static boolean isFree(Path held) throws IOException {
        try (FileChannel channel = FileChannel.open(held, StandardOpenOption.WRITE)) {
            return channel.tryLock() != null;
        } catch (OverlappingFileLockException e) {
            return false;
        }
    }

    /** @return whether all of it is gone */
    private static boolean remove(Path all) {
        try (var found = Files.walk(all)) {
            List<Path> deepestFirst = new ArrayList<>(found.toList());
            Collections.reverse(deepestFirst);
            for (Path each : deepestFirst) {
                Files.deleteIfExists(each);
            }
            return true;
        } catch (IOException | UncheckedIOException e) {
            return Files.notExists(all);
        }
    }
}
