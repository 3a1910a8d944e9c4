package fuelwright.ui.session;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;

/** Does everything at once; or, when {@link #hold held}, when the test says so: then only the newest of each lane. */
public final class SameThreadRunner implements Runner {

    private final Map<String, Runnable> waiting = new LinkedHashMap<>();
    private boolean held;

    /** Keeps back what comes from now on. */
    public void hold() {
        held = true;
    }

    /** Does what was kept back. */
    public void release() {
        held = false;
        Map<String, Runnable> all = new LinkedHashMap<>(waiting);
        waiting.clear();
        all.values().forEach(Runnable::run);
    }

    @Override
    public <T> void latest(String lane, Duration delay, Work<T> work, Listener<T> listener) {
        if (held) {
            waiting.put(lane, () -> run(work, listener));
        } else {
            run(work, listener);
        }
    }

    private static <T> void run(Work<T> work, Listener<T> listener) {
        T value;
        try {
            value = work.run(listener::at, () -> false);
        } catch (Exception e) {
            listener.failed(e);
            return;
        }
        listener.done(value);
    }

    @Override
    public void cancel(String lane) {
        waiting.remove(lane);
    }

    @Override
    public void close() {
        waiting.clear();
    }
}
