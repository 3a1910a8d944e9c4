package fuelwright.power;

import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/**
 * A full-throttle acceleration with known power at the wheel, integrated by Runge and Kutta of fourth order from the balance of energy:
 * d(½·m_eff·v²)/dt = P − v·F. Its own physics, shared with nothing that is tested.
 */
record RoadMaker(double massKg, double rollingForceN, double dragNPerV2, double rpmPerKmh, double noiseRpm, long seed) {

    static final double HZ = 20;

    /** Rows from the low to the high engine speed; two seconds of closed throttle before and after. */
    Ride ride(DoubleUnaryOperator kwAtRpm, double lowRpm, double highRpm) {
        List<double[]> rows = new ArrayList<>();
        Random random = new Random(seed);
        double toMPerS = 1 / rpmPerKmh / 3.6;
        double energy = 0.5 * massKg * 1.06 * Math.pow(lowRpm * toMPerS, 2);
        double t = 0;
        for (; t < 2; t += 1 / HZ) {
            rows.add(row(t, lowRpm, 2, random));
        }
        while (rpm(energy) < highRpm) {
            rows.add(row(t, rpm(energy), 100, random));
            for (int part = 0; part < 5; part++) {
                energy += step(energy, 1 / HZ / 5, kwAtRpm);
            }
            t += 1 / HZ;
        }
        for (int i = 0; i < 40; i++, t += 1 / HZ) {
            rows.add(row(t, highRpm - 60 * i, 0, random));
        }
        return new Ride(
                "road.csv",
                column(rows, 0),
                List.of(
                        channel("engine speed", Role.ENGINE_SPEED, rows, 1),
                        channel("throttle", Role.THROTTLE, rows, 2),
                        channel("road speed", Role.ROAD_SPEED, rows, 3)),
                List.of(0),
                List.of());
    }

    private double rpm(double energy) {
        return Math.sqrt(2 * energy / (massKg * 1.06)) * 3.6 * rpmPerKmh;
    }

    private double step(double e, double dt, DoubleUnaryOperator kw) {
        double a = rate(e, kw);
        double b = rate(e + dt / 2 * a, kw);
        double c = rate(e + dt / 2 * b, kw);
        double d = rate(e + dt * c, kw);
        return dt / 6 * (a + 2 * b + 2 * c + d);
    }

    private double rate(double energy, DoubleUnaryOperator kw) {
        double v = Math.sqrt(2 * energy / (massKg * 1.06));
        return 1000 * kw.applyAsDouble(rpm(energy)) - v * (rollingForceN + dragNPerV2 * v * v);
    }

    private double[] row(double t, double rpm, double throttle, Random random) {
        double seen = Math.rint(rpm + noiseRpm * random.nextGaussian());
        return new double[] {t, seen, throttle, Math.rint(rpm / rpmPerKmh)};
    }

    private static Column column(List<double[]> rows, int i) {
        return Column.of(rows.stream().mapToDouble(r -> r[i]).toArray());
    }

    static Channel channel(String heading, Role role, List<double[]> rows, int i) {
        return new Channel(heading, role, fuelwright.unit.Unit.ONE, column(rows, i), Channel.Confidence.SURE, "");
    }
}
