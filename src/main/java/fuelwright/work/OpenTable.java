package fuelwright.work;

import fuelwright.handover.StopNotes;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.safety.FuelTableKind;
import fuelwright.table.Table;
import fuelwright.table.TableOptions;
import fuelwright.table.TableReader;
import fuelwright.table.Unsaid;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Reads a table file. */
public final class OpenTable {

    private OpenTable() {}

    /** Any table; a ride given instead is named as such. */
    public static Loaded<Table> read(Path file) {
        return named(file, "table");
    }

    /** A table of fuel; a ride or a target given instead is named as such. */
    public static Loaded<Table> fuel(Path file) {
        Loaded<Table> loaded = named(file, "fuel table");
        return loaded.value()
                .flatMap(t -> FileKind.wrongFuelTable(file, t))
                .map(Loaded::<Table>refused)
                .orElse(remarked(file, loaded));
    }

    /** A table of lambda or AFR; a ride or a fuel table given instead is named as such. */
    public static Loaded<Table> target(Path file) {
        Loaded<Table> loaded = named(file, "target table");
        return loaded.value()
                .flatMap(t -> FileKind.wrongTargetTable(file, t))
                .map(Loaded::<Table>refused)
                .orElse(loaded);
    }

    /** A table of which somebody said what it doesn't say itself. */
    public static Loaded<Table> told(Unsaid file, TableOptions said) {
        return remarked(Path.of(file.name()), file.told(said));
    }

    private static Loaded<Table> named(Path file, String as) {
        Loaded<Table> loaded = TableReader.read(file);
        if (loaded.value().isPresent() || !Files.isRegularFile(file)) {
            return loaded;
        }
        try {
            return FileKind.rideGivenAsTable(file, as)
                    .map(Loaded::<Table>refused)
                    .orElse(loaded);
        } catch (IOException e) {
            throw WorkException.reading(file, e);
        }
    }

    /** A table written while a Stop caution stood says so again when it is used; and one whose figures can hardly be what they say is asked about. */
    private static Loaded<Table> remarked(Path file, Loaded<Table> loaded) {
        if (loaded.value().isEmpty()) {
            return loaded;
        }
        List<Issue> issues = new ArrayList<>(loaded.issues());
        for (String caution : StopNotes.carriedBy(loaded.value().get())) {
            issues.add(Issue.warning(
                    String.valueOf(file.getFileName()),
                    0,
                    0,
                    "this table was written while a caution stood (" + caution + ")",
                    "Make sure that it is dealt with"));
        }
        FuelTableKind.doubt(loaded.value().get())
                .ifPresent(doubt -> issues.add(Issue.warning(
                        String.valueOf(file.getFileName()),
                        0,
                        0,
                        "this table " + doubt,
                        "See what its cells hold; if it is another kind of table, open it anew and say so")));
        return Loaded.of(loaded.value().get(), issues);
    }
}
