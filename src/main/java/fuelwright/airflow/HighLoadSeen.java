package fuelwright.airflow;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * Where high load begins by the manifold pressure of rides, for an engine that wasn't described. The intake model gives the line's shape, one free
 * figure (how large the bodies are for the engine) is chosen so that as few settled moments as possible lie on the wrong side of it; of several that do
 * as well the largest body is taken, which calls most of the table high load. Where a stretch of engine speed has moments enough of its own and says
 * that load is high sooner, that counts. O(moments). Mutable, for one thread.
 */
public final class HighLoadSeen {

    private static final int PERCENTS = 101;
    /** Moments of either kind below which nothing is known. */
    private static final int LEAST = 20;
    /** So many of them on the wrong side say that pressure and throttle don't go together: then nothing is known either. */
    private static final double MOST_WRONG_SHARE = 0.25;

    /** A band of speeds that may know better than the model, in steps of the line. */
    private static final int BAND = 5;

    private static final double DISPLACEMENT_CC = 1000;
    private static final double LEAST_BORE_MM = 25;
    private static final double MOST_BORE_MM = 95;
    private static final int BORES = 45;

    private final int[][] high = new int[HighLoadLine.SPEEDS][PERCENTS];
    private final int[][] low = new int[HighLoadLine.SPEEDS][PERCENTS];
    private int highs;
    private int lows;

    /** A moment at which throttle and pressure had settled; one that isn't known whole is left out. */
    public void add(double speedRpm, double throttlePercent, double pressureKpa, double barometerKpa) {
        if (!(speedRpm > 0) || Double.isNaN(throttlePercent) || Double.isNaN(pressureKpa)) {
            return;
        }
        int i = (int) Math.min(Math.rint(speedRpm / HighLoadLine.STEP_RPM), HighLoadLine.SPEEDS - 1.0);
        int j = (int) Math.min(Math.max(throttlePercent, 0), PERCENTS - 1.0);
        if (HighLoad.measured(pressureKpa, barometerKpa)) {
            high[i][j]++;
            highs++;
        } else {
            low[i][j]++;
            lows++;
        }
    }

    /** Throttle, %, of engine speed, rpm, from which on load is high; empty where the moments don't tell. */
    public Optional<DoubleUnaryOperator> line() {
        if (highs < LEAST || lows < LEAST) {
            return Optional.empty();
        }
        HighLoadLine best = null;
        int least = Integer.MAX_VALUE;
        for (int b = BORES; b >= 0; b--) {
            HighLoadLine line = ofBore(LEAST_BORE_MM * Math.pow(MOST_BORE_MM / LEAST_BORE_MM, (double) b / BORES));
            int wrong = wrong(line);
            if (wrong < least) {
                least = wrong;
                best = line;
            }
        }
        if (least > MOST_WRONG_SHARE * Math.min(highs, lows)) {
            return Optional.empty();
        }
        HighLoadLine model = best;
        return Optional.of(rpm -> Math.min(
                HighLoad.THROTTLE_PERCENT,
                Math.min(model.percentAt(rpm), ofBand(rpm).orElse(HighLoad.THROTTLE_PERCENT))));
    }

    private static HighLoadLine ofBore(double boreMm) {
        CylinderFilling filling = CylinderFilling.of(DISPLACEMENT_CC, OptionalDouble.empty());
        ModelledHighLoad model = new ModelledHighLoad(new IntakeModel(
                new ThrottleBody(boreMm, 0, 0, 90),
                1,
                filling,
                IntakeModel.DISCHARGE_COEFFICIENT,
                BypassAir.areaMm2(filling, 1),
                1));
        return new HighLoadLine(model::thresholdPercent, HighLoad.Basis.PRESSURE);
    }

    private int wrong(HighLoadLine line) {
        int wrong = 0;
        for (int i = 0; i < high.length; i++) {
            double from = line.percentAt(i * HighLoadLine.STEP_RPM);
            for (int j = 0; j < PERCENTS; j++) {
                wrong += j + 0.5 >= from ? low[i][j] : high[i][j];
            }
        }
        return wrong;
    }

    /** The throttle that parts the moments of one band of speeds best, the lowest of those that do; empty where there are too few. */
    private OptionalDouble ofBand(double speedRpm) {
        int middle = (int) Math.min(Math.rint(speedRpm / HighLoadLine.STEP_RPM), HighLoadLine.SPEEDS - 1.0);
        int from = Math.max(0, middle - BAND / 2);
        int to = Math.min(HighLoadLine.SPEEDS, middle + BAND / 2 + 1);
        int[] balance = new int[PERCENTS];
        int above = 0;
        int below = 0;
        for (int i = from; i < to; i++) {
            above += Arrays.stream(high[i]).sum();
            below += Arrays.stream(low[i]).sum();
            for (int j = 0; j < PERCENTS; j++) {
                balance[j] += high[i][j] - low[i][j];
            }
        }
        if (above < LEAST || below < LEAST) {
            return OptionalDouble.empty();
        }
        int wrong = below;
        int least = wrong;
        int best = 0;
        for (int j = 0; j < PERCENTS; j++) {
            wrong += balance[j];
            if (wrong < least) {
                least = wrong;
                best = j + 1;
            }
        }
        return least > MOST_WRONG_SHARE * Math.min(above, below) ? OptionalDouble.empty() : OptionalDouble.of(best);
    }
}
