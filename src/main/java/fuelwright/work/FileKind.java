package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.RideReader;
import fuelwright.ride.Role;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.table.TableReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Tells what a file is when it is not what it was given as, so that swapped arguments are named as such. */
final class FileKind {

    /** No table of at most 64×64 cells is bigger; a ride soon is. */
    private static final long MOST_TABLE_BYTES = 1 << 20;

    private FileKind() {}

    /** Why the file can't be the fuel (or target) table: it is a ride. */
    static Optional<Issue> rideGivenAsTable(Path file, String as) throws IOException {
        if (!looksLikeRide(file)) {
            return Optional.empty();
        }
        return Optional.of(Issue.error(
                String.valueOf(file.getFileName()),
                0,
                0,
                "this is a ride, but it was given as the " + as,
                "Give it as a ride, and the " + as + " here"));
    }

    /** Why the file can't be a ride: it is a table. */
    static Optional<Issue> tableGivenAsRide(Path file) throws IOException {
        if (!Files.isRegularFile(file) || Files.size(file) > MOST_TABLE_BYTES) {
            return Optional.empty();
        }
        Optional<Table> table = TableReader.read(file).value();
        return table.map(t -> Issue.error(
                String.valueOf(file.getFileName()),
                0,
                0,
                "this is a table (" + t.quantity().words() + "), but it was given as a ride",
                "Give it as the " + (t.quantity().isMixture() ? "target" : "fuel") + " table, and the log here"));
    }

    /** Why a table can't be the fuel table: it holds something else. */
    static Optional<Issue> wrongFuelTable(Path file, Table table) {
        Quantity quantity = table.quantity();
        if (quantity.isFuel()) {
            return Optional.empty();
        }
        String todo = quantity.isMixture()
                ? "Target and fuel table are swapped, or the target was given twice: give the fuel table here"
                : "Give the table that the control unit holds";
        return Optional.of(Issue.error(
                String.valueOf(file.getFileName()), 0, 0, "this table holds " + quantity.words() + ", not fuel", todo));
    }

    /** Why a table can't be the target table: it holds something else. */
    static Optional<Issue> wrongTargetTable(Path file, Table table) {
        Quantity quantity = table.quantity();
        if (quantity.isMixture()) {
            return Optional.empty();
        }
        String todo = quantity.isFuel()
                ? "Target and fuel table are swapped, or the fuel table was given twice: give the table of lambda or AFR here"
                : "Give a table of lambda or AFR";
        return Optional.of(Issue.error(
                String.valueOf(file.getFileName()),
                0,
                0,
                "this table holds " + quantity.words() + ", not a target mixture",
                todo));
    }

    private static boolean looksLikeRide(Path file) throws IOException {
        Optional<Ride> ride = RideReader.read(file, RideOptions.defaults(), fraction -> {}, () -> false)
                .value();
        return ride.filter(r ->
                        r.column(Role.ENGINE_SPEED).isPresent() && r.channels().size() >= 2)
                .isPresent();
    }
}
