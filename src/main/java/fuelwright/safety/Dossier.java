package fuelwright.safety;

import fuelwright.estimate.BurntTrace;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.FlowModel;
import fuelwright.estimate.Pace;
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

    /** From this share of the top speed on flow may be more than the fuel supply can follow. */
    private static final double HIGH_FLOW_SHARE = 0.4;

    /** One sensor of one ride. */
    record Trace(int ride, int sensor, BurntTrace burnt, LeanScan scan) {}

    /** Where lateness is told, and from when on it is more than usual, s. */
    private static final double LATE_RPM = 4000;

    private static final double LATE_FLOW = 15;
    private static final double LATE_S = 0.2;

    private static final double TRACED_SHARE = 0.4;

    final CaseFile file;
    final Pace pace;
    final Limits limits;
    final Table fuel;
    final Table target;
    final SensorModel sensor;
    final CellLoads loads;
    private final List<Trace> traces = new ArrayList<>();
    private final List<LoadThreshold> thresholds = new ArrayList<>();
    private final List<RideRows> rows = new ArrayList<>();
    private final List<Optional<SensorSpread>> spreads = new ArrayList<>();
    private final List<Warming> warmings = new ArrayList<>();
    private final Kept<LeanMoments> moments;
    final FlowModel flow;
    /** Injector dead time contained in a pulse table, ms. */
    final double deadTimeMs;

    /** Dead time of the injectors themselves, ms: that of the machine; where it isn't known, what the table's pulses contain. */
    final double injectorDeadTimeMs;

    Dossier(CaseFile file) {
        this(file, Pace.unheard());
    }

    /** @param pace goes on to {@link #TRACED_SHARE} while the traces are read; long rules check it */
    Dossier(CaseFile file, Pace pace) {
        this.file = file;
        this.pace = pace;
        limits = file.limits();
        moments = new Kept<>();
        fuel = file.fuelTable();
        target = file.targetLambda();
        sensor = file.estimate().map(e -> e.sensor().model()).orElse(USUAL_SENSOR);
        loads = CellLoads.of(fuel, target, file.highLoad(), limits);
        deadTimeMs = file.proposal().map(p -> p.settings().deadTimeMs()).orElse(0.0);
        injectorDeadTimeMs = file.machine().injectors().deadTimeMs().orElse(deadTimeMs);
        flow = FlowModel.of(file.machine(), fuel, deadTimeMs);
        pace.next(TRACED_SHARE, rides());
        for (int r = 0; r < rides(); r++) {
            thresholds.add(new LoadThreshold(file.highLoad(), median(ride(r), Role.BAROMETER)));
            rows.add(new RideRows(screened(r), fuel.load().kind()));
            warmings.add(new Warming(rows.get(r), limits));
            readTraces(r);
            boolean shared = ride(r).mixtures().size() > 1 && fuel.cylinder().isEmpty();
            spreads.add(shared ? Optional.of(SensorSpread.of(this, r)) : Optional.empty());
            pace.step();
        }
    }

    private Dossier(Dossier like, CaseFile file) {
        this.file = file;
        pace = Pace.unheard();
        limits = like.limits;
        fuel = like.fuel;
        target = like.target;
        sensor = like.sensor;
        loads = like.loads;
        deadTimeMs = like.deadTimeMs;
        injectorDeadTimeMs = like.injectorDeadTimeMs;
        flow = like.flow;
        traces.addAll(like.traces);
        thresholds.addAll(like.thresholds);
        rows.addAll(like.rows);
        spreads.addAll(like.spreads);
        warmings.addAll(like.warmings);
        moments = like.moments;
    }

    /** The same case with another proposal, made with the same dead time. */
    Dossier with(Proposal proposal) {
        if (proposal.settings().deadTimeMs() != deadTimeMs) {
            throw new IllegalArgumentException(
                    "dead time " + proposal.settings().deadTimeMs() + " ms must be " + deadTimeMs + " ms");
        }
        return new Dossier(this, file.with(proposal));
    }

    /** The same for later, when nobody waits for it any more. */
    Dossier kept() {
        return new Dossier(this, file);
    }

    /** A trace as the usual sensor would have made it; empty where the sensor is about usual. */
    Optional<Trace> usual(Trace of) {
        double later = sensor.delayS(LATE_RPM, LATE_FLOW)
                + sensor.lagS()
                - USUAL_SENSOR.delayS(LATE_RPM, LATE_FLOW)
                - USUAL_SENSOR.lagS();
        return later < LATE_S
                ? Optional.empty()
                : Optional.of(new Trace(
                        of.ride(),
                        of.sensor(),
                        BurntTrace.of(ride(of.ride()), of.sensor(), fuel.load().kind(), USUAL_SENSOR, flow),
                        of.scan()));
    }

    private void readTraces(int r) {
        Ride ride = ride(r);
        int sensors = ride.mixtures().size();
        for (int s = 0; s < sensors; s++) {
            pace.check();
            BurntTrace burnt = BurntTrace.of(ride, s, fuel.load().kind(), sensor, flow);
            LeanScan.Setting setting = new LeanScan.Setting(
                    r,
                    s,
                    thresholds.get(r),
                    target,
                    target.load().kind() == Axis.Kind.THROTTLE,
                    fuel,
                    limits,
                    sensor.lagS(),
                    RideRows.closedPercent(rows.get(r).throttlePercent),
                    highFlowRpm(),
                    FuelCutTimes.of(ride),
                    row -> isWarming(r, row));
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

    RideRows rows(int ride) {
        return rows.get(ride);
    }

    /** Whether warm-up enrichment may have been at work, whether or not that is screened. */
    boolean isWarming(int ride, int row) {
        return warmings.get(ride).at(row);
    }

    /** The lean moments of all rides; the same for every proposal. */
    LeanMoments moments() {
        return moments.get(() -> LeanMoments.of(this));
    }

    /** Where the limit of a moment at high load lies, lambda. */
    double limitOf(LeanEvent event, double targetLambda) {
        return limits.leanest(
                targetLambda,
                thresholds
                        .get(event.ride())
                        .isWellInside(event.speedRpm(), event.throttlePercent(), event.pressureKpa()));
    }

    /** How far sensors that one table feeds read apart; empty for a ride with one sensor, or with a table for each cylinder. */
    Optional<SensorSpread> spread(int ride) {
        return spreads.get(ride);
    }

    /** Whether a moment of a ride is at high load. */
    boolean isHighLoad(int ride, double speedRpm, double throttlePercent, double pressureKpa) {
        return thresholds.get(ride).at(speedRpm, throttlePercent, pressureKpa);
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
        return loads.isHigh(cell);
    }

    /** Whether a cell is at high load by more than a little, see {@link LoadThreshold#isWellInside}. */
    boolean isWellInside(int cell) {
        return loads.isWellInside(cell);
    }

    /** The leanest allowed at a cell of high load, lambda. */
    double limitAt(int cell) {
        return loads.limitAt(cell);
    }

    /** The highest engine speed in use, rpm: the redline, or the table's last breakpoint. */
    double topRpm() {
        double last = fuel.speed().last();
        return Math.min(file.machine().redlineRpm().orElse(last), last);
    }

    /** From this engine speed on flow may be more than the fuel supply can follow, rpm. */
    double highFlowRpm() {
        return HIGH_FLOW_SHARE * topRpm();
    }

    /** Target at a cell, lambda, see {@link CellLoads#targetAt}. */
    double targetAt(int cell) {
        return loads.targetAt(cell);
    }

    /** The fuel table's cell nearest to a place, by index; the highest load where that is unknown. */
    int nearestCell(double speedRpm, double load) {
        int i = (int) (fuel.speed().position(speedRpm) + 0.5);
        int j = Double.isNaN(load) ? fuel.load().size() - 1 : (int) (fuel.load().position(load) + 0.5);
        return fuel.cell(j, i);
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
        double[] there = Arrays.stream(column.get().shared())
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        return there.length == 0 ? Double.NaN : there[there.length / 2];
    }
}
