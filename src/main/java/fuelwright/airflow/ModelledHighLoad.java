package fuelwright.airflow;

/**
 * High load by the intake model. For each engine speed on a fixed grid the throttle is worked out once at which the pressure ratio
 * reaches {@link HighLoad#PRESSURE_SHARE}; a call then only interpolates. Wide open is always high load, however small the body: above
 * {@link #WIDE_OPEN_PERCENT} the model isn't asked.
 */
final class ModelledHighLoad implements HighLoad {

    /** Throttle, %, from which on load is high whatever the model says of a throttling body. */
    static final double WIDE_OPEN_PERCENT = 90;

    private final HighLoadLine line;

    ModelledHighLoad(IntakeModel model) {
        double[] areas = new double[(int) WIDE_OPEN_PERCENT * 4 + 1];
        for (int i = 0; i < areas.length; i++) {
            areas[i] = PlateArea.atThrottle(model.body(), i / 4.0) + model.bypassMm2();
        }
        line = new HighLoadLine(rpm -> threshold(areas, model.areaMm2For(PRESSURE_SHARE, rpm)), Basis.ENGINE);
    }

    private static double threshold(double[] areas, double wanted) {
        if (wanted <= areas[0]) {
            return 0;
        }
        for (int i = 1; i < areas.length; i++) {
            if (areas[i] >= wanted) {
                return (i - 1 + (wanted - areas[i - 1]) / (areas[i] - areas[i - 1])) / 4;
            }
        }
        return WIDE_OPEN_PERCENT;
    }

    /** The throttle from which on load is high at an engine speed, %. */
    double thresholdPercent(double speedRpm) {
        return line.percentAt(speedRpm);
    }

    @Override
    public boolean at(double speedRpm, double throttlePercent, double pressureKpa, double barometerKpa) {
        return line.at(speedRpm, throttlePercent, pressureKpa, barometerKpa);
    }
}
