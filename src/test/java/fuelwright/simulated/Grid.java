package fuelwright.simulated;

import java.util.Arrays;
import java.util.function.DoubleBinaryOperator;

/**
 * Figures over engine speed (rpm) × load (throttle % or kPa), interpolated bilinearly and clamped at the edges as a control unit does
 * it. Cells in the order {@code loadIndex * speeds + speedIndex}. Immutable.
 */
public final class Grid {
    private final double[] speed;
    private final double[] load;
    private final double[] cells;

    private Grid(double[] speed, double[] load, double[] cells) {
        if (cells.length != speed.length * load.length) {
            throw new IllegalArgumentException("cells: " + cells.length + ", needed " + speed.length * load.length);
        }
        this.speed = speed;
        this.load = load;
        this.cells = cells;
    }

    /** Copies its arguments. */
    public static Grid of(double[] speedRpm, double[] load, double[] cells) {
        return new Grid(speedRpm.clone(), load.clone(), cells.clone());
    }

    /** A figure for each cell from (rpm, load). */
    public static Grid from(double[] speedRpm, double[] load, DoubleBinaryOperator figure) {
        double[] cells = new double[speedRpm.length * load.length];
        for (int c = 0; c < cells.length; c++) {
            cells[c] = figure.applyAsDouble(speedRpm[c % speedRpm.length], load[c / speedRpm.length]);
        }
        return new Grid(speedRpm.clone(), load.clone(), cells);
    }

    public double[] speeds() {
        return speed.clone();
    }

    public double[] loads() {
        return load.clone();
    }

    public double[] toArray() {
        return cells.clone();
    }

    public int cells() {
        return cells.length;
    }

    public double at(int cell) {
        return cells[cell];
    }

    public double speedAt(int cell) {
        return speed[cell % speed.length];
    }

    public double loadAt(int cell) {
        return load[cell / speed.length];
    }

    /** The same axes with other cells. */
    public Grid with(double[] otherCells) {
        return new Grid(speed, load, otherCells.clone());
    }

    /** Cell by cell: {@code operator(this, other)}. */
    public Grid combine(Grid other, DoubleBinaryOperator operator) {
        double[] result = new double[cells.length];
        Arrays.setAll(result, c -> operator.applyAsDouble(cells[c], other.cells[c]));
        return new Grid(speed, load, result);
    }

    /** Every cell to the nearest multiple of {@code step}. */
    public Grid rounded(double step) {
        double[] result = new double[cells.length];
        Arrays.setAll(result, c -> Math.rint(cells[c] / step) * step);
        return new Grid(speed, load, result);
    }

    public double value(double speedRpm, double loadValue) {
        double sum = 0;
        for (Share share : shares(speedRpm, loadValue)) {
            sum += share.weight() * cells[share.cell()];
        }
        return sum;
    }

    /** A cell's weight in an interpolated figure. */
    record Share(int cell, double weight) {}

    /** The four cells around a point with their weights, which add up to 1. */
    Share[] shares(double speedRpm, double loadValue) {
        int i = interval(speed, speedRpm);
        int j = interval(load, loadValue);
        double u = fraction(speed, i, speedRpm);
        double v = fraction(load, j, loadValue);
        int cell = j * speed.length + i;
        return new Share[] {
            new Share(cell, (1 - u) * (1 - v)),
            new Share(cell + 1, u * (1 - v)),
            new Share(cell + speed.length, (1 - u) * v),
            new Share(cell + speed.length + 1, u * v)
        };
    }

    private static int interval(double[] axis, double x) {
        int found = Arrays.binarySearch(axis, x);
        int at = found >= 0 ? found : -found - 2;
        return Math.min(Math.max(at, 0), axis.length - 2);
    }

    private static double fraction(double[] axis, int i, double x) {
        return Math.min(1, Math.max(0, (x - axis[i]) / (axis[i + 1] - axis[i])));
    }
}
