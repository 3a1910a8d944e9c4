package fuelwright.airflow;

import java.util.function.DoubleUnaryOperator;

/**
 * High load by a line of throttle over engine speed, worked out once for each {@link #STEP_RPM}; a call only interpolates. A measured pressure
 * counts too. Immutable.
 */
public final class HighLoadLine implements HighLoad {

    static final double STEP_RPM = 100;
    static final int SPEEDS = 201;

    private final double[] percent = new double[SPEEDS];
    private final Basis basis;

    /** @param percentAt the throttle, %, from which on load is high at an engine speed, rpm */
    public HighLoadLine(DoubleUnaryOperator percentAt, Basis basis) {
        for (int i = 0; i < SPEEDS; i++) {
            percent[i] = percentAt.applyAsDouble(i * STEP_RPM);
        }
        this.basis = basis;
    }

    /** The throttle from which on load is high at an engine speed, %; where that isn't known, that of nothing known. */
    double percentAt(double speedRpm) {
        if (Double.isNaN(speedRpm)) {
            return THROTTLE_PERCENT;
        }
        double position = Math.min(Math.max(speedRpm / STEP_RPM, 0), SPEEDS - 1.0);
        int low = Math.min((int) position, SPEEDS - 2);
        double fraction = position - low;
        return (1 - fraction) * percent[low] + fraction * percent[low + 1];
    }

    @Override
    public boolean at(double speedRpm, double throttlePercent, double pressureKpa, double barometerKpa) {
        return HighLoad.measured(pressureKpa, barometerKpa) || throttlePercent >= percentAt(speedRpm);
    }

    @Override
    public Basis basis() {
        return basis;
    }
}
