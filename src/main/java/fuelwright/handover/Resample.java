package fuelwright.handover;

import fuelwright.airflow.HighLoad;
import fuelwright.table.Axis;
import fuelwright.table.Bilinear;
import fuelwright.table.Table;
import java.util.Arrays;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.ConjugateGradient;
import org.apache.commons.math3.linear.RealLinearOperator;
import org.apache.commons.math3.linear.RealVector;

/**
 * A table of delivered fuel D(n, y) brought to other breakpoints. The hardware delivers B(n, y)·Σ w_k(n, y)·h_k, with w its own bilinear
 * weights and B the fuel that its figures multiply (1 where it holds the fuel itself). The figures h minimise
 *
 * <p>Σ over readings (B·Σ w_k·h_k / D − 1)² + Σ over cells p_k·(h_k/h⁰_k − 1)²,  p_k = 1 + 0.05·Σ over readings w_k,
 *
 * <p>the squared relative error of the fuel over the places where the engine was really ridden, with a light pull to plain interpolation
 * h⁰_k = D/B at the breakpoint, which decides where nobody rode. Then two rules outrank the fit. No figure leaves the range of D/B between
 * its neighbouring breakpoints, so that readings far from a breakpoint can't swing it. And where load is high the fuel is never less than D: it
 * is held to that at every breakpoint of both tables, which for B = 1 is enough for every point between them, because both surfaces are
 * bilinear between those and so is their difference. Weights are never negative, so raising a figure never breaks the rule elsewhere.
 *
 * <p>Own equations from the definition of weighted least squares; solved by conjugate gradients (Hestenes and Stiefel 1952, Commons
 * Math), preconditioned by the diagonal, on the nine-point normal matrix. O(readings + cells·iterations).
 */
final class Resample {

    private static final double PULL = 0.05;
    private static final double LEAST_PULL = 1;
    private static final int ROUNDS = 12;
    private static final double SMALL = 1e-9;

    private final Axis speed;
    private final Axis load;
    private final Table base;
    private final Table wanted;
    private final double[] plain;
    private final boolean[] heldUp;
    private final double[] highSpeed;
    private final double[] highLoad;
    private final int[] cells = new int[4];
    private final double[] weights = new double[4];

    /**
     * @param base fuel that the figures multiply, as delivered; null where they are the fuel
     * @param wanted fuel to be delivered
     */
    Resample(Table base, Table wanted, Axis speed, Axis load, HighLoad rule) {
        this.base = base;
        this.wanted = wanted;
        this.speed = speed;
        this.load = load;
        this.plain = new double[speed.size() * load.size()];
        for (int k = 0; k < plain.length; k++) {
            plain[k] = ratio(speed.at(k % speed.size()), load.at(k / speed.size()));
        }
        double[] rpm = merged(speed, wanted.speed());
        double[] at = merged(load, wanted.load());
        boolean[] constrained = constrained(rpm, at, rule);
        int count = 0;
        for (boolean c : constrained) {
            count += c ? 1 : 0;
        }
        highSpeed = new double[count];
        highLoad = new double[count];
        heldUp = new boolean[plain.length];
        int next = 0;
        for (int p = 0; p < constrained.length; p++) {
            if (constrained[p]) {
                highSpeed[next] = rpm[p % rpm.length];
                highLoad[next] = at[p / rpm.length];
                locate(highSpeed[next], highLoad[next]);
                for (int k = 0; k < 4; k++) {
                    heldUp[cells[k]] |= weights[k] > 0;
                }
                next++;
            }
        }
    }

    /** D/B read off at each breakpoint. */
    double[] plain() {
        return plain.clone();
    }

    /** Whether a figure helps to hold up the fuel at high load: it may be raised but not lowered. */
    boolean isHeldUp(int cell) {
        return heldUp[cell];
    }

    /** Points at high load, and round it, where the fuel is held to what is wanted. */
    int highPoints() {
        return highSpeed.length;
    }

    /** Fuel delivered over fuel wanted at one of the points at high load. */
    double atHighPoint(double[] figures, int point) {
        return delivered(figures, highSpeed[point], highLoad[point]);
    }

    /** Fuel delivered with these figures over fuel wanted. */
    double delivered(double[] figures, double speedRpm, double at) {
        locate(speedRpm, at);
        double sum = 0;
        for (int k = 0; k < 4; k++) {
            sum += weights[k] * figures[cells[k]];
        }
        return sum / ratio(speedRpm, at);
    }

    /** The figures h: in cell order of a table over the hardware's breakpoints. */
    double[] fit(RidePoints ridden) {
        Normal readings = new Normal();
        double[] pull = new double[plain.length];
        Arrays.fill(pull, LEAST_PULL);
        for (int r = 0; r < ridden.size(); r++) {
            locate(ridden.speedRpm(r), ridden.load(r));
            for (int k = 0; k < 4; k++) {
                pull[cells[k]] += PULL * weights[k];
            }
            readings.add(ratio(ridden.speedRpm(r), ridden.load(r)), 1);
        }
        for (int k = 0; k < pull.length; k++) {
            readings.pull(k, pull[k]);
        }
        double stiff = 10 * readings.greatest();
        double[] figures = clamped(readings.solved());
        boolean[] bound = new boolean[highSpeed.length];
        for (int round = 0; round < ROUNDS && bind(figures, bound, readings, stiff); round++) {
            figures = clamped(readings.solved());
        }
        raise(figures);
        return figures;
    }

    /** Adds the points at high load that these figures leave short to those that the fit is bound to. */
    private boolean bind(double[] figures, boolean[] bound, Normal readings, double stiff) {
        boolean more = false;
        for (int p = 0; p < bound.length; p++) {
            if (!bound[p] && atHighPoint(figures, p) < 1 - SMALL) {
                bound[p] = true;
                more = true;
                locate(highSpeed[p], highLoad[p]);
                readings.add(ratio(highSpeed[p], highLoad[p]), stiff);
            }
        }
        return more;
    }

    /** What is still short is raised in proportion, which leaves no other point shorter than before. */
    private void raise(double[] figures) {
        for (int p = 0; p < highSpeed.length; p++) {
            double share = atHighPoint(figures, p);
            if (share < 1) {
                for (int k = 0; k < 4; k++) {
                    if (weights[k] > 0) {
                        figures[cells[k]] /= share;
                    }
                }
            }
        }
    }

    private double[] clamped(double[] figures) {
        double[] rpm = merged(speed, wanted.speed());
        double[] at = merged(load, wanted.load());
        double[] least = plain.clone();
        double[] most = plain.clone();
        for (double y : at) {
            for (double n : rpm) {
                double there = ratio(n, y);
                locate(n, y);
                for (int k = 0; k < 4; k++) {
                    if (weights[k] > 0) {
                        least[cells[k]] = Math.min(least[cells[k]], there);
                        most[cells[k]] = Math.max(most[cells[k]], there);
                    }
                }
            }
        }
        for (int k = 0; k < figures.length; k++) {
            figures[k] = Math.min(Math.max(figures[k], least[k]), most[k]);
        }
        return figures;
    }

    private double ratio(double speedRpm, double at) {
        double fuel = wanted.value(speedRpm, at);
        return base == null ? fuel : fuel / base.value(speedRpm, at);
    }

    private void locate(double speedRpm, double at) {
        Bilinear.locate(speed, load, speedRpm, at, cells, weights);
    }

    /** High load, and the breakpoints next to it, so that every point between two breakpoints of which one is at high load is covered. */
    private boolean[] constrained(double[] rpm, double[] at, HighLoad rule) {
        boolean throttle = load.kind() == Axis.Kind.THROTTLE;
        boolean[] near = new boolean[rpm.length * at.length];
        for (int p = 0; p < near.length; p++) {
            int i = p % rpm.length;
            int j = p / rpm.length;
            if (rule.at(rpm[i], throttle ? at[j] : Double.NaN, throttle ? Double.NaN : at[j], Double.NaN)) {
                for (int y = Math.max(0, j - 1); y <= Math.min(at.length - 1, j + 1); y++) {
                    Arrays.fill(
                            near,
                            y * rpm.length + Math.max(0, i - 1),
                            y * rpm.length + Math.min(rpm.length - 1, i + 1) + 1,
                            true);
                }
            }
        }
        return near;
    }

    static double[] merged(Axis one, Axis other) {
        return Arrays.stream(new double[][] {one.toArray(), other.toArray()})
                .flatMapToDouble(Arrays::stream)
                .sorted()
                .distinct()
                .toArray();
    }

    /** Normal equations in the unknowns u_k = h_k / h⁰_k; a cell touches only itself and its eight neighbours. */
    private final class Normal extends RealLinearOperator {
        private final double[][] near = new double[plain.length][9];
        private final double[] right = new double[plain.length];

        /** One point, at {@link #locate}d cells, where Σ w_k·h_k should be {@code figure}. */
        void add(double figure, double weight) {
            for (int i = 0; i < 4; i++) {
                double a = weights[i] * plain[cells[i]] / figure;
                right[cells[i]] += weight * a;
                for (int j = 0; j < 4; j++) {
                    near[cells[i]][place(cells[i], cells[j])] += weight * a * weights[j] * plain[cells[j]] / figure;
                }
            }
        }

        void pull(int cell, double weight) {
            near[cell][4] += weight;
            right[cell] += weight;
        }

        double greatest() {
            return Arrays.stream(near).mapToDouble(n -> n[4]).max().orElse(1);
        }

        private int place(int from, int to) {
            int rows = to / speed.size() - from / speed.size();
            int columns = to % speed.size() - from % speed.size();
            return 3 * (rows + 1) + columns + 1;
        }

        double[] solved() {
            RealLinearOperator diagonal = new RealLinearOperator() {
                @Override
                public int getRowDimension() {
                    return plain.length;
                }

                @Override
                public int getColumnDimension() {
                    return plain.length;
                }

                @Override
                public RealVector operate(RealVector x) {
                    double[] scaled = x.toArray();
                    for (int k = 0; k < scaled.length; k++) {
                        scaled[k] /= near[k][4];
                    }
                    return new ArrayRealVector(scaled, false);
                }
            };
            RealVector start = new ArrayRealVector(plain.length, 1);
            RealVector found = new ConjugateGradient(100 * plain.length + 1000, 1e-9, false)
                    .solve(this, diagonal, new ArrayRealVector(right, false), start);
            double[] figures = found.toArray();
            for (int k = 0; k < figures.length; k++) {
                figures[k] *= plain[k];
            }
            return figures;
        }

        @Override
        public int getRowDimension() {
            return plain.length;
        }

        @Override
        public int getColumnDimension() {
            return plain.length;
        }

        @Override
        public RealVector operate(RealVector x) {
            double[] in = x.toArray();
            double[] out = new double[in.length];
            int width = speed.size();
            for (int k = 0; k < out.length; k++) {
                for (int p = 0; p < 9; p++) {
                    double element = near[k][p];
                    if (element != 0) {
                        out[k] += element * in[k + (p / 3 - 1) * width + p % 3 - 1];
                    }
                }
            }
            return new ArrayRealVector(out, false);
        }
    }
}
