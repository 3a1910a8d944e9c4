package fuelwright.ui;

import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.estimate.CellMeans;
import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Decision;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.EstimateFixture;
import fuelwright.estimate.NextRide;
import fuelwright.estimate.Proposal;
import fuelwright.estimate.Standing;
import fuelwright.handover.HardwareTable;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.mixture.Fuel;
import fuelwright.mixture.MixtureScale;
import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.safety.Caution;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenSettings;
import fuelwright.screen.ScreenedFixture;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.unit.Measured;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;
import fuelwright.work.Analysis;
import fuelwright.work.RideToRide;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/** A made-up job with an analysis that looks like a real one, quickly made: for tests of the window. */
public final class Fixture {

    private static final double[] SPEEDS = {
        900, 1200, 1600, 2000, 2500, 3000, 3500, 4000, 4500, 5000, 5500, 6000, 6500, 7000, 8200
    };
    private static final double[] LOADS = {0, 2, 4, 6, 9, 13, 18, 25, 35, 50, 70, 85, 100};

    /** Rows of the ride of the made-up job. */
    static final int ROWS = 3000;

    /** Immutable, so all tests share it and what was worked out from it. */
    private static final Job JOB = make();

    private static final Loaded<Analysis> ANALYSIS = compute(JOB);

    private static Ride lastRide;
    private static ScreenSettings lastScreens;
    private static ScreenedRide lastScreened;

    private Fixture() {}

    public static Job job() {
        return JOB;
    }

    private static Job make() {
        Axis speed = new Axis(Axis.Kind.ENGINE_SPEED, SPEEDS);
        Axis load = new Axis(Axis.Kind.THROTTLE, LOADS);
        double[] fuel = new double[SPEEDS.length * LOADS.length];
        double[] target = new double[fuel.length];
        for (int i = 0; i < fuel.length; i++) {
            double rpm = SPEEDS[i % SPEEDS.length];
            double throttle = LOADS[i / SPEEDS.length];
            double full = 70 + 25 * Math.exp(-Math.pow((rpm - 5500) / 2600, 2));
            fuel[i] = Math.rint(10 * full * (0.1 + 0.9 * (1 - Math.exp(-throttle * 2500 / rpm / 12)))) / 10;
            target[i] = throttle >= 60 ? 0.87 : throttle >= 25 ? 0.93 : 0.98;
        }
        return Job.empty()
                .withName("V-twin 720, bodies 38 → 44 mm")
                .withMachine(new Machine(
                        OptionalDouble.of(720),
                        2,
                        Optional.of(new ThrottleBody(38, 8, 5, 85)),
                        Optional.of(new ThrottleBody(44, 8, 5, 85)),
                        Fuel.PETROL,
                        OptionalDouble.of(8500)))
                .withFuelTable(Table.of(Quantity.VOLUMETRIC_EFFICIENCY, speed, load, fuel))
                .withTargetTable(Table.of(Quantity.LAMBDA, speed, load, target))
                .withRide(new JobRide(ride("ride-1.csv", ROWS), Optional.empty()));
    }

    public static Ride ride(String name, int rows) {
        return ride(name, rows, RideOptions.defaults());
    }

    /** The same, with the roles and the display ratio that the user says. */
    public static Ride ride(String name, int rows, RideOptions options) {
        Ride plain = plain(name, rows);
        double scale = MixtureScale.USUAL_DISPLAY_RATIO / options.afrScale().orElse(MixtureScale.USUAL_DISPLAY_RATIO);
        List<Channel> channels = plain.channels().stream()
                .map(c -> new Channel(
                        c.heading(),
                        options.roles().getOrDefault(c.heading(), c.role()),
                        c.unit(),
                        c.role() == Role.AFR
                                ? Column.of(Arrays.stream(c.values().toArray())
                                        .map(x -> x * scale)
                                        .toArray())
                                : c.values(),
                        c.confidence(),
                        c.remark()))
                .toList();
        return new Ride(name, plain.timeS(), channels, plain.segmentStarts(), plain.remarks());
    }

    /** Every name but that of the made-up job's ride is a ride of its own. */
    private static Ride plain(String name, int rows) {
        double other = name.equals("ride-1.csv") ? 0 : name.hashCode() % 1000 / 10.0;
        double[] time = new double[rows];
        double[] rpm = new double[rows];
        double[] throttle = new double[rows];
        double[] lambda = new double[rows];
        double[] pressure = new double[rows];
        for (int i = 0; i < rows; i++) {
            double t = i / 20.0;
            time[i] = t;
            double open = Math.max(0, 18 + 22 * Math.sin(t / 11) + 30 * Math.sin(t / 37) + 6 * Math.sin(t * 1.7));
            throttle[i] = Math.min(100, open);
            rpm[i] = 3600 + 1500 * Math.sin(t / 11 - 0.6) + 900 * Math.sin(t / 37) + 60 * Math.sin(t * 2) + other;
            lambda[i] = open == 0 ? 1.4 : 1.02 - 0.0015 * open + 0.03 * Math.sin(t * 0.7) + 0.008 * Math.sin(t * 9);
            pressure[i] = 28 + 72 * (1 - Math.exp(-open / 14));
        }
        return new Ride(
                name,
                Column.of(time),
                List.of(
                        channel("rpm", Role.ENGINE_SPEED, Unit.RPM, rpm, Channel.Confidence.SURE, ""),
                        channel("TPS %", Role.THROTTLE, Unit.PERCENT, throttle, Channel.Confidence.SURE, ""),
                        channel(
                                "wideband",
                                Role.AFR,
                                Unit.AIR_FUEL_RATIO,
                                lambda,
                                Channel.Confidence.LOOK,
                                "read as lambda × 14.7, the ratio that most displays are set to"),
                        channel("MAP", Role.MANIFOLD_PRESSURE, Unit.PSI, pressure, Channel.Confidence.SURE, ""),
                        channel(
                                "cmd lambda",
                                Role.COMMANDED_LAMBDA,
                                Unit.LAMBDA,
                                new double[rows],
                                Channel.Confidence.LEFT_OUT,
                                "always 0: not supported")),
                List.of(0),
                List.of(
                        Issue.note(name, "semicolons and decimal commas"),
                        Issue.warning(
                                name, 812, 0, "3 rows had too few fields and were skipped", "Look at the file's end")));
    }

    private static Channel channel(
            String heading, Role role, Unit unit, double[] values, Channel.Confidence confidence, String remark) {
        return new Channel(heading, role, unit, Column.of(values), confidence, remark);
    }

    public static Loaded<Analysis> analyse(Job job) {
        return job == JOB ? ANALYSIS : compute(job);
    }

    private static Loaded<Analysis> compute(Job job) {
        Table table = job.fuelTable().orElseThrow();
        int n = table.cells();
        double[] log = new double[n];
        double[] sigma = new double[n];
        double[] readings = new double[n];
        CellMeans.Mean[] means = new CellMeans.Mean[n];
        List<CellProposal> cells = new ArrayList<>();
        for (int cell = 0; cell < n; cell++) {
            double rpm = table.speedAt(cell);
            double load = table.loadAt(cell);
            double need = 0.27 * Math.exp(-Math.pow((load - 4 - rpm / 1100) / 7, 2)) * Math.min(1, rpm / 6000)
                    + 0.045 * Math.sin(rpm / 900)
                    - 0.02;
            double ridden = Math.exp(-Math.pow((load - (rpm - 2000) / 90) / 32, 2)) * (rpm > 2600 ? 1 : 0.2);
            log[cell] = need;
            readings[cell] = Math.rint(70 * Math.pow(ridden, 3));
            sigma[cell] = readings[cell] < 1 ? 0.06 : 0.004 + 0.06 / (1 + readings[cell] / 3);
            if (readings[cell] > 0) {
                means[cell] = new CellMeans.Mean(
                        readings[cell] * 4, 100 * Math.expm1(need) - 0.8, 2.4, 0.93 * Math.exp(need), (int)
                                (4 * readings[cell]));
            }
        }
        Estimate estimate = EstimateFixture.estimate(table, log, sigma, readings);
        for (int cell = 0; cell < n; cell++) {
            cells.add(proposal(job, table, estimate, cell));
        }
        List<ScreenedRide> screened =
                job.rides().stream().map(r -> screened(job, r.ride())).toList();
        Proposal proposal = EstimateFixture.proposal(table, job.proposal(), cells);
        return Loaded.of(
                new Analysis(
                        job,
                        highLoad(),
                        screened,
                        EstimateFixture.means(means),
                        estimate,
                        proposal,
                        Optional.of(EstimateFixture.validation()),
                        NextRide.none(),
                        Optional.empty(),
                        cautions(table),
                        HardwareTable.of(job, proposal, screened, highLoad())),
                List.of());
    }

    /** The same as a first answer. */
    public static Analysis unsettled(Analysis a) {
        return with(a, Optional.empty(), a.cautions(), false);
    }

    /** The same with other cautions. */
    public static Analysis with(Analysis a, List<Caution> cautions) {
        return with(a, a.rideToRide(), cautions, a.settled());
    }

    private static Analysis with(Analysis a, Optional<RideToRide> rideToRide, List<Caution> cautions, boolean settled) {
        return new Analysis(
                a.job(),
                a.highLoad(),
                a.screened(),
                a.means(),
                a.estimate(),
                a.proposal(),
                a.validation(),
                a.nextRide(),
                rideToRide,
                cautions,
                a.hardware(),
                settled);
    }

    private static CellProposal proposal(Job job, Table table, Estimate estimate, int cell) {
        boolean high = table.loadAt(cell) >= 60 || table.loadAt(cell) >= 25 && table.speedAt(cell) < 3200;
        double needed = Math.exp(estimate.logFactor(cell));
        double rich = needed * Math.exp(high ? 0.6 * estimate.logUncertainty(cell) : 0);
        Optional<Decision> decision =
                Optional.ofNullable(job.proposal().decisions().get(cell));
        List<CellProposal.Step> steps = new ArrayList<>();
        if (estimate.standing(cell) != Standing.INFERRED) {
            steps.add(new CellProposal.Step(CellProposal.Kind.OBSERVED, needed * 0.992));
        }
        steps.add(new CellProposal.Step(CellProposal.Kind.FITTED, needed));
        if (high) {
            steps.add(new CellProposal.Step(CellProposal.Kind.RICH_SIDE, rich));
        }
        double before = table.at(cell);
        double after = decision.map(Decision::value).orElse(Math.rint(before * rich * 10) / 10);
        double factor = after / before;
        steps.add(new CellProposal.Step(
                decision.map(d -> d.kind() == Decision.Kind.HELD ? CellProposal.Kind.HELD : CellProposal.Kind.SET)
                        .orElse(CellProposal.Kind.ROUNDED),
                factor));
        if (job.proposal().leanNoCell() && factor < 1) {
            after = before;
            factor = 1;
            steps.add(new CellProposal.Step(CellProposal.Kind.NO_CELL_LEANED, factor));
        }
        return new CellProposal(cell, before, after, factor, needed, estimate.standing(cell), high, decision, steps);
    }

    /** Screening takes longest, so the last one is kept. */
    private static synchronized ScreenedRide screened(Job job, Ride ride) {
        if (ride != lastRide || !job.screens().equals(lastScreens)) {
            lastScreened = screen(job, ride);
            lastRide = ride;
            lastScreens = job.screens();
        }
        return lastScreened;
    }

    private static ScreenedRide screen(Job job, Ride ride) {
        Screen[] reasons = new Screen[ride.size()];
        Column throttle = ride.column(Role.THROTTLE).orElseThrow();
        for (int row = 0; row < reasons.length; row++) {
            if (row < 800 && job.screens().isOn(Screen.TOO_COLD)) {
                reasons[row] = Screen.TOO_COLD;
            } else if (throttle.at(row) <= 0 && job.screens().isOn(Screen.FUEL_CUT)) {
                reasons[row] = Screen.FUEL_CUT;
            } else if (row > 1
                    && Math.abs(throttle.at(row) - throttle.at(row - 1)) * 20 > 11.5
                    && job.screens().isOn(Screen.THROTTLE_MOVING)) {
                reasons[row] = Screen.THROTTLE_MOVING;
            }
        }
        return ScreenedFixture.of(ride, reasons);
    }

    private static HighLoad highLoad() {
        return (speedRpm, throttle, pressure, barometer) -> throttle >= 60;
    }

    private static List<Caution> cautions(Table table) {
        TreeSet<Integer> lean = new TreeSet<>(List.of(table.cell(11, 10), table.cell(11, 11)));
        return List.of(
                new Caution(
                        "lean-under-load",
                        Caution.Level.STOP,
                        "lean under load",
                        Sentence.of(
                                "Between 5500 and 6000 rpm above 85 %% throttle: %s, limit %s, for 1.4 s, with the exhaust at %s.",
                                Measured.of(1.02, Unit.LAMBDA, 2),
                                Measured.of(0.92, Unit.LAMBDA, 2).alone(),
                                Measured.of(860, Unit.CELSIUS, 0)),
                        "Don't ride it like this: look at pump and filter before adding fuel.",
                        lean,
                        List.of(new Caution.Moment(0, "ride-1.csv", 112.4, 1.4, 1.02, 5740, 91))),
                new Caution(
                        "not-measured-under-load",
                        Caution.Level.CHECK,
                        "high load that nobody rode",
                        "41 cells at high load rest on neighbours and physics only.",
                        "Ride them on a dynamometer or a closed course before anybody relies on them.",
                        new TreeSet<>(List.of(table.cell(12, 0), table.cell(12, 1))),
                        List.of()),
                new Caution(
                        "display-ratio",
                        Caution.Level.NOTE,
                        "mixture read as AFR",
                        "The wideband column was read as lambda × 14.7.",
                        "Say so if your display is set to another ratio.",
                        new TreeSet<>(),
                        List.of()));
    }
}
