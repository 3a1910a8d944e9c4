package fuelwright.work;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Says to other windows that a job file is open here. Ends with the program at the latest, however that ends. */
public final class JobLock implements AutoCloseable {

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
            FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            try {
                if (channel.tryLock() != null) {
                    return new JobLock(channel, file, true);
                }
            } catch (OverlappingFileLockException e) {
                // held by another window of this program
            }
            channel.close();
            return new JobLock(null, file, false);
        } catch (IOException e) {
            return new JobLock(null, file, true);
        }
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
