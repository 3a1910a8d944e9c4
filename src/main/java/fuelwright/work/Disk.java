package fuelwright.work;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** The few things that saving does to a disk; tests let each of them fail. */
interface Disk {

    /** Writes a new file and forces it to the disk. */
    void write(Path file, byte[] bytes) throws IOException;

    /** Puts a file into another's place, at once. */
    void replace(Path from, Path to) throws IOException;

    /** Removes a file if it is there. */
    void remove(Path file) throws IOException;

    /** Writes a file in place of an older one, at once: whoever opens it finds the old bytes or the new ones. */
    default void put(Path file, byte[] bytes) throws IOException {
        Path target = file.toAbsolutePath();
        Path part = target.resolveSibling("." + target.getFileName() + ".part");
        try {
            write(part, bytes);
            replace(part, target);
        } catch (IOException e) {
            try {
                remove(part);
            } catch (IOException second) {
                e.addSuppressed(second);
            }
            throw e;
        }
    }

    /** The real one. */
    Disk REAL = new Disk() {
        @Override
        public void write(Path file, byte[] bytes) throws IOException {
            try (FileChannel channel = FileChannel.open(
                    file, StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.TRUNCATE_EXISTING)) {
                ByteBuffer left = ByteBuffer.wrap(bytes);
                while (left.hasRemaining()) {
                    channel.write(left);
                }
                channel.force(true);
            }
        }

        @Override
        public void replace(Path from, Path to) throws IOException {
            try {
                Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
            }
        }

        @Override
        public void remove(Path file) throws IOException {
            Files.deleteIfExists(file);
        }
    };
}
