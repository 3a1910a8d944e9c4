package fuelwright.handover;

import fuelwright.estimate.Proposal;
import fuelwright.estimate.Standing;
import fuelwright.safety.Caution;
import fuelwright.table.Bilinear;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * What is typed into the tuning hardware, in the hardware's own cells and orientation.
 *
 * @param before what its cells held before, as far as that is known
 * @param after what they are to hold; same breakpoints
 * @param stopped cells that a Stop caution concerns: of other breakpoints, those that feed a cell of the fuel table that it concerns
 * @param bounded cells that the hardware's range holds back, and how; those cut at high load are stopped too
 * @param inferred cells that rest, wholly or in part, on cells of the fuel table with fewer than 3 independent readings
 * @param decimals as many as the figures to be typed have
 */
public record ToType(
        Table before,
        Table after,
        Set<Integer> stopped,
        Map<Integer, HardwareTable.Bound> bounded,
        Set<Integer> inferred,
        int decimals) {

    private static final int MOST_DECIMALS = 4;
    /** A smaller share of a cell is a breakpoint that isn't quite the same. */
    private static final double LEAST_SHARE = 1e-6;

    public ToType {
        if (!before.sameAxes(after)) {
            throw new IllegalArgumentException("before " + before + " and after " + after + " have other axes");
        }
        stopped = Set.copyOf(stopped);
        bounded = Map.copyOf(bounded);
        inferred = Set.copyOf(inferred);
    }

    /** In the hardware's own cells where it has such, else in the table's. */
    public static ToType of(Proposal proposal, Optional<HardwareTable> hardware, List<Caution> cautions) {
        Table fuel = proposal.before();
        Table before = hardware.map(HardwareTable::before).orElse(fuel);
        Table after = hardware.map(HardwareTable::table).orElse(proposal.corrected());
        Set<Integer> stopped = new TreeSet<>();
        int[] cells = new int[4];
        double[] weights = new double[4];
        for (Caution caution : cautions) {
            for (int cell : caution.isStop() ? caution.cells() : Set.<Integer>of()) {
                Bilinear.locate(after.speed(), after.load(), fuel.speedAt(cell), fuel.loadAt(cell), cells, weights);
                for (int k = 0; k < cells.length; k++) {
                    if (weights[k] > 0) {
                        stopped.add(cells[k]);
                    }
                }
            }
        }
        Map<Integer, HardwareTable.Bound> bounded =
                hardware.map(HardwareTable::bounded).orElse(Map.of());
        bounded.forEach((cell, bound) -> {
            if (bound == HardwareTable.Bound.CUT_AT_HIGH_LOAD) {
                stopped.add(cell);
            }
        });
        return new ToType(before, after, stopped, bounded, inferred(proposal, after), decimals(before, after));
    }

    private static Set<Integer> inferred(Proposal proposal, Table typed) {
        Table fuel = proposal.before();
        Set<Integer> inferred = new TreeSet<>();
        int[] cells = new int[4];
        double[] weights = new double[4];
        for (int cell = 0; cell < typed.cells(); cell++) {
            Bilinear.locate(fuel.speed(), fuel.load(), typed.speedAt(cell), typed.loadAt(cell), cells, weights);
            for (int k = 0; k < cells.length; k++) {
                if (weights[k] > LEAST_SHARE && proposal.cell(cells[k]).standing() == Standing.INFERRED) {
                    inferred.add(cell);
                }
            }
        }
        return inferred;
    }

    private static int decimals(Table before, Table after) {
        int most = 0;
        for (int cell = 0; cell < after.cells(); cell++) {
            for (double value : new double[] {before.at(cell), after.at(cell)}) {
                int needed = BigDecimal.valueOf(value)
                        .setScale(MOST_DECIMALS, RoundingMode.HALF_UP)
                        .stripTrailingZeros()
                        .scale();
                most = Math.max(most, needed);
            }
        }
        return most;
    }

    /** The old figure as it is printed. */
    public BigDecimal old(int cell) {
        return figure(before.at(cell));
    }

    /** The new figure as it is printed and typed. */
    public BigDecimal now(int cell) {
        return figure(after.at(cell));
    }

    /** What the hardware's range did to a cell, in a word; empty where it did nothing. */
    public String boundWord(int cell) {
        HardwareTable.Bound bound = bounded.get(cell);
        return bound == null ? "" : bound == HardwareTable.Bound.LIFTED ? "lifted" : "cut";
    }

    /** Whether the figures are changes, of which it must be seen that they are more or less: they have a sign always. */
    public boolean isSigned() {
        return after.quantity() == Quantity.CHANGE || after.quantity() == Quantity.FUEL_TRIM;
    }

    /** Whether the figure has to be typed. */
    public boolean changes(int cell) {
        return old(cell).compareTo(now(cell)) != 0;
    }

    private BigDecimal figure(double value) {
        return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    }
}
