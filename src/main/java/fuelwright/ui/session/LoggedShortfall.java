package fuelwright.ui.session;

import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.Optional;

/** The shortfall of each row of a ride as it was logged, before delay and lag are undone: 100·(λ/target − 1). */
public final class LoggedShortfall {

    private final Column speed;
    private final Column load;
    private final Column targetLoad;
    private final Column lambda;
    private final Table target;
    private final Mixture mixture;

    private LoggedShortfall(
            Column speed, Column load, Column targetLoad, Column lambda, Table target, Mixture mixture) {
        this.speed = speed;
        this.load = load;
        this.targetLoad = targetLoad;
        this.lambda = lambda;
        this.target = target;
        this.mixture = mixture;
    }

    /** Empty where the ride lacks engine speed, load or mixture. */
    public static Optional<LoggedShortfall> of(ScreenedRide screened, Table table, Table target, Mixture mixture) {
        Ride ride = screened.ride();
        Optional<Column> speed = ride.column(Role.ENGINE_SPEED);
        Optional<Column> load = loadOf(ride, table);
        Optional<Column> targetLoad = loadOf(ride, target);
        Optional<Column> lambda = ride.mixture();
        if (speed.isEmpty() || load.isEmpty() || targetLoad.isEmpty() || lambda.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                new LoggedShortfall(speed.get(), load.get(), targetLoad.get(), lambda.get(), target, mixture));
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
        return 100 * (lambda.at(row) / wanted - 1);
    }
}
