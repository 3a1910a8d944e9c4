package fuelwright.table;

import java.util.Objects;
import java.util.Optional;

/**
 * What the user tells the reader about a table whose file doesn't say it. What the file says itself wins where it can be
 * understood.
 *
 * @param loadKind what the load axis measures, where the file names no axes; not engine speed
 * @param quantity what the cells hold, where the file has no {@code # quantity:} line, or one that isn't known
 */
public record TableOptions(Optional<Axis.Kind> loadKind, Optional<Quantity> quantity) {

    public TableOptions {
        Objects.requireNonNull(loadKind, "loadKind");
        Objects.requireNonNull(quantity, "quantity");
        if (loadKind.isPresent() && loadKind.get() == Axis.Kind.ENGINE_SPEED) {
            throw new IllegalArgumentException("loadKind " + loadKind.get() + " must be throttle or manifold pressure");
        }
    }

    /** Nothing told. */
    public static TableOptions none() {
        return new TableOptions(Optional.empty(), Optional.empty());
    }

    public TableOptions withLoadKind(Axis.Kind kind) {
        return new TableOptions(Optional.of(kind), quantity);
    }

    public TableOptions withQuantity(Quantity told) {
        return new TableOptions(loadKind, Optional.of(told));
    }
}
