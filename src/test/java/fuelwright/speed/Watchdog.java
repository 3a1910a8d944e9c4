package fuelwright.speed;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.scene.Scene;

/**
 * Watches the window's thread while something is done with the window. A piece of work is one thing that was handed over from another
 * thread, or one frame with the input before it. Pieces are told in processor time of the thread, so that what else the machine does isn't
 * counted; beside them a knock at the thread's door every few milliseconds tells how long, by the clock, anything had to wait.
 */
public final class Watchdog implements AutoCloseable {

    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static final long KNOCK_EVERY_MS = 4;
    /** What is less is the loop's own. */
    private static final double LEAST_MS = 0.05;
    /** Most that a piece may take. */
    private static final double MOST_MS = 16;

    /** What one deed cost. */
    private static final class Cost {
        private final List<Double> pieces = new ArrayList<>();
        private final List<Double> knocks = new ArrayList<>();
    }

    private final Map<String, Cost> costs = new LinkedHashMap<>();
    private final Runnable frame = () -> Platform.runLater(this::pieceOver);
    private final Thread knocker = new Thread(this::knock, "knocker");
    private volatile boolean over;
    private Cost now = new Cost();
    private long cpuNs;

    /** On the window's thread: watches from now on. */
    public void watch(Scene scene) {
        cpuNs = THREADS.getCurrentThreadCpuTime();
        scene.addPostLayoutPulseListener(frame);
        knocker.setDaemon(true);
        knocker.start();
    }

    /** A piece of work is over. */
    private void pieceOver() {
        long ns = THREADS.getCurrentThreadCpuTime();
        double ms = (ns - cpuNs) / 1e6;
        if (ms > LEAST_MS) {
            now.pieces.add(ms);
        }
        cpuNs = ns;
    }

    /** Hands work to the window's thread, each a piece of its own. */
    public Executor timed() {
        return work -> Platform.runLater(() -> {
            pieceOver();
            work.run();
            pieceOver();
        });
    }

    /** Something to do with the window, which may be interrupted. */
    @FunctionalInterface
    public interface Doing {
        void run() throws InterruptedException;
    }

    /** Does it; what happens meanwhile is told under that name. */
    public void during(String name, Doing doing) throws InterruptedException {
        onWindow(() -> now = costs.computeIfAbsent(name, n -> new Cost()));
        doing.run();
        onWindow(() -> now = new Cost());
    }

    /**
     * Does it on the window's thread, as a piece of work, and waits for its end.
     *
     * @return processor time of the thread before it, ns
     */
    public long onWindow(Runnable work) throws InterruptedException {
        CountDownLatch done = new CountDownLatch(1);
        long[] before = new long[1];
        timed().execute(() -> {
            before[0] = THREADS.getCurrentThreadCpuTime();
            try {
                work.run();
            } finally {
                done.countDown();
            }
        });
        done.await();
        return before[0];
    }

    private void knock() {
        try {
            while (!over) {
                long start = System.nanoTime();
                CountDownLatch heard = new CountDownLatch(1);
                Platform.runLater(() -> {
                    now.knocks.add((System.nanoTime() - start) / 1e6);
                    heard.countDown();
                });
                if (!heard.await(1, TimeUnit.MINUTES)) {
                    return;
                }
                Thread.sleep(KNOCK_EVERY_MS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /**
     * What each deed cost, in Markdown, and what all others together.
     *
     * @param apart deeds that don't count there
     */
    public String report(String... apart) throws InterruptedException {
        StringBuilder text =
                new StringBuilder("| what was done | pieces of work | median, ms | 99 in 100 below, ms | longest, ms"
                        + " | over 16 ms | 99 in 100 knocks waited less than, ms |\n"
                        + "| --- | --- | --- | --- | --- | --- | --- |\n");
        onWindow(() -> {
            Cost others = new Cost();
            costs.forEach((name, cost) -> {
                text.append(line(name, cost));
                if (!List.of(apart).contains(name)) {
                    others.pieces.addAll(cost.pieces);
                    others.knocks.addAll(cost.knocks);
                }
            });
            text.append(line("all but " + String.join(", ", apart), others));
        });
        return text.toString();
    }

    private static String line(String name, Cost cost) {
        double[] work = sorted(cost.pieces);
        return String.format(
                Locale.ROOT,
                "| %s | %d | %.1f | %.1f | %.1f | %d | %.1f |%n",
                name,
                work.length,
                at(work, 0.5),
                at(work, 0.99),
                at(work, 1),
                cost.pieces.stream().filter(ms -> ms > MOST_MS).count(),
                at(sorted(cost.knocks), 0.99));
    }

    private static double[] sorted(List<Double> figures) {
        return figures.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    }

    private static double at(double[] sorted, double share) {
        return sorted.length == 0 ? 0 : sorted[(int) Math.ceil(share * sorted.length) - 1];
    }

    @Override
    public void close() {
        over = true;
    }
}
