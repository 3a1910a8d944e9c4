package fuelwright.table;

import fuelwright.issue.Loaded;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A table that could be read if what its cells hold, or what its load axis measures, were said. Immutable.
 *
 * @param name of its file
 * @param text what the file holds
 * @param quantities what its cells could be; empty where it says that itself
 * @param loads what its load axis could be; empty where it says that itself
 */
public record Unsaid(String name, String text, List<Quantity> quantities, List<Axis.Kind> loads) {

    private static final List<Axis.Kind> LOADS = List.of(Axis.Kind.THROTTLE, Axis.Kind.MANIFOLD_PRESSURE);

    public Unsaid {
        quantities = List.copyOf(quantities);
        loads = List.copyOf(loads);
    }

    /** Empty where it can be read as it is, or not even then. */
    public static Optional<Unsaid> of(String name, String text) {
        if (TableReader.read(name, text).value().isPresent()) {
            return Optional.empty();
        }
        List<Axis.Kind> loads = LOADS.stream()
                .filter(load -> Arrays.stream(Quantity.values())
                        .anyMatch(q -> reads(
                                name, text, TableOptions.none().withQuantity(q).withLoadKind(load))))
                .toList();
        if (loads.isEmpty()) {
            return Optional.empty();
        }
        TableOptions load = TableOptions.none().withLoadKind(loads.get(0));
        List<Quantity> quantities = reads(name, text, load)
                ? List.of()
                : Arrays.stream(Quantity.values())
                        .filter(q -> q.isFuel() || q.isMixture())
                        .filter(q -> loads.stream()
                                .anyMatch(l -> reads(
                                        name,
                                        text,
                                        TableOptions.none().withQuantity(q).withLoadKind(l))))
                        .collect(Collectors.toList());
        TableOptions quantity =
                quantities.isEmpty() ? TableOptions.none() : TableOptions.none().withQuantity(quantities.get(0));
        return Optional.of(new Unsaid(name, text, quantities, reads(name, text, quantity) ? List.of() : loads));
    }

    /** The table as it is said to be. */
    public Loaded<Table> told(TableOptions options) {
        return TableReader.read(name, text, options);
    }

    private static boolean reads(String name, String text, TableOptions options) {
        return TableReader.read(name, text, options).value().isPresent();
    }

    /** Whether breakpoints stand above and beside a grid, as in a table and in no log: numbers only, but for the corner. */
    public static boolean isTableShaped(String text) {
        Problems problems = new Problems("");
        Grid grid = Grid.cut(text, problems);
        if (grid.rows.size() < 3 || grid.rows.size() > TableReader.MOST_BREAKPOINTS + 1) {
            return false;
        }
        List<String> head = grid.rows.get(0).fields();
        boolean comma = grid.decimalComma();
        Stream<String> down = grid.rows.stream().skip(1).map(row -> row.fields().get(0));
        return head.size() >= 3
                && Numerals.parse(head.get(0), comma).isEmpty()
                && ascends(head.stream().skip(1), comma)
                && ascends(down, comma);
    }

    private static boolean ascends(Stream<String> fields, boolean comma) {
        double[] figures = fields.mapToDouble(f -> Numerals.parse(f, comma).orElse(Double.NaN))
                .toArray();
        for (int i = 0; i < figures.length; i++) {
            if (Double.isNaN(figures[i]) || i > 0 && !(figures[i] > figures[i - 1])) {
                return false;
            }
        }
        return true;
    }
}
