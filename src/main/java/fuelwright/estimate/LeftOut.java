package fuelwright.estimate;

import java.util.Map;
import java.util.TreeMap;

/**
 * Adds up how a table does on blocks that it was fitted without. Per reading Σ w·r² is known only as a whole; per cell, the mean residual
 * of a block's readings there is (Σ w·Jc·r) / (Σ w·Jc), where Σ w·Jc is the row sum of the normal matrix, since a reading's shares sum
 * to 1. O(cells · band) for each block. Mutable, not thread-safe.
 */
final class LeftOut {

    private final CellOrder order;
    private final double[] ones;
    private final double[] weight;
    private final double[] before;
    private final double[] after;
    private final double[] readings;
    private final int[] touched;
    private double allBefore;
    private double allAfter;
    private int blocks;

    LeftOut(CellOrder order) {
        int cells = order.size();
        this.order = order;
        this.ones = new double[cells];
        java.util.Arrays.fill(ones, 1);
        this.weight = new double[cells];
        this.before = new double[cells];
        this.after = new double[cells];
        this.readings = new double[cells];
        this.touched = new int[cells];
    }

    /**
     * @param asRidden step of the cells from the point of the sums to the table as ridden
     * @param without step to the table fitted without this block
     */
    void add(Sums block, double[] asRidden, double[] without) {
        blocks++;
        double[] still = new double[Nuisance.COUNT];
        allBefore += block.residualAfter(asRidden, still);
        allAfter += block.residualAfter(without, still);
        double[] weights = block.cellCell.times(ones);
        double[] ridden = block.cellCell.times(asRidden);
        double[] fitted = block.cellCell.times(without);
        for (int c = 0; c < weights.length; c++) {
            if (block.independentReadings[c] >= Validation.LEAST_READINGS && weights[c] > 0) {
                double r = block.cellResidual[c];
                weight[c] += weights[c];
                before[c] += (r - ridden[c]) * (r - ridden[c]) / weights[c];
                after[c] += (r - fitted[c]) * (r - fitted[c]) / weights[c];
                readings[c] += block.independentReadings[c];
                touched[c]++;
            }
        }
    }

    Validation made(Sums total) {
        Map<Integer, Validation.Cell> cells = new TreeMap<>();
        for (int c = 0; c < weight.length; c++) {
            int at = order.ofCell(c);
            if (touched[at] > 0) {
                cells.put(
                        c,
                        new Validation.Cell(
                                touched[at],
                                readings[at],
                                percent(before[at], weight[at]),
                                percent(after[at], weight[at])));
            }
        }
        return new Validation(
                blocks, total.readings, percent(allBefore, total.weight), percent(allAfter, total.weight), cells);
    }

    private static double percent(double squares, double weight) {
        return 100 * Math.sqrt(squares / weight);
    }
}
