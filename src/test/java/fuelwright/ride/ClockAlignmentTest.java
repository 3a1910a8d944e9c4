package fuelwright.ride;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.ride.Channel.Confidence;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Two loggers of one ride, of known offset and drift. */
class ClockAlignmentTest {

    /** A ride's engine speed at a moment: a few gears' worth of random pulls, coasts and cruises, smooth between. */
    private static DoubleUnaryOperator speed(long seed, double lengthS) {
        Random random = new Random(seed);
        List<double[]> knots = new ArrayList<>();
        for (double t = -60; t < lengthS + 60; t += 1.5 + 5 * random.nextDouble()) {
            knots.add(new double[] {t, 1200 + 5500 * random.nextDouble()});
        }
        return t -> {
            int k = 0;
            while (k + 2 < knots.size() && knots.get(k + 1)[0] < t) {
                k++;
            }
            double[] a = knots.get(k);
            double[] b = knots.get(k + 1);
            double share = (1 - Math.cos(Math.PI * (t - a[0]) / (b[0] - a[0]))) / 2;
            return a[1] + share * (b[1] - a[1]);
        };
    }

    private static Channel channel(String heading, Role role, Unit unit, double[] values) {
        return new Channel(heading, role, unit, Column.of(values), Confidence.SURE, "");
    }

    private static Ride ride(
            String name,
            double fromS,
            double lengthS,
            double stepS,
            DoubleUnaryOperator trueTime,
            DoubleUnaryOperator speed,
            Random noise) {
        int n = (int) (lengthS / stepS);
        double[] time = new double[n];
        double[] rpm = new double[n];
        double[] extra = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = fromS + i * stepS;
            double t = trueTime.applyAsDouble(time[i]);
            rpm[i] = speed.applyAsDouble(t) + 20 * noise.nextGaussian();
            extra[i] = t;
        }
        return new Ride(
                name,
                Column.of(time),
                List.of(
                        channel("rpm", Role.ENGINE_SPEED, Unit.RPM, rpm),
                        channel("moment " + name, Role.OTHER, Unit.ONE, extra)),
                List.of(0),
                List.of());
    }

    @Test
    void offset_and_drift_are_found_from_the_engine_speed_that_both_logged() {
        for (double[] known : new double[][] {{12.345, 150e-6}, {-37.8, -80e-6}, {400.02, 3e-3}, {0, 0}}) {
            Random noise = new Random(5);
            DoubleUnaryOperator speed = speed(11, 900);
            Ride first = ride("ecu", 0, 900, 0.1, t -> t, speed, noise);
            Ride second = ride("wideband", 0, 420, 0.033, t -> t * (1 + known[1]) + known[0], speed, noise);
            ClockAlignment found = ClockAlignment.of(first, second).value().orElseThrow();
            double worst = 0;
            for (double t = Math.max(0, -known[0]); t < 420; t += 20) {
                worst = Math.max(worst, Math.abs(found.toFirst(t) - (t * (1 + known[1]) + known[0])));
            }
            assertTrue(worst < 0.02, known[0] + ": off by " + worst + ", " + found.words());
            assertTrue(found.errorS() < 0.01, found.words());
            assertEquals(100, found.toSecond(found.toFirst(100)), 1e-9);
        }
    }

    @Test
    void logs_of_different_rides_are_refused() {
        Ride first = ride("ecu", 0, 900, 0.1, t -> t, speed(11, 900), new Random(1));
        Ride second = ride("other", 0, 420, 0.05, t -> t, speed(12, 900), new Random(2));
        Loaded<ClockAlignment> loaded = ClockAlignment.of(first, second);
        assertTrue(loaded.value().isEmpty());
        assertTrue(
                loaded.issues().get(0).sentence().contains("can't be aligned by engine speed"),
                loaded.issues().toString());
        assertEquals(Issue.Severity.ERROR, loaded.issues().get(0).severity());
    }

    @Test
    void a_log_that_stands_still_is_refused() {
        Ride first = ride("ecu", 0, 300, 0.1, t -> t, t -> 3000, new Random(1));
        Ride second = ride("other", 0, 200, 0.1, t -> t, t -> 3000, new Random(2));
        assertTrue(ClockAlignment.of(first, second).value().isEmpty());
    }

    @Test
    void mixture_is_aligned_to_fuel_cut_where_the_second_log_has_no_engine_speed() {
        Random random = new Random(9);
        int n = 9000;
        double[] time = new double[n];
        double[] cut = new double[n];
        double[] rpm = new double[n];
        double[] lambda = new double[n];
        int left = 0;
        for (int i = 0; i < n; i++) {
            time[i] = i * 0.1;
            left = left > 0 ? left - 1 : random.nextInt(120) == 0 ? 10 + random.nextInt(60) : 0;
            cut[i] = left > 0 ? 1 : 0;
            rpm[i] = 3000;
            lambda[i] = left > 0 ? 1.6 : 0.95 + 0.02 * random.nextGaussian();
        }
        Ride first = new Ride(
                "ecu",
                Column.of(time),
                List.of(channel("rpm", Role.ENGINE_SPEED, Unit.RPM, rpm), channel("cut", Role.FUEL_CUT, Unit.ONE, cut)),
                List.of(0),
                List.of());
        double[] later = time.clone();
        for (int i = 0; i < n; i++) {
            later[i] = (time[i] - 25.5) / (1 + 100e-6);
        }
        Ride second = new Ride(
                "wideband",
                Column.of(later),
                List.of(channel("lambda", Role.LAMBDA, Unit.LAMBDA, lambda)),
                List.of(0),
                List.of());
        ClockAlignment found = ClockAlignment.of(first, second).value().orElseThrow();
        assertEquals(ClockAlignment.By.FUEL_CUT, found.by());
        assertEquals(325.5 + 0.03, found.toFirst(300), 0.05, found.words());
    }

    @Test
    void a_merged_ride_has_the_second_logs_channels_at_the_first_logs_rows() {
        DoubleUnaryOperator speed = speed(11, 300);
        Ride first = ride("ecu", 0, 300, 0.1, t -> t, speed, new Random(1));
        Ride second = ride("wideband", 0, 100, 0.05, t -> t + 50, speed, new Random(2));
        Ride both = first.with(second, ClockAlignment.byHand(50, 0));
        assertEquals(first.size(), both.size());
        Column moment = both.channels().get(3).values();
        assertTrue(!moment.has(400) && !moment.has(1600));
        assertEquals(both.timeS().at(1000), moment.at(1000), 1e-9);
        assertEquals("rpm (wideband)", both.channels().get(2).heading());
        assertEquals(Role.OTHER, both.channels().get(2).role());
        assertEquals("rpm", both.channel(Role.ENGINE_SPEED).orElseThrow().heading());
        assertTrue(
                both.remarks().get(both.remarks().size() - 1).what().startsWith("Clock aligned by hand: offset 50 s"));
    }

    @Test
    void a_nudge_moves_the_second_log() {
        assertEquals(50.25, ClockAlignment.byHand(50, 0).nudged(0.25).toFirst(0));
    }
}
