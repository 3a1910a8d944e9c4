package fuelwright.safety;

import fuelwright.estimate.BurntTrace;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.FlowModel;
import fuelwright.estimate.Proposal;
import fuelwright.estimate.SensorModel;
import fuelwright.estimate.Standing;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** A case with what several rules need worked out once: traces, lean events, which cells are at high load and what they should give. */
final class Dossier {

    /**
     * Delay and lag until the rides have told: a sensor near the ports, one cycle, 0.1 s (50 to 100 ms is usual for production
     * broadband sensors by a published abstract).
     */
    private static final SensorModel USUAL_SENSOR = new SensorModel(0.02, 1.0, 0.4, 0.1);

    /** Throttle above the ride's smallest up to which it is called closed, %. */
    private static final double CLOSED_PERCENT = 2;
    /** At this share of its load a cell well inside high load is still at high load. */
    private static final double DEEP_THROTTLE = 0.75;

    private static final double DEEP_PRESSURE = 0.93;

    /** One sensor of one ride. */
    record Trace(int ride, int sensor, BurntTrace burnt, LeanScan scan) {}

    final CaseFile file;
    final Limits limits;
    final Table fuel;
    final Table target;
    final SensorModel sensor;
    private final boolean[] highCells;
    private final List<Trace> traces = new ArrayList<>();
    private final double barometerKpa;

    Dossier(CaseFile file) {
        this.file = file;
        limits = file.limits();
        fuel = file.fuelTable();
        target = file.targetLambda();
        sensor = file.estimate().map(e -> e.sensor().model()).orElse(USUAL_SENSOR);
        barometerKpa = barometer();
        highCells = new boolean[fuel.cells()];
        for (int c = 0; c < highCells.length; c++) {
            highCells[c] = isHighLoad(fuel.speedAt(c), fuel.loadAt(c));
        }
        double deadTimeMs = file.proposal().map(p -> p.settings().deadTimeMs()).orElse(0.0);
        FlowModel flow = FlowModel.of(file.machine(), fuel, deadTimeMs);
        for (int r = 0; r < rides(); r++) {
            readTraces(r, flow);
        }
    }

    private void readTraces(int r, FlowModel flow) {
        Ride ride = ride(r);
        int sensors = ride.mixtures().size();
        if (sensors == 0) {
            return;
        }
        LoadThreshold threshold = new LoadThreshold(file.highLoad(), median(ride, Role.BAROMETER));
        for (int s = 0; s < sensors; s++) {
            BurntTrace burnt = BurntTrace.of(ride, s, fuel.load().kind(), sensor, flow);
            LeanScan.Setting setting = new LeanScan.Setting(
                    r,
                    s,
                    threshold,
                    target,
                    target.load().kind() == Axis.Kind.THROTTLE,
                    fuel,
                    limits,
                    sensor.lagS(),
                    closedPercent(ride),
                    FuelCutTimes.of(ride));
            traces.add(new Trace(r, s, burnt, LeanScan.of(burnt, setting)));
        }
    }

    int rides() {
        return file.rides().size();
    }

    ScreenedRide screened(int ride) {
        return file.rides().get(ride).screened();
    }

    Ride ride(int ride) {
        return screened(ride).ride();
    }

    List<Trace> traces() {
        return traces;
    }

    Optional<Estimate> estimate() {
        return file.estimate();
    }

    Optional<Proposal> proposal() {
        return file.proposal();
    }

    /** Whether a cell of the fuel table is at high load. */
    boolean isHigh(int cell) {
        return highCells[cell];
    }

    /** Whether a place is at high load by more than a little, so that a coarse table or a model's error can't be the reason. */
    boolean isDeep(double speedRpm, double load) {
        boolean byThrottle = fuel.load().kind() == Axis.Kind.THROTTLE;
        return isHighLoad(speedRpm, load) && isHighLoad(speedRpm, load * (byThrottle ? DEEP_THROTTLE : DEEP_PRESSURE));
    }

    boolean isHighLoad(double speedRpm, double load) {
        return fuel.load().kind() == Axis.Kind.THROTTLE
                ? file.highLoad().at(speedRpm, load, Double.NaN, barometerKpa)
                : file.highLoad().at(speedRpm, Double.NaN, load, barometerKpa);
    }

    /**
     * Target at a cell of the fuel table, lambda. Where the target table is indexed by another load, a cell at high load is looked up at
     * that table's highest load, and one at light load has no target: NaN.
     */
    double targetAt(int cell) {
        if (target.load().kind() == fuel.load().kind()) {
            return target.value(fuel.speedAt(cell), fuel.loadAt(cell));
        }
        return isHigh(cell) ? target.value(fuel.speedAt(cell), target.load().last()) : Double.NaN;
    }

    /** What a cell's figure rests on; without an estimate nothing does. */
    Standing standing(int cell) {
        return estimate().map(e -> e.standing(cell)).orElse(Standing.INFERRED);
    }

    /** Median of a role's values over a ride; NaN where it has none. */
    static double median(Ride ride, Role role) {
        Optional<Column> column = ride.column(role);
        if (column.isEmpty()) {
            return Double.NaN;
        }
        double[] there = Arrays.stream(column.get().toArray())
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        return there.length == 0 ? Double.NaN : there[there.length / 2];
    }

    private double barometer() {
        for (int r = 0; r < rides(); r++) {
            double median = median(ride(r), Role.BAROMETER);
            if (median > 0) {
                return median;
            }
        }
        return Double.NaN;
    }

    private static double closedPercent(Ride ride) {
        return ride.column(Role.THROTTLE)
                .map(c -> Arrays.stream(c.toArray())
                                .filter(Double::isFinite)
                                .min()
                                .orElse(0)
                        + CLOSED_PERCENT)
                .orElse(Double.NaN);
    }
}
