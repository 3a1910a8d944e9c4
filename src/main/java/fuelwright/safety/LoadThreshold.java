package fuelwright.safety;

import fuelwright.airflow.HighLoad;

/**
 * High load without asking the model at every reading: the throttle from which on load is high, worked out once for each 100 rpm.
 * Between those, straight lines. Where pressure was measured it is asked as well, and whichever says high wins.
 */
final class LoadThreshold {

    private static final double STEP_RPM = 100;
    private static final int STEPS = 250;
    private static final double FULL_PERCENT = 100;
    private static final double WIDE_OPEN_PERCENT = 80;
    private static final double LEAST_OPEN_PERCENT = 60;
    private static final double THROTTLE_SHARE = 0.75;
    private static final double PRESSURE_SHARE = 0.93;

    private final HighLoad highLoad;
    private final double barometerKpa;
    private final double[] throttleFrom = new double[STEPS + 1];

    LoadThreshold(HighLoad highLoad, double barometerKpa) {
        this.highLoad = highLoad;
        this.barometerKpa = barometerKpa;
        for (int i = 0; i <= STEPS; i++) {
            throttleFrom[i] = search(Math.max(i, 1) * STEP_RPM);
        }
    }

    private double search(double rpm) {
        if (!highLoad.at(rpm, FULL_PERCENT, Double.NaN, barometerKpa)) {
            return 2 * FULL_PERCENT;
        }
        double low = 0;
        double high = FULL_PERCENT;
        while (high - low > 0.05) {
            double middle = 0.5 * (low + high);
            if (highLoad.at(rpm, middle, Double.NaN, barometerKpa)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return high;
    }

    boolean at(double speedRpm, double throttlePercent, double pressureKpa) {
        double p = speedRpm / STEP_RPM;
        if (p >= 0 && throttlePercent == throttlePercent) {
            int i = (int) p;
            double from = i >= STEPS
                    ? throttleFrom[STEPS]
                    : throttleFrom[i] + (p - i) * (throttleFrom[i + 1] - throttleFrom[i]);
            if (throttlePercent >= from) {
                return true;
            }
        }
        return pressureKpa == pressureKpa && highLoad.at(speedRpm, throttlePercent, pressureKpa, barometerKpa);
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
