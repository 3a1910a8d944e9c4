package fuelwright.ui.session;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Objects;
import java.util.Optional;

/**
 * A value with undo and redo: a stack of values, at most {@value #MOST} deep. Values that came from each other by changes are of one line; one
 * that took another's place begins a new line.
 */
final class History<T> {

    private static final int MOST = 20_000;

    private record Entry<T>(T value, int line) {}

    private final Deque<Entry<T>> past = new ArrayDeque<>();
    private final Deque<Entry<T>> future = new ArrayDeque<>();
    private Entry<T> now;
    private int lines;

    History(T now) {
        this.now = new Entry<>(now, 0);
    }

    T now() {
        return now.value;
    }

    /** The line that the value is of. */
    int line() {
        return now.line;
    }

    /** Makes {@code next} the value; whatever was undone before is gone. Equal values change nothing. */
    boolean put(T next) {
        return put(next, now.line);
    }

    /** The same, with a value that took the place of the one before. */
    boolean putAnother(T next) {
        return put(next, ++lines);
    }

    private boolean put(T next, int line) {
        if (Objects.equals(now.value, next)) {
            return false;
        }
        past.push(now);
        if (past.size() > MOST) {
            past.removeLast();
        }
        future.clear();
        now = new Entry<>(next, line);
        return true;
    }

    /** Begins anew: nothing to undo. */
    void start(T first) {
        past.clear();
        future.clear();
        now = new Entry<>(first, ++lines);
    }

    boolean canUndo() {
        return !past.isEmpty();
    }

    boolean canRedo() {
        return !future.isEmpty();
    }

    /** The value of another line that undo would go back to; empty where it stays in this one. */
    Optional<T> otherBefore() {
        return other(past);
    }

    /** The value of another line that redo would go on to; empty where it stays in this one. */
    Optional<T> otherAfter() {
        return other(future);
    }

    private Optional<T> other(Deque<Entry<T>> entries) {
        return Optional.ofNullable(entries.peek())
                .filter(e -> e.line != now.line)
                .map(Entry::value);
    }

    void undo() {
        if (canUndo()) {
            future.push(now);
            now = past.pop();
        }
    }

    void redo() {
        if (canRedo()) {
            past.push(now);
            now = future.pop();
        }
    }
}
