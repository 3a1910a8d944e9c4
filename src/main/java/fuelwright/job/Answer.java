package fuelwright.job;

import fuelwright.safety.Caution;
import java.util.Objects;

/**
 * What the user answered to a caution. An answer stays in the job; it never hides the caution, nor lowers its level.
 *
 * @param rule the caution's rule
 * @param title the caution's {@link Caution#name() name}: tells two cautions of one rule apart
 * @param kind what was answered
 * @param note the user's own words; may be empty
 */
public record Answer(String rule, String title, Kind kind, String note) {

    /** What a user can answer. */
    public enum Kind {
        SEEN("seen"),
        CAUSE_FOUND("cause found"),
        RIDE_AGAIN("ride again");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public Answer {
        Objects.requireNonNull(rule, "rule");
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(note, "note");
    }

    /** An answer to a caution. */
    public static Answer to(Caution caution, Kind kind, String note) {
        return new Answer(caution.rule(), caution.name(), kind, note);
    }

    /** Whether this answers that caution. */
    public boolean isFor(Caution caution) {
        return rule.equals(caution.rule()) && title.equals(caution.name());
    }
}
