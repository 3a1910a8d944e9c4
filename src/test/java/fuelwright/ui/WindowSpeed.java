package fuelwright.ui;

import fuelwright.speed.BigRide;
import fuelwright.speed.Watchdog;
import fuelwright.ui.plot.Timeline;
import fuelwright.ui.session.BackgroundRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.shell.Shell;
import fuelwright.ui.theme.Theme;
import fuelwright.work.RecipeBook;
import fuelwright.work.StateFolder;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.control.Slider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/**
 * How long the window's thread is kept while one works on a long ride: {@code mvn -B -q test -Dtest=WindowSpeed -Drows=1000000}. No build
 * does it by itself, and nothing is asserted: a busy machine would break it.
 */
class WindowSpeed {

    private static final int ROUNDS = 4;
    private static final int CHANGES = 180;
    private static final int EACH_MS = 16;

    @Test
    @EnabledIfSystemProperty(named = "rows", matches = "\\d+")
    void isToldForALongRide() {
        Application.launch(Window.class, System.getProperty("rows"));
    }

    /** The window on a long ride, with a script that works it. */
    public static final class Window extends Application {

        private final Watchdog watchdog = new Watchdog();
        private final List<String> stages = new ArrayList<>();
        private Session session;
        private Shell shell;

        @Override
        public void start(javafx.stage.Stage stage) throws IOException {
            Path log = BigRide.log(Integer.parseInt(getParameters().getRaw().get(0)));
            session = new Session(
                    new WorkServices(new RecipeBook(Path.of("target", "state")), StateFolder.none()),
                    new BackgroundRunner(watchdog.timed()));
            setUserAgentStylesheet(Theme.LIGHT.base());
            shell = new Shell(session, WindowApp.panes(session));
            stage.setScene(shell.scene());
            stage.show();
            watchdog.watch(stage.getScene());
            Thread script = new Thread(() -> run(log), "script");
            script.setDaemon(true);
            script.start();
        }

        private void run(Path log) {
            try {
                watchdog.during("reading and analysing", () -> {
                    watchdog.onWindow(() -> session.open(List.of(BigRide.fuelTable(), BigRide.targetTable(), log)));
                    settle();
                });
                watchdog.during("stages, first time", () -> goThrough("first"));
                for (int round = 1; round <= ROUNDS; round++) {
                    String name = "again " + round;
                    watchdog.during("stages again", () -> goThrough(name));
                }
                work();
                System.out.println(watchdog.report("stages, first time", "stages again"));
                System.out.println(
                        "| change of stage | round | until its first frame, processor ms | by the clock, ms |\n"
                                + "| --- | --- | --- | --- |");
                stages.forEach(System.out::println);
            } catch (InterruptedException | RuntimeException e) {
                e.printStackTrace();
            } finally {
                watchdog.close();
                Platform.exit();
            }
        }

        private void work() throws InterruptedException {
            show(Stage.PROPOSAL);
            int cells = session.job().fuelTable().orElseThrow().cells();
            watchdog.during(
                    "walking over cells",
                    () -> often(i -> session.cellProperty().set(i % cells)));
            show(Stage.EVIDENCE);
            watchdog.during(
                    "walking over cells, Evidence",
                    () -> often(i -> session.cellProperty().set(i % cells)));
            show(Stage.RIDES);
            Timeline timeline = find("#timeline", Timeline.class);
            watchdog.during(
                    "moving and zooming over time",
                    () -> often(i -> {
                        var window = timeline.windowProperty().get();
                        timeline.windowProperty()
                                .set(
                                        i % 60 < 30
                                                ? window.zoomed(0.8, window.fromS() + 0.4 * window.lengthS())
                                                : window.zoomed(1.25, window.fromS() + 0.4 * window.lengthS()));
                    }));
            watchdog.onWindow(() -> find("#adjust-screens", javafx.scene.control.ButtonBase.class)
                    .fire());
            Slider screen = all(Slider.class).get(0);
            watchdog.during("a screen's slider, 60 changes a second", () -> {
                watchdog.onWindow(() -> screen.setValueChanging(true));
                often(i ->
                        screen.setValue(screen.getMin() + (i % 60 + 1) / 62.0 * (screen.getMax() - screen.getMin())));
                watchdog.onWindow(() -> screen.setValueChanging(false));
                settle();
            });
            show(Stage.MACHINE);
            Slider throttle = find("#machine-throttle", Slider.class);
            watchdog.during("the throttle's slider, 60 changes a second", () -> often(i -> throttle.setValue(i % 100)));
            for (Stage stage : Stage.values()) {
                show(stage);
                watchdog.during("lambda to AFR and back, " + stage.words(), () -> {
                    for (int i = 0; i < 4; i++) {
                        watchdog.onWindow(() ->
                                session.afrProperty().set(!session.afrProperty().get()));
                        Thread.sleep(300);
                    }
                });
            }
        }

        /** A change on the window's thread. */
        private interface Change {
            void to(int step);
        }

        /** Sixty times a second, whether the thread keeps up or not. */
        private void often(Change change) throws InterruptedException {
            for (int i = 0; i < CHANGES; i++) {
                int step = i;
                watchdog.timed().execute(() -> change.to(step));
                Thread.sleep(EACH_MS);
            }
            watchdog.onWindow(() -> {});
        }

        private void goThrough(String round) throws InterruptedException {
            for (Stage stage : Stage.values()) {
                stages.add("| " + stage.words() + " | " + round + " | " + show(stage) + " |");
            }
        }

        /** Shows a stage, and tells how long it took until its first frame was handed to the drawing thread. */
        private String show(Stage stage) throws InterruptedException {
            CountDownLatch made = new CountDownLatch(1);
            long[] end = new long[2];
            Runnable[] once = new Runnable[1];
            once[0] = () -> {
                shell.scene().removePostLayoutPulseListener(once[0]);
                // Runs when the frame in which it was asked for is over.
                Platform.runLater(() -> {
                    end[0] = System.nanoTime();
                    end[1] = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
                    made.countDown();
                });
            };
            long start = System.nanoTime();
            long before = watchdog.onWindow(() -> {
                session.stageProperty().set(stage);
                shell.scene().addPostLayoutPulseListener(once[0]);
                Platform.requestNextPulse();
            });
            made.await();
            Thread.sleep(400);
            return String.format(Locale.ROOT, "%.0f | %.0f", (end[1] - before) / 1e6, (end[0] - start) / 1e6);
        }

        /** Waits until nothing is worked on any more. */
        private void settle() throws InterruptedException {
            boolean[] working = {true};
            while (working[0]) {
                Thread.sleep(250);
                watchdog.onWindow(() -> working[0] = session.workingProperty().get());
            }
            Thread.sleep(500);
        }

        private <N extends Node> N find(String id, Class<N> kind) {
            return kind.cast(
                    Optional.ofNullable(shell.root().lookup(id)).orElseThrow(() -> new IllegalStateException(id)));
        }

        private <N extends Node> List<N> all(Class<N> kind) {
            return Arrays.stream(shell.root().lookupAll("*").toArray(Node[]::new))
                    .filter(kind::isInstance)
                    .map(kind::cast)
                    .toList();
        }
    }
}
