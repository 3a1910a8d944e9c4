package fuelwright.estimate;

import fuelwright.table.Table;
import org.apache.commons.math3.analysis.MultivariateFunction;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.PointValuePair;
import org.apache.commons.math3.optim.SimpleValueChecker;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/**
 * How smooth the surface is and how far the forecast is trusted: chosen from the rides by marginal likelihood, held near sensible values
 * by a prior of its own and inside bounds, because a ride says nothing about places where nobody rode.
 *
 * @param spread factor on the prior's spread
 * @param rangeSpeed correlation range in ln(rpm)
 * @param rangeLoad correlation range in the load coordinate
 * @param own standard deviation of a cell's own departure from the surface
 * @param trust factor on the prior's mean
 */
record Smoothness(double spread, double rangeSpeed, double rangeLoad, double own, double trust) {

    /** Logarithms of the middle, and their standard deviations; the last is not a logarithm. */
    private static final double[] MIDDLE = {0, Math.log(1.0), Math.log(1.2), Math.log(0.008), 1};

    private static final double[] WIDTH = {0.4, 0.35, 0.35, 0.5, 0.4};
    private static final double BOUND = 2.5;
    private static final double DOUBTFUL_SPREAD = 1.3;
    private static final double DOUBTFUL_TRUST = 0.4;
    /** Differences of deviance below this say nothing: 1 is what one unneeded number gains by chance. */
    private static final double SETTLED = 0.2;

    static Smoothness usual() {
        return of(MIDDLE);
    }

    /** No neighbours: only the prior and the cell's own readings. */
    static Smoothness alone() {
        return new Smoothness(0.01, 1, 1, 0.2, 1);
    }

    private static Smoothness of(double[] x) {
        return new Smoothness(Math.exp(x[0]), Math.exp(x[1]), Math.exp(x[2]), Math.exp(x[3]), x[4]);
    }

    private double[] toPoint() {
        return new double[] {Math.log(spread), Math.log(rangeSpeed), Math.log(rangeLoad), Math.log(own), trust};
    }

    /** The posterior with this smoothness. */
    Posterior posterior(Sums sums, double[] pointCells, double[] pointNuisances, Table table, Prior prior) {
        SymmetricBand precision =
                SmoothPrior.precision(table.speed(), table.load(), rangeSpeed, rangeLoad, prior.spreads(spread));
        return new Posterior(
                sums,
                pointCells,
                pointNuisances,
                precision,
                prior.own(own),
                prior.means(trust),
                prior.nuisanceSpreads(),
                prior.common());
    }

    /** How implausible this smoothness and this prior are: twice the negative log of their posterior density, but for a constant. */
    double deviance(Sums sums, double[] pointCells, double[] pointNuisances, Table table, Prior prior) {
        return deviance(toPoint(), sums, pointCells, pointNuisances, table, prior);
    }

    private static double deviance(
            double[] x, Sums sums, double[] pointCells, double[] pointNuisances, Table table, Prior prior) {
        double penalty = 0;
        double[] bounded = x.clone();
        for (int i = 0; i < x.length; i++) {
            double off = (x[i] - MIDDLE[i]) / WIDTH[i];
            penalty += off * off;
            bounded[i] = MIDDLE[i] + WIDTH[i] * Math.max(-BOUND, Math.min(BOUND, off));
        }
        return penalty
                + of(bounded)
                        .posterior(sums, pointCells, pointNuisances, table, prior)
                        .deviance();
    }

    /** Whether the rides had to stretch this far to bear out a forecast that they may rather contradict. */
    boolean doubtsForecast() {
        return spread > DOUBTFUL_SPREAD || Math.abs(trust - 1) > DOUBTFUL_TRUST;
    }

    /**
     * The most plausible smoothness for this evidence, by simplex search from here.
     *
     * @param pace is checked at every trial
     */
    Smoothness chosen(Sums sums, double[] pointCells, double[] pointNuisances, Table table, Prior prior, Pace pace) {
        MultivariateFunction deviance = x -> {
            pace.check();
            return deviance(x, sums, pointCells, pointNuisances, table, prior);
        };
        double[] steps = WIDTH.clone();
        if (!prior.isForecast()) {
            steps[4] = 1e-9;
        }
        PointValuePair best = new SimplexOptimizer(new SimpleValueChecker(-1, SETTLED))
                .optimize(
                        new MaxEval(400),
                        new ObjectiveFunction(deviance),
                        GoalType.MINIMIZE,
                        new InitialGuess(toPoint()),
                        new NelderMeadSimplex(steps));
        return of(best.getPoint());
    }
}
