package fuelwright.safety;

import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.Estimator;
import fuelwright.estimate.Proposal;
import fuelwright.estimate.ProposalMaker;
import fuelwright.estimate.ProposalSettings;
import fuelwright.mixture.Fuel;
import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.screen.ScreenSettings;
import fuelwright.screen.ScreenedRide;
import fuelwright.screen.Screens;
import fuelwright.simulated.ControlUnit;
import fuelwright.simulated.Grid;
import fuelwright.simulated.MachineTables;
import fuelwright.simulated.SimulatedRide;
import fuelwright.simulated.ThrottleBodies;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;

/** Simulated rides as cases to be judged. The logs are taken apart here, so that the reading of files is no part of the test. */
final class SimulatedCases {

    private SimulatedCases() {}

    static CaseFile of(MachineTables tables, Grid inUnit, List<SimulatedRide> rides, boolean withEstimate) {
        List<Ride> logs = new ArrayList<>();
        for (SimulatedRide ride : rides) {
            logs.add(read("ride " + (logs.size() + 1), ride.csv(), UnaryOperator.identity()));
        }
        return ofLogs(tables, inUnit, logs, withEstimate);
    }

    /** With every row of figures changed on the way. */
    static CaseFile rewritten(MachineTables tables, Grid inUnit, SimulatedRide ride, UnaryOperator<double[]> row) {
        return ofLogs(tables, inUnit, List.of(read("ride 1", ride.csv(), row)), false);
    }

    private static CaseFile ofLogs(MachineTables tables, Grid inUnit, List<Ride> rides, boolean withEstimate) {
        Table fuel = table(tables.machine().unit(), inUnit);
        Table target = target(tables);
        Machine machine = machine(tables.machine());
        List<CaseFile.JudgedRide> judged = new ArrayList<>();
        List<Estimator.Source> sources = new ArrayList<>();
        for (Ride ride : rides) {
            ScreenedRide screened = Screens.apply(ride, ScreenSettings.defaults(), fuel.speed(), fuel.load());
            judged.add(new CaseFile.JudgedRide(screened, fuel));
            sources.add(new Estimator.Source(screened, fuel));
        }
        double deadTimeMs = fuel.quantity() == Quantity.INJECTOR_PULSE
                ? tables.machine().unit().deadTimeMs()
                : 0;
        HighLoad highLoad = HighLoadOfRides.of(machine, target.load(), target, rides);
        Optional<Estimate> estimate = Optional.empty();
        Optional<Proposal> proposal = Optional.empty();
        if (withEstimate) {
            Estimator estimator = new Estimator(fuel, target, sources, machine, deadTimeMs);
            estimate = Optional.of(estimator.run(() -> {}));
            ProposalSettings settings = ProposalSettings.defaults().withDeadTimeMs(deadTimeMs);
            proposal = Optional.of(ProposalMaker.make(estimate.get(), estimator.means(), highLoad, settings));
        }
        return new CaseFile(machine, highLoad, fuel, target, judged, estimate, proposal, Limits.usual(Fuel.PETROL));
    }

    private static Table table(ControlUnit unit, Grid grid) {
        Quantity quantity = unit.fuel() == ControlUnit.Fuel.PULSE
                ? Quantity.INJECTOR_PULSE
                : unit.fuel() == ControlUnit.Fuel.TRIM ? Quantity.FUEL_TRIM : Quantity.VOLUMETRIC_EFFICIENCY;
        return Table.of(quantity, speed(grid), load(unit, grid), grid.toArray());
    }

    private static Table target(MachineTables tables) {
        Grid grid = tables.target();
        return Table.of(Quantity.LAMBDA, speed(grid), load(tables.machine().unit(), grid), grid.toArray());
    }

    private static Axis speed(Grid grid) {
        return new Axis(Axis.Kind.ENGINE_SPEED, grid.speeds());
    }

    private static Axis load(ControlUnit unit, Grid grid) {
        boolean byThrottle = unit.index() == ControlUnit.Index.THROTTLE;
        return new Axis(byThrottle ? Axis.Kind.THROTTLE : Axis.Kind.MANIFOLD_PRESSURE, grid.loads());
    }

    private static Machine machine(fuelwright.simulated.Machine m) {
        return new Machine(
                OptionalDouble.of(m.engine().displacementCc()),
                m.bodiesAfter().count(),
                Optional.of(body(m.bodiesBefore())),
                Optional.of(body(m.bodiesAfter())),
                Fuel.PETROL,
                OptionalDouble.of(m.engine().redlineRpm()));
    }

    private static ThrottleBody body(ThrottleBodies b) {
        return new ThrottleBody(b.boreMm(), b.shaftMm(), b.closedAngleDeg(), b.openAngleDeg());
    }

    private static Ride read(String name, String csv, UnaryOperator<double[]> row) {
        String[] lines = csv.split("\n");
        String[] headings = lines[0].split(",");
        double[][] columns = new double[headings.length][lines.length - 1];
        for (int i = 1; i < lines.length; i++) {
            String[] fields = lines[i].split(",");
            double[] figures = row.apply(
                    Arrays.stream(fields).mapToDouble(Double::parseDouble).toArray());
            for (int c = 0; c < headings.length; c++) {
                columns[c][i - 1] = figures[c];
            }
        }
        List<Channel> channels = new ArrayList<>();
        for (int c = 1; c < headings.length; c++) {
            channels.add(channel(headings[c], columns[c]));
        }
        return new Ride(name, Column.of(columns[0]), channels, List.of(0), List.of());
    }

    private static Channel channel(String heading, double[] values) {
        Role role = role(heading.toLowerCase(Locale.ROOT));
        if (role == Role.AFR || role == Role.INJECTOR_PULSE) {
            for (int i = 0; i < values.length; i++) {
                values[i] /= role == Role.AFR ? 14.7 : 1000;
            }
        }
        return new Channel(heading, role, Unit.ONE, Column.of(values), Channel.Confidence.SURE, "");
    }

    private static Role role(String heading) {
        if (heading.startsWith("lambda")) {
            return Role.LAMBDA;
        }
        for (Role role : Role.values()) {
            if (heading.startsWith(role.words().toLowerCase(Locale.ROOT))) {
                return role;
            }
        }
        return Role.OTHER;
    }
}
