package fuelwright.ride;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import java.util.Objects;

/**
 * How a second logger's clock runs against the first's: {@code first = second * (1 + drift) + offset}.
 *
 * @param offsetS s, the first clock's time at the second clock's 0
 * @param drift how much faster the first clock runs, 1e-4 is 0.36 s an hour
 * @param errorS s, standard error of the time on the first clock in the middle of the second log
 * @param correlation median correlation of the windows that agree, 0 to 1
 * @param windows how many stretches of the second log were compared
 * @param agreeing how many of them agree with this alignment
 * @param by what the two logs share
 */
public record ClockAlignment(
        double offsetS, double drift, double errorS, double correlation, int windows, int agreeing, By by) {

    /** What two logs are aligned by. */
    public enum By {
        ENGINE_SPEED("engine speed"),
        /** Lean mixture in the second log against fuel cut in the first; the exhaust's delay is in the offset. */
        FUEL_CUT("lean mixture against fuel cut"),
        HAND("hand");

        private final String words;

        By(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public ClockAlignment {
        Objects.requireNonNull(by, "by");
        if (!(Math.abs(offsetS) < 1e12 && Math.abs(drift) < 0.5)) {
            throw new IllegalArgumentException(
                    "offsetS " + offsetS + " and drift " + drift + " must be finite, drift below 0.5");
        }
    }

    /** An alignment by hand. */
    public static ClockAlignment byHand(double offsetS, double drift) {
        return new ClockAlignment(offsetS, drift, Double.NaN, Double.NaN, 0, 0, By.HAND);
    }

    /** The first clock's time of a moment that the second clock calls {@code secondS}. */
    public double toFirst(double secondS) {
        return secondS * (1 + drift) + offsetS;
    }

    /** The second clock's time of a moment that the first clock calls {@code firstS}. */
    public double toSecond(double firstS) {
        return (firstS - offsetS) / (1 + drift);
    }

    /** This alignment, the second log moved later by {@code byS}. */
    public ClockAlignment nudged(double byS) {
        return new ClockAlignment(offsetS + byS, drift, errorS, correlation, windows, agreeing, by);
    }

    /** This alignment with another drift, the second log's moment {@code aroundS} (its own clock) staying where it is. */
    public ClockAlignment drifting(double otherDrift, double aroundS) {
        return new ClockAlignment(
                toFirst(aroundS) - aroundS * (1 + otherDrift), otherDrift, errorS, correlation, windows, agreeing, by);
    }

    /** The alignment in words, with how sure it is. */
    public String words() {
        String move = "offset " + Figures.plain(offsetS) + " s, drift " + Figures.plain(drift * 1e6) + " millionths";
        return by == By.HAND
                ? "aligned by hand: " + move
                : "aligned by " + by.words() + ": " + move + ", ±" + Figures.plain(errorS) + " s; " + agreeing + " of "
                        + windows + " stretches agree, correlation " + Figures.plain(correlation);
    }

    /**
     * Finds the alignment from engine speed where both logs have it, else from the second log's mixture against the first's fuel cut.
     * Refused, with an error, where nothing is shared or the match is poor.
     */
    public static Loaded<ClockAlignment> of(Ride first, Ride second) {
        if (first.segmentStarts().size() > 1 || second.segmentStarts().size() > 1) {
            Ride restarted = first.segmentStarts().size() > 1 ? first : second;
            return refused(
                    second,
                    restarted.name() + " was restarted "
                            + (restarted.segmentStarts().size() - 1)
                            + (restarted.segmentStarts().size() == 2 ? " time" : " times")
                            + ", and each restart sets its clock anew: the two logs can't be aligned as one",
                    "split the file at its restarts and add each part to its ride, or align the first stretch by hand");
        }
        if (first.channel(Role.ENGINE_SPEED).isPresent()
                && second.channel(Role.ENGINE_SPEED).isPresent()) {
            return ClockSearch.bySpeed(first, second);
        }
        if (!second.mixtures().isEmpty()) {
            return ClockSearch.byFuelCut(first, second);
        }
        return refused(
                second,
                "the two logs share neither engine speed nor mixture with fuel cut",
                "log the engine speed with both, or align them by hand");
    }

    static Loaded<ClockAlignment> refused(Ride second, String what, String todo) {
        return Loaded.refused(Say.error(second.name(), 0, 0, what, todo));
    }

    static Issue note(Ride second, ClockAlignment alignment) {
        return Issue.note(second.name(), "Clock " + alignment.words());
    }
}
