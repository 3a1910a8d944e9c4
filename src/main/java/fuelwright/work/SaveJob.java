package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.job.Job;
import fuelwright.job.JobFile;
import fuelwright.job.JobRide;
import fuelwright.job.Results;
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

    private static final int LONGEST_NAME = 80;

    private SaveJob() {}

    /**
     * A job file's bytes.
     *
     * @param issues logs that are gone or have changed since they were read; the job keeps the fingerprint of what was read
     */
    public record Made(byte[] bytes, List<Issue> issues) {
        public Made {
            issues = List.copyOf(issues);
        }
    }

    /**
     * @return logs that are gone or have changed since they were read
     * @throws WorkException with a sentence for the user; the old file is as it was
     */
    public static List<Issue> save(Job job, Path file) {
        return save(job, Optional.empty(), file);
    }

    /**
     * With what came out of it, so that a folder of jobs can be looked through.
     *
     * @param results of this very job
     * @return logs that are gone or have changed since they were read
     * @throws WorkException with a sentence for the user; the old file is as it was
     */
    public static List<Issue> save(Job job, Optional<Results> results, Path file) {
        return save(job, results, file, Disk.REAL);
    }

    static List<Issue> save(Job job, Optional<Results> results, Path file, Disk disk) {
        Made made = make(job, results, file.toAbsolutePath());
        try {
            disk.put(file, made.bytes());
        } catch (IOException e) {
            throw WorkException.writing(file, e);
        }
        return made.issues();
    }

    /** A file name for a job of that name, whatever it is called. */
    public static String fileName(String jobName) {
        String safe = jobName.replaceAll("(?i)(\\.fwjob)+\\s*$", "")
                .replaceAll("[^\\p{L}\\p{N} _-]", "_")
                .strip()
                .replaceAll("^[-_ ]+", "");
        return (safe.isEmpty()
                        ? "job"
                        : safe.substring(0, Math.min(safe.length(), LONGEST_NAME))
                                .strip())
                + JobFile.SUFFIX;
    }

    /** Whether every ride has a log that it was read from; without one a job can't be saved. */
    public static boolean canSave(Job job) {
        return job.rides().stream().allMatch(r -> r.source().isPresent());
    }

    /** The bytes of a job file that is to lie at {@code file}. */
    public static byte[] bytes(Job job, Optional<Results> results, Path file) {
        return make(job, results, file).bytes();
    }

    /** The same, with what is to be said of its logs. */
    public static Made make(Job job, Optional<Results> results, Path file) {
        long total = 0;
        for (JobRide ride : job.rides()) {
            if (ride.source().isPresent()) {
                total += size(ride.source().get().log())
                        + ride.source().get().secondLogger().map(SaveJob::size).orElse(0L);
            }
        }
        boolean inside = total <= MOST_INSIDE_BYTES;
        List<Issue> issues = new ArrayList<>();
        List<StoredRide> rides = new ArrayList<>();
        for (JobRide ride : job.rides()) {
            RideSource source = ride.source()
                    .orElseThrow(() ->
                            new IllegalArgumentException("ride " + ride.ride().name() + " has no log"));
            rides.add(new StoredRide(
                    ride.ride().name(),
                    log(source.log(), file, inside, issues),
                    source.secondLogger().map(s -> log(s, file, inside, issues)),
                    source.byHand(),
                    source.options(),
                    ride.madeWith()));
        }
        return new Made(JobFile.write(new StoredJob(job.withRides(List.of()), rides, results)), issues);
    }

    private static long size(RideSource.Log log) {
        try {
            return Files.size(log.file());
        } catch (IOException e) {
            return 0;
        }
    }

    /** Carried inside only as it was read: else the job would open with another ride than it was made from, and nobody would be told. */
    private static StoredRide.Log log(RideSource.Log log, Path jobFile, boolean inside, List<Issue> issues) {
        String name = String.valueOf(log.file().getFileName());
        boolean ours = Unpacked.holds(log.file());
        String place = ours ? "" : place(log.file(), jobFile);
        try {
            byte[] content = inside || ours ? Files.readAllBytes(log.file()) : null;
            String now = content == null ? Fingerprint.of(log.file()) : Fingerprint.of(content);
            if (log.sha256().isEmpty() || log.sha256().equals(now)) {
                return content == null
                        ? new StoredRide.Log(name, place, now, Optional.empty())
                        : new StoredRide.Log(name, "", now, Optional.of(content));
            }
            issues.add(Issue.warning(
                    name,
                    0,
                    0,
                    "this log has changed since it was read; the job keeps the fingerprint of what was read",
                    "Read it again if the change was meant"));
        } catch (IOException e) {
            issues.add(Issue.warning(
                    name,
                    0,
                    0,
                    "this log is gone or can't be read; the job keeps its fingerprint and asks for it when it is opened",
                    "Put it back, or keep a copy: without it the ride can't be opened again"));
        }
        return new StoredRide.Log(name, place, log.sha256(), Optional.empty());
    }

    /** Relative to the job file where both lie on one disk, with forward slashes. */
    private static String place(Path log, Path jobFile) {
        Path absolute = log.toAbsolutePath().normalize();
        Path folder = jobFile.toAbsolutePath().normalize().getParent();
        boolean oneDisk = folder != null && absolute.getRoot().equals(folder.getRoot());
        return (oneDisk ? folder.relativize(absolute) : absolute).toString().replace('\\', '/');
    }
}
