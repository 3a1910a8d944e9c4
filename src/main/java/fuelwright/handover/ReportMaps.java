package fuelwright.handover;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.Proposal;
import fuelwright.estimate.Standing;
import fuelwright.estimate.Validation;
import fuelwright.power.Breathing;
import fuelwright.safety.Caution;
import fuelwright.table.Table;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/** The report's maps. */
final class ReportMaps {

    private static final int[] RANGES = {10, 20, 40};
    /** Uncertainty at which a fill is palest, %. */
    private static final double VERY_UNSURE_PERCENT = 12;
    /** How much smaller the least sure figure is. */
    private static final double LEAST_SMALLER = 2.5;

    private final Proposal proposal;
    private final Estimate estimate;
    private final Table table;
    private final Set<Integer> stopped = new TreeSet<>();

    ReportMaps(Handed handed) {
        this.proposal = handed.proposal();
        this.estimate = handed.estimate();
        this.table = proposal.before();
        for (Caution caution : handed.stops()) {
            stopped.addAll(caution.cells());
        }
    }

    /** The range of the change map, ± %. */
    int changeRange() {
        return range(proposal.cells().stream()
                .mapToDouble(c -> Math.abs(c.changePercent()))
                .max()
                .orElse(0));
    }

    private static int range(double most) {
        for (int range : RANGES) {
            if (most <= range) {
                return range;
            }
        }
        return RANGES[RANGES.length - 1];
    }

    String change() {
        int range = changeRange();
        return HeatMap.of(table, "change", "Proposed change of fuel in each cell, percent", cell -> {
            CellProposal c = proposal.cell(cell);
            double unsure = estimate.uncertaintyPercent(cell);
            return new HeatMap.Cell(
                    Palette.change(c.changePercent() / range, 1 - unsure / VERY_UNSURE_PERCENT),
                    Figures.signed(c.changePercent(), 1),
                    HeatMap.FULL_SIZE - Math.min(LEAST_SMALLER, LEAST_SMALLER * unsure / VERY_UNSURE_PERCENT),
                    "± " + Figures.plain(unsure, unsure < 9.95 ? 1 : 0),
                    inferred(cell),
                    stopped.contains(cell),
                    tip(cell));
        });
    }

    String before() {
        return amounts("before", "Fuel table before", CellProposal::before);
    }

    String after() {
        return amounts("after", "Fuel table as proposed", CellProposal::after);
    }

    /** The range of the map of what the part gave, ± %. */
    static int gainRange(Breathing gain) {
        return range(IntStream.range(0, gain.cells())
                .filter(gain::isKnown)
                .mapToDouble(c -> Math.abs(gain.gainPercent(c)))
                .max()
                .orElse(0));
    }

    /** Below each figure, where the air itself is known, what a cycle drew before and draws now. */
    String gain(Breathing gain) {
        int range = gainRange(gain);
        return HeatMap.of(
                table,
                "gain",
                "What the part gave: more air in each cycle, percent",
                cell -> gain.isKnown(cell)
                        ? new HeatMap.Cell(
                                Palette.change(
                                        gain.gainPercent(cell) / range,
                                        1 - gain.gainErrorPercent(cell) / VERY_UNSURE_PERCENT),
                                Figures.signed(gain.gainPercent(cell), 1),
                                HeatMap.FULL_SIZE,
                                gain.before(cell).isPresent()
                                        ? Figures.plain(gain.before(cell).getAsDouble(), 0) + "→"
                                                + Figures.plain(gain.after(cell).getAsDouble(), 0)
                                        : "",
                                false,
                                stopped.contains(cell),
                                place(cell) + ": " + Figures.signed(gain.gainPercent(cell), 1) + " ± "
                                        + Figures.plain(gain.gainErrorPercent(cell), 1) + " % air")
                        : new HeatMap.Cell(
                                0xffffff,
                                "",
                                HeatMap.FULL_SIZE,
                                "",
                                false,
                                stopped.contains(cell),
                                place(cell) + ": not known"));
    }

    String readings() {
        double most = 1;
        for (int cell = 0; cell < table.cells(); cell++) {
            most = Math.max(most, estimate.independentReadings(cell));
        }
        double scale = Math.log1p(most);
        return HeatMap.of(table, "readings", "Independent readings in each cell", cell -> {
            double n = estimate.independentReadings(cell);
            return new HeatMap.Cell(
                    n > 0 ? Palette.amount(Math.log1p(n) / scale) : 0xffffff,
                    n > 0 ? (n < 0.05 ? "<0.1" : Figures.plain(n, n < 9.95 ? 1 : 0)) : "–",
                    HeatMap.FULL_SIZE,
                    "",
                    inferred(cell),
                    stopped.contains(cell),
                    tip(cell));
        });
    }

    /** What is left of each cell's error on readings that the fit hadn't seen, below it what it was. */
    String leftOut(Validation validation) {
        double most = validation.cells().values().stream()
                .mapToDouble(c -> Math.max(c.errorBeforePercent(), c.errorAfterPercent()))
                .max()
                .orElse(1);
        return HeatMap.of(table, "left-out", "Mixture error of each cell on readings kept out, percent", cell -> {
            Optional<Validation.Cell> judged = validation.at(cell);
            return new HeatMap.Cell(
                    judged.map(v -> Palette.amount(v.errorAfterPercent() / most))
                            .orElse(0xffffff),
                    judged.map(v -> Figures.plain(v.errorAfterPercent(), 1)).orElse("–"),
                    HeatMap.FULL_SIZE,
                    judged.map(v -> "(" + Figures.plain(v.errorBeforePercent(), 1) + ")")
                            .orElse(""),
                    inferred(cell),
                    stopped.contains(cell),
                    tip(cell));
        });
    }

    private String amounts(String id, String label, ToDoubleFunction<CellProposal> figure) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (CellProposal c : proposal.cells()) {
            least = Math.min(least, Math.min(c.before(), c.after()));
            most = Math.max(most, Math.max(c.before(), c.after()));
        }
        double from = least;
        double span = most > least ? most - least : 1;
        int decimals = most < 3 ? 3 : most < 30 ? 2 : 1;
        return HeatMap.of(
                table,
                id,
                label + ", " + table.quantity().words() + ", "
                        + table.quantity().unit(),
                cell -> {
                    double value = figure.applyAsDouble(proposal.cell(cell));
                    return new HeatMap.Cell(
                            Palette.amount((value - from) / span),
                            Figures.plain(value, decimals),
                            HeatMap.FULL_SIZE,
                            "",
                            inferred(cell),
                            stopped.contains(cell),
                            tip(cell));
                });
    }

    private boolean inferred(int cell) {
        return proposal.cell(cell).standing() == Standing.INFERRED;
    }

    private String tip(int cell) {
        CellProposal c = proposal.cell(cell);
        return place(cell) + ": " + Figures.trimmed(c.before(), 3) + " → "
                + Figures.trimmed(c.after(), 3) + ", change " + Figures.signed(c.changePercent(), 1) + " %, shortfall "
                + Figures.signed(estimate.shortfallPercent(cell), 1) + " ± "
                + Figures.plain(estimate.uncertaintyPercent(cell), 1) + " %, "
                + Figures.plain(estimate.independentReadings(cell), 1) + " independent readings, "
                + c.standing().words() + (c.highLoad() ? ", high load" : "")
                + c.decision()
                        .map(d -> ", " + d.kind().name().toLowerCase(java.util.Locale.ROOT) + " by hand")
                        .orElse("");
    }

    private String place(int cell) {
        return Figures.trimmed(table.speedAt(cell), 2) + " rpm, " + Figures.trimmed(table.loadAt(cell), 2) + " "
                + table.load().kind().unit().symbol();
    }
}
