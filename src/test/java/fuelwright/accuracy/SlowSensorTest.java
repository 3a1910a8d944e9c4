package fuelwright.accuracy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.Estimate;
import fuelwright.estimate.Estimator;
import fuelwright.estimate.SensorFit;
import fuelwright.job.Job;
import fuelwright.screen.ScreenedRide;
import fuelwright.screen.Screens;
import fuelwright.simulated.Machine;
import fuelwright.simulated.SimulatedMachines;
import fuelwright.simulated.SlowTrials;
import fuelwright.simulated.Trial;
import fuelwright.table.Table;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Sensors several times slower than usual, on rides simulated with physics of their own. */
class SlowSensorTest {

    private static Estimate estimate(double lagS) {
        Machine machine = SimulatedMachines.all().get(0).withSensor(s -> s.withLag(lagS));
        Trial trial = SlowTrials.of(machine, 701);
        Job job = SimulatedJob.of(
                trial.tables(), trial.table(), List.of(trial.rides().get(0).csv()), false);
        Table fuel = job.fuelTable().orElseThrow();
        Table target = job.targetTable().orElseThrow();
        ScreenedRide ride = Screens.apply(job.rides().get(0).ride(), job.screens(), fuel.speed(), fuel.load(), target);
        return new Estimator(fuel, target, List.of(new Estimator.Source(ride, fuel)), job.machine(), 0).run(() -> {});
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.08, 0.4, 0.7, 1.0})
    void theLagOfASlowSensorIsFoundFromTheRide(double lagS) {
        SensorFit sensor = estimate(lagS).sensor();
        assertTrue(sensor.identified(), sensor.words());
        assertEquals(lagS, sensor.model().lagS(), 0.25 * lagS + 0.02, sensor.words());
    }
}
