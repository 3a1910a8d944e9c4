package fuelwright.work;

import fuelwright.job.Job;
import fuelwright.job.JobFile;
import fuelwright.job.JobRide;
import fuelwright.job.RideSource;
import fuelwright.job.StoredJob;
import fuelwright.job.StoredRide;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Saves a job as one file, in place of an older one, at once: whoever opens it finds the old job or the new one, whatever happens in
 * between. Logs are carried inside where all of them together are small, else they are remembered by place and fingerprint.
 */
public final class SaveJob {

    /** Logs of at most so many bytes together are carried inside. */
    public static final long MOST_INSIDE_BYTES = 16L << 20;

    private SaveJob() {}

    /**
     * @throws WorkException with a sentence for the user; the old file is as it was
     */
    public static void save(Job job, Path file) {
        save(job, file, Disk.REAL);
    }

    static void save(Job job, Path file, Disk disk) {
        try {
            disk.put(file, bytes(job, file.toAbsolutePath()));
        } catch (IOException e) {
            throw WorkException.writing(file, e);
        }
    }

    /** Whether every ride has a log that it was read from; without one a job can't be saved. */
    public static boolean canSave(Job job) {
        return job.rides().stream().allMatch(r -> r.source().isPresent());
    }

    /**
     * The bytes of a job file that is to lie at {@code file}.
     *
     * @throws WorkException if a ride's log can't be read any more
     */
    public static byte[] bytes(Job job, Path file) {
        long total = 0;
        for (JobRide ride : job.rides()) {
            if (ride.source().isPresent()) {
                total += size(ride.source().get().file())
                        + ride.source().get().secondLogger().map(SaveJob::size).orElse(0L);
            }
        }
        boolean inside = total <= MOST_INSIDE_BYTES;
        List<StoredRide> rides = new ArrayList<>();
        for (JobRide ride : job.rides()) {
            RideSource source = ride.source()
                    .orElseThrow(() ->
                            new IllegalArgumentException("ride " + ride.ride().name() + " has no log"));
            rides.add(new StoredRide(
                    ride.ride().name(),
                    log(source.file(), file, inside),
                    source.secondLogger().map(s -> log(s, file, inside)),
                    source.byHand(),
                    source.options(),
                    ride.madeWith()));
        }
        return JobFile.write(new StoredJob(job.withRides(List.of()), rides));
    }

    private static long size(Path log) {
        try {
            return Files.size(log);
        } catch (IOException e) {
            throw WorkException.reading(log, e);
        }
    }

    private static StoredRide.Log log(Path log, Path jobFile, boolean inside) {
        String name = String.valueOf(log.getFileName());
        try {
            return inside || Unpacked.holds(log)
                    ? new StoredRide.Log(name, "", Fingerprint.of(log), Optional.of(Files.readAllBytes(log)))
                    : new StoredRide.Log(name, place(log, jobFile), Fingerprint.of(log), Optional.empty());
        } catch (IOException e) {
            throw WorkException.reading(log, e);
        }
    }

    /** Relative to the job file where both lie on one disk, with forward slashes. */
    private static String place(Path log, Path jobFile) {
        Path absolute = log.toAbsolutePath().normalize();
        Path folder = jobFile.toAbsolutePath().normalize().getParent();
        boolean oneDisk = folder != null && absolute.getRoot().equals(folder.getRoot());
        return (oneDisk ? folder.relativize(absolute) : absolute).toString().replace('\\', '/');
    }
}
