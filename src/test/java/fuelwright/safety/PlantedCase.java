package fuelwright.safety;

import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Decision;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.PlantedEvidence;
import fuelwright.estimate.Proposal;
import fuelwright.estimate.ProposalSettings;
import fuelwright.estimate.SensorFit;
import fuelwright.estimate.SensorModel;
import fuelwright.estimate.Standing;
import fuelwright.job.JobRide;
import fuelwright.mixture.Fuel;
import fuelwright.ride.Ride;
import fuelwright.screen.ScreenSettings;
import fuelwright.screen.Screens;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.unit.Sentence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A case in which nothing is wrong until a test plants something. */
final class PlantedCase {

    static final Axis SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 1000, 2000, 3000, 4000, 5000, 6000, 7000, 8000);
    static final Axis THROTTLE = new Axis(Axis.Kind.THROTTLE, 0, 10, 20, 40, 60, 80, 100);
    static final Axis PRESSURE = new Axis(Axis.Kind.MANIFOLD_PRESSURE, 20, 40, 60, 80, 90, 100);

    /** By pressure where there is one, else by throttle. */
    static final HighLoad HIGH_LOAD = (rpm, throttle, pressure, barometer) -> Double.isNaN(pressure)
            ? throttle >= HighLoad.THROTTLE_PERCENT
            : pressure >= 0.85 * (Double.isNaN(barometer) ? HighLoad.STANDARD_BAROMETER_KPA : barometer);

    Fuel fuel = Fuel.PETROL;
    Machine machine;
    ProposalSettings settings = ProposalSettings.defaults();
    Table fuelTable = table(Quantity.VOLUMETRIC_EFFICIENCY, THROTTLE, c -> 80);
    Table target = targetOn(THROTTLE);
    final List<CaseFile.JudgedRide> rides = new ArrayList<>();
    double[] logFactors;
    double[] uncertainties;
    double[] readings;
    SensorFit sensor = new SensorFit(new SensorModel(0.04, 1, 0, 0.1), true, 0.01, 0.01, Sentence.NONE);
    boolean withEstimate = true;
    boolean forecastLeftOut;
    List<CellProposal> proposed;
    Limits limits = Limits.usual(Fuel.PETROL);
    HighLoad highLoad = HIGH_LOAD;

    PlantedCase() {
        evidence(0, 0.005, 50);
    }

    interface CellValue {
        double at(int cell);
    }

    static Table table(Quantity quantity, Axis load, CellValue value) {
        double[] values = new double[SPEED.size() * load.size()];
        for (int c = 0; c < values.length; c++) {
            values[c] = value.at(c);
        }
        return Table.of(quantity, SPEED, load, values);
    }

    static Table targetOn(Axis load) {
        double[] steps = load.kind() == Axis.Kind.THROTTLE
                ? new double[] {1.0, 1.0, 0.98, 0.92, 0.88, 0.87, 0.87}
                : new double[] {1.0, 1.0, 0.98, 0.92, 0.88, 0.87};
        return table(Quantity.LAMBDA, load, c -> steps[c / SPEED.size()]);
    }

    double targetFigure(int cell) {
        return targetOn(THROTTLE).at(cell);
    }

    static int cell(int loadIndex, int speedIndex) {
        return loadIndex * SPEED.size() + speedIndex;
    }

    PlantedCase byPressure() {
        fuelTable = table(Quantity.VOLUMETRIC_EFFICIENCY, PRESSURE, c -> 80);
        target = targetOn(PRESSURE);
        return evidence(0, 0.005, 50);
    }

    PlantedCase evidence(double log, double uncertainty, double count) {
        int n = fuelTable.cells();
        logFactors = new double[n];
        uncertainties = new double[n];
        readings = new double[n];
        Arrays.fill(logFactors, log);
        Arrays.fill(uncertainties, uncertainty);
        Arrays.fill(readings, count);
        proposed = new ArrayList<>();
        for (int c = 0; c < n; c++) {
            proposed.add(propose(c, 1, 1, Standing.MEASURED));
        }
        return this;
    }

    CellProposal propose(int cell, double factor, double needed, Standing standing, CellProposal.Kind... kinds) {
        boolean high = HIGH_LOAD.at(
                fuelTable.speedAt(cell),
                fuelTable.load().kind() == Axis.Kind.THROTTLE ? fuelTable.loadAt(cell) : Double.NaN,
                fuelTable.load().kind() == Axis.Kind.THROTTLE ? Double.NaN : fuelTable.loadAt(cell),
                Double.NaN);
        List<CellProposal.Step> steps =
                Arrays.stream(kinds).map(k -> new CellProposal.Step(k, factor)).toList();
        boolean byHand = Arrays.asList(kinds).contains(CellProposal.Kind.HELD);
        boolean set = Arrays.asList(kinds).contains(CellProposal.Kind.SET);
        double before = fuelTable.at(cell);
        double after = fuelTable.quantity().corrected(before, factor, 0);
        Optional<Decision> decision = byHand || set
                ? Optional.of(new Decision(set ? Decision.Kind.SET : Decision.Kind.HELD, after))
                : Optional.empty();
        return new CellProposal(cell, before, after, factor, needed, standing, high, decision, steps);
    }

    PlantedCase plant(int cell, double factor, double needed, Standing standing, CellProposal.Kind... kinds) {
        proposed.set(cell, propose(cell, factor, needed, standing, kinds));
        return this;
    }

    PlantedCase ride(Ride ride) {
        return ride(ride, ScreenSettings.defaults());
    }

    PlantedCase ride(Ride ride, ScreenSettings screens) {
        rides.add(new CaseFile.JudgedRide(
                Screens.apply(
                        new JobRide(ride, Optional.empty()).heardBy(fuelTable),
                        screens,
                        fuelTable.speed(),
                        fuelTable.load()),
                fuelTable));
        return this;
    }

    CaseFile file() {
        Machine judged = machine != null
                ? machine
                : new Machine(
                        OptionalDouble.of(720), 2, Optional.empty(), Optional.empty(), fuel, OptionalDouble.of(8000));
        Optional<Estimate> estimate = withEstimate
                ? Optional.of(PlantedEvidence.estimate(
                        fuelTable, logFactors, uncertainties, readings, sensor, forecastLeftOut))
                : Optional.empty();
        Optional<Proposal> proposal = proposed == null
                ? Optional.empty()
                : Optional.of(PlantedEvidence.proposal(fuelTable, settings, proposed));
        return new CaseFile(judged, highLoad, fuelTable, target, rides, estimate, proposal, limits);
    }

    List<Caution> judge() {
        return Judge.judge(file());
    }

    /** The caution of a rule, if it fired. */
    Optional<Caution> judge(String rule) {
        return judge().stream().filter(c -> c.rule().equals(rule)).findFirst();
    }

    List<String> stops() {
        return judge().stream().filter(Caution::isStop).map(Caution::sentence).toList();
    }
}
