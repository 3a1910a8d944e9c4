package fuelwright.estimate;

import fuelwright.table.Table;
import fuelwright.unit.Sentence;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Makes estimates and proposals for tests of what shows them. */
public final class EstimateFixture {

    private EstimateFixture() {}

    public static Estimate estimate(Table table, double[] logFactors, double[] uncertainties, double[] readings) {
        SensorFit sensor = new SensorFit(
                new SensorModel(0.02, 1, 0.3, 0.078),
                true,
                0.004,
                0.006,
                Sentence.text("delay 41 ms at 4500 rpm and lag 78 ms, found from the rides"));
        return new Estimate(
                table,
                logFactors,
                uncertainties,
                new double[readings.length],
                readings,
                new double[readings.length],
                logFactors,
                sensor,
                tipIn(),
                false,
                List.of("wall film left out"));
    }

    /** Every third cell was judged, one of them did worse. */
    public static Validation validation() {
        Map<Integer, Validation.Cell> cells = new TreeMap<>();
        for (int c = 30; c < 90; c += 3) {
            cells.put(c, new Validation.Cell(2 + c % 5, 10 + c, 8 + c % 9, c == 60 ? 15 : 0.4 + 0.2 * (c % 7)));
        }
        return new Validation(12, 8200, 14.6, 0.7, cells);
    }

    private static TipIn tipIn() {
        return new TipIn(
                List.of(
                        new TipIn.Bin(50, 100, 2000, 4000, 14, 3.4, 0.6, 7.2, 0),
                        new TipIn.Bin(100, 200, 2000, 4000, 9, 6.1, 0.9, 12.8, 1),
                        new TipIn.Bin(100, 200, 4000, 6000, 5, 0.7, 0.8, 2.1, 0)),
                28,
                6);
    }

    public static Proposal proposal(Table before, ProposalSettings settings, List<CellProposal> cells) {
        return new Proposal(before, settings, cells);
    }

    public static CellMeans means(CellMeans.Mean... means) {
        return new CellMeans(means);
    }
}
