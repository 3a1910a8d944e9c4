package fuelwright.safety;

import fuelwright.airflow.HighLoad;
import fuelwright.table.Axis;
import fuelwright.table.Table;

/**
 * How the cells of a fuel table lie to high load, and the leanest allowed there: the same for the line on the map, the cautions, what is said beside a
 * cell and the entry check. Immutable.
 */
public final class CellLoads {

    private final Table fuel;
    private final Table target;
    private final Limits limits;
    private final boolean[] high;
    private final boolean[] wellInside;

    private CellLoads(Table fuel, Table target, HighLoad highLoad, Limits limits) {
        this.fuel = fuel;
        this.target = target;
        this.limits = limits;
        high = new boolean[fuel.cells()];
        wellInside = new boolean[fuel.cells()];
        boolean byThrottle = fuel.load().kind() == Axis.Kind.THROTTLE;
        // A cell has no moment of its own: the rule knows the barometer of the rides.
        LoadThreshold.Test test = (rpm, throttle, kpa) -> highLoad.at(rpm, throttle, kpa, Double.NaN);
        for (int c = 0; c < high.length; c++) {
            double throttle = byThrottle ? fuel.loadAt(c) : Double.NaN;
            double kpa = byThrottle ? Double.NaN : fuel.loadAt(c);
            high[c] = test.at(fuel.speedAt(c), throttle, kpa);
            wellInside[c] = LoadThreshold.isWellInside(test, fuel.speedAt(c), throttle, kpa);
        }
    }

    /** @param targetLambda target table that holds lambda */
    public static CellLoads of(Table fuel, Table targetLambda, HighLoad highLoad, Limits limits) {
        return new CellLoads(fuel, targetLambda, highLoad, limits);
    }

    /** Whether a cell is at high load. */
    public boolean isHigh(int cell) {
        return high[cell];
    }

    /** Whether a cell is at high load by more than a little, see {@link LoadThreshold#isWellInside}. */
    boolean isWellInside(int cell) {
        return wellInside[cell];
    }

    /**
     * Whether a cell that isn't at high load itself has a hand in it: a neighbour is, and what the control unit reads off between them is made of both;
     * or its target is as rich as one of full load.
     */
    public boolean isBeside(int cell) {
        return !high[cell] && (targetAt(cell) <= HighLoadOfRides.RICH_LAMBDA + 1e-9 || hasHighNeighbour(cell));
    }

    private boolean hasHighNeighbour(int cell) {
        int speed = fuel.speedIndex(cell);
        int load = fuel.loadIndex(cell);
        for (int i = Math.max(0, speed - 1); i <= Math.min(fuel.speed().size() - 1, speed + 1); i++) {
            for (int j = Math.max(0, load - 1); j <= Math.min(fuel.load().size() - 1, load + 1); j++) {
                if (high[fuel.cell(j, i)]) {
                    return true;
                }
            }
        }
        return false;
    }

    /** The leanest allowed at a cell of high load or beside it, lambda. */
    double limitAt(int cell) {
        return limits.leanest(targetAt(cell), wellInside[cell]);
    }

    /**
     * Target at a cell, lambda. Where the target table is indexed by another load, a cell at high load is looked up at that table's highest
     * load, and one at light load has no target: NaN.
     */
    public double targetAt(int cell) {
        if (target.load().kind() == fuel.load().kind()) {
            return target.value(fuel.speedAt(cell), fuel.loadAt(cell));
        }
        return high[cell] ? target.value(fuel.speedAt(cell), target.load().last()) : Double.NaN;
    }
}
