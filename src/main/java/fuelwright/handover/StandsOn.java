package fuelwright.handover;

import fuelwright.job.CellsNow;
import fuelwright.safety.Caution;
import fuelwright.table.Quantity;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * What the figures of hardware that holds changes or multipliers stand on, in words. What is typed takes the place of what the cells hold:
 * unless that is known, the sheet may be wrong in every cell.
 */
public final class StandsOn {

    private StandsOn() {}

    /** In a sentence or two. */
    public static String words(CellsNow now) {
        boolean multiplier = isMultiplier(now);
        String what = multiplier
                ? "what the table in the control unit itself is multiplied by"
                : "percent on top of the table in the control unit itself";
        String none = none(multiplier);
        return switch (now.known()) {
            case SAID ->
                now.isNone()
                        ? "Each figure is " + what + ". It was said that every cell holds " + none + " now."
                        : "Each figure is the whole of " + what
                                + ", not what comes on top of the old figure. The old figures are what the cells hold now, up to "
                                + figure(now.greatest(), multiplier) + ".";
            case TAKEN ->
                "Each figure is " + what + ". The figures are only right if every cell holds " + none
                        + " now: nobody has said so.";
            case WORKED_OUT ->
                "Each figure is the whole of " + what
                        + ", taken for the oldest table of this job, not for the last one. The old figures, up to "
                        + figure(now.greatest(), multiplier)
                        + ", are worked out from the tables: nobody has said what the cells hold now.";
        };
    }

    /** The caution while nobody has said what the cells hold. */
    static Optional<Caution> untold(CellsNow now) {
        boolean multiplier = isMultiplier(now);
        String none = none(multiplier);
        return switch (now.known()) {
            case SAID -> Optional.empty();
            case TAKEN ->
                Optional.of(
                        caution(
                                "The sheet is only right if every cell of the hardware holds " + none + " now",
                                "Nobody has said what they hold. A figure typed over more than that takes fuel away that the engine was ridden with"));
            case WORKED_OUT ->
                Optional.of(
                        caution(
                                "Nobody has said what the hardware's cells hold now",
                                "They are taken to hold the change from the oldest table of the job to the fuel table, up to "
                                        + figure(now.greatest(), multiplier) + ". If they hold " + none
                                        + ", the corrected table having gone into the control unit itself, the figures count twice"));
        };
    }

    private static Caution caution(String title, String what) {
        return new Caution(
                "hardware-cells-untold",
                Caution.Level.CHECK,
                title,
                what,
                "Read the cells back and say what they hold now (--cells-now)",
                new TreeSet<>(),
                List.of());
    }

    private static boolean isMultiplier(CellsNow now) {
        return now.figures().quantity() == Quantity.MULTIPLIER;
    }

    private static String none(boolean multiplier) {
        return multiplier ? "1" : "0";
    }

    private static String figure(double figure, boolean multiplier) {
        return multiplier ? Figures.trimmed(figure, 4) : Figures.signed(figure, 1) + " %";
    }
}
