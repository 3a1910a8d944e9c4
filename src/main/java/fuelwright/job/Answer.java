package fuelwright.job;

import fuelwright.safety.Caution;
import java.util.Objects;
import java.util.Optional;

/**
 * What the user answered to a caution. An answer stays in the job; it never hides the caution, nor lowers its level.
 *
 * @param rule the caution's rule
 * @param title the caution's {@link Caution#name() name}: tells two cautions of one rule apart
 * @param kind what was answered
 * @param note the user's own words; may be empty
 * @param basis what the caution said then; empty where that wasn't kept
 */
public record Answer(String rule, String title, Kind kind, String note, Optional<AnswerBasis> basis) {

    /** What a user can answer. */
    public enum Kind {
        SEEN("noted"),
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
        Objects.requireNonNull(basis, "basis");
    }

    /** An answer of which isn't known what the caution said. */
    public Answer(String rule, String title, Kind kind, String note) {
        this(rule, title, kind, note, Optional.empty());
    }

    /** An answer to a caution. */
    public static Answer to(Caution caution, Kind kind, String note) {
        return new Answer(caution.rule(), caution.name(), kind, note, Optional.of(AnswerBasis.of(caution)));
    }

    /** Whether the caution still says about what it said when it was answered; otherwise it is asked again. */
    public boolean holds(Caution caution) {
        return basis.isEmpty() || basis.get().isLike(caution);
    }

    /** What was answered, as files have it. */
    public String words(Caution caution) {
        return holds(caution) ? kind.words() : kind.words() + " before; it says something else now";
    }

    /** Whether this answers that caution. */
    public boolean isFor(Caution caution) {
        return rule.equals(caution.rule()) && title.equals(caution.name());
    }
}
