package fuelwright.ui.session;

import fuelwright.work.Cancellation;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;

/** Two threads beside the window's: one for long work, one for what is looked at meanwhile. The only place that hands anything back to the window's thread. */
public final class BackgroundRunner implements Runner {

    private static final class Ticket {
        private volatile boolean cancelled;
        private volatile double lastFraction = -1;
        private volatile long lastNanos;
    }

    private static final long PROGRESS_EVERY_NANOS = 50_000_000;
    /** How long a close waits for work that puts away what it has begun to write. */
    private static final long LAST_WORK_MS = 300;

    private final ScheduledExecutorService thread = thread("fuelwright-work");
    private final ScheduledExecutorService looks = thread("fuelwright-look");
    private final Executor window;
    private final Map<String, Ticket> newest = new ConcurrentHashMap<>();

    public BackgroundRunner() {
        this(Platform::runLater);
    }

    /** @param window hands work to the window's thread */
    public BackgroundRunner(Executor window) {
        this.window = window;
    }

    private static ScheduledExecutorService thread(String name) {
        return Executors.newSingleThreadScheduledExecutor(work -> {
            Thread made = new Thread(work, name);
            made.setDaemon(true);
            return made;
        });
    }

    @Override
    public <T> void latest(String lane, Duration delay, Work<T> work, Listener<T> listener) {
        Ticket ticket = new Ticket();
        Ticket old = newest.put(lane, ticket);
        if (old != null) {
            old.cancelled = true;
        }
        try {
            (lane.startsWith(LOOK) ? looks : thread)
                    .schedule(() -> run(ticket, work, listener), delay.toMillis(), TimeUnit.MILLISECONDS);
        } catch (RejectedExecutionException closed) {
            ticket.cancelled = true;
        }
    }

    private <T> void run(Ticket ticket, Work<T> work, Listener<T> listener) {
        if (ticket.cancelled) {
            return;
        }
        try {
            T value = work.run((fraction, what) -> progress(ticket, listener, fraction, what), () -> ticket.cancelled);
            publish(ticket, () -> listener.done(value));
        } catch (Cancellation.CancelledException e) {
            // nobody waits for it any more
        } catch (Exception e) {
            publish(ticket, () -> listener.failed(e));
        } catch (OutOfMemoryError e) {
            publish(ticket, () -> listener.failed(new IllegalStateException("not enough memory", e)));
        }
    }

    private <T> void progress(Ticket ticket, Listener<T> listener, double fraction, String what) {
        long now = System.nanoTime();
        if (now - ticket.lastNanos >= PROGRESS_EVERY_NANOS || fraction >= 1 && ticket.lastFraction < 1) {
            ticket.lastNanos = now;
            ticket.lastFraction = fraction;
            publish(ticket, () -> listener.at(fraction, what));
        }
    }

    private void publish(Ticket ticket, Runnable news) {
        if (ticket.cancelled) {
            return;
        }
        window.execute(() -> {
            if (!ticket.cancelled) {
                news.run();
            }
        });
    }

    @Override
    public void cancel(String lane) {
        Ticket ticket = newest.remove(lane);
        if (ticket != null) {
            ticket.cancelled = true;
        }
    }

    /** Nobody hears of anything from now on. Work that doesn't stop within 0.3 s ends with the program. */
    @Override
    public void close() {
        newest.values().forEach(t -> t.cancelled = true);
        thread.shutdownNow();
        looks.shutdownNow();
        long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(LAST_WORK_MS);
        try {
            thread.awaitTermination(end - System.nanoTime(), TimeUnit.NANOSECONDS);
            looks.awaitTermination(end - System.nanoTime(), TimeUnit.NANOSECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
