package fuelwright.safety;

import fuelwright.estimate.BurntTrace;

/** Lean readings that may come to be an event: gathered one by one until the stretch closes. Used again for the next one. */
final class OpenStretch {

    private static final double LEAST_SHARE = 0.7;
    private static final int LEAST_READINGS = 3;
    /** The throttle closes where it was open by so much more shortly before. */
    private static final double CLOSED_PERCENT = 8;

    private static final double CLOSED_S = 0.5;

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
    private double worstLimit;
    private double worstTarget;
    private boolean frozen;
    private int allAtEnd;
    private double lastCounted;
    private double graveStart;
    private double graveEnd;
    private int graveCount;
    private double leanestLambda;
    private double worstWeight;
    private boolean closing;
    private final SteadyRun steady = new SteadyRun();

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
        frozen = false;
        lastCounted = Double.NEGATIVE_INFINITY;
        graveStart = Double.NaN;
        graveEnd = Double.NaN;
        graveCount = 0;
        leanestLambda = 0;
        worstWeight = Double.NEGATIVE_INFINITY;
        closing = false;
        steady.clear();
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
        leanestLambda = Math.max(leanestLambda, lambda);
        steady.add(timeS, load(i), lambda, target > 0 ? target : limit);
        if (timeS - start < 0.5 * leanFor) {
            sumEarly += excess;
            early++;
        } else {
            sumLate += excess;
            late++;
        }
        frozen |= isFrozen && lambda < top;
        boolean closes = isClosing(i);
        double weight = excess * LeanEvent.weight(trace.throttlePercent(i), trace.pressureKpa(i), closes);
        if (weight > worstWeight || leanRows == 1) {
            worstWeight = weight;
            closing = closes;
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
        boolean flat = leanestLambda == least;
        return end - start >= leanFor
                && count >= LEAST_READINGS
                && leanRows >= LEAST_SHARE * allAtEnd
                && !(frozen && flat);
    }

    /** Throttle, %, or pressure, kPa, where there is none. */
    private double load(int i) {
        double throttle = trace.throttlePercent(i);
        return Double.isNaN(throttle) ? trace.pressureKpa(i) : throttle;
    }

    private boolean isClosing(int i) {
        double now = load(i);
        for (int k = i - 1; k >= 0 && trace.burntS(i) - trace.burntS(k) <= CLOSED_S; k--) {
            if (load(k) - now > CLOSED_PERCENT) {
                return true;
            }
        }
        return false;
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
                steady.grew(),
                closing,
                graveCount >= LEAST_READINGS && graveEnd - graveStart >= leanFor);
    }
}
