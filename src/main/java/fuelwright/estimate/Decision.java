package fuelwright.estimate;

/**
 * A cell's figure fixed by hand.
 *
 * @param kind held: the old figure stays; set: the typed one
 * @param value the figure handed over, in the table's own unit
 */
public record Decision(Kind kind, double value) {

    /** Whether the old figure stays or a typed one counts. */
    public enum Kind {
        HELD,
        SET
    }
}
