package fuelwright.accuracy;

import fuelwright.airflow.ThrottleBody;
import fuelwright.estimate.ProposalSettings;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.mixture.Fuel;
import fuelwright.ride.ClockAlignment;
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
        return of(tables, inUnit, logs, Double.NaN, described);
    }

    /**
     * @param secondClockS how far off the clock of a second logger is that holds the mixture and the engine speed, s; NaN for one logger
     */
    static Job of(MachineTables tables, Grid inUnit, List<String> logs, double secondClockS, boolean described) {
        Machine machine = tables.machine();
        ControlUnit unit = machine.unit();
        List<JobRide> rides = new ArrayList<>();
        for (String log : logs) {
            String name = "ride-" + (rides.size() + 1) + ".csv";
            Ride ride = Double.isNaN(secondClockS) ? read(name, log) : merged(name, log, secondClockS);
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

    private static Ride read(String name, String log) {
        return value(RideReader.read(name, log.getBytes(StandardCharsets.UTF_8), RideOptions.defaults()));
    }

    /** As from two loggers: all but the mixture from one, mixture and engine speed from the other. */
    private static Ride merged(String name, String log, double secondClockS) {
        StringBuilder first = new StringBuilder();
        StringBuilder second = new StringBuilder();
        List<String> headings = List.of(log.substring(0, log.indexOf('\n')).split(","));
        int mixture = 0;
        while (!headings.get(mixture).startsWith("lambda")) {
            mixture++;
        }
        for (String line : log.split("\n")) {
            List<String> fields = new ArrayList<>(List.of(line.split(",")));
            boolean heading = line.startsWith("time");
            String time = heading
                    ? fields.get(0)
                    : String.format(java.util.Locale.ROOT, "%.3f", Double.parseDouble(fields.get(0)) + secondClockS);
            second.append(time + "," + fields.get(1) + "," + fields.get(mixture))
                    .append('\n');
            fields.remove(mixture);
            first.append(String.join(",", fields)).append('\n');
        }
        Ride rest = read(name, first.toString());
        Ride wideband = read("wideband.csv", second.toString());
        return rest.with(wideband, value(ClockAlignment.of(rest, wideband)));
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
