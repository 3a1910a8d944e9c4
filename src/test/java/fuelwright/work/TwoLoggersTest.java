package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Loaded;
import fuelwright.ride.ClockAlignment;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A second file is laid upon the first by what they share, or by hand, or refused in words. */
class TwoLoggersTest {

    private static final double OFFSET_S = 37.4;
    private static final double LENGTH_S = 900;

    @TempDir
    Path folder;

    private final Random random = new Random(11);
    /** Starts and ends of overruns, s. */
    private final double[][] cuts = new double[45][];

    private boolean cut(double t) {
        for (double[] c : cuts) {
            if (t >= c[0] && t < c[1]) {
                return true;
            }
        }
        return false;
    }

    private Path first(boolean restarted) throws IOException {
        double at = 5;
        for (int i = 0; i < cuts.length; i++) {
            at += 6 + 16 * random.nextDouble();
            cuts[i] = new double[] {at, at + 1.5 + 3 * random.nextDouble()};
            at = cuts[i][1];
        }
        StringBuilder text = new StringBuilder("time [s],engine speed [rpm],throttle [%]\n");
        for (int i = 0; i < LENGTH_S * 20; i++) {
            double t = i / 20.0;
            double shown = restarted && t > 400 ? t - 400 : t;
            text.append(String.format(
                    Locale.ROOT,
                    "%.2f,%.0f,%s%n",
                    shown,
                    3500 + 800 * Math.sin(t / 7) + 5 * random.nextGaussian(),
                    cut(t) ? "0" : String.format(Locale.ROOT, "%.1f", 20 + 10 * Math.sin(t / 3))));
        }
        return Files.writeString(folder.resolve("first.csv"), text);
    }

    /** A wideband that logs by itself: time and lambda, nothing else. */
    private Path second(boolean lost) throws IOException {
        StringBuilder text = new StringBuilder("time [s],lambda\n");
        for (int i = 0; i < (LENGTH_S - 60) * 10; i++) {
            double own = i / 10.0;
            boolean lean = lost ? random.nextInt(100) == 0 : cut(own + OFFSET_S);
            text.append(
                    String.format(Locale.ROOT, "%.1f,%.3f%n", own, lean ? 1.5 : 0.95 + 0.01 * random.nextGaussian()));
        }
        return Files.writeString(folder.resolve("second.csv"), text);
    }

    private static Loaded<Ride> read(Path first, Path second, Optional<ClockAlignment> byHand) {
        Loaded<OpenRide.Found> found = OpenRide.found(
                first, Optional.of(second), RideOptions.defaults(), byHand, Progress.NONE, Cancellation.NEVER);
        return new Loaded<>(found.value().map(OpenRide.Found::ride), found.issues());
    }

    @Test
    void aWidebandWithoutEngineSpeedIsAlignedByFuelCut() throws IOException {
        Ride first = OpenRide.read(first(false), RideOptions.defaults(), Progress.NONE, Cancellation.NEVER)
                .value()
                .orElseThrow();
        SecondLogger both = OpenRide.second(
                        first,
                        second(false),
                        RideOptions.defaults(),
                        Optional.empty(),
                        Progress.NONE,
                        Cancellation.NEVER)
                .value()
                .orElseThrow();
        assertEquals(ClockAlignment.By.FUEL_CUT, both.alignment().by());
        assertEquals(OFFSET_S, both.alignment().offsetS(), 0.15);
        assertEquals(1, both.together().mixtures().size());
        SecondLogger nudged = both.aligned(both.alignment().nudged(0.2));
        assertEquals(both.alignment().offsetS() + 0.2, nudged.alignment().offsetS(), 1e-9);
    }

    @Test
    void aMixtureThatDoesNotFollowTheFuelCutIsRefusedAndCanBeLaidByHand() throws IOException {
        Path first = first(false);
        Path second = second(true);
        Loaded<Ride> refused = read(first, second, Optional.empty());
        assertTrue(refused.value().isEmpty());
        assertTrue(refused.issues().stream()
                .anyMatch(i -> i.file().equals("second.csv") && !i.todo().isEmpty()));
        Ride laid = read(first, second, Optional.of(ClockAlignment.byHand(OFFSET_S, 0)))
                .value()
                .orElseThrow();
        assertEquals("first.csv + second.csv", laid.name());
        assertTrue(laid.remarks().stream().anyMatch(r -> r.what().contains("aligned by hand")));
        assertTrue(laid.form().isPresent());
    }

    @Test
    void aRestartIsSaidPlainly() throws IOException {
        Loaded<Ride> refused = read(first(true), second(false), Optional.empty());
        assertEquals(
                "First.csv was restarted 1 time, and each restart sets its clock anew: the two logs can't be aligned as one",
                refused.issues().stream()
                        .filter(i -> i.what().contains("restarted 1"))
                        .findFirst()
                        .orElseThrow()
                        .what());
    }

    @Test
    void driftTurnsAroundTheMiddle() {
        ClockAlignment turned = ClockAlignment.byHand(10, 0).drifting(1e-3, 500);
        assertEquals(510, turned.toFirst(500), 1e-9);
        assertEquals(10 - 0.5, turned.toFirst(0), 1e-9);
    }
}
