package fuelwright.handover;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.Proposal;
import fuelwright.estimate.Standing;
import fuelwright.estimate.Validation;
import fuelwright.power.Breathing;
import fuelwright.safety.Caution;
import fuelwright.table.Table;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/** The report's maps. */
final class ReportMaps {

    private static final int[] RANGES = {10, 20, 40};
    /** Uncertainty from which on a figure is smallest, %. */
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
                    Palette.change(c.changePercent() / range, CellLook.strength(c.standing(), unsure)),
                    CellLook.unknown(c) ? CellLook.UNKNOWN : Figures.signed(c.changePercent(), 1),
                    HeatMap.FULL_SIZE - Math.min(LEAST_SMALLER, LEAST_SMALLER * unsure / VERY_UNSURE_PERCENT),
                    c.decision().isPresent() ? "" : "±" + Figures.plain(unsure, 1),
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
                                        gain.gainPercent(cell) / range, CellLook.sure(gain.gainErrorPercent(cell))),
                                Figures.signed(gain.gainPercent(cell), 1),
                                HeatMap.FULL_SIZE,
                                gain.before(cell).isPresent()
                                        ? Figures.plain(gain.before(cell).getAsDouble(), 0) + "→"
                                                + Figures.plain(gain.after(cell).getAsDouble(), 0)
                                        : "",
                                false,
                                stopped.contains(cell),
                                place(cell) + ": "
                                        + CellLook.plusMinus(gain.gainPercent(cell), gain.gainErrorPercent(cell))
                                        + " air")
                        : new HeatMap.Cell(
                                0xffffff,
                                "",
                                HeatMap.FULL_SIZE,
                                "",
                                false,
                                stopped.contains(cell),
                                place(cell) + ": too little ridden to tell"));
    }

    /** Colours of a map in two directions, told in words of what is less and more. */
    static String changeScale(int range, String less, String more) {
        return HeatMap.scale(
                share -> Palette.change(2 * share - 1, 1),
                List.of("−" + range + "\u202f%", less, "0", more, "+" + range + "\u202f%"));
    }

    String tableScale() {
        return amountScale(tableEnds().labels(table.quantity().unit()));
    }

    String readingsScale() {
        double most = mostReadings();
        return amountScale(List.of(
                "0",
                CellLook.readings(Math.expm1(Math.log1p(most) / 3)),
                CellLook.readings(Math.expm1(2 * Math.log1p(most) / 3)),
                CellLook.readings(most) + " readings"));
    }

    static String leftOutScale(Validation validation) {
        return amountScale(leftOutEnds(validation).labels("%"));
    }

    private static String amountScale(List<String> labels) {
        return HeatMap.scale(Palette::amount, labels);
    }

    private double mostReadings() {
        double most = 1;
        for (int cell = 0; cell < table.cells(); cell++) {
            most = Math.max(most, estimate.independentReadings(cell));
        }
        return RoundEnds.of(0, most).high();
    }

    String readings() {
        double scale = Math.log1p(mostReadings());
        return HeatMap.of(table, "readings", "Independent readings in each cell", cell -> {
            double n = estimate.independentReadings(cell);
            return new HeatMap.Cell(
                    n > 0 ? Palette.amount(Math.log1p(n) / scale) : 0xffffff,
                    n > 0 ? CellLook.readings(n) : "–",
                    HeatMap.FULL_SIZE,
                    "",
                    inferred(cell),
                    stopped.contains(cell),
                    tip(cell));
        });
    }

    /** What is left of each cell's error on readings that the fit hadn't seen, below it what it was. */
    String leftOut(Validation validation) {
        RoundEnds ends = leftOutEnds(validation);
        return HeatMap.of(table, "left-out", "Mixture error of each cell on readings kept out, percent", cell -> {
            Optional<Validation.Cell> judged = validation.at(cell);
            return new HeatMap.Cell(
                    judged.map(v -> Palette.amount(ends.share(v.errorAfterPercent())))
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

    /** Of what is left, not of what it was: else all of them would be the same pale. */
    private static RoundEnds leftOutEnds(Validation validation) {
        return RoundEnds.of(
                0,
                validation.cells().values().stream()
                        .mapToDouble(Validation.Cell::errorAfterPercent)
                        .max()
                        .orElse(1));
    }

    private RoundEnds tableEnds() {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (CellProposal c : proposal.cells()) {
            least = Math.min(least, Math.min(c.before(), c.after()));
            most = Math.max(most, Math.max(c.before(), c.after()));
        }
        return RoundEnds.of(least, most);
    }

    private String amounts(String id, String label, ToDoubleFunction<CellProposal> figure) {
        RoundEnds ends = tableEnds();
        double most = ends.high();
        int decimals = most < 3 ? 3 : most < 30 ? 2 : 1;
        return HeatMap.of(
                table,
                id,
                label + ", " + table.quantity().words() + ", "
                        + table.quantity().unit(),
                cell -> {
                    double value = figure.applyAsDouble(proposal.cell(cell));
                    return new HeatMap.Cell(
                            Palette.amount(ends.share(value)),
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
                + Figures.trimmed(c.after(), 3) + ", "
                + (CellLook.unknown(c)
                        ? "unknown, left as it is"
                        : "change " + Figures.signed(c.changePercent(), 1) + " %")
                + ", shortfall "
                + CellLook.plusMinus(estimate.shortfallPercent(cell), estimate.uncertaintyPercent(cell)) + ", "
                + CellLook.readings(estimate.independentReadings(cell)) + " independent readings, "
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
