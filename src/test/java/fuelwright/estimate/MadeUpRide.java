package fuelwright.estimate;

import fuelwright.airflow.Machine;
import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenedFixture;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.unit.Unit;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntPredicate;

/**
 * A ride whose truth is known: the engine follows given curves of speed and throttle, burns what the old table gives it against what
 * it needs, and a sensor with known delay and lag shows that, worked out in millisecond steps. No wall film, no fuel cut.
 */
final class MadeUpRide {

    static final Axis SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 1500, 2500, 3500, 4500, 6000, 8000);
    static final Axis LOAD = new Axis(Axis.Kind.THROTTLE, 0, 5, 10, 20, 40, 70, 100);
    static final SensorModel SENSOR = new SensorModel(0.035, 1, 0.5, 0.11);
    private static final double STEP_S = 0.001;

    final Table old;
    final Table needed;
    final Table target;
    private final double hz;
    private final SensorModel sensor;
    private double noise = 0.004;
    private DoubleUnaryOperator extra = u -> 0;

    /** @param factor of the fuel that the cell at (rpm, throttle) needs */
    MadeUpRide(Figure factor, double hz, SensorModel sensor) {
        old = table(Quantity.VOLUMETRIC_EFFICIENCY, (rpm, load) -> 20 + 60 * (1 - Math.exp(-load * 4000 / rpm / 15)));
        double[] fuel = old.toArray();
        for (int c = 0; c < fuel.length; c++) {
            fuel[c] *= factor.at(old.speedAt(c), old.loadAt(c));
        }
        needed = old.withValues(fuel);
        target = table(Quantity.LAMBDA, (rpm, load) -> 1 - 0.0012 * load);
        this.hz = hz;
        this.sensor = sensor;
    }

    /** A figure over engine speed and throttle. */
    interface Figure {
        double at(double speedRpm, double throttlePercent);
    }

    static Table table(Quantity quantity, Figure figure) {
        double[] values = new double[SPEED.size() * LOAD.size()];
        for (int c = 0; c < values.length; c++) {
            values[c] = figure.at(SPEED.at(c % SPEED.size()), LOAD.at(c / SPEED.size()));
        }
        return Table.of(quantity, SPEED, LOAD, values);
    }

    MadeUpRide withNoise(double lambda) {
        noise = lambda;
        return this;
    }

    /** @param lnLambda what else makes the mixture lean at a time, ln */
    MadeUpRide withExtra(DoubleUnaryOperator lnLambda) {
        extra = lnLambda;
        return this;
    }

    /** Engine speed that wanders slowly between two figures. */
    static DoubleUnaryOperator wandering(double least, double most, double periodS) {
        return t -> (least + most) / 2
                + (most - least) / 2 * (0.7 * Math.sin(6.2832 * t / periodS) + 0.3 * Math.sin(2.33 * t / periodS + 1));
    }

    /** Throttle that goes to a new place every so often, within half a second: as lively as a road asks for. */
    static DoubleUnaryOperator lively(long seed, double most, double everyS) {
        double[] places = new Random(seed)
                .doubles(2000)
                .map(u -> 1.5 + (most - 1.5) * u * u)
                .toArray();
        return t -> {
            int k = (int) (t / everyS);
            double part = Math.min(1, (t - k * everyS) / 0.5);
            double eased = part * part * (3 - 2 * part);
            return places[k] + eased * (places[k + 1] - places[k]);
        };
    }

    /** The ride with every row counting. */
    ScreenedRide made(String name, double seconds, DoubleUnaryOperator speedRpm, DoubleUnaryOperator throttle) {
        return counting(ride(name, seconds, speedRpm, throttle), row -> true);
    }

    static ScreenedRide counting(Ride ride, IntPredicate counts) {
        Screen[] reasons = new Screen[ride.size()];
        for (int row = 0; row < reasons.length; row++) {
            reasons[row] = counts.test(row) ? null : Screen.SPIKE;
        }
        return ScreenedFixture.of(ride, reasons);
    }

    Ride ride(String name, double seconds, DoubleUnaryOperator speedRpm, DoubleUnaryOperator throttle) {
        int rows = (int) Math.round(seconds * hz);
        double[] time = new double[rows];
        double[] speed = new double[rows];
        double[] load = new double[rows];
        for (int i = 0; i < rows; i++) {
            time[i] = i / hz;
            speed[i] = speedRpm.applyAsDouble(time[i]);
            load[i] = throttle.applyAsDouble(time[i]);
        }
        double[] lambda = shown(time, speedRpm, throttle);
        Random random = new Random(name.hashCode());
        for (int i = 0; i < rows; i++) {
            lambda[i] += noise * random.nextGaussian();
        }
        return ride(name, time, speed, load, lambda);
    }

    static Ride ride(String name, double[] timeS, double[] speedRpm, double[] throttle, double[] lambda) {
        return new Ride(
                name,
                Column.of(timeS),
                List.of(
                        channel(Role.ENGINE_SPEED, speedRpm),
                        channel(Role.THROTTLE, throttle),
                        channel(Role.LAMBDA, lambda)),
                List.of(0),
                List.of());
    }

    static Channel channel(Role role, double[] values) {
        return new Channel(role.words(), role, Unit.ONE, Column.of(values), Channel.Confidence.SURE, "");
    }

    double delayS(double speedRpm, double throttle) {
        FlowModel flow = FlowModel.of(Machine.unknown(), old, 0);
        return sensor.delayS(speedRpm, flow.gramsPerSecond(speedRpm, throttle));
    }

    /** What the sensor shows at each time: burnt parcels arrive after their delay, the sensor follows with its lag. */
    private double[] shown(double[] timeS, DoubleUnaryOperator speedRpm, DoubleUnaryOperator throttle) {
        double end = timeS[timeS.length - 1];
        int n = (int) Math.ceil(end / STEP_S) + 2;
        double[] arriving = new double[n];
        Arrays.fill(arriving, Double.NaN);
        int arrived = 0;
        double lastArrival = 0;
        double lastZ = 0;
        for (int i = -1000; i < n; i++) {
            double u = i * STEP_S;
            double rpm = speedRpm.applyAsDouble(Math.max(0, u));
            double load = throttle.applyAsDouble(Math.max(0, u));
            double z = Math.log(target.value(rpm, load) * needed.value(rpm, load) / old.value(rpm, load))
                    + extra.applyAsDouble(u);
            double arrival = u + delayS(rpm, load);
            while (i > -1000 && arrived < n && arrived * STEP_S <= arrival) {
                double part = (arrived * STEP_S - lastArrival) / (arrival - lastArrival);
                arriving[arrived++] = lastZ + part * (z - lastZ);
            }
            lastArrival = arrival;
            lastZ = z;
        }
        double[] shown = new double[timeS.length];
        double state = arriving[0];
        double keep = Math.exp(-STEP_S / sensor.lagS());
        int row = 0;
        for (int k = 0; k < n && row < shown.length; k++) {
            state = k == 0 ? state : keep * state + (1 - keep) * (arriving[k - 1] + arriving[k]) / 2;
            while (row < shown.length && timeS[row] <= k * STEP_S + 1e-9) {
                shown[row++] = Math.exp(state);
            }
        }
        return shown;
    }
}
