package fuelwright.handover;

import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.MadeUpEstimates;
import fuelwright.estimate.ProposalSettings;
import fuelwright.estimate.Validation;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.mixture.Fuel;
import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.safety.Caution;
import fuelwright.screen.ScreenSettings;
import fuelwright.screen.ScreenedRide;
import fuelwright.screen.Screens;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.table.TableReader;
import fuelwright.unit.Unit;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/** A handover with chosen figures: the sample tables, a short made-up ride, a shortfall that is greatest at small throttle. */
public final class MadeUpHandover {

    private static final int ROWS = 400;

    private MadeUpHandover() {}

    public static Table fuelTable() {
        return TableReader.read(Path.of("sample-logs/fuel-table.csv")).value().orElseThrow();
    }

    public static Handed with(String name, List<Caution> cautions) {
        return with(name, cautions, fuelTable(), ProposalSettings.defaults());
    }

    /** The same figures taken for pulses that contain a dead time. */
    static Handed ofPulses(double deadTimeMs) {
        Table table = fuelTable();
        return with(
                "job",
                List.of(),
                table.with(Quantity.INJECTOR_PULSE, table.toArray()),
                ProposalSettings.defaults().withDeadTimeMs(deadTimeMs));
    }

    private static Handed with(String name, List<Caution> cautions, Table table, ProposalSettings settings) {
        Estimate estimate = MadeUpEstimates.estimate(
                table,
                c -> 0.25 * Math.exp(-table.loadAt(c) / 18) - 0.02 * table.loadAt(c) / 100 * (table.speedAt(c) / 9000),
                c -> 0.006 + 0.12 * Math.pow(Math.abs(table.speedAt(c) - 4000) / 5000, 2) + 0.0004 * table.loadAt(c),
                c -> table.speedAt(c) > 2000 && table.speedAt(c) < 7000 && table.loadAt(c) < 60
                        ? 60 / (1 + table.loadAt(c) / 4)
                        : 0);
        Ride ride = ride();
        ScreenedRide screened = Screens.apply(ride, ScreenSettings.defaults(), table.speed(), table.load());
        Job job = Job.empty()
                .withName(name)
                .withMachine(new Machine(
                        OptionalDouble.of(720),
                        2,
                        Optional.of(new ThrottleBody(38, 8, 5, 85)),
                        Optional.of(new ThrottleBody(44, 8, 5, 85)),
                        Fuel.PETROL,
                        OptionalDouble.of(8500)))
                .withFuelTable(table)
                .withRide(new JobRide(ride, Optional.empty()));
        return new Handed(
                job,
                List.of(screened),
                estimate,
                MadeUpEstimates.proposal(estimate, settings),
                Optional.of(new Validation(8, 2310, 11.83, 1.94, Map.of(20, new Validation.Cell(3, 40, 12.5, 1.2)))),
                cautions);
    }

    public static Caution stop(String title) {
        return new Caution(
                "lean-under-load",
                Caution.Level.STOP,
                title,
                "The engine was fed lambda 0.98 where 0.87 is wanted, for 1.4 s.",
                "Don't load the engine there until the table is corrected.",
                new TreeSet<>(List.of(140, 141)),
                List.of(new Caution.Moment(0, "ride.csv", 412.35, 1.4, 0.98, 6210, 96)));
    }

    public static Caution check(String title) {
        return new Caution(
                "unridden-high-load",
                Caution.Level.CHECK,
                title,
                "14 cells at high load have no readings.",
                "Ride them on a dyno before they are used.",
                new TreeSet<>(List.of(150, 151, 152)),
                List.of());
    }

    private static Ride ride() {
        double[] time = new double[ROWS];
        double[] speed = new double[ROWS];
        double[] throttle = new double[ROWS];
        double[] lambda = new double[ROWS];
        double[] coolant = new double[ROWS];
        for (int i = 0; i < ROWS; i++) {
            time[i] = i * 0.05;
            speed[i] = 3000 + 2 * i;
            throttle[i] = 20;
            lambda[i] = 1 + 0.02 * Math.sin(i);
            coolant[i] = i < 100 ? 50 : 85;
        }
        return new Ride(
                "ride.csv",
                Column.of(time),
                List.of(
                        channel(Role.ENGINE_SPEED, Unit.RPM, speed),
                        channel(Role.THROTTLE, Unit.PERCENT, throttle),
                        channel(Role.LAMBDA, Unit.LAMBDA, lambda),
                        channel(Role.COOLANT, Unit.CELSIUS, coolant)),
                List.of(0),
                List.of());
    }

    private static Channel channel(Role role, Unit unit, double[] values) {
        return new Channel(role.words(), role, unit, Column.of(values), Channel.Confidence.SURE, "");
    }
}
