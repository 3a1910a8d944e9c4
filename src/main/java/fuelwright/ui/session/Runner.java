package fuelwright.ui.session;

import fuelwright.work.Cancellation;
import fuelwright.work.Progress;
import java.time.Duration;

/** Where the window has its long work done. In each lane only the newest work counts: what it supersedes is cancelled and never heard of again. */
public interface Runner extends AutoCloseable {

    /** Lanes whose name starts so are for short work that must not wait for the long one. */
    String LOOK = "look";

    /** Long work. */
    @FunctionalInterface
    interface Work<T> {
        T run(Progress progress, Cancellation cancellation) throws Exception;
    }

    /** Who hears of it, on the window's thread. */
    interface Listener<T> {
        void at(double fraction, String what);

        void done(T value);

        void failed(Exception problem);
    }

    /**
     * Does the work after a delay, unless newer work in the same lane comes first.
     *
     * @param lane what supersedes what
     */
    <T> void latest(String lane, Duration delay, Work<T> work, Listener<T> listener);

    /** Cancels what is going on in a lane; nobody hears of it again. */
    void cancel(String lane);

    /** Cancels everything. */
    @Override
    void close();
}
