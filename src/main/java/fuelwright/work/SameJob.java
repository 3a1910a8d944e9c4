package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.job.Job;
import fuelwright.job.StoredJob;
import fuelwright.job.StoredRide;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * One job saved in several places, as a handover leaves it, counts once: the newest file speaks for it and names the others. It is the same where
 * cylinder, bodies and name are and one holds all rides of the other, by their fingerprints.
 */
final class SameJob {

    private static final String ALSO = "the same job also lies at ";

    private SameJob() {}

    /** In the order given, without those that a newer one speaks for. */
    static List<JobRecord> once(List<JobRecord> all) {
        List<JobRecord> newestFirst = new ArrayList<>(all);
        newestFirst.sort(Comparator.comparingLong((JobRecord r) -> when(r.file()))
                .thenComparingInt(r -> r.stored().map(s -> s.rides().size()).orElse(0))
                .reversed());
        List<JobRecord> kept = new ArrayList<>();
        for (JobRecord each : newestFirst) {
            Optional<JobRecord> newer =
                    kept.stream().filter(k -> isSame(k, each)).findFirst();
            if (newer.isPresent()) {
                kept.set(
                        kept.indexOf(newer.get()),
                        newer.get().remarked(Issue.note(newer.get().place(), ALSO + each.place())));
            } else {
                kept.add(each);
            }
        }
        kept.sort(Comparator.comparingInt(k -> places(all).indexOf(k.place())));
        return kept;
    }

    /** Where else the job lies, a clause; empty where nowhere. */
    static Optional<String> also(JobRecord record) {
        List<String> places = record.issues().stream()
                .map(Issue::what)
                .filter(w -> w.startsWith(ALSO))
                .map(w -> w.substring(ALSO.length()))
                .toList();
        return places.isEmpty() ? Optional.empty() : Optional.of("also in " + String.join(", ", places));
    }

    private static List<String> places(List<JobRecord> all) {
        return all.stream().map(JobRecord::place).toList();
    }

    private static long when(Path file) {
        try {
            return Files.getLastModifiedTime(file).toMillis();
        } catch (IOException e) {
            return Long.MIN_VALUE;
        }
    }

    private static boolean isSame(JobRecord one, JobRecord other) {
        if (one.stored().isEmpty() || other.stored().isEmpty()) {
            return false;
        }
        Job a = one.stored().get().job();
        Job b = other.stored().get().job();
        Set<String> ridesA = rides(one.stored().get());
        Set<String> ridesB = rides(other.stored().get());
        boolean sameEngine = a.machine().before().equals(b.machine().before())
                && a.machine().after().equals(b.machine().after())
                && a.fuelTable().map(t -> t.cylinder()).equals(b.fuelTable().map(t -> t.cylinder()));
        return sameEngine
                && one.name().equals(other.name())
                && !ridesA.isEmpty()
                && !ridesB.isEmpty()
                && (ridesA.containsAll(ridesB) || ridesB.containsAll(ridesA));
    }

    /** Fingerprints; none where one isn't known. */
    private static Set<String> rides(StoredJob job) {
        Set<String> all = job.rides().stream()
                .map(StoredRide::first)
                .map(StoredRide.Log::sha256)
                .collect(Collectors.toSet());
        return all.contains("") ? Set.of() : all;
    }
}
