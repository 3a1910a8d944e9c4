package fuelwright.ui.session;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.LogColumns;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.table.TableReader;
import fuelwright.table.Unsaid;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import fuelwright.work.AnotherTable;
import fuelwright.work.Cancellation;
import fuelwright.work.OpenTable;
import fuelwright.work.Progress;
import fuelwright.work.TargetRatio;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * What a heap of files turned out to be: tables by their {@code # quantity:} line, everything else a ride.
 *
 * @param tables in the order given
 * @param rides in the order given
 * @param rideFiles where each ride came from
 * @param rideOptions how each ride was read
 * @param issues everything there is to say about them
 * @param refused logs that could be read if more were said about them
 * @param unsaid tables that could
 */
public record Opened(
        List<Table> tables,
        List<Ride> rides,
        List<Path> rideFiles,
        List<RideOptions> rideOptions,
        List<Issue> issues,
        List<RefusedLogs.Refused> refused,
        List<Unsaid> unsaid) {

    private static final int LINES_LOOKED_AT = 40;

    /** No table of at most 64×64 cells is bigger; a ride soon is. */
    private static final long MOST_TABLE_BYTES = 1 << 20;

    public Opened {
        tables = List.copyOf(tables);
        rides = List.copyOf(rides);
        rideFiles = List.copyOf(rideFiles);
        rideOptions = List.copyOf(rideOptions);
        issues = List.copyOf(issues);
        refused = List.copyOf(refused);
        unsaid = List.copyOf(unsaid);
    }

    /** One table. */
    static Opened of(Loaded<Table> table) {
        return new Opened(
                table.value().stream().toList(),
                List.of(),
                List.of(),
                List.of(),
                table.issues().stream()
                        .filter(x -> x.severity() != Issue.Severity.NOTE)
                        .toList(),
                List.of(),
                List.of());
    }

    /**
     * Reads files, each as what it is and as was said of a log with the same headings. Whatever can't be used is an issue.
     *
     * @param tables whether tables are expected: what is no ride is judged as one
     * @param needed what a log must have a column for
     */
    static Opened read(
            List<Path> files,
            boolean tables,
            ToldRatios told,
            Set<Role> needed,
            Services services,
            Progress progress,
            Cancellation cancellation)
            throws IOException {
        Opened found = readAs(
                files,
                tables,
                needed,
                file -> services.remembered(file, told.of(file)),
                services,
                progress,
                cancellation);
        List<Ride> rides = new ArrayList<>();
        for (int i = 0; i < found.rides().size(); i++) {
            Ride ride = found.rides().get(i);
            RideOptions used = found.rideOptions().get(i);
            rides.add(
                    used.equals(RideOptions.defaults())
                            ? ride
                            : ride.remarked(Issue.note(ride.name(), remembered(ride, used))));
        }
        return new Opened(
                found.tables(),
                rides,
                found.rideFiles(),
                found.rideOptions(),
                found.issues(),
                found.refused(),
                found.unsaid());
    }

    private static String remembered(Ride ride, RideOptions used) {
        String words = Words.of("rides.remembered");
        return used.afrScale().isPresent() && ride.channel(Role.AFR).isPresent()
                ? words + "; "
                        + Words.of(
                                "rides.remembered.ratio",
                                Figures.shortest(used.afrScale().getAsDouble()))
                : words;
    }

    /**
     * The same, each log as it is said.
     *
     * @param needed what a log must have a column for
     */
    static Opened readAs(
            List<Path> files,
            boolean expectTables,
            Set<Role> needed,
            Function<Path, RideOptions> said,
            Services services,
            Progress progress,
            Cancellation cancellation)
            throws IOException {
        List<Table> tables = new ArrayList<>();
        List<Ride> rides = new ArrayList<>();
        List<Path> rideFiles = new ArrayList<>();
        List<RideOptions> rideOptions = new ArrayList<>();
        List<Issue> issues = new ArrayList<>();
        List<RefusedLogs.Refused> refused = new ArrayList<>();
        List<Unsaid> unsaid = new ArrayList<>();
        for (int i = 0; i < files.size(); i++) {
            cancellation.check();
            Path file = files.get(i);
            int done = i;
            Progress part = (fraction, what) -> progress.at((done + Math.max(0, fraction)) / files.size(), what);
            part.at(0, file.getFileName().toString());
            Optional<Quantity> quantity = quantityOf(file);
            Optional<String> text = textOf(file);
            Optional<Unsaid> asks = text.filter(t -> quantity.isPresent() || Unsaid.isTableShaped(t))
                    .flatMap(t -> Unsaid.of(String.valueOf(file.getFileName()), t));
            boolean shaped = text.filter(Unsaid::isTableShaped).isPresent();
            if (asks.isPresent()) {
                unsaid.add(asks.get());
            } else if (quantity.isEmpty() && shaped) {
                issues.addAll(OpenTable.read(file).issues());
            } else if (quantity.isPresent()) {
                Loaded<Table> loaded = services.readTable(file, quantity.get().isMixture());
                loaded.value().ifPresent(tables::add);
                issues.addAll(loaded.issues());
                loaded.value()
                        .flatMap(t -> TargetRatio.remark(String.valueOf(file.getFileName()), t))
                        .ifPresent(issues::add);
            } else {
                RideOptions used = said.apply(file);
                Loaded<Ride> loaded = services.readRide(file, used, part, cancellation);
                loaded.value().ifPresent(ride -> {
                    rides.add(ride);
                    rideFiles.add(file);
                    rideOptions.add(used);
                });
                if (loaded.value().isEmpty() && expectTables && text.isPresent()) {
                    issues.addAll(OpenTable.read(file).issues());
                    continue;
                }
                if (loaded.value().isEmpty()) {
                    refused(file, used, needed, loaded.issues()).ifPresent(refused::add);
                }
                loaded.issues().stream()
                        .filter(x -> x.severity() != Issue.Severity.NOTE)
                        .forEach(issues::add);
            }
        }
        return new Opened(tables, rides, rideFiles, rideOptions, issues, refused, unsaid);
    }

    /** What a file holds that is small enough to be a table. */
    private static Optional<String> textOf(Path file) throws IOException {
        return Files.isRegularFile(file) && Files.size(file) <= MOST_TABLE_BYTES
                ? Optional.of(TableReader.text(String.valueOf(file.getFileName()), Files.readAllBytes(file)))
                : Optional.empty();
    }

    /** A log that holds a table of figures might be read if more were said about it. */
    private static Optional<RefusedLogs.Refused> refused(
            Path file, RideOptions used, Set<Role> needed, List<Issue> issues) throws IOException {
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        LogColumns columns = LogColumns.of(file, used, needed);
        return issues.stream()
                .filter(i -> i.severity() == Issue.Severity.ERROR)
                .findFirst()
                .filter(i -> columns.columns().size() > 1)
                .map(i -> new RefusedLogs.Refused(file, used, columns, i.what()));
    }

    /** Whether nothing could be used. */
    boolean isEmpty() {
        return tables.isEmpty() && rides.isEmpty();
    }

    /** Whether a fuel table is among them. */
    boolean hasFuelTable() {
        return tables.stream().anyMatch(t -> t.quantity().isFuel());
    }

    /** The same without those rides. */
    Opened without(Collection<Ride> others) {
        List<Ride> left = new ArrayList<>();
        List<Path> files = new ArrayList<>();
        List<RideOptions> options = new ArrayList<>();
        for (int i = 0; i < rides.size(); i++) {
            if (!others.contains(rides.get(i))) {
                left.add(rides.get(i));
                files.add(rideFiles.get(i));
                options.add(rideOptions.get(i));
            }
        }
        return new Opened(tables, left, files, options, issues, refused, unsaid);
    }

    /**
     * A job with files in it.
     *
     * @param issues what has to be said of that
     */
    record Added(Job job, List<Issue> issues) {}

    /**
     * The job with all of this in it. Rides that were there keep the fuel table that was there, new ones belong to the newest.
     *
     * @param handed what was handed over last
     * @param waiting rides that came before these
     */
    Added addTo(Job job, Optional<Analysis> handed, List<Ride> waiting) {
        Job result = job;
        List<Issue> said = new ArrayList<>();
        for (Table table : tables) {
            if (table.quantity().isMixture()) {
                result = result.withNewTarget(table);
            } else if (table.quantity().isFuel()) {
                AnotherTable another = AnotherTable.opened(result, table, handed);
                said.addAll(TableWords.replaced(result, another));
                result = another.job();
            }
        }
        if (hasFuelTable() && result.asksForDeadTime()) {
            said.add(Issue.warning("", 0, 0, Words.of("open.deadtime"), Words.of("open.deadtime.todo")));
        }
        List<Ride> all = new ArrayList<>(waiting);
        all.addAll(rides);
        for (Ride ride : all) {
            result = result.withRide(new JobRide(ride, Optional.empty()));
        }
        return new Added(result, said);
    }

    /** The quantity that a table file names above its grid; empty for anything else. */
    static Optional<Quantity> quantityOf(Path file) throws IOException {
        // Latin-1 can read any bytes, and the line looked for is ASCII.
        try (BufferedReader reader = Files.newBufferedReader(file, StandardCharsets.ISO_8859_1)) {
            for (int i = 0; i < LINES_LOOKED_AT; i++) {
                String line = reader.readLine();
                if (line == null) {
                    break;
                }
                Optional<Quantity> found = quantityIn(line);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    private static Optional<Quantity> quantityIn(String line) {
        int hash = line.indexOf('#');
        int colon = line.indexOf(':');
        if (hash < 0 || colon < hash || !line.substring(hash + 1, colon).strip().equalsIgnoreCase("quantity")) {
            return Optional.empty();
        }
        String name = line.substring(colon + 1).strip().toLowerCase(Locale.ROOT);
        for (Quantity quantity : Quantity.values()) {
            if (name.startsWith(quantity.words().toLowerCase(Locale.ROOT))) {
                return Optional.of(quantity);
            }
        }
        return Optional.empty();
    }
}
