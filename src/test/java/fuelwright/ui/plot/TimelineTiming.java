package fuelwright.ui.plot;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.stage.Stage;

/**
 * Measures how long the interface's thread paints a ride of many rows, at several zooms, without a display. Argument: rows (10 000 000). Start
 * with the headless options of the build.
 */
public final class TimelineTiming {

    /** Processor time of the thread: what else the machine does isn't counted. */
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private static final int PAINTS = 120;
    private static final int LANES = 5;
    private static final double RATE_HZ = 100;

    private TimelineTiming() {}

    public static void main(String[] args) {
        Application.launch(Window.class, args);
    }

    /** The window that is painted. */
    public static final class Window extends Application {

        @Override
        public void start(Stage stage) {
            List<String> raw = getParameters().getRaw();
            int rows = raw.isEmpty() ? 10_000_000 : Integer.parseInt(raw.get(0));
            long before = System.nanoTime();
            Trace trace = trace(rows);
            System.out.printf(
                    Locale.ROOT,
                    "%d rows, %d lanes: made in %.0f ms, off the interface's thread in the program%n",
                    rows,
                    trace.lanes().size(),
                    (System.nanoTime() - before) / 1e6);
            Timeline timeline = new Timeline();
            stage.setScene(new Scene(timeline, 1640, 760));
            stage.show();
            timeline.traceProperty().set(trace);
            timeline.applyCss();
            timeline.layout();
            TimeWindow all = timeline.windowProperty().get();
            for (double share : new double[] {1, 0.3, 0.03, 0.003, 1e-4, 1e-5}) {
                measure(timeline, all.at(all.lengthS() * 0.3, all.lengthS() * share), share);
            }
            Platform.exit();
        }

        private static void measure(Timeline timeline, TimeWindow window, double share) {
            double[] ms = new double[PAINTS];
            for (int i = 0; i < PAINTS; i++) {
                timeline.windowProperty().set(window.moved(0.002 * i));
                long before = THREADS.getCurrentThreadCpuTime();
                timeline.paint();
                ms[i] = (THREADS.getCurrentThreadCpuTime() - before) / 1e6;
                // The drawing that waits for the next frame must not pile up.
                timeline.snapshot(null, null);
            }
            double[] warm = Arrays.copyOfRange(ms, PAINTS / 4, PAINTS);
            Arrays.sort(warm);
            System.out.printf(
                    Locale.ROOT,
                    "%8.3f %% of the ride: median %.1f ms, 99th percentile %.1f ms, first %.1f ms%n",
                    100 * share,
                    warm[warm.length / 2],
                    warm[(int) (warm.length * 0.99)],
                    ms[0]);
        }

        private static Trace trace(int rows) {
            Random random = new Random(3);
            List<Lane> lanes = new ArrayList<>();
            for (int lane = 0; lane < LANES; lane++) {
                double[] values = new double[rows];
                double value = 50;
                for (int i = 0; i < rows; i++) {
                    value += 0.4 * random.nextGaussian() - 0.001 * (value - 50);
                    // One channel in five is polled in turn: four rows of five are empty.
                    values[i] = lane == 4 && i % 5 != 0 ? Double.NaN : value;
                }
                Lane made = Lane.fitted(
                        "Lane " + lane,
                        "%",
                        "lane-" + lane % 4,
                        rows,
                        i -> values[i],
                        lane == 2 ? Optional.of(i -> 50 + i % 1000 / 100.0) : Optional.empty(),
                        -1e3,
                        1e3,
                        1,
                        1);
                lanes.add(made);
            }
            OutKind[] kinds = OutKind.values();
            Shading shading =
                    new Shading(rows, kinds.length, row -> row / 700 % 3 == 0 ? row / 2100 % kinds.length : -1);
            RideClock clock = new RideClock(rows, i -> i / RATE_HZ, List.of(0));
            List<Trace.Mark> marks = new ArrayList<>();
            for (int i = 0; i < 400; i++) {
                double at = i * rows / RATE_HZ / 400;
                marks.add(new Trace.Mark(at, at + 2, i % 3 == 0, "made up"));
            }
            return new Trace(clock, lanes, shading, List.of(kinds), row -> "", marks);
        }
    }
}
