package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fuelwright.airflow.Machine;
import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.unit.Unit;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A long ride is read in parts by several cores: the readings are those of reading it in one go. */
class BurntTracePartsTest {

    private static final int ROWS = 200_000;
    private static final int RESTART = 90_001;

    @Test
    void partsGiveWhatOneGoGives() {
        Random random = new Random(3);
        double[] timeS = new double[ROWS];
        double[] rpm = new double[ROWS];
        double[] throttle = new double[ROWS];
        double[] lambda = new double[ROWS];
        for (int i = 1; i < ROWS; i++) {
            timeS[i] = i == RESTART ? 0 : timeS[i - 1] + 0.02 + 0.05 * random.nextDouble();
            rpm[i] = 3000 + 2000 * Math.sin(i / 77.0);
            throttle[i] = 30 + 25 * Math.sin(i / 31.0);
            lambda[i] = random.nextInt(4) == 0 ? Double.NaN : 0.9 + 0.1 * random.nextDouble();
        }
        Ride ride = new Ride(
                "long",
                Column.of(timeS),
                List.of(
                        channel(Role.ENGINE_SPEED, rpm),
                        channel(Role.THROTTLE, throttle),
                        channel(Role.LAMBDA, lambda)),
                List.of(0, RESTART),
                List.of());
        Axis speed = new Axis(Axis.Kind.ENGINE_SPEED, 1000, 3000, 8000);
        Axis load = new Axis(Axis.Kind.THROTTLE, 0, 20, 100);
        double[] pulses = new double[9];
        Arrays.setAll(pulses, c -> 2 + c);
        FlowModel flow = FlowModel.of(Machine.unknown(), Table.of(Quantity.INJECTOR_PULSE, speed, load, pulses), 0);
        SensorModel sensor = new SensorModel(0.02, 0.9, 0.4, 0.08);
        BurntTrace trace = BurntTrace.of(ride, 0, Axis.Kind.THROTTLE, sensor, flow);
        RideTrack track = RideTrack.of(ride);
        double[] flowGPerS = flow.gramsPerSecond(track.speedRpm, track.throttlePercent);
        int at = 0;
        for (int[] segment : new int[][] {{0, RESTART}, {RESTART, ROWS}}) {
            Moment moment = new Moment(track, flowGPerS, sensor, segment[0], segment[1]);
            for (int row = segment[0]; row < segment[1]; row++) {
                if (!Double.isNaN(lambda[row]) && moment.goTo(row)) {
                    assertEquals(row, trace.row(at));
                    assertEquals(moment.burntS(), trace.burntS(at));
                    assertEquals(lambda[row], trace.lambda(at));
                    assertEquals(moment.interpolate(track.speedRpm), trace.speedRpm(at));
                    assertEquals(moment.interpolate(track.throttlePercent), trace.load(at));
                    at++;
                }
            }
        }
        assertEquals(at, trace.size());
    }

    private static Channel channel(Role role, double[] values) {
        return new Channel(role.words(), role, Unit.ONE, Column.of(values), Channel.Confidence.SURE, "");
    }
}
