package fuelwright.estimate;

import java.util.concurrent.atomic.AtomicLong;
import java.util.function.DoubleConsumer;

/**
 * Where long work says how far it is, in as many small steps as it likes. Whoever listens may throw to end the work. What is said never goes back.
 *
 * <p>Any thread may go on a step, but the listener is only told by the thread that made the pace, which shares the work: it may hold locks that the
 * listener needs. The others end at their next step once the listener has thrown.
 */
public final class Pace {

    private final DoubleConsumer listener;
    private final Thread teller = Thread.currentThread();
    private final AtomicLong done = new AtomicLong();
    private double from;
    private double to;
    private long steps = 1;
    private volatile RuntimeException end;

    /** @param listener is told the share that is done, from 0 to 1, by the thread that calls this */
    public Pace(DoubleConsumer listener) {
        this.listener = listener;
    }

    /** Nobody listens. */
    public static Pace unheard() {
        return new Pace(share -> {});
    }

    /** The next stage, from where the last one was to end up to {@code share}, in about so many steps. Only for the thread that made this. */
    public void next(double share, long inSteps) {
        from = to;
        to = share;
        steps = Math.max(1, inSteps);
        done.set(0);
        check();
    }

    /** One step more. */
    public void step() {
        done.incrementAndGet();
        check();
    }

    /** Nothing new, but whoever listens may want to end the work. */
    public void check() {
        if (end != null) {
            throw end;
        }
        if (Thread.currentThread() == teller) {
            try {
                listener.accept(from + (to - from) * Math.min(1, (double) done.get() / steps));
            } catch (RuntimeException e) {
                end = e;
                throw e;
            }
        }
    }
}
