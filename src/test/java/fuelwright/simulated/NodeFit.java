package fuelwright.simulated;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import java.util.function.UnaryOperator;

/**
 * The node values whose bilinear interpolation is nearest to a given surface: least squares of the relative error on a net
 * of 4 × 4 to a cell, edges included, by conjugate gradients on the normal equations.
 */
final class NodeFit {
    private static final int NET = 4;
    private static final int ROUNDS = 80;
    /** A weak pull to the surface's own value at the node; it steadies corners and moves nothing that can be seen. */
    private static final double PULL = 0.05;

    private NodeFit() {}

    private record Row(Grid.Share[] shares, double surface) {}

    static Grid fit(Grid axes, DoubleBinaryOperator surface, UnaryOperator<Grid> toCells) {
        Grid start = Grid.from(axes.speeds(), axes.loads(), surface);
        List<Row> rows = rows(start, surface);
        double[] node = start.toArray();
        // Unknown: each node's correction as a share of its own surface value; that keeps the system well scaled.
        double[] correction = new double[node.length];
        double[] residual = new double[node.length];
        for (Row row : rows) {
            double error = 1 - along(row, node, null);
            spread(row, node, error, residual);
        }
        double[] direction = residual.clone();
        double size = dot(residual, residual);
        for (int round = 0; round < ROUNDS && size > 1e-24; round++) {
            double[] image = new double[node.length];
            for (Row row : rows) {
                spread(row, node, along(row, node, direction), image);
            }
            for (int c = 0; c < image.length; c++) {
                image[c] += PULL * direction[c];
            }
            double step = size / dot(direction, image);
            for (int c = 0; c < node.length; c++) {
                correction[c] += step * direction[c];
                residual[c] -= step * image[c];
            }
            double next = dot(residual, residual);
            for (int c = 0; c < node.length; c++) {
                direction[c] = residual[c] + next / size * direction[c];
            }
            size = next;
        }
        for (int c = 0; c < node.length; c++) {
            node[c] *= 1 + correction[c];
        }
        return toCells.apply(start.with(node));
    }

    private static List<Row> rows(Grid grid, DoubleBinaryOperator surface) {
        List<Row> rows = new ArrayList<>();
        double[] speed = grid.speeds();
        double[] load = grid.loads();
        for (int i = 0; i <= (speed.length - 1) * NET; i++) {
            double rpm = between(speed, i);
            for (int j = 0; j <= (load.length - 1) * NET; j++) {
                double at = between(load, j);
                rows.add(new Row(grid.shares(rpm, at), surface.applyAsDouble(rpm, at)));
            }
        }
        return rows;
    }

    private static double between(double[] axis, int step) {
        int i = Math.min(step / NET, axis.length - 2);
        return axis[i] + (axis[i + 1] - axis[i]) * (step - i * NET) / NET;
    }

    private static double along(Row row, double[] node, double[] factor) {
        double sum = 0;
        for (Grid.Share share : row.shares()) {
            int c = share.cell();
            sum += share.weight() * node[c] * (factor == null ? 1 : factor[c]);
        }
        return sum / row.surface();
    }

    private static void spread(Row row, double[] node, double amount, double[] into) {
        for (Grid.Share share : row.shares()) {
            into[share.cell()] += share.weight() * node[share.cell()] / row.surface() * amount;
        }
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
