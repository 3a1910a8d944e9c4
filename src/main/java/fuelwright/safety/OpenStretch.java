package fuelwright.safety;

import fuelwright.estimate.BurntTrace;

/** Lean readings that may come to be an event: gathered one by one until the stretch closes. Used again for the next one. */
final class OpenStretch {

    private static final double LEAST_SHARE = 0.7;
    private static final int LEAST_READINGS = 3;
    /** A long stretch whose worst moment comes at its end keeps getting leaner. */
    private static final double GROWING_S = 2.0;

    private static final double GROWING_SHARE = 0.7;
    /** By less, on a straight line through its readings, noise may have put the worst moment there, lambda. */
    private static final double GROWN_LAMBDA = 0.015;

    private static final double EASED_SHARE = 0.6;

    private final BurntTrace trace;
    private final LeanScan.Setting setting;
    private final double leanFor;
    private final double ceiling;
    private final double spare;
    private final double top;
    private final double holdS;

    private boolean open;
    private double start;
    private double end;
    private int count;
    private int all;
    private int leanRows;
    private double least;
    private double sumEarly;
    private double sumLate;
    private int early;
    private int late;
    private int worst;
    private double worstExcess;
    private double worstLimit;
    private double worstTarget;
    private boolean frozen;
    private int allAtEnd;
    private double lastCounted;
    private double graveStart;
    private double graveEnd;
    private int graveCount;
    private double sumTime;
    private double sumTimeSquared;
    private double sumExcess;
    private double sumTimeExcess;

    /** @param holdS for so long a value stands usually: a slow logger's one reading must not count as many */
    OpenStretch(BurntTrace trace, LeanScan.Setting setting, double leanFor, double holdS) {
        this.trace = trace;
        this.setting = setting;
        this.leanFor = leanFor;
        this.holdS = holdS;
        ceiling = setting.limits().of(Limit.LEAN_CEILING);
        spare = setting.limits().of(Limit.LEAN_EXCESS);
        top = setting.limits().of(Limit.SENSOR_TOP);
    }

    boolean isOpen() {
        return open;
    }

    double startS() {
        return start;
    }

    /** When its last lean reading was burnt, s. */
    double endS() {
        return end;
    }

    /** From here on readings are gathered. */
    void open(double startS, double lambda) {
        open = true;
        start = startS;
        count = 0;
        all = 0;
        leanRows = 0;
        least = lambda;
        sumEarly = 0;
        sumLate = 0;
        early = 0;
        late = 0;
        worstExcess = Double.NEGATIVE_INFINITY;
        frozen = false;
        lastCounted = Double.NEGATIVE_INFINITY;
        graveStart = Double.NaN;
        graveEnd = Double.NaN;
        graveCount = 0;
        sumTime = 0;
        sumTimeSquared = 0;
        sumExcess = 0;
        sumTimeExcess = 0;
    }

    /** One more reading, a lean one. */
    void lean(int i, double timeS, double lambda, double limit, double target, boolean isFrozen) {
        end = timeS;
        if (lambda > ceiling && lambda > target + spare) {
            graveStart = graveCount > 0 ? graveStart : leanRows == 0 ? start : timeS;
            graveEnd = timeS;
            graveCount++;
        }
        if (trace.lambda(i - 1 < 0 ? i : i - 1) != lambda || lambda >= top || timeS - lastCounted >= holdS) {
            count++;
            lastCounted = timeS;
        }
        leanRows++;
        all++;
        allAtEnd = all;
        least = Math.min(least, lambda);
        double excess = lambda - limit;
        double t = timeS - start;
        sumTime += t;
        sumTimeSquared += t * t;
        sumExcess += excess;
        sumTimeExcess += t * excess;
        if (timeS - start < 0.5 * leanFor) {
            sumEarly += excess;
            early++;
        } else {
            sumLate += excess;
            late++;
        }
        frozen |= isFrozen && lambda < top;
        if (excess > worstExcess) {
            worstExcess = excess;
            worst = i;
            worstLimit = limit;
            worstTarget = target;
        }
    }

    /** One more reading, a fine one. */
    void fine() {
        all++;
    }

    /** Nothing more belongs to it. Whether it was long, dense and lively enough to be an event. */
    boolean close() {
        open = false;
        boolean flat = trace.lambda(worst) == least;
        return end - start >= leanFor
                && count >= LEAST_READINGS
                && leanRows >= LEAST_SHARE * allAtEnd
                && !(frozen && flat);
    }

    /** Of a straight line through what its readings are beyond their limits, lambda/s. */
    private double slope() {
        double spread = leanRows * sumTimeSquared - sumTime * sumTime;
        return spread > 0 ? (leanRows * sumTimeExcess - sumTime * sumExcess) / spread : 0;
    }

    /** Whether the mixture was already on its way back. */
    boolean eases() {
        return late == 0 || early > 0 && sumLate / late < EASED_SHARE * sumEarly / early;
    }

    LeanEvent event(Locator cells, LeanEvent.Kind kind) {
        double rpm = trace.speedRpm(worst);
        double load = trace.load(worst);
        double length = end - start;
        return new LeanEvent(
                setting.ride(),
                setting.sensor(),
                start,
                length,
                count,
                trace.lambda(worst),
                worstLimit,
                worstTarget,
                rpm,
                load,
                trace.throttlePercent(worst),
                trace.pressureKpa(worst),
                trace.row(worst),
                cells.nearest(rpm, load),
                kind,
                length >= GROWING_S
                        && trace.burntS(worst) - start > GROWING_SHARE * length
                        && slope() * length >= GROWN_LAMBDA,
                graveCount >= LEAST_READINGS && graveEnd - graveStart >= leanFor);
    }
}
