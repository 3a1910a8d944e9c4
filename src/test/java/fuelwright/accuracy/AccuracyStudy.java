package fuelwright.accuracy;

import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.estimate.CellMeans;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.Estimator;
import fuelwright.estimate.PartsStudy;
import fuelwright.estimate.ProposalSettings;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.mixture.Fuel;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.RideReader;
import fuelwright.simulated.ControlUnit;
import fuelwright.simulated.Grid;
import fuelwright.simulated.Scores;
import fuelwright.simulated.SimulatedRide;
import fuelwright.simulated.StudyRides;
import fuelwright.simulated.TableWriter;
import fuelwright.simulated.ThrottleBodies;
import fuelwright.simulated.Trial;
import fuelwright.table.Table;
import fuelwright.table.TableReader;
import fuelwright.work.Analyse;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.Progress;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How near the proposed table comes to the truth, on simulated machines: the whole computation from the logs' text to the proposal, with
 * wide caps, judged on a different ride over the same kind of roads. Prints a table in Markdown.
 */
public final class AccuracyStudy {

    /** Readings that a plain cell mean needs before it changes a cell. */
    private static final int PLAIN_READINGS = 10;
    /** Rows that must have fallen to a high-load cell for it to count as ridden. */
    private static final int RIDDEN_ROWS = 20;
    /** How many times the riding shows what more of it would bring. */
    private static final int MORE_RIDING = 3;

    private final Trial trial;
    private final Grid old;
    private final SimulatedRide exam;
    private final List<SimulatedRide> rides;
    private final double deadTimeMs;

    private AccuracyStudy(Trial trial) {
        this.trial = trial;
        this.old = trial.table();
        this.rides = trial.rides();
        this.exam = trial.exam();
        ControlUnit unit = trial.machine().unit();
        this.deadTimeMs = unit.fuel() == ControlUnit.Fuel.PULSE ? unit.deadTimeMs() : 0;
    }

    /** Figures of one trial, %. */
    record Row(
            String name,
            double before,
            double floor,
            double plain,
            double fitted,
            double proposed,
            double withForecast,
            double leanest,
            double coverage,
            double ridden,
            List<Double> parts) {}

    /** @param arguments numbers of the trials to run; none: all */
    public static void main(String[] arguments) {
        List<Trial> trials = StudyRides.all();
        List<Row> rows = new ArrayList<>();
        System.out.println(
                "| trial | before | floor | cell mean | fit | proposal | proposal with forecast | leanest ridden"
                        + " high-load cell | coverage | fit, three times the riding |");
        System.out.println("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        for (int i = 0; i < trials.size(); i++) {
            String number = Integer.toString(i);
            if (arguments.length == 0 || Arrays.asList(arguments).contains(number)) {
                Row row = new AccuracyStudy(trials.get(i)).run(arguments.length == 1);
                rows.add(row);
                System.out.println(line(row));
            }
        }
        System.out.println(line(summary("median", rows, 0.5)));
        System.out.println(line(summary("worst", rows, 1)));
        System.out.println();
        System.out.println("| fit with forecast | median | worst |");
        System.out.println("| --- | --- | --- |");
        for (int v = 0; v < PartsStudy.variants(); v++) {
            int variant = v;
            double[] errors =
                    rows.stream().mapToDouble(r -> r.parts().get(variant)).toArray();
            System.out.printf(
                    Locale.ROOT, "| %s | %.2f | %.2f |%n", PartsStudy.name(v), at(0.5, errors), at(1, errors));
        }
    }

    private static String line(Row r) {
        return String.format(
                Locale.ROOT,
                "| %s | %.1f | %.2f | %.2f | %.2f | %.2f | %.2f | %+.1f | %.0f | %.2f |",
                r.name,
                r.before,
                r.floor,
                r.plain,
                r.fitted,
                r.proposed,
                r.withForecast,
                r.leanest,
                r.coverage,
                r.ridden);
    }

    private static Row summary(String name, List<Row> rows, double quantile) {
        return new Row(
                name,
                at(quantile, rows.stream().mapToDouble(Row::before).toArray()),
                at(quantile, rows.stream().mapToDouble(Row::floor).toArray()),
                at(quantile, rows.stream().mapToDouble(Row::plain).toArray()),
                at(quantile, rows.stream().mapToDouble(Row::fitted).toArray()),
                at(quantile, rows.stream().mapToDouble(Row::proposed).toArray()),
                at(quantile, rows.stream().mapToDouble(Row::withForecast).toArray()),
                at(quantile, rows.stream().mapToDouble(Row::leanest).toArray()),
                at(1 - quantile, rows.stream().mapToDouble(Row::coverage).toArray()),
                at(quantile, rows.stream().mapToDouble(Row::ridden).toArray()),
                List.of());
    }

    private static double at(double quantile, double[] values) {
        Arrays.sort(values);
        return values[(int) Math.min(values.length - 1, quantile * values.length)];
    }

    private Row run(boolean explain) {
        Analysis plain = analysis(Machine.unknown());
        Analysis forecast = analysis(described());
        Table fuel = plain.estimate().table();
        double[] means = old.toArray();
        for (int c = 0; c < means.length; c++) {
            Optional<CellMeans.Mean> mean = plain.means().at(c).filter(m -> m.readings() >= PLAIN_READINGS);
            double factor = mean.map(m -> 1 + m.meanShortfallPercent() / 100).orElse(1.0);
            means[c] = fuel.quantity().corrected(means[c], factor, deadTimeMs);
        }
        Grid proposed = old.with(forecast.proposal().corrected().toArray());
        double leanest = rides.stream()
                .flatMap(r -> Scores.leanestHighLoadCell(proposed, r, RIDDEN_ROWS).stream())
                .mapToDouble(Scores.CellError::shortfallPct)
                .max()
                .orElse(Double.NaN);
        if (explain) {
            explain(forecast);
        }
        return new Row(
                trial.name(),
                error(old),
                error(trial.tables().truth()),
                error(old.with(means)),
                fitError(forecast.estimate()),
                error(old.with(plain.proposal().corrected().toArray())),
                error(proposed),
                leanest,
                coverage(forecast.estimate()),
                fitError(new AccuracyStudy(trial.ridden(MORE_RIDING))
                        .analysis(described())
                        .estimate()),
                parts(forecast));
    }

    /** Error of the fit with all parts and without each in turn, %. */
    private List<Double> parts(Analysis analysis) {
        Table fuel = analysis.estimate().table();
        List<Estimator.Source> sources = analysis.screened().stream()
                .map(s -> new Estimator.Source(s, fuel))
                .toList();
        List<Double> errors = new ArrayList<>();
        for (int variant = 0; variant < PartsStudy.variants(); variant++) {
            Estimate estimate = PartsStudy.run(
                    variant,
                    fuel,
                    analysis.job().targetTable().orElseThrow(),
                    sources,
                    analysis.job().machine(),
                    deadTimeMs);
            errors.add(fitError(estimate));
        }
        return errors;
    }

    /** Error of a ride with the table that the fit alone would give, %. */
    private double fitError(Estimate estimate) {
        double[] cells = old.toArray();
        for (int c = 0; c < cells.length; c++) {
            cells[c] = estimate.table().quantity().corrected(cells[c], Math.exp(estimate.logFactor(c)), deadTimeMs);
        }
        return error(old.with(cells));
    }

    private double error(Grid table) {
        return 100 * Scores.mixtureError(table, exam);
    }

    /** Share of the cells with at least three independent readings whose 95 % interval holds the truth, %. */
    private double coverage(Estimate estimate) {
        Grid truth = trial.tables().factor(old, trial.tables().truth());
        int held = 0;
        int all = 0;
        for (int c = 0; c < old.cells(); c++) {
            if (estimate.independentReadings(c) >= 3) {
                double off = Math.abs(estimate.logFactor(c) - Math.log(truth.at(c)));
                held += off <= 1.96 * estimate.logUncertainty(c) ? 1 : 0;
                all++;
            }
        }
        return 100.0 * held / Math.max(1, all);
    }

    private Analysis analysis(Machine machine) {
        Table fuel = value(TableReader.read("fuel-table.csv", TableWriter.fuel(trial.machine(), old)));
        Table target = value(TableReader.read(
                "target-table.csv",
                TableWriter.target(trial.machine(), trial.tables().target())));
        List<JobRide> jobRides = new ArrayList<>();
        for (SimulatedRide ride : rides) {
            byte[] text = ride.csv().getBytes(StandardCharsets.UTF_8);
            Ride read = value(RideReader.read("ride-" + jobRides.size() + ".csv", text, RideOptions.defaults()));
            jobRides.add(new JobRide(read, Optional.empty()));
        }
        Job job = Job.empty()
                .withMachine(machine)
                .withFuelTable(fuel)
                .withTargetTable(target)
                .withRides(jobRides)
                .withProposal(ProposalSettings.defaults().withCaps(60, 60).withDeadTimeMs(deadTimeMs));
        return value(Analyse.run(job, Progress.NONE, Cancellation.NEVER));
    }

    private Machine described() {
        ThrottleBodies before = trial.machine().bodiesBefore();
        return new Machine(
                OptionalDouble.of(trial.machine().engine().displacementCc()),
                before.count(),
                Optional.of(body(before)),
                Optional.of(body(trial.machine().bodiesAfter())),
                Fuel.PETROL,
                OptionalDouble.of(trial.machine().engine().redlineRpm()));
    }

    private static ThrottleBody body(ThrottleBodies bodies) {
        return new ThrottleBody(bodies.boreMm(), bodies.shaftMm(), bodies.closedAngleDeg(), bodies.openAngleDeg());
    }

    private static <T> T value(Loaded<T> loaded) {
        return loaded.value()
                .orElseThrow(() -> new IllegalStateException(loaded.issues().toString()));
    }

    /** Cell by cell: error of the fit, its uncertainty and its readings, high load on top. */
    private void explain(Analysis analysis) {
        Estimate e = analysis.estimate();
        Grid truth = trial.tables().factor(old, trial.tables().truth());
        System.out.println(e.sensor().words());
        analysis.screened()
                .forEach(s -> System.out.println(s.kept() + " of " + s.ride().size()));
        for (int j = e.table().load().size() - 1; j >= 0; j--) {
            StringBuilder text = new StringBuilder(
                    String.format(Locale.ROOT, "%5.0f ", e.table().load().at(j)));
            for (int i = 0; i < e.table().speed().size(); i++) {
                int c = e.table().cell(j, i);
                text.append(String.format(
                        Locale.ROOT,
                        "%5.1f(%3.1f)%3.0f|",
                        100 * (e.logFactor(c) - Math.log(truth.at(c))),
                        100 * e.logUncertainty(c),
                        e.independentReadings(c)));
            }
            System.out.println(text);
        }
    }
}
