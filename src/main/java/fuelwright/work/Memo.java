package fuelwright.work;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Results of the stages of an analysis by all that they follow from. What two analyses in a row had no use for is forgotten, and at once what
 * is large. Thread-safe; a result that two threads miss at once is made twice and is the same.
 */
final class Memo {

    /** All that a result follows from: a record, equal where the result is. Rides count as themselves, not by their rows. */
    interface Key<T> {
        /** Whether the result holds arrays as long as the rides. */
        boolean isLarge();
    }

    private static final class Entry {
        final Object value;
        final long made;
        long lastUsed;

        Entry(Object value, long made) {
            this.value = value;
            this.made = made;
            this.lastUsed = made;
        }
    }

    private final boolean keeps;
    private final Map<Key<?>, Entry> entries = new HashMap<>();
    private long analyses;

    /** Nothing is known yet. */
    Memo() {
        this(true);
    }

    private Memo(boolean keeps) {
        this.keeps = keeps;
    }

    /** For one analysis, after which nobody asks again: everything is made when it is asked for, and nothing held on to. */
    static Memo none() {
        return new Memo(false);
    }

    /** Whether what is made is kept for later. */
    boolean keeps() {
        return keeps;
    }

    /** The result for a key where it is known. */
    synchronized <T> Optional<T> known(Key<T> key) {
        return Optional.ofNullable(entries.get(key)).map(Memo::valueOf);
    }

    /** The result for a key: the one that is known, or a new one. */
    <T> T of(Key<T> key, Supplier<T> make) {
        synchronized (this) {
            Entry known = entries.get(key);
            if (known != null) {
                known.lastUsed = analyses;
                return valueOf(known);
            }
        }
        T made = Objects.requireNonNull(make.get());
        synchronized (this) {
            if (!keeps) {
                return made;
            }
            entries.put(key, new Entry(made, analyses));
        }
        return made;
    }

    /** A key's results are only ever put in by {@link #of}, which gives them the key's type. */
    @SuppressWarnings("unchecked")
    private static <T> T valueOf(Entry entry) {
        return (T) entry.value;
    }

    /** Forgets what was made for analyses that never ended: of a slider's many positions only the newest counts. */
    synchronized void forgetTried() {
        entries.values().removeIf(e -> e.made == analyses);
    }

    /** To be called after each analysis. */
    synchronized void forgetUnused() {
        entries.entrySet().removeIf(e -> e.getValue().lastUsed < (e.getKey().isLarge() ? analyses : analyses - 1));
        analyses++;
    }
}
