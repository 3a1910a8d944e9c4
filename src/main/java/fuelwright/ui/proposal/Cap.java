package fuelwright.ui.proposal;

import fuelwright.ui.theme.Words;
import java.util.OptionalDouble;

/**
 * A cap as it is typed.
 *
 * @param value empty where it can't be
 * @param problem what is wrong, a sentence; empty where nothing is
 */
record Cap(OptionalDouble value, String problem) {

    /** The most that may be added, %. */
    static Cap most(String typed) {
        return of(Words.of("proposal.add"), typed, Double.POSITIVE_INFINITY);
    }

    /** The most that may be taken, %: never all of it. */
    static Cap least(String typed) {
        return of(Words.of("proposal.cut"), typed, 100);
    }

    private static Cap of(String name, String typed, double below) {
        String text = typed.strip().replace(',', '.');
        try {
            double value = Double.parseDouble(text);
            if (value >= 0 && value < below) {
                return new Cap(OptionalDouble.of(value), "");
            }
        } catch (NumberFormatException e) {
            return refused(Words.of("proposal.cap.nonumber", name, typed.strip()));
        }
        return refused(
                Double.isFinite(below)
                        ? Words.of("proposal.cap.range", name, below)
                        : Words.of("proposal.cap.negative", name));
    }

    private static Cap refused(String problem) {
        return new Cap(OptionalDouble.empty(), problem);
    }
}
