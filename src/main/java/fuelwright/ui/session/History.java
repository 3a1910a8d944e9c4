package fuelwright.ui.session;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Objects;

/** A value with undo and redo: a stack of values, at most {@value #MOST} deep. */
final class History<T> {

    private static final int MOST = 20_000;

    private final Deque<T> past = new ArrayDeque<>();
    private final Deque<T> future = new ArrayDeque<>();
    private T now;

    History(T now) {
        this.now = now;
    }

    T now() {
        return now;
    }

    /** Makes {@code next} the value; whatever was undone before is gone. Equal values change nothing. */
    boolean put(T next) {
        if (Objects.equals(now, next)) {
            return false;
        }
        past.push(now);
        if (past.size() > MOST) {
            past.removeLast();
        }
        future.clear();
        now = next;
        return true;
    }

    /** Begins anew: nothing to undo. */
    void start(T first) {
        past.clear();
        future.clear();
        now = first;
    }

    boolean canUndo() {
        return !past.isEmpty();
    }

    boolean canRedo() {
        return !future.isEmpty();
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
