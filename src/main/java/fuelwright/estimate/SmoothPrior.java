package fuelwright.estimate;

import fuelwright.table.Axis;

/**
 * What is believed about a smooth surface over a table's cells before any reading: a Matérn field (smoothness 1), as a sparse precision
 * matrix on uneven axes.
 *
 * <p>Q = c·(κ⁴C + 2κ²G + G·C⁻¹·G) with lumped mass C and stiffness G of bilinear elements: pull, first and second differences together,
 * so that unvisited corners neither run away on straight lines nor fall back at once. κ = √8 in units of the range, c = 1/(4πκ²s²) for
 * standard deviation s (Lindgren, Rue and Lindström, J. R. Stat. Soc. B 73 (2011) 423, equations 2 to 4 and 10). Engine speed counts as
 * its logarithm. O(cells). Immutable.
 */
final class SmoothPrior {

    private static final double KAPPA = Math.sqrt(8);
    /** Added to throttle before the logarithm, %: below it the axis counts as even. */
    private static final double THROTTLE_OFFSET = 5;

    private SmoothPrior() {}

    /**
     * @param rangeSpeed distance in ln(rpm) over which the surface changes its mind (correlation 0.1)
     * @param rangeLoad the same in the load coordinate: ln(throttle + 5), or ln(kPa)
     * @param scales standard deviation of each cell, in {@link CellOrder}
     * @return precision matrix in {@link CellOrder}, half-bandwidth two columns of the table
     */
    static SymmetricBand precision(Axis speed, Axis load, double rangeSpeed, double rangeLoad, double[] scales) {
        int nx = load.size();
        int ny = speed.size();
        double[] x = coordinates(load, rangeLoad);
        double[] y = coordinates(speed, rangeSpeed);
        double[] mx = masses(x);
        double[] my = masses(y);
        int n = nx * ny;
        // Row c of G: up to five entries, at c - nx, c - 1, c, c + 1, c + nx.
        double[][] g = new double[n][5];
        for (int j = 0; j < ny; j++) {
            for (int i = 0; i < nx; i++) {
                double[] row = g[j * nx + i];
                if (i > 0) {
                    row[1] = -my[j] / (x[i] - x[i - 1]);
                }
                if (i + 1 < nx) {
                    row[3] = -my[j] / (x[i + 1] - x[i]);
                }
                if (j > 0) {
                    row[0] = -mx[i] / (y[j] - y[j - 1]);
                }
                if (j + 1 < ny) {
                    row[4] = -mx[i] / (y[j + 1] - y[j]);
                }
                row[2] = -(row[0] + row[1] + row[3] + row[4]);
            }
        }
        SymmetricBand q = new SymmetricBand(n, 2 * nx);
        int[] shift = {-nx, -1, 0, 1, nx};
        double k2 = KAPPA * KAPPA;
        double c = 1 / (4 * Math.PI * k2);
        for (int r = 0; r < n; r++) {
            double mass = mx[r % nx] * my[r / nx];
            q.add(r, r, c * k2 * k2 * mass / (scales[r] * scales[r]));
            for (int a = 0; a < 5; a++) {
                int ca = r + shift[a];
                if (g[r][a] == 0) {
                    continue;
                }
                if (ca <= r) {
                    q.add(r, ca, c * 2 * k2 * g[r][a] / (scales[r] * scales[ca]));
                }
                // G·C⁻¹·G summed over its middle index r.
                for (int b = 0; b < 5; b++) {
                    int cb = r + shift[b];
                    if (g[r][b] != 0 && cb <= ca) {
                        q.add(ca, cb, c * g[r][a] * g[r][b] / mass / (scales[ca] * scales[cb]));
                    }
                }
            }
        }
        return q;
    }

    /** The coordinate in which a surface over this axis is believed equally smooth everywhere. */
    static double coordinate(Axis.Kind kind, double value) {
        switch (kind) {
            case THROTTLE:
                return Math.log(Math.max(value, 0) + THROTTLE_OFFSET);
            case ENGINE_SPEED:
            case MANIFOLD_PRESSURE:
                return Math.log(Math.max(value, 1));
            default:
                throw new IllegalArgumentException("kind " + kind);
        }
    }

    private static double[] coordinates(Axis axis, double range) {
        double[] z = new double[axis.size()];
        for (int i = 0; i < z.length; i++) {
            z[i] = coordinate(axis.kind(), axis.at(i)) / range;
            if (i > 0 && !(z[i] > z[i - 1])) {
                // Breakpoints below the coordinate's floor (0 and 0.5 kPa, say) still need some distance.
                z[i] = z[i - 1] + 1e-3;
            }
        }
        return z;
    }

    private static double[] masses(double[] x) {
        double[] m = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            double left = i > 0 ? x[i] - x[i - 1] : 0;
            double right = i + 1 < x.length ? x[i + 1] - x[i] : 0;
            m[i] = (left + right) / 2;
        }
        return m;
    }
}
