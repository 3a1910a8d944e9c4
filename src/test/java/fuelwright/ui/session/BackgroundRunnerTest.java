package fuelwright.ui.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class BackgroundRunnerTest {

    private static final int CHANGES = 600;

    @Test
    void changesOfASliderDoNotQueueUp() throws InterruptedException {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch go = new CountDownLatch(1);
        CountDownLatch last = new CountDownLatch(1);
        AtomicInteger works = new AtomicInteger();
        List<Integer> heard = Collections.synchronizedList(new ArrayList<>());
        try (BackgroundRunner runner = new BackgroundRunner(Runnable::run)) {
            for (int i = 0; i < CHANGES; i++) {
                int change = i;
                runner.latest(
                        "slider",
                        Duration.ZERO,
                        (progress, cancellation) -> {
                            works.incrementAndGet();
                            begun.countDown();
                            go.await();
                            return change;
                        },
                        listener(heard, last));
                if (i == 0) {
                    assertTrue(begun.await(1, TimeUnit.MINUTES));
                }
            }
            go.countDown();
            assertTrue(last.await(1, TimeUnit.MINUTES));
        }
        assertEquals(2, works.get(), "the one that had begun, and the newest");
        assertEquals(List.of(CHANGES - 1), heard);
    }

    @Test
    void aCloseWaitsForWorkThatPutsThingsAwayAndNobodyHearsOfIt() throws InterruptedException {
        CountDownLatch begun = new CountDownLatch(1);
        List<String> order = Collections.synchronizedList(new ArrayList<>());
        BackgroundRunner runner = new BackgroundRunner(news -> order.add("heard"));
        runner.latest(
                "save",
                Duration.ZERO,
                (progress, cancellation) -> {
                    begun.countDown();
                    while (!cancellation.cancelled()) {
                        Thread.onSpinWait();
                    }
                    order.add("put away");
                    progress.at(1, "done");
                    return 0;
                },
                listener(new ArrayList<>(), new CountDownLatch(0)));
        assertTrue(begun.await(1, TimeUnit.MINUTES));
        runner.close();
        order.add("closed");
        runner.latest("save", Duration.ZERO, (progress, cancellation) -> order.add("late"), null);
        assertEquals(List.of("put away", "closed"), order);
    }

    private static Runner.Listener<Integer> listener(List<Integer> heard, CountDownLatch last) {
        return new Runner.Listener<>() {
            @Override
            public void at(double fraction, String what) {
                // this work tells no progress
            }

            @Override
            public void done(Integer value) {
                heard.add(value);
                if (value == CHANGES - 1) {
                    last.countDown();
                }
            }

            @Override
            public void failed(Exception problem) {
                throw new IllegalStateException(problem);
            }
        };
    }
}
