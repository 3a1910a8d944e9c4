package fuelwright.handover;

/**
 * A cell that doesn't hold what was meant.
 *
 * @param cell cell number in the table's order
 * @param meant the figure that was meant
 * @param typed the figure that the hardware holds
 * @param mixturePercent what it does to the mixture, % of lambda: positive is leaner than meant; infinite where no fuel is left
 * @param place how the cell lies to high load
 * @param slip what kind of slip it looks like
 * @param detail the slip in words, with the other place where there is one
 */
public record EntryDifference(
        int cell, double meant, double typed, double mixturePercent, Place place, Slip slip, String detail) {

    /** How a cell lies to high load. */
    public enum Place {
        HIGH_LOAD("at high load"),
        /** Beside high load in the grid, or with the target of full load. */
        EDGE("at the edge of high load"),
        RICH_TARGET("where the target is rich"),
        LIGHT_LOAD("");

        private final String words;

        Place(String words) {
            this.words = words;
        }

        /** As the end of a sentence; empty where it needn't be said. */
        public String words() {
            return words;
        }
    }

    /** Whether the mixture is leaner than meant. */
    public boolean isLean() {
        return mixturePercent > 0;
    }

    /** Lean at high load, at its edge, or where the target says that lean does harm: a Stop caution. */
    public boolean isStop() {
        return isLean() && place != Place.LIGHT_LOAD;
    }
}
