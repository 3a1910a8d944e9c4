package fuelwright.estimate;

import java.util.ArrayList;
import java.util.List;

/**
 * How late readings may be: trials of delay and lag before the rounds, so that these start on the right slope, and how plausible each is
 * before any ride. Most loggers add hardly anything to exhaust and sensor. One in ten holds back or smooths what it is given, by a tenth
 * of a second or several, the longer the seldomer (common practice, no source).
 */
final class Lateness {

    /** Multiples of the usual delays. */
    private static final double[] DELAYS = {0.5, 1, 1.5};
    /** What a logger may add to them, s. */
    private static final double[] ADDED_S = {0.06, 0.12, 0.18, 0.25, 0.33, 0.42, 0.52, 0.65, 0.8, 1, 1.25};
    /** Lags between which what is late is shared out, s. */
    private static final double[] LAGS_S = {0.04, 0.08, 0.16, 0.3, 0.5};

    static final int TRIALS = DELAYS.length + ADDED_S.length + LAGS_S.length;

    private static final double UNUSUAL_SHARE = 0.1;
    /** Mean of what an unusual logger adds to delay and to lag, s. */
    private static final double ADDED_DELAY_S = 0.15;

    private static final double ADDED_LAG_S = 0.1;

    private Lateness() {}

    /** Nuisances with other delays, at the usual lag. */
    static List<double[]> delays() {
        List<double[]> trials = new ArrayList<>();
        for (double times : DELAYS) {
            double[] trial = Nuisance.starts();
            for (Nuisance part : Nuisance.DELAYS) {
                trial[part.ordinal()] *= times;
            }
            trials.add(trial);
        }
        for (double added : ADDED_S) {
            double[] trial = Nuisance.starts();
            trial[Nuisance.FIXED_DELAY.ordinal()] += added;
            trials.add(trial);
        }
        return trials;
    }

    /** The same lateness shared out otherwise: more lag and less delay, or the other way round. */
    static List<double[]> lags(double[] found) {
        int lag = Nuisance.LAG.ordinal();
        double delay = Nuisance.sensor(found).delayS(DelayProfile.SPEED_RPM, DelayProfile.FLOW_G_PER_S);
        List<double[]> trials = new ArrayList<>();
        for (double lagS : LAGS_S) {
            double[] trial = found.clone();
            trial[lag] = lagS;
            for (Nuisance part : Nuisance.DELAYS) {
                trial[part.ordinal()] *= Math.max(0, delay + found[lag] - lagS) / delay;
            }
            trials.add(trial);
        }
        return trials;
    }

    /** Twice the negative log of how plausible delay and lag are before any ride. */
    static double penalty(double[] nuisances) {
        double usual = logUsual(nuisances);
        double unusual = logUnusual(nuisances);
        double most = Math.max(usual, unusual);
        return -2 * (most + Math.log(Math.exp(usual - most) + Math.exp(unusual - most)));
    }

    /** Whether a logger that holds back or smooths is more plausible there than one that doesn't. */
    static boolean isUnusual(double[] nuisances) {
        return logUnusual(nuisances) > logUsual(nuisances);
    }

    /** Prior standard deviations of all nuisances for rounds that start there. */
    static double[] spreads(double[] nuisances) {
        double[] spreads = Nuisance.spreads();
        if (isUnusual(nuisances)) {
            spreads[Nuisance.FIXED_DELAY.ordinal()] = 2 * ADDED_DELAY_S;
            spreads[Nuisance.LAG.ordinal()] = 2 * ADDED_LAG_S;
        }
        return spreads;
    }

    private static double logUsual(double[] nuisances) {
        return Math.log(1 - UNUSUAL_SHARE)
                + logNormal(Nuisance.FIXED_DELAY, nuisances)
                + logNormal(Nuisance.LAG, nuisances)
                + logExhaust(nuisances);
    }

    private static double logUnusual(double[] nuisances) {
        return Math.log(UNUSUAL_SHARE)
                + logAdded(Nuisance.FIXED_DELAY, ADDED_DELAY_S, nuisances)
                + logAdded(Nuisance.LAG, ADDED_LAG_S, nuisances)
                + logExhaust(nuisances);
    }

    private static double logExhaust(double[] nuisances) {
        return logNormal(Nuisance.CYCLES, nuisances) + logNormal(Nuisance.GAS, nuisances);
    }

    private static double logNormal(Nuisance part, double[] nuisances) {
        double off = (nuisances[part.ordinal()] - part.start) / part.spread;
        return -off * off / 2 - Math.log(part.spread * Math.sqrt(2 * Math.PI));
    }

    /** An exponential beyond the usual; what is less than usual isn't added. */
    private static double logAdded(Nuisance part, double meanS, double[] nuisances) {
        double added = nuisances[part.ordinal()] - part.start;
        return -Math.max(0, added) / meanS - Math.log(meanS);
    }
}
