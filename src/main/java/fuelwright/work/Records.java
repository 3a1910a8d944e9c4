package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.JobFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A folder of jobs, with its subfolders: a workshop's memory. Files are only read, never altered, locked or unpacked; one that is damaged or
 * of a later version is a record with its reason.
 */
public final class Records {

    private static final int DEEPEST = 6;
    private static final int MOST = 5000;

    private Records() {}

    /**
     * Every job below a folder, ordered by place; one that lies in several places once, as its newest file has it. Folders and files whose names begin with a dot are passed over, links aren't followed.
     *
     * @throws WorkException if the folder can't be read
     * @throws Cancellation.CancelledException if it isn't wanted any more
     */
    public static List<JobRecord> read(Path folder, Progress progress, Cancellation cancellation) {
        List<Path> files = files(folder);
        List<JobRecord> records = new ArrayList<>();
        for (Path file : files) {
            cancellation.check();
            progress.at((double) records.size() / files.size(), "reading " + file.getFileName());
            records.add(one(folder, file));
        }
        return SameJob.once(records);
    }

    /** One job file as a record of its own folder. */
    public static JobRecord read(Path file) {
        return one(file.toAbsolutePath().getParent(), file);
    }

    private static JobRecord one(Path folder, Path file) {
        String place = folder.toAbsolutePath()
                .relativize(file.toAbsolutePath())
                .toString()
                .replace('\\', '/');
        try {
            return JobRecord.of(file, place, JobFile.readWithoutLogs(file));
        } catch (IOException e) {
            Issue unread =
                    Issue.error(place, 0, 0, WorkException.reading(file, e).getMessage(), "");
            return JobRecord.of(file, place, Loaded.refused(unread));
        }
    }

    private static List<Path> files(Path folder) {
        List<Path> found = new ArrayList<>();
        try {
            if (!Files.isDirectory(folder)) {
                throw new NoSuchFileException(folder.toString());
            }
            Files.walkFileTree(
                    folder, EnumSet.noneOf(java.nio.file.FileVisitOption.class), DEEPEST, new Finder(folder, found));
        } catch (IOException | UncheckedIOException e) {
            throw new WorkException(
                    folder + ": there is no such folder, or it can't be read. Give the folder that your jobs are in",
                    false,
                    e);
        }
        found.sort(Comparator.comparing(Path::toString));
        return found;
    }

    private static final class Finder extends SimpleFileVisitor<Path> {
        private final Path top;
        private final List<Path> found;

        Finder(Path top, List<Path> found) {
            this.top = top;
            this.found = found;
        }

        private static boolean hidden(Path path) {
            return String.valueOf(path.getFileName()).startsWith(".");
        }

        @Override
        public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
            return hidden(folder) && !folder.equals(top) ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
        }

        @Override
        public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
            String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
            if (attributes.isRegularFile() && name.endsWith(JobFile.SUFFIX) && !hidden(file)) {
                found.add(file);
            }
            return found.size() < MOST ? FileVisitResult.CONTINUE : FileVisitResult.TERMINATE;
        }

        @Override
        public FileVisitResult visitFileFailed(Path file, IOException failure) throws IOException {
            if (file.equals(top)) {
                throw failure;
            }
            return FileVisitResult.CONTINUE;
        }
    }

    /**
     * A record with its results: those that its file keeps, or else worked out from its rides, for this once. Where they can't be, the record is
     * as it was and says why.
     */
    public static JobRecord workedOut(JobRecord record, Progress progress, Cancellation cancellation) {
        if (!record.canBeWorkedOut()) {
            return record;
        }
        Loaded<Job> job;
        try {
            job = OpenJob.open(record.file(), name -> Optional.empty(), Progress.NONE, cancellation);
        } catch (WorkException e) {
            return because(record, List.of(Issue.error(record.place(), 0, 0, e.getMessage(), "")));
        }
        if (job.value().isEmpty()) {
            return because(record, job.issues());
        }
        Loaded<Analysis> analysis = Analyse.run(job.value().get(), progress, cancellation);
        return analysis.value().map(a -> record.with(a.results())).orElseGet(() -> because(record, analysis.issues()));
    }

    private static JobRecord because(JobRecord record, List<Issue> issues) {
        return new JobRecord(record.file(), record.place(), record.stored(), Loaded.refused(issues), record.issues());
    }
}
