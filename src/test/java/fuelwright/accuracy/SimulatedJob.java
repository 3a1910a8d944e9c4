package fuelwright.accuracy;

import fuelwright.airflow.ThrottleBody;
import fuelwright.estimate.ProposalSettings;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.mixture.Fuel;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.RideReader;
import fuelwright.simulated.ControlUnit;
import fuelwright.simulated.Grid;
import fuelwright.simulated.Machine;
import fuelwright.simulated.MachineTables;
import fuelwright.simulated.TableWriter;
import fuelwright.simulated.ThrottleBodies;
import fuelwright.table.TableReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A job as a user would put it together from the files of a simulated machine, read by the program's own readers. */
public final class SimulatedJob {

    private SimulatedJob() {}

    /**
     * @param inUnit the table in the control unit
     * @param logs the rides' text
     * @param described whether the machine is described, or nothing of it is told
     */
    public static Job of(MachineTables tables, Grid inUnit, List<String> logs, boolean described) {
        Machine machine = tables.machine();
        ControlUnit unit = machine.unit();
        List<JobRide> rides = new ArrayList<>();
        for (String log : logs) {
            String name = "ride-" + (rides.size() + 1) + ".csv";
            Ride ride = value(RideReader.read(name, log.getBytes(StandardCharsets.UTF_8), RideOptions.defaults()));
            rides.add(new JobRide(ride, Optional.empty()));
        }
        double deadTimeMs = unit.fuel() == ControlUnit.Fuel.PULSE ? unit.deadTimeMs() : 0;
        return Job.empty()
                .withMachine(described ? described(machine) : fuelwright.airflow.Machine.unknown())
                .withFuelTable(value(TableReader.read("fuel-table.csv", TableWriter.fuel(machine, inUnit))))
                .withTargetTable(value(TableReader.read("target.csv", TableWriter.target(machine, tables.target()))))
                .withRides(rides)
                .withProposal(ProposalSettings.defaults().withDeadTimeMs(deadTimeMs));
    }

    private static fuelwright.airflow.Machine described(Machine machine) {
        return new fuelwright.airflow.Machine(
                OptionalDouble.of(machine.engine().displacementCc()),
                machine.bodiesBefore().count(),
                Optional.of(body(machine.bodiesBefore())),
                Optional.of(body(machine.bodiesAfter())),
                Fuel.PETROL,
                OptionalDouble.of(machine.engine().redlineRpm()));
    }

    private static ThrottleBody body(ThrottleBodies bodies) {
        return new ThrottleBody(bodies.boreMm(), bodies.shaftMm(), bodies.closedAngleDeg(), bodies.openAngleDeg());
    }

    private static <T> T value(Loaded<T> loaded) {
        return loaded.value()
                .orElseThrow(() -> new IllegalStateException(loaded.issues().toString()));
    }
}
