package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.JobFile;
import fuelwright.job.JobRide;
import fuelwright.job.StoredJob;
import fuelwright.job.StoredRide;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Opens a saved job and reads its rides again, exactly as they were read before. */
public final class OpenJob {

    private OpenJob() {}

    /**
     * A job. A log that isn't where it was is looked for beside the job file, then asked for; one that nobody finds refuses the job, so
     * that saving it can't lose the ride. A log whose bytes have changed is read, and said.
     *
     * @param locate asked for a log that isn't where it was; may answer nothing
     * @throws WorkException if the file can't be read at all
     * @throws Cancellation.CancelledException if it isn't wanted any more
     */
    public static Loaded<Job> open(
            Path file, Function<Missing, Optional<Path>> locate, Progress progress, Cancellation cancellation) {
        Loaded<Opened> opened = withLoggers(file, locate, progress, cancellation);
        return new Loaded<>(opened.value().map(Opened::job), opened.issues());
    }

    /**
     * A log that isn't where it was.
     *
     * @param name its file's name
     * @param place where it was
     * @param sha256 fingerprint of what the job was saved with
     */
    public record Missing(String name, String place, String sha256) {

        /** Whether a file holds what the job was saved with, whatever it is called. */
        public boolean is(Path file) {
            try {
                return !sha256.isEmpty() && Files.isRegularFile(file) && sha256.equals(Fingerprint.of(file));
            } catch (IOException e) {
                return false;
            }
        }

        /** The file among these that holds it; else one of its name. */
        public Optional<Path> among(List<Path> files) {
            return files.stream()
                    .filter(this::is)
                    .findFirst()
                    .or(() -> files.stream()
                            .filter(f -> name.equals(String.valueOf(f.getFileName())))
                            .findFirst());
        }
    }

    /**
     * A job and what is known of its rides' second loggers, so that they can be moved again.
     *
     * @param seconds one for each ride
     * @param changed logs whose contents aren't what the job was saved with
     */
    public record Opened(Job job, List<Optional<SecondLogger>> seconds, List<Issue> changed) {
        public Opened {
            seconds = List.copyOf(seconds);
            changed = List.copyOf(changed);
        }
    }

    /** As {@link #open}. */
    public static Loaded<Opened> withLoggers(
            Path file, Function<Missing, Optional<Path>> locate, Progress progress, Cancellation cancellation) {
        Loaded<StoredJob> stored;
        try {
            stored = JobFile.read(String.valueOf(file.getFileName()), Files.readAllBytes(file));
        } catch (IOException e) {
            throw WorkException.reading(file, e);
        }
        if (stored.value().isEmpty()) {
            return Loaded.refused(stored.issues());
        }
        List<Issue> issues = new ArrayList<>(stored.issues());
        List<JobRide> rides = new ArrayList<>();
        List<Optional<SecondLogger>> seconds = new ArrayList<>();
        List<Issue> changed = new ArrayList<>();
        for (StoredRide each : stored.value().get().rides()) {
            cancellation.check();
            ride(each, file, locate, progress, cancellation, issues, seconds, changed)
                    .ifPresent(rides::add);
        }
        issues.addAll(changed);
        if (issues.stream().anyMatch(i -> i.severity() == Issue.Severity.ERROR)) {
            return Loaded.refused(issues);
        }
        return Loaded.of(new Opened(stored.value().get().job().withRides(rides), seconds, changed), issues);
    }

    private static Optional<JobRide> ride(
            StoredRide stored,
            Path jobFile,
            Function<Missing, Optional<Path>> locate,
            Progress progress,
            Cancellation cancellation,
            List<Issue> issues,
            List<Optional<SecondLogger>> seconds,
            List<Issue> changed) {
        Optional<Path> first = find(stored.first(), jobFile, locate, issues, changed);
        Optional<Path> second = stored.second().flatMap(s -> find(s, jobFile, locate, issues, changed));
        if (first.isEmpty() || stored.second().isPresent() && second.isEmpty()) {
            return Optional.empty();
        }
        Loaded<OpenRide.Found> read =
                OpenRide.found(first.get(), second, stored.options(), stored.byHand(), progress, cancellation);
        issues.addAll(read.issues());
        read.value().ifPresent(found -> seconds.add(found.second()));
        return read.value().map(found -> new JobRide(found.ride(), stored.madeWith(), Optional.of(found.source())));
    }

    private static Optional<Path> find(
            StoredRide.Log log,
            Path jobFile,
            Function<Missing, Optional<Path>> locate,
            List<Issue> issues,
            List<Issue> changed) {
        String name = plain(log.name());
        try {
            if (log.content().isPresent()) {
                Path file = Unpacked.newFolder().resolve(name);
                Files.write(file, log.content().get());
                return Optional.of(file);
            }
            Path folder = jobFile.toAbsolutePath().getParent();
            Optional<Path> found = there(folder, log.path())
                    .or(() -> there(folder, name))
                    .or(() -> locate.apply(new Missing(name, log.path(), log.sha256()))
                            .filter(Files::isRegularFile));
            if (found.isEmpty()) {
                issues.add(Issue.error(
                        String.valueOf(jobFile.getFileName()),
                        0,
                        0,
                        log.path().isEmpty()
                                ? "its ride " + name + " was gone already when the job was saved"
                                : "its ride " + name + " isn't at " + log.path() + " any more",
                        "Put it beside the job file, or open both files together"));
            } else if (!log.sha256().isEmpty() && !log.sha256().equals(Fingerprint.of(found.get()))) {
                changed.add(Issue.warning(
                        name,
                        0,
                        0,
                        "this log isn't what the job was saved with: its contents have changed since it was read",
                        "Check that it is the same ride: the proposal follows from what it holds now"));
            }
            return found;
        } catch (IOException e) {
            issues.add(Issue.error(name, 0, 0, "this log can't be read", "Check its permissions and the disk"));
            return Optional.empty();
        }
    }

    private static Optional<Path> there(Path folder, String path) {
        try {
            return path.isEmpty()
                    ? Optional.empty()
                    : Optional.of(folder.resolve(path).normalize()).filter(Files::isRegularFile);
        } catch (InvalidPathException e) {
            return Optional.empty();
        }
    }

    /** A name without folders, whatever a file claims. */
    private static String plain(String name) {
        String last = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
        String safe = last.replaceAll("[\\x00-\\x1f:*?\"<>|]", "_");
        return safe.isEmpty() || safe.equals(".") || safe.equals("..") ? "ride.csv" : safe;
    }
}
