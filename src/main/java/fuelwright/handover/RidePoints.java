package fuelwright.handover;

import fuelwright.airflow.HighLoad;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import java.util.Arrays;
import java.util.List;

/** Where the engine was ridden: engine speed (rpm), load (in the table's unit) and whether it was high load, for each reading that counts. */
final class RidePoints {

    private double[] speedRpm = new double[1024];
    private double[] load = new double[1024];
    private boolean[] high = new boolean[1024];
    private int size;

    static RidePoints of(List<ScreenedRide> rides, Axis.Kind loadKind, HighLoad rule) {
        RidePoints points = new RidePoints();
        for (ScreenedRide ride : rides) {
            points.add(ride, loadKind, rule);
        }
        return points;
    }

    private void add(ScreenedRide screened, Axis.Kind loadKind, HighLoad rule) {
        Ride ride = screened.ride();
        Column none = Column.of(new double[ride.size()]);
        Column rpm = ride.column(Role.ENGINE_SPEED).orElse(none);
        Column throttle = ride.column(Role.THROTTLE).orElse(null);
        Column pressure = ride.column(Role.MANIFOLD_PRESSURE).orElse(null);
        Column barometer = ride.column(Role.BAROMETER).orElse(null);
        boolean byThrottle = loadKind == Axis.Kind.THROTTLE;
        for (int row = 0; row < ride.size(); row++) {
            double at = byThrottle ? figure(throttle, row) : figure(pressure, row);
            if (screened.counts(row) && Double.isFinite(at) && Double.isFinite(rpm.at(row))) {
                add(
                        rpm.at(row),
                        at,
                        rule.at(rpm.at(row), figure(throttle, row), figure(pressure, row), figure(barometer, row)));
            }
        }
    }

    /** One more reading. */
    void add(double rpm, double at, boolean isHigh) {
        if (size == load.length) {
            speedRpm = Arrays.copyOf(speedRpm, 2 * size);
            load = Arrays.copyOf(load, 2 * size);
            high = Arrays.copyOf(high, 2 * size);
        }
        speedRpm[size] = rpm;
        load[size] = at;
        high[size] = isHigh;
        size++;
    }

    int size() {
        return size;
    }

    double speedRpm(int reading) {
        return speedRpm[reading];
    }

    double load(int reading) {
        return load[reading];
    }

    boolean isHigh(int reading) {
        return high[reading];
    }

    private static double figure(Column column, int row) {
        return column == null ? Double.NaN : column.at(row);
    }
}
