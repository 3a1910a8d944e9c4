package fuelwright.estimate;

import fuelwright.airflow.HighLoad;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import fuelwright.unit.Sentence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;

/** Estimates and proposals with chosen figures, for tests of what comes after the estimate. */
public final class MadeUpEstimates {

    private MadeUpEstimates() {}

    public static Estimate estimate(
            Table table, IntToDoubleFunction logFactor, IntToDoubleFunction uncertainty, IntToDoubleFunction readings) {
        return estimate(table, logFactor, uncertainty, readings, c -> 0);
    }

    static Estimate estimate(
            Table table,
            IntToDoubleFunction logFactor,
            IntToDoubleFunction uncertainty,
            IntToDoubleFunction readings,
            IntToDoubleFunction leftOver) {
        double[] left = new double[table.cells()];
        double[] factors = new double[table.cells()];
        double[] errors = new double[table.cells()];
        double[] counts = new double[table.cells()];
        for (int c = 0; c < table.cells(); c++) {
            factors[c] = logFactor.applyAsDouble(c);
            errors[c] = uncertainty.applyAsDouble(c);
            counts[c] = readings.applyAsDouble(c);
            left[c] = leftOver.applyAsDouble(c);
        }
        SensorFit sensor = new SensorFit(
                new SensorModel(0.03, 1, 0.5, 0.08),
                true,
                0.004,
                0.012,
                Sentence.text("Delay and lag follow from the rides."));
        double[] none = new double[counts.length];
        Arrays.fill(none, Double.NaN);
        return new Estimate(
                table,
                factors,
                errors,
                new double[counts.length],
                counts,
                left,
                none,
                sensor,
                TipIn.none(),
                false,
                List.of("Smoothing was chosen by marginal likelihood."));
    }

    /** Every cell gets what the estimate asks for. */
    public static Proposal proposal(Estimate estimate, ProposalSettings settings) {
        Table table = estimate.table();
        List<CellProposal> cells = new ArrayList<>();
        for (int c = 0; c < table.cells(); c++) {
            Optional<Decision> decision =
                    Optional.ofNullable(settings.decisions().get(c));
            double needed = Math.exp(estimate.logFactor(c));
            double factor = decision.isPresent() ? 1 : needed;
            double after = table.quantity().corrected(table.at(c), factor, settings.deadTimeMs());
            double rounded = settings.step() > 0 ? Math.rint(after / settings.step()) * settings.step() : after;
            boolean high = table.load().kind() == Axis.Kind.THROTTLE && table.loadAt(c) >= HighLoad.THROTTLE_PERCENT;
            cells.add(new CellProposal(
                    c,
                    table.at(c),
                    decision.map(Decision::value).orElse(rounded),
                    factor,
                    needed,
                    estimate.standing(c),
                    high,
                    decision,
                    List.of(new CellProposal.Step(CellProposal.Kind.FITTED, factor))));
        }
        return new Proposal(table, settings, cells);
    }
}
