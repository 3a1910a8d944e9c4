package fuelwright.safety;

import fuelwright.airflow.HighLoad;
import java.util.function.DoublePredicate;

/**
 * High load without asking the model at every reading: the throttle from which on load is high, worked out once for each 100 rpm.
 * Between those, straight lines; and the pressure from which on it is. Whichever says high wins.
 */
final class LoadThreshold {

    private static final double STEP_RPM = 100;
    private static final int STEPS = 250;
    private static final double FULL_PERCENT = 100;
    private static final double MOST_KPA = 400;
    /** Whether a measured pressure is high doesn't depend on engine speed. */
    private static final double MIDDLE_RPM = 3000;

    private static final double WIDE_OPEN_PERCENT = 80;
    private static final double LEAST_OPEN_PERCENT = 60;
    private static final double THROTTLE_SHARE = 0.75;
    private static final double PRESSURE_SHARE = 0.93;

    private final double[] throttleFrom = new double[STEPS + 1];
    private final double leastThrottle;
    private final double pressureFrom;

    LoadThreshold(HighLoad highLoad, double barometerKpa) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= STEPS; i++) {
            double rpm = Math.max(i, 1) * STEP_RPM;
            throttleFrom[i] = search(FULL_PERCENT, x -> highLoad.at(rpm, x, Double.NaN, barometerKpa));
            least = Math.min(least, throttleFrom[i]);
        }
        leastThrottle = least;
        pressureFrom = search(MOST_KPA, x -> highLoad.at(MIDDLE_RPM, Double.NaN, x, barometerKpa));
    }

    /** The least figure from 0 to {@code most} that is high load; infinite where even the most isn't. */
    private static double search(double most, DoublePredicate high) {
        if (!high.test(most)) {
            return Double.POSITIVE_INFINITY;
        }
        double low = 0;
        double top = most;
        while (top - low > 0.02) {
            double middle = 0.5 * (low + top);
            if (high.test(middle)) {
                top = middle;
            } else {
                low = middle;
            }
        }
        return top;
    }

    boolean at(double speedRpm, double throttlePercent, double pressureKpa) {
        if (pressureKpa >= pressureFrom) {
            return true;
        }
        if (!(throttlePercent >= leastThrottle) || !(speedRpm >= 0)) {
            return false;
        }
        double p = speedRpm * (1 / STEP_RPM);
        int i = Math.min((int) p, STEPS - 1);
        double f = Math.min(p - i, 1);
        double from = throttleFrom[i];
        double next = throttleFrom[i + 1];
        return throttlePercent >= (from == next ? from : from + f * (next - from));
    }

    /**
     * Whether load is high by more than a little, so that a coarse table or a model's error can't be the reason: nearly wide open, or
     * still at high load with a quarter less throttle, or with 7 % less pressure.
     */
    boolean isWellInside(double speedRpm, double throttlePercent, double pressureKpa) {
        return isWellInside(this::at, speedRpm, throttlePercent, pressureKpa);
    }

    /** High load or not, of engine speed in rpm, throttle in % and pressure in kPa. */
    interface Test {
        boolean at(double speedRpm, double throttlePercent, double pressureKpa);
    }

    static boolean isWellInside(Test test, double speedRpm, double throttlePercent, double pressureKpa) {
        if (throttlePercent < LEAST_OPEN_PERCENT || !test.at(speedRpm, throttlePercent, pressureKpa)) {
            return false;
        }
        return throttlePercent >= WIDE_OPEN_PERCENT
                || test.at(speedRpm, THROTTLE_SHARE * throttlePercent, PRESSURE_SHARE * pressureKpa);
    }
}
