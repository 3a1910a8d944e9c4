package fuelwright.estimate;

import fuelwright.table.Table;
import java.util.Arrays;
import java.util.List;

/** Estimates and proposals with figures of a test's choosing, for packages that can't make them themselves. */
public final class PlantedEvidence {

    private PlantedEvidence() {}

    public static Estimate estimate(
            Table table,
            double[] logFactors,
            double[] logUncertainties,
            double[] readings,
            SensorFit sensor,
            boolean forecastLeftOut) {
        double[] none = new double[readings.length];
        Arrays.fill(none, Double.NaN);
        return new Estimate(
                table,
                logFactors,
                logUncertainties,
                new double[readings.length],
                readings,
                new double[readings.length],
                none,
                sensor,
                TipIn.none(),
                forecastLeftOut,
                List.of());
    }

    public static Proposal proposal(Table before, ProposalSettings settings, List<CellProposal> cells) {
        return new Proposal(before, settings, cells);
    }
}
