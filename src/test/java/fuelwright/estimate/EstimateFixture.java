package fuelwright.estimate;

import fuelwright.table.Table;
import java.util.List;

/** Makes estimates and proposals for tests of what shows them. */
public final class EstimateFixture {

    private EstimateFixture() {}

    public static Estimate estimate(Table table, double[] logFactors, double[] uncertainties, double[] readings) {
        SensorFit sensor = new SensorFit(
                new SensorModel(0.02, 1, 0.3, 0.078),
                true,
                0.004,
                0.006,
                "delay 41 ms at 4500 rpm and lag 78 ms, found from the rides");
        return new Estimate(table, logFactors, uncertainties, readings, sensor, List.of("wall film left out"));
    }

    public static Proposal proposal(Table before, ProposalSettings settings, List<CellProposal> cells) {
        return new Proposal(before, settings, cells);
    }

    public static CellMeans means(CellMeans.Mean... means) {
        return new CellMeans(means);
    }
}
