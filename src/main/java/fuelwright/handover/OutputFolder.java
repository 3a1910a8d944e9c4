package fuelwright.handover;

import fuelwright.handover.OutputException.Why;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.ReadOnlyFileSystemException;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Writes a folder of files whole or not at all. Everything is first written and forced to disk in a temporary folder on the same file
 * system. A folder that isn't there yet then appears by one rename. Into a folder that is there, the old files of the same names are moved
 * aside first and the new ones moved in after, in the given order; a failure undoes it. So not even a kill leaves old and new files mixed.
 * Files with other names are never touched.
 */
public final class OutputFolder {

    private static final int MOST_TEMPORARY_NAMES = 1000;

    private OutputFolder() {}

    /**
     * @param folder where to; made if it isn't there, with the folders above it
     * @param files contents by plain file name, moved in in this order: put last what should never stand there without the rest
     * @param replace whether files of these names may be replaced
     * @throws OutputException with a sentence for the user; then nothing has changed
     */
    public static void write(Path folder, Map<String, byte[]> files, boolean replace) throws OutputException {
        Path target = folder.toAbsolutePath().normalize();
        for (String name : files.keySet()) {
            if (name.isEmpty() || name.startsWith(".") || name.contains("/") || name.contains("\\")) {
                throw new IllegalArgumentException("file name '" + name + "' must be a plain one");
            }
        }
        try {
            check(folder, List.copyOf(files.keySet()), replace);
            if (Files.isDirectory(target)) {
                intoExisting(target.toRealPath(), files);
            } else {
                asNew(target, files);
            }
        } catch (OutputException e) {
            throw e;
        } catch (IOException | ReadOnlyFileSystemException e) {
            throw explained(folder, e);
        }
    }

    /**
     * Whether a {@link #write} of files of these names would be refused at once; so that long work isn't done in vain.
     *
     * @throws OutputException as {@code write} would
     */
    public static void check(Path folder, List<String> names, boolean replace) throws OutputException {
        Path target = folder.toAbsolutePath().normalize();
        if (Files.isDirectory(target)) {
            refuseToOverwrite(folder, target, names, replace);
        } else if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
            throw notAFolder(folder);
        }
    }

    private static OutputException notAFolder(Path folder) {
        return new OutputException(
                Why.WRONG_KIND, folder + " is a file, not a folder. Nothing was written: give another folder", null);
    }

    private static void refuseToOverwrite(Path shown, Path target, List<String> names, boolean replace)
            throws OutputException {
        List<String> there = new ArrayList<>();
        for (String name : names) {
            Path file = target.resolve(name);
            if (Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS)) {
                throw new OutputException(
                        Why.WRONG_KIND,
                        shown.resolve(name) + " is a folder. Nothing was written: move it away or give another folder",
                        null);
            }
            if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
                there.add(name);
            }
        }
        if (!there.isEmpty() && !replace) {
            throw new OutputException(
                    Why.EXISTS,
                    shown + " already holds " + String.join(", ", there)
                            + ". Nothing was written: give another folder, or allow replacing (--replace)",
                    null);
        }
    }

    private static void asNew(Path target, Map<String, byte[]> files) throws IOException {
        Path parent = target.getParent();
        List<Path> made = makeFolders(parent);
        Path staged = null;
        try {
            staged = temporaryFolder(parent, target.getFileName().toString());
            stage(staged, files);
            Files.move(staged, target, StandardCopyOption.ATOMIC_MOVE);
            force(parent);
        } catch (IOException | RuntimeException e) {
            if (staged != null) {
                discard(staged);
            }
            for (Path folder : made) {
                Files.deleteIfExists(folder);
            }
            throw e;
        }
    }

    private static void intoExisting(Path target, Map<String, byte[]> files) throws IOException {
        Path work = temporaryFolder(target, "fuelwright");
        Path fresh = work.resolve("new");
        Path old = work.resolve("old");
        Deque<Path[]> moved = new ArrayDeque<>();
        try {
            Files.createDirectory(fresh);
            Files.createDirectory(old);
            stage(fresh, files);
            for (String name : files.keySet()) {
                if (Files.exists(target.resolve(name), LinkOption.NOFOLLOW_LINKS)) {
                    move(target.resolve(name), old.resolve(name), moved);
                }
            }
            for (String name : files.keySet()) {
                move(fresh.resolve(name), target.resolve(name), moved);
            }
            force(target);
        } catch (IOException | RuntimeException e) {
            while (!moved.isEmpty()) {
                Path[] pair = moved.pop();
                Files.move(pair[1], pair[0], StandardCopyOption.ATOMIC_MOVE);
            }
            discard(work);
            throw e;
        }
        discard(work);
        clearLeftOvers(target);
    }

    /**
     * Clears what killed writes left, once a whole write is in place: earlier, old and new files could mix. Old files that a killed write
     * had moved aside come back where this write brought none of that name.
     */
    private static void clearLeftOvers(Path target) {
        for (int n = 1; n <= MOST_TEMPORARY_NAMES; n++) {
            Path left = target.resolve(temporaryName("fuelwright", n));
            if (!Files.isDirectory(left, LinkOption.NOFOLLOW_LINKS)) {
                continue;
            }
            try {
                bringBack(left.resolve("old"), target);
                discard(left);
            } catch (IOException e) {
                return; // the write itself is done; what is left stays hidden until the next one
            }
        }
    }

    private static void bringBack(Path old, Path target) throws IOException {
        if (!Files.isDirectory(old, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        try (var files = Files.list(old)) {
            for (Path file : files.toList()) {
                Path back = target.resolve(file.getFileName());
                if (!Files.exists(back, LinkOption.NOFOLLOW_LINKS)) {
                    Files.move(file, back, StandardCopyOption.ATOMIC_MOVE);
                }
            }
        }
    }

    private static String temporaryName(String name, int n) {
        return "." + name + ".part-" + n;
    }

    private static void move(Path from, Path to, Deque<Path[]> moved) throws IOException {
        Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        moved.push(new Path[] {from, to});
    }

    private static void stage(Path folder, Map<String, byte[]> files) throws IOException {
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            try (FileChannel channel = FileChannel.open(
                    folder.resolve(file.getKey()), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
                ByteBuffer bytes = ByteBuffer.wrap(file.getValue());
                while (bytes.hasRemaining()) {
                    channel.write(bytes);
                }
                channel.force(true);
            }
        }
        force(folder);
    }

    /** Forces a folder's entries to disk where the system can; some can't open a folder, and then there is nothing to force. */
    private static void force(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException e) {
            return;
        }
    }

    /** The folders that had to be made, deepest first. */
    private static List<Path> makeFolders(Path folder) throws IOException {
        Deque<Path> missing = new ArrayDeque<>();
        for (Path at = folder; at != null && !Files.exists(at); at = at.getParent()) {
            missing.push(at);
        }
        List<Path> made = new ArrayList<>();
        try {
            for (Path each : missing) {
                Files.createDirectory(each);
                made.add(0, each);
            }
        } catch (IOException e) {
            for (Path each : made) {
                Files.deleteIfExists(each);
            }
            throw e;
        }
        return made;
    }

    private static Path temporaryFolder(Path parent, String name) throws IOException {
        for (int n = 1; n <= MOST_TEMPORARY_NAMES; n++) {
            Path candidate = parent.resolve(temporaryName(name, n));
            if (!Files.exists(candidate, LinkOption.NOFOLLOW_LINKS)) {
                return Files.createDirectory(candidate);
            }
        }
        throw new IOException("too many left-over folders ." + name + ".part-* in " + parent);
    }

    private static void discard(Path folder) {
        try (var all = Files.walk(folder)) {
            List<Path> deepestFirst = new ArrayList<>(all.toList());
            java.util.Collections.reverse(deepestFirst);
            for (Path each : deepestFirst) {
                Files.deleteIfExists(each);
            }
        } catch (IOException e) {
            return; // a left-over hidden folder does no harm, and the first failure is what the user must hear of
        }
    }

    static OutputException explained(Path folder, Exception cause) {
        String nothing = ". Nothing was written: ";
        String reason = cause instanceof FileSystemException f && f.getReason() != null ? f.getReason() : "";
        String said = (reason + " " + cause.getMessage()).toLowerCase(Locale.ROOT);
        if (cause instanceof NotDirectoryException || said.contains("not a directory")) {
            return new OutputException(
                    Why.WRONG_KIND,
                    "A part of " + folder + " is a file, not a folder" + nothing + "give another folder",
                    cause);
        }
        if (cause instanceof AccessDeniedException
                || cause instanceof ReadOnlyFileSystemException
                || said.contains("read-only")
                || said.contains("permitted")) {
            return new OutputException(
                    Why.NOT_ALLOWED,
                    folder + " can't be written: it is read-only for you" + nothing
                            + "give another folder or change its permissions",
                    cause);
        }
        if (said.contains("no space")
                || said.contains("quota")
                || said.contains("disk full")
                || said.contains("not enough space")) {
            return new OutputException(
                    Why.NO_ROOM,
                    "There is no room for " + folder + nothing + "free some space or give another folder",
                    cause);
        }
        String detail = reason.isEmpty() ? "" : " (" + reason + ")";
        return new OutputException(
                Why.OTHER, folder + " can't be written" + detail + nothing + "give another folder", cause);
    }
}
