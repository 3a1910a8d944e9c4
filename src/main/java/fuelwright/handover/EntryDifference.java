package fuelwright.handover;

/**
 * A cell that doesn't hold what was meant.
 *
 * @param cell cell number in the table's order
 * @param meant the figure that was meant
 * @param typed the figure that the hardware holds
 * @param mixturePercent what it does to the mixture, % of lambda: positive is leaner than meant; infinite where no fuel is left
 * @param highLoad whether the cell is at high load
 * @param slip what kind of slip it looks like
 * @param detail the slip in words, with the other place where there is one
 */
public record EntryDifference(
        int cell, double meant, double typed, double mixturePercent, boolean highLoad, Slip slip, String detail) {

    /** Whether the mixture is leaner than meant. */
    public boolean isLean() {
        return mixturePercent > 0;
    }

    /** Lean at high load: a Stop caution. */
    public boolean isStop() {
        return isLean() && highLoad;
    }
}
