package fuelwright.simulated;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** How good a table is for a machine, judged with the truth of a ride. */
public final class Scores {
    private static final double HIGH_LOAD = 0.85;

    private Scores() {}

    /**
     * How far one cell of a table is from what is right.
     *
     * @param shortfallPct fuel missing, %; negative where there is too much
     * @param readings rows of the ride that fell to the cell, by interpolation weight
     */
    public record CellError(int cell, double speedRpm, double load, double shortfallPct, double readings) {}

    /** The rows by which a table may be judged: fuel on, warm, within the engine's working range, and not just about to be cut. */
    public static List<Moment> judged(SimulatedRide ride) {
        Engine engine = ride.tables().machine().engine();
        return ride.moments().stream()
                .filter(m -> m.fuelOn() && m.warm())
                .filter(m -> m.throttlePct() > 0.6 || m.speedRpm() < 1.5 * engine.idleRpm())
                .filter(m -> m.speedRpm() > 0.85 * engine.idleRpm() && m.speedRpm() < engine.redlineRpm())
                .collect(Collectors.toList());
    }

    /** ln(lambda / target) that the table alone would give at a moment. */
    public static double error(MachineTables tables, Grid table, Moment moment) {
        double fuel = tables.fuel(table, moment.speedRpm(), moment.load(), moment.pressurePa());
        return StrictMath.log(moment.charge() / fuel / moment.target());
    }

    /** Root-mean-square of ln(lambda / target) over a ride as the table alone would give it. */
    public static double mixtureError(Grid table, SimulatedRide ride) {
        double mean = judged(ride).stream()
                .mapToDouble(m -> error(ride.tables(), table, m))
                .map(e -> e * e)
                .average()
                .orElse(Double.NaN);
        return StrictMath.sqrt(mean);
    }

    /** The cell at high load that is leanest against the right table, of those with at least so many rows of the ride. */
    public static Optional<CellError> leanestHighLoadCell(Grid table, SimulatedRide ride, double leastReadings) {
        MachineTables tables = ride.tables();
        double[] readings = readings(table, ride);
        Grid factor = tables.factor(table, tables.truth());
        CellError leanest = null;
        for (int c = 0; c < table.cells(); c++) {
            boolean counts = readings[c] >= leastReadings && highLoad(tables, table.speedAt(c), table.loadAt(c));
            double shortfall = 100 * (factor.at(c) - 1);
            if (counts && (leanest == null || shortfall > leanest.shortfallPct())) {
                leanest = new CellError(c, table.speedAt(c), table.loadAt(c), shortfall, readings[c]);
            }
        }
        return Optional.ofNullable(leanest);
    }

    /** Rows of the ride that fell to each cell, by interpolation weight. */
    public static double[] readings(Grid table, SimulatedRide ride) {
        double[] readings = new double[table.cells()];
        for (Moment moment : judged(ride)) {
            for (Grid.Share share : table.shares(moment.speedRpm(), moment.load())) {
                readings[share.cell()] += share.weight();
            }
        }
        return readings;
    }

    /** Whether the manifold pressure of a point is at or above 85 % of the barometer. */
    public static boolean highLoad(MachineTables tables, double speedRpm, double load) {
        Machine machine = tables.machine();
        double pressurePa = machine.unit().index() == ControlUnit.Index.PRESSURE
                ? load * 1000
                : tables.airAfter().pressurePa(speedRpm, load);
        return pressurePa >= HIGH_LOAD * machine.ambient().pressurePa();
    }
}
