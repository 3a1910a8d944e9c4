package fuelwright.safety;

import fuelwright.airflow.HighLoad;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.Arrays;
import java.util.Optional;

/**
 * The leanest mixture allowed at each row of a ride, lambda: what {@code lean-under-load} judges by, to be drawn beside the mixture. As
 * logged: delay and lag aren't undone, so a reading may lie a moment beside its limit. Immutable.
 */
public final class LeanLimit {

    private final double[] limits;

    private LeanLimit(double[] limits) {
        this.limits = limits;
    }

    /** @param targetLambda target table that holds lambda */
    public static LeanLimit of(Ride ride, Table targetLambda, HighLoad highLoad, Limits limits) {
        double[] out = new double[ride.size()];
        Arrays.fill(out, Double.NaN);
        Optional<Column> speed = ride.column(Role.ENGINE_SPEED);
        Optional<Column> throttle = ride.column(Role.THROTTLE);
        Optional<Column> pressure = ride.column(Role.MANIFOLD_PRESSURE);
        Optional<Column> load = targetLambda.load().kind() == Axis.Kind.THROTTLE ? throttle : pressure;
        if (speed.isEmpty() || load.isEmpty()) {
            return new LeanLimit(out);
        }
        double[] barometers = ride.column(Role.BAROMETER)
                .map(c -> Arrays.stream(c.toArray())
                        .filter(Double::isFinite)
                        .sorted()
                        .toArray())
                .orElse(new double[0]);
        double barometer = barometers.length == 0 ? Double.NaN : barometers[barometers.length / 2];
        LoadThreshold threshold = new LoadThreshold(highLoad, barometer);
        for (int row = 0; row < out.length; row++) {
            double rpm = speed.get().at(row);
            double open = at(throttle, row);
            double kpa = at(pressure, row);
            if (threshold.at(rpm, open, kpa)) {
                double target = targetLambda.value(rpm, load.get().at(row));
                out[row] = limits.leanest(target, threshold.isWellInside(rpm, open, kpa));
            }
        }
        return new LeanLimit(out);
    }

    private static double at(Optional<Column> column, int row) {
        return column.map(c -> c.at(row)).orElse(Double.NaN);
    }

    /** The limit at a row, lambda; NaN where load isn't high. */
    public double at(int row) {
        return limits[row];
    }
}
