package fuelwright.safety;

import fuelwright.airflow.HighLoad;
import fuelwright.airflow.HighLoadLine;
import fuelwright.airflow.HighLoadSeen;
import fuelwright.airflow.Machine;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * What counts as high load for a job. An engine that is described is judged by its model. For one that isn't, the line is drawn by the pressure that the
 * rides logged; and where a target turns rich on the way to full throttle load is high as well, since nobody asks for such a mixture where it isn't.
 */
public final class HighLoadOfRides {

    /** A target as rich as this is one for full load. */
    static final double RICH_LAMBDA = 0.90;
    /** A target that isn't as lean as this at less throttle is rich throughout, which says nothing of load. */
    private static final double LEAN_LAMBDA = 0.94;

    private static final double RUNNING_RPM = 500;
    private static final double SETTLED_S = 0.4;
    private static final double SETTLED_PERCENT = 2;
    private static final double GAP_S = 1.0;

    private HighLoadOfRides() {}

    /**
     * @param load the fuel table's load axis
     * @param targetLambda the target table, in lambda
     */
    public static HighLoad of(Machine machine, Axis load, Table targetLambda, List<Ride> rides) {
        double stationKpa = StationPressure.ofKpa(machine, load, rides);
        boolean described = HighLoad.isDescribed(machine);
        if (described && machine.bodies().isPresent()) {
            return HighLoad.atStation(HighLoad.of(machine), stationKpa);
        }
        HighLoadSeen seen = new HighLoadSeen();
        rides.forEach(ride -> add(ride, stationKpa, seen));
        Optional<DoubleUnaryOperator> pressure = seen.line();
        DoubleUnaryOperator byPressure = pressure.orElse(rpm -> HighLoad.THROTTLE_PERCENT);
        HighLoad.Basis basis = pressure.isPresent() ? HighLoad.Basis.PRESSURE : HighLoad.Basis.THROTTLE;
        HighLoad rule = new HighLoadLine(
                rpm -> Math.min(byPressure.applyAsDouble(rpm), turnsRichPercent(targetLambda, rpm)), basis);
        return HighLoad.atStation(described ? rule.or(HighLoad.of(machine)) : rule, stationKpa);
    }

    private static void add(Ride ride, double stationKpa, HighLoadSeen seen) {
        Optional<Column> speed = ride.column(Role.ENGINE_SPEED);
        Optional<Column> throttle = ride.column(Role.THROTTLE);
        Optional<Column> pressure = ride.column(Role.MANIFOLD_PRESSURE);
        if (speed.isEmpty() || throttle.isEmpty() || pressure.isEmpty()) {
            return;
        }
        double logged = Dossier.median(ride, Role.BAROMETER);
        double barometerKpa = logged > 0 ? logged : stationKpa;
        double held = Double.NaN;
        double sinceS = Double.NaN;
        double lastS = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < ride.size(); i++) {
            double timeS = ride.timeS().at(i);
            double percent = throttle.get().at(i);
            if (!(Math.abs(percent - held) <= SETTLED_PERCENT) || !(timeS > lastS && timeS - lastS <= GAP_S)) {
                held = percent;
                sinceS = timeS;
            }
            lastS = timeS;
            if (timeS - sinceS >= SETTLED_S && speed.get().at(i) >= RUNNING_RPM) {
                seen.add(speed.get().at(i), percent, pressure.get().at(i), barometerKpa);
            }
        }
    }

    /** The throttle from which on a target stays rich up to its last load, %; infinite where it doesn't turn rich, or isn't by throttle. */
    static double turnsRichPercent(Table targetLambda, double speedRpm) {
        Axis load = targetLambda.load();
        int j = load.size() - 1;
        if (load.kind() != Axis.Kind.THROTTLE || !isRich(targetLambda, speedRpm, load.at(j))) {
            return Double.POSITIVE_INFINITY;
        }
        while (j > 0 && isRich(targetLambda, speedRpm, load.at(j - 1))) {
            j--;
        }
        for (int k = 0; k < j; k++) {
            if (targetLambda.value(speedRpm, load.at(k)) >= LEAN_LAMBDA) {
                return load.at(j);
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    private static boolean isRich(Table targetLambda, double speedRpm, double percent) {
        return targetLambda.value(speedRpm, percent) <= RICH_LAMBDA + 1e-9;
    }
}
