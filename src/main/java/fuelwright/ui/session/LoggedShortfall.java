package fuelwright.ui.session;

import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import fuelwright.work.Analysis;
import fuelwright.work.AnotherTable;
import java.util.Optional;

/**
 * The shortfall of each row of a ride as it was logged, before delay and lag are undone: 100·(λ/target − 1). Of a ride that was made with
 * another table it is the shortfall that this table would have had there: λ times the fuel of that table over the fuel of this one. Else
 * readings of two rides couldn't be looked at together.
 */
public final class LoggedShortfall {

    private final Column speed;
    private final Column load;
    private final Column targetLoad;
    private final Column lambda;
    private final Table target;
    private final Mixture mixture;
    private final Optional<Rebase> rebase;

    /** Fuel of the table that the ride was made with, and of the one that is to be corrected. */
    private record Rebase(Table madeWith, Table now) {
        double factor(double speedRpm, double load) {
            return madeWith.value(speedRpm, load) / now.value(speedRpm, load);
        }
    }

    private LoggedShortfall(
            Column speed,
            Column load,
            Column targetLoad,
            Column lambda,
            Table target,
            Mixture mixture,
            Optional<Rebase> rebase) {
        this.speed = speed;
        this.load = load;
        this.targetLoad = targetLoad;
        this.lambda = lambda;
        this.target = target;
        this.mixture = mixture;
        this.rebase = rebase;
    }

    /** Of a ride of an analysis; empty where it lacks engine speed, load or mixture, or the job a target. */
    static Optional<LoggedShortfall> of(Analysis analysis, int ride) {
        Table table = analysis.proposal().before();
        Optional<Table> madeWith = otherTable(analysis, ride);
        double deadTimeMs = analysis.job().proposal().deadTimeMs();
        return analysis.job()
                .targetTable()
                .flatMap(target -> of(
                        analysis.screened().get(ride),
                        table,
                        target,
                        Mixture.of(false, analysis.job()),
                        madeWith.map(m -> new Rebase(m.delivered(deadTimeMs), table.delivered(deadTimeMs)))));
    }

    /** The table that a ride was made with, where that is another one of the same quantity over the same kind of load. */
    static Optional<Table> otherTable(Analysis analysis, int ride) {
        Table table = analysis.proposal().before();
        return analysis.job()
                .rides()
                .get(ride)
                .madeWith()
                .filter(m -> m.quantity() == table.quantity()
                        && m.load().kind() == table.load().kind())
                .filter(m -> !AnotherTable.sameFigures(m, table));
    }

    private static Optional<LoggedShortfall> of(
            ScreenedRide screened, Table table, Table target, Mixture mixture, Optional<Rebase> rebase) {
        Ride ride = screened.ride();
        Optional<Column> speed = ride.column(Role.ENGINE_SPEED);
        Optional<Column> load = loadOf(ride, table);
        Optional<Column> targetLoad = loadOf(ride, target);
        Optional<Column> lambda = ride.mixture();
        if (speed.isEmpty() || load.isEmpty() || targetLoad.isEmpty() || lambda.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                new LoggedShortfall(speed.get(), load.get(), targetLoad.get(), lambda.get(), target, mixture, rebase));
    }

    private static Optional<Column> loadOf(Ride ride, Table table) {
        return ride.column(table.load().kind() == Axis.Kind.MANIFOLD_PRESSURE ? Role.MANIFOLD_PRESSURE : Role.THROTTLE);
    }

    public int rows() {
        return lambda.size();
    }

    public double speedRpm(int row) {
        return speed.at(row);
    }

    /** In the unit of the table's load axis. */
    public double load(int row) {
        return load.at(row);
    }

    /** Whether there is a reading in that row. */
    public boolean has(int row) {
        return lambda.has(row);
    }

    /** The shortfall, %: positive is lean. */
    public double percent(int row) {
        double wanted = mixture.lambdaOf(target.quantity(), target.value(speed.at(row), targetLoad.at(row)));
        double factor = rebase.isPresent() ? rebase.get().factor(speed.at(row), load.at(row)) : 1;
        return 100 * (lambda.at(row) / wanted * factor - 1);
    }
}
