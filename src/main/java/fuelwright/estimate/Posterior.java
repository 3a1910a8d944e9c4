package fuelwright.estimate;

import java.util.Arrays;

/**
 * Penalised least squares of cells and nuisances together, in one factorisation. Each cell's ln factor is prior mean + a departure
 * that all share + smooth surface + its own departure:
 *
 * <p>minimise Σ w(r − J·δ)² + fᵀQf + ‖(e − m − γg − f)/ν‖² + γ² + Σ((n − n₀)/s)² over surface f, cells e, share γ of the common departure
 * g and nuisances n. The unknowns f and e − γg are interleaved, so the matrix stays a band; γ and the nuisances are a border, eliminated by
 * their Schur complement. Uncertainties are exact
 * posterior standard deviations. Twice the negative log marginal likelihood serves to choose how smooth (Rasmussen and Williams,
 * Gaussian Processes for Machine Learning, 2006, eq. 5.8, in precision form). O(cells · band²).
 */
final class Posterior {

    private final double[] cells;
    private final double[] nuisances;
    private final double common;
    private final BandedCholesky factor;
    /** How the cells answer to the border's unknowns, turned round. */
    private final double[][] byBorder;

    private final BandedCholesky borderFactor;
    private final SymmetricBand precision;
    /** The deviance but for the prior's determinant, which is a factor of its own and only wanted where priors are compared. */
    private final double devianceWithoutPrior;

    private final double ownDeviance;
    private final double misfit;

    /**
     * @param sums evidence around {@code pointCells}, {@code pointNuisances}
     * @param precision of the smooth surface, cells × cells
     * @param ownSpreads standard deviation ν of each cell's own departure from the surface
     * @param mean prior mean of each cell
     * @param nuisanceSpreads prior standard deviation of each nuisance
     * @param common one standard deviation of a departure from the means that all cells share
     */
    Posterior(
            Sums sums,
            double[] pointCells,
            double[] pointNuisances,
            SymmetricBand precision,
            double[] ownSpreads,
            double[] mean,
            double[] nuisanceSpreads,
            double[] common) {
        int n = sums.cells;
        int p = Nuisance.COUNT;
        int all = p + 1;
        double[] own = Arrays.stream(ownSpreads).map(s -> 1 / (s * s)).toArray();
        SymmetricBand a = assemble(sums, precision, own);
        double[] cellOffset = new double[n];
        for (int c = 0; c < n; c++) {
            cellOffset[c] = pointCells[c] - mean[c];
        }
        double[] nuisanceOffset = new double[p];
        double[] start = Nuisance.starts();
        for (int q = 0; q < p; q++) {
            nuisanceOffset[q] = pointNuisances[q] - start[q];
        }
        double[] shifted = sums.cellCell.times(cellOffset);
        double[] rhs = new double[2 * n];
        double[] borderRhs = Arrays.copyOf(sums.nuisanceResidual, all);
        double[][] border = new double[all][2 * n];
        double constant = sums.residualResidual;
        for (int c = 0; c < n; c++) {
            double linear = sums.cellResidual[c];
            double cross = 0;
            for (int q = 0; q < p; q++) {
                double b = sums.cellNuisance[c][q];
                border[q][2 * c + 1] = b;
                cross += b * nuisanceOffset[q];
                borderRhs[q] += b * cellOffset[c];
            }
            rhs[2 * c + 1] = linear + shifted[c] + cross;
            constant += cellOffset[c] * (2 * linear + shifted[c] + 2 * cross);
        }
        for (int q = 0; q < p; q++) {
            double full = 0;
            for (int r = 0; r < p; r++) {
                full += sums.nuisanceNuisance[q][r] * nuisanceOffset[r];
            }
            borderRhs[q] += full;
            constant += nuisanceOffset[q] * (2 * sums.nuisanceResidual[q] + full);
        }
        double[] shared = sums.cellCell.times(common);
        for (int c = 0; c < n; c++) {
            border[p][2 * c + 1] = shared[c];
            borderRhs[p] += common[c] * rhs[2 * c + 1];
        }

        factor = BandedCholesky.of(a);
        double[][] borderSolved = factor.solve(border);
        SymmetricBand schur = new SymmetricBand(all, all - 1);
        for (int q = 0; q < all; q++) {
            double spread = q < p ? nuisanceSpreads[q] : 1;
            for (int r = 0; r <= q; r++) {
                double value = (q < p ? sums.nuisanceNuisance[q][r] : along(common, border[r]))
                        - dot(border[r], borderSolved[q]);
                schur.set(q, r, value + (q == r ? 1 / (spread * spread) : 0));
            }
        }
        borderFactor = BandedCholesky.of(schur);
        double[] plain = factor.solve(rhs);
        double[] reduced = borderRhs.clone();
        for (int q = 0; q < all; q++) {
            reduced[q] -= dot(border[q], plain);
        }
        double[] shift = borderFactor.solve(reduced);
        cells = mean.clone();
        double fitted = dot(borderRhs, shift);
        for (int i = 0; i < 2 * n; i++) {
            double value = plain[i];
            for (int q = 0; q < all; q++) {
                value -= borderSolved[q][i] * shift[q];
            }
            fitted += rhs[i] * value;
            if (i % 2 == 1) {
                cells[i / 2] += value;
            }
        }
        byBorder = borderSolved;
        for (int c = 0; c < n; c++) {
            cells[c] += common[c] * shift[p];
            byBorder[p][2 * c + 1] -= common[c];
        }
        this.common = shift[p];
        nuisances = start;
        for (int q = 0; q < p; q++) {
            nuisances[q] += shift[q];
        }
        this.precision = precision;
        misfit = constant - fitted;
        devianceWithoutPrior = misfit + factor.logDeterminant() + borderFactor.logDeterminant();
        ownDeviance = Arrays.stream(own).map(Math::log).sum();
    }

    private static SymmetricBand assemble(Sums sums, SymmetricBand precision, double[] own) {
        int n = sums.cells;
        int width = Math.max(precision.halfBandwidth(), sums.cellCell.reach());
        SymmetricBand a = new SymmetricBand(2 * n, 2 * width + 1);
        for (int i = 0; i < n; i++) {
            for (int j = Math.max(0, i - width); j <= i; j++) {
                a.set(2 * i, 2 * j, precision.at(i, j) + (i == j ? own[i] : 0));
                a.set(2 * i + 1, 2 * j + 1, sums.cellCell.at(i, j) + (i == j ? own[i] : 0));
            }
            a.set(2 * i + 1, 2 * i, -own[i]);
        }
        return a;
    }

    /** Sum over the cells of a departure times a column of the border. */
    private static double along(double[] departure, double[] column) {
        double sum = 0;
        for (int c = 0; c < departure.length; c++) {
            sum += departure[c] * column[2 * c + 1];
        }
        return sum;
    }

    private static double dot(double[] x, double[] y) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum += x[i] * y[i];
        }
        return sum;
    }

    /** Posterior mean of each cell's ln factor. */
    double[] cells() {
        return cells.clone();
    }

    /** Posterior mean of the nuisances. */
    double[] nuisances() {
        return nuisances.clone();
    }

    /** Posterior mean of how often the common departure was made, prior standard deviations of it. */
    double common() {
        return common;
    }

    /** Posterior standard deviation of {@link #common}. */
    double commonUncertainty() {
        double[] unit = new double[byBorder.length];
        unit[unit.length - 1] = 1;
        return Math.sqrt(dot(unit, borderFactor.solve(unit)));
    }

    /** Twice the negative log marginal likelihood, but for a constant that doesn't depend on the prior. */
    double deviance() {
        return devianceWithoutPrior - BandedCholesky.of(precision).logDeterminant() - ownDeviance;
    }

    /**
     * The least that the sum of weighted squares and departures from the prior comes to. For comparing delays: a long lag spreads a reading
     * over many cells, so that by the deviance it would be preferred for telling less.
     */
    double misfit() {
        return misfit;
    }

    /** Posterior standard deviation of each cell's ln factor. */
    double[] cellUncertainties() {
        SymmetricBand inverse = factor.inverseInBand();
        double[] sd = new double[cells.length];
        for (int c = 0; c < sd.length; c++) {
            double[] b = new double[byBorder.length];
            for (int q = 0; q < b.length; q++) {
                b[q] = byBorder[q][2 * c + 1];
            }
            sd[c] = Math.sqrt(inverse.at(2 * c + 1, 2 * c + 1) + dot(b, borderFactor.solve(b)));
        }
        return sd;
    }

    /** Posterior covariance of all cells' ln factors with that of one, exact. O(cells · band). */
    double[] covariance(int cell) {
        double[] unit = new double[2 * cells.length];
        unit[2 * cell + 1] = 1;
        double[] plain = factor.solve(unit);
        double[] b = new double[byBorder.length];
        for (int q = 0; q < b.length; q++) {
            b[q] = byBorder[q][2 * cell + 1];
        }
        double[] shift = borderFactor.solve(b);
        double[] column = new double[cells.length];
        for (int c = 0; c < column.length; c++) {
            column[c] = plain[2 * c + 1];
            for (int q = 0; q < b.length; q++) {
                column[c] += byBorder[q][2 * c + 1] * shift[q];
            }
        }
        return column;
    }

    /** Posterior standard deviation of a sum of nuisances, each times a factor, correlations included. */
    double uncertaintyOf(double[] factors) {
        double[] border = Arrays.copyOf(factors, byBorder.length);
        return Math.sqrt(dot(border, borderFactor.solve(border)));
    }

    /** Posterior standard deviation of the nuisances. */
    double[] nuisanceUncertainties() {
        SymmetricBand inverse = borderFactor.inverseInBand();
        double[] sd = new double[Nuisance.COUNT];
        for (int q = 0; q < sd.length; q++) {
            sd[q] = Math.sqrt(inverse.at(q, q));
        }
        return sd;
    }
}
