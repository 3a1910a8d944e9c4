package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.PartGain;
import fuelwright.job.Results;
import fuelwright.job.StoredJob;
import fuelwright.job.StoredRide;
import fuelwright.power.Breathing;
import fuelwright.table.Table;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One job of a folder, as its file says it. Immutable.
 *
 * @param file where it lies
 * @param place the same, from the folder that was looked through, with forward slashes
 * @param stored what it holds; empty where it can't be read
 * @param gain what its part gave, cell by cell, or why that isn't known
 * @param issues what was wrong or doubtful in reading it
 */
public record JobRecord(
        Path file, String place, Optional<StoredJob> stored, Loaded<Breathing> gain, List<Issue> issues) {

    public JobRecord {
        issues = List.copyOf(issues);
    }

    static JobRecord of(Path file, String place, Loaded<StoredJob> read) {
        return new JobRecord(
                file,
                place,
                read.value(),
                read.value()
                        .map(JobRecord::gain)
                        .orElseGet(() -> Loaded.refused(Issue.error(place, 0, 0, "the job can't be read", ""))),
                read.issues());
    }

    private static Loaded<Breathing> gain(StoredJob stored) {
        if (stored.results().isEmpty()) {
            boolean ready = stored.job().fuelTable().isPresent()
                    && stored.job().targetTable().isPresent()
                    && !stored.rides().isEmpty();
            return Loaded.refused(
                    ready
                            ? Issue.error(
                                    stored.job().name(),
                                    0,
                                    0,
                                    "no results are kept with it",
                                    "Open it and save it once its proposal is there, or have it worked out")
                            : Issue.error(stored.job().name(), 0, 0, "a table or a ride is missing", "Go on with it"));
        }
        return PartGain.of(stored, stored.results().get().cells());
    }

    /** The same with what came out of it. */
    JobRecord with(Results results) {
        StoredJob before = stored.orElseThrow();
        StoredJob now = new StoredJob(before.job(), before.rides(), Optional.of(results));
        return new JobRecord(file, place, Optional.of(now), gain(now), issues);
    }

    /** The same with something more to say about it. */
    JobRecord remarked(Issue issue) {
        List<Issue> all = new ArrayList<>(issues);
        all.add(issue);
        return new JobRecord(file, place, stored, gain, all);
    }

    /** Whether it lacks results although it holds all that they follow from. */
    public boolean canBeWorkedOut() {
        return stored.filter(s -> s.results().isEmpty()
                        && s.job().fuelTable().isPresent()
                        && s.job().targetTable().isPresent()
                        && !s.rides().isEmpty())
                .isPresent();
    }

    /** What the job calls itself, on one line; of one that can't be read, the file's name. */
    public String name() {
        return stored.map(s -> s.job().name().strip().replaceAll("\\s+", " "))
                .orElse(String.valueOf(file.getFileName()));
    }

    /** What the job keeps of its analysis, or was worked out anew; empty where neither. */
    public Optional<Results> results() {
        return stored.flatMap(StoredJob::results);
    }

    /** Why nothing is known of what its part gave, a clause; empty where it is known. */
    public String whyNoGain() {
        return gain.issues().stream().findFirst().map(Issue::what).orElse("");
    }

    /** Why it can't be read; empty where it can. */
    public Optional<Issue> trouble() {
        return stored.isPresent() ? Optional.empty() : issues.stream().findFirst();
    }

    /** Whether every one of the words is in its place, name, machine, tables, rides or answers; capitals don't matter. */
    public boolean mentions(String words) {
        String all = everything();
        return words.strip().isEmpty()
                || List.of(words.strip().toLowerCase(Locale.ROOT).split("\\s+")).stream()
                        .allMatch(all::contains);
    }

    private String everything() {
        StringBuilder all = new StringBuilder(place).append('\n').append(name());
        JobFacts.of(this)
                .forEach(f -> all.append('\n').append(f.figure().toString().replace("cm³", "cm³ cc")));
        stored.ifPresent(s -> {
            Job job = s.job();
            s.rides().stream()
                    .map(StoredRide::name)
                    .forEach(n -> all.append('\n').append(n));
            job.answers()
                    .forEach(a -> all.append('\n').append(a.title()).append(' ').append(a.note()));
            job.fuelTable()
                    .map(Table::notes)
                    .orElse(List.of())
                    .forEach(n -> all.append('\n').append(n.value()));
        });
        return all.toString().toLowerCase(Locale.ROOT);
    }
}
