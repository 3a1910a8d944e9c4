package fuelwright.ride;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The columns of a log that can't be read as it is, and what isn't found among them.
 *
 * @param columns in file order
 * @param missing what is needed and wasn't found; the mixture stands as lambda
 */
public record LogColumns(List<LogColumn> columns, List<Role> missing) {

    public LogColumns {
        columns = List.copyOf(columns);
        missing = List.copyOf(missing);
    }

    /**
     * Looks at a log.
     *
     * @param options how it is read
     * @param needed what it must have
     * @throws IOException if the file can't be read
     */
    public static LogColumns of(Path file, RideOptions options, Set<Role> needed) throws IOException {
        try (ByteSource source = ByteSource.of(file)) {
            Optional<Encoded> encoded =
                    Encoded.of(file.toString(), source, options).value();
            if (encoded.isEmpty()) {
                return new LogColumns(List.of(), List.of());
            }
            Optional<Layout> layout =
                    RideReader.layout(file.toString(), encoded.get(), options).value();
            if (layout.isEmpty()) {
                return new LogColumns(List.of(), List.of());
            }
            RawTable raw = FastRows.read(encoded.get(), layout.get(), p -> {}, () -> false);
            List<LogColumn> columns = new ArrayList<>();
            for (int c = 0; c < layout.get().columns(); c++) {
                columns.add(new LogColumn(
                        layout.get().headings().get(c).text(),
                        Column.owning(java.util.Arrays.copyOf(raw.columns()[c], raw.rows()))));
            }
            List<Role> missing = needed.stream()
                    .sorted()
                    .filter(role -> !isFound(role, layout.get(), raw, options))
                    .toList();
            return new LogColumns(columns, missing);
        }
    }

    private static boolean isFound(Role role, Layout layout, RawTable raw, RideOptions options) {
        if (role == Role.TIME) {
            return options.sampleRateHz().isPresent() || TimeChoice.choose(layout, raw, options) >= 0;
        }
        for (int c = 0; c < layout.columns(); c++) {
            Heading heading = layout.headings().get(c);
            Role found = options.roleOf(heading)
                    .orElseGet(() -> RoleNames.of(heading).role());
            boolean same = found == role || role.isMixture() && (found.isMixture() || isTrim(found));
            if (same && hasFigures(raw.columns()[c], raw.rows())) {
                return true;
            }
        }
        return false;
    }

    private static boolean isTrim(Role role) {
        return role == Role.SHORT_TRIM || role == Role.LONG_TRIM;
    }

    private static boolean hasFigures(double[] values, int rows) {
        for (int i = 0; i < rows; i++) {
            if (!Double.isNaN(values[i]) && values[i] != 0) {
                return true;
            }
        }
        return false;
    }
}
