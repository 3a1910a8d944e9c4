package fuelwright.safety;

import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A ride put together from phases, each with a steady throttle, a straight run of engine speed and the lambda that is burnt. The sensor
 * shows it late (one cycle and 40 ms) and slowly (0.1 s). Noise is a fixed pattern, so that every run is the same.
 */
final class PlantedRide {

    private record Phase(
            double seconds,
            double rpmFrom,
            double rpmTo,
            double throttle,
            double lambdaFrom,
            double lambdaTo,
            Map<Role, Double> other) {}

    private static final double LAG_S = 0.1;

    private final double hz;
    private final List<Phase> phases = new ArrayList<>();
    private final Map<Role, Double> steady = new LinkedHashMap<>();
    private double noise = 0.005;
    private double top = 1.36;
    private double white;
    private boolean withMixture = true;
    private boolean withThrottle = true;
    private boolean withPressure;
    private final Map<Integer, Double> gaps = new LinkedHashMap<>();
    private final List<Integer> restarts = new ArrayList<>();
    private boolean everyOtherMissing;
    private Double secondSensor;
    private double frozenFromS = Double.NaN;
    private double frozenToS = Double.NaN;
    private double noReadingFromS = Double.NaN;
    private double noReadingToS = Double.NaN;

    PlantedRide(double hz) {
        this.hz = hz;
    }

    PlantedRide phase(double seconds, double rpm, double throttle, double lambda) {
        return phase(seconds, rpm, rpm, throttle, lambda, lambda, Map.of());
    }

    PlantedRide phase(
            double seconds,
            double rpmFrom,
            double rpmTo,
            double throttle,
            double lambdaFrom,
            double lambdaTo,
            Map<Role, Double> other) {
        phases.add(new Phase(seconds, rpmFrom, rpmTo, throttle, lambdaFrom, lambdaTo, other));
        return this;
    }

    /** A cruise of a minute and a clean pull at full throttle, as often as asked. */
    PlantedRide clean(int times) {
        for (int i = 0; i < times; i++) {
            phase(30, 3000 + 100 * i, 3500 + 100 * i, 15, 1.0, 1.0, Map.of());
            phase(6, 3000, 8000, 100, 0.87, 0.87, Map.of());
            phase(3, 6000, 3000, 0, 1.5, 1.5, Map.of());
            phase(20, 3000, 5000, 30, 0.95, 0.95, Map.of());
        }
        return this;
    }

    PlantedRide steady(Role role, double value) {
        steady.put(role, value);
        return this;
    }

    PlantedRide noise(double lambda) {
        noise = lambda;
        return this;
    }

    /** Noise of the sensor that has nothing to do with the row before. */
    PlantedRide whiteNoise(double lambda) {
        white = lambda;
        return this;
    }

    /** The greatest lambda that the sensor shows. */
    PlantedRide top(double lambda) {
        top = lambda;
        return this;
    }

    PlantedRide withoutMixture() {
        withMixture = false;
        return this;
    }

    PlantedRide withoutThrottle() {
        withThrottle = false;
        return this;
    }

    /** Every other reading of the mixture is missing. */
    PlantedRide everyOtherMissing() {
        everyOtherMissing = true;
        return this;
    }

    /** The logger stops for so long here. */
    PlantedRide gap(double seconds) {
        gaps.put(phases.size(), seconds);
        return this;
    }

    /** The log starts anew here, with its clock at 0. */
    PlantedRide restart() {
        restarts.add(phases.size());
        return this;
    }

    /** The reading stands still from one second to another. */
    PlantedRide frozen(double fromS, double toS) {
        frozenFromS = fromS;
        frozenToS = toS;
        return this;
    }

    /** Fields of the mixture are empty here. */
    PlantedRide noReading(double fromS, double toS) {
        noReadingFromS = fromS;
        noReadingToS = toS;
        return this;
    }

    /** A second sensor whose cylinder burns so many times the lambda of the first. */
    PlantedRide secondSensor(double factor) {
        secondSensor = factor;
        return this;
    }

    /** Manifold pressure logged: 30 kPa closed, 100 kPa from 60 % throttle on. */
    PlantedRide withPressure() {
        withPressure = true;
        return this;
    }

    Ride named(String name) {
        List<double[]> rows = new ArrayList<>();
        List<Map<Role, Double>> others = new ArrayList<>();
        List<Double> clock = new ArrayList<>();
        List<Integer> segments = new ArrayList<>(List.of(0));
        double now = 0;
        for (int k = 0; k < phases.size(); k++) {
            Phase p = phases.get(k);
            now += gaps.getOrDefault(k, 0.0);
            if (restarts.contains(k)) {
                now = 0;
                segments.add(rows.size());
            }
            int n = (int) Math.round(p.seconds * hz);
            for (int i = 0; i < n; i++) {
                double f = (double) i / n;
                rows.add(new double[] {
                    p.rpmFrom + f * (p.rpmTo - p.rpmFrom), p.throttle, p.lambdaFrom + f * (p.lambdaTo - p.lambdaFrom)
                });
                others.add(p.other);
                clock.add(now);
                now += 1 / hz;
            }
        }
        int n = rows.size();
        double[] time = new double[n];
        double[] speed = new double[n];
        double[] throttle = new double[n];
        double[] pressure = new double[n];
        double[] lambda = new double[n];
        java.util.Random random = new java.util.Random(7);
        double shown = n == 0 ? 1 : rows.get(0)[2];
        for (int i = 0; i < n; i++) {
            time[i] = clock.get(i);
            speed[i] = rows.get(i)[0];
            throttle[i] = rows.get(i)[1];
            pressure[i] = Math.min(100, 30 + throttle[i] * 70 / 60);
            int burnt = (int) Math.max(0, i - Math.round((120 / speed[i] + 0.04) * hz));
            shown += (rows.get(burnt)[2] - shown) * (1 - Math.exp(-1 / (hz * LAG_S)));
            double hiss = white * random.nextGaussian();
            lambda[i] = Math.min(top, shown + hiss + noise * ((i * 7919) % 13 - 6) / 6.0);
        }
        for (int i = 1; i < n; i++) {
            lambda[i] = time[i] > frozenFromS && time[i] <= frozenToS ? lambda[i - 1] : lambda[i];
        }
        for (int i = 0; i < n; i++) {
            lambda[i] = time[i] >= noReadingFromS && time[i] <= noReadingToS ? Double.NaN : lambda[i];
        }
        for (int i = 1; everyOtherMissing && i < n; i += 2) {
            lambda[i] = Double.NaN;
        }
        List<Channel> channels = new ArrayList<>();
        channels.add(channel(Role.ENGINE_SPEED, speed));
        if (withThrottle) {
            channels.add(channel(Role.THROTTLE, throttle));
        }
        if (withPressure) {
            channels.add(channel(Role.MANIFOLD_PRESSURE, pressure));
        }
        if (withMixture) {
            channels.add(channel(Role.LAMBDA, lambda));
        }
        if (secondSensor != null) {
            double[] second = lambda.clone();
            for (int i = 0; i < n; i++) {
                second[i] = Math.min(1.36, second[i] * secondSensor);
            }
            channels.add(channel(Role.LAMBDA, second));
        }
        for (Role role : Role.values()) {
            boolean some = steady.containsKey(role) || others.stream().anyMatch(o -> o.containsKey(role));
            if (some && role != Role.TIME) {
                double[] values = new double[n];
                for (int i = 0; i < n; i++) {
                    values[i] = others.get(i).getOrDefault(role, steady.getOrDefault(role, 0.0));
                }
                channels.removeIf(c -> c.role() == role && role != Role.LAMBDA);
                channels.add(channel(role, values));
            }
        }
        return new Ride(name, Column.of(time), channels, segments, List.of());
    }

    private static Channel channel(Role role, double[] values) {
        return new Channel(role.words(), role, Unit.ONE, Column.of(values), Channel.Confidence.SURE, "");
    }
}
