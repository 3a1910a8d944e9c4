package fuelwright.work;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Says to other windows that a job file is open here. Ends with the program at the latest, however that ends. */
public final class JobLock implements AutoCloseable {

    private static final int TRIES = 20;

    private final FileChannel channel;
    private final Path file;
    private final boolean held;

    private JobLock(FileChannel channel, Path file, boolean held) {
        this.channel = channel;
        this.file = file;
        this.held = held;
    }

    /** Takes the lock if nobody holds it. Where none can be made, as in a read-only folder, nobody else can save there either. */
    public static JobLock on(Path job) {
        Path file = job.toAbsolutePath().resolveSibling("." + job.getFileName() + ".lock");
        try {
            for (int n = 0; n < TRIES; n++) {
                FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
                if (!locks(channel)) {
                    channel.close();
                    return new JobLock(null, file, false);
                }
                if (isStill(file, channel)) {
                    return new JobLock(channel, file, true);
                }
                channel.close();
            }
            return new JobLock(null, file, false);
        } catch (IOException e) {
            return new JobLock(null, file, true);
        }
    }

    private static boolean locks(FileChannel channel) throws IOException {
        try {
            return channel.tryLock() != null;
        } catch (OverlappingFileLockException e) {
            return false; // held by another window of this program
        } catch (IOException | RuntimeException e) {
            channel.close();
            throw e;
        }
    }

    /**
     * Whether what was locked still lies there by that name: whoever had it may have removed the file after it was opened here, and then
     * a third one could lock another file of the same name. What is written into one must be seen in the other.
     */
    private static boolean isStill(Path file, FileChannel channel) throws IOException {
        long size = channel.size() + 1;
        channel.write(ByteBuffer.wrap(new byte[] {'.'}), size - 1);
        boolean same = Files.exists(file) && Files.size(file) == size;
        if (same) {
            channel.truncate(0);
        }
        return same;
    }

    /** Whether the job is this window's; another one has it open where not. */
    public boolean isHeld() {
        return held;
    }

    @Override
    public void close() {
        if (channel != null) {
            try {
                Files.deleteIfExists(file);
                channel.close();
            } catch (IOException e) {
                return;
            }
        }
    }
}
