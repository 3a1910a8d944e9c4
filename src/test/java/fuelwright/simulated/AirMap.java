package fuelwright.simulated;

/**
 * The manifold pressure at which what the plates let in equals what the cylinders take, worked out once on a fine net of engine
 * speed and throttle, and the charge that goes with it. The net is much finer than any control unit's table.
 */
final class AirMap {
    private static final double SPEED_RATIO = 1.03;
    private static final double LOWEST_RPM = 500;
    private static final int MOST_ROUNDS = 60;
    private static final double TOLERANCE_PA = 0.01;
    private static final double SWING = 0.8;
    /** Sines of evenly spaced phases. */
    private static final double[] PHASES = {-0.966, -0.707, -0.259, 0.259, 0.707, 0.966};

    private final Engine engine;
    private final Breathing breathing;
    private final Ambient ambient;
    private final Grid pressurePa;

    AirMap(Engine engine, Breathing breathing, ThrottleBodies bodies, Ambient ambient) {
        this.engine = engine;
        this.breathing = breathing;
        this.ambient = ambient;
        int speeds = 2;
        while (LOWEST_RPM * StrictMath.pow(SPEED_RATIO, speeds - 1) < engine.redlineRpm() + 600) {
            speeds++;
        }
        double[] speed = new double[speeds];
        for (int i = 0; i < speeds; i++) {
            speed[i] = LOWEST_RPM * StrictMath.pow(SPEED_RATIO, i);
        }
        pressurePa = Grid.from(speed, throttles(), (rpm, throttle) -> balance(rpm, bodies.effectiveAreaM2(throttle)));
    }

    private static double[] throttles() {
        double[] throttle = new double[91];
        for (int i = 1; i < throttle.length; i++) {
            double before = throttle[i - 1];
            throttle[i] = before + (before < 15 ? 0.5 : before < 40 ? 1 : 1.7143);
        }
        throttle[throttle.length - 1] = Math.max(100, throttle[throttle.length - 1]);
        return throttle;
    }

    private double balance(double speedRpm, double plateAreaM2) {
        double area = plateAreaM2 + engine.bypassMm2() * 1e-6;
        // Regula falsi with the Illinois rule: an end that stays twice running is given half its weight.
        double low = 0.02 * ambient.pressurePa();
        double high = ambient.pressurePa();
        double surplusLow = surplusGPerS(speedRpm, area, low);
        double surplusHigh = surplusGPerS(speedRpm, area, high);
        if (surplusLow <= 0) {
            return low;
        }
        double middle = high;
        int moved = 0;
        for (int i = 0; i < MOST_ROUNDS; i++) {
            double before = middle;
            middle = (low * surplusHigh - high * surplusLow) / (surplusHigh - surplusLow);
            double surplus = surplusGPerS(speedRpm, area, middle);
            if (Math.abs(middle - before) < TOLERANCE_PA) {
                break;
            }
            if (surplus > 0) {
                low = middle;
                surplusLow = surplus;
                surplusHigh /= moved < 0 ? 2 : 1;
                moved = -1;
            } else {
                high = middle;
                surplusHigh = surplus;
                surplusLow /= moved > 0 ? 2 : 1;
                moved = 1;
            }
        }
        return middle;
    }

    private double surplusGPerS(double speedRpm, double areaM2, double pressurePa) {
        return 1000 * inflowKgPerS(areaM2, pressurePa) - flowGPerS(speedRpm, pressurePa);
    }

    /** Mean over the strokes: behind a body close to the valve the pressure swings about its mean, most at small openings. */
    private double inflowKgPerS(double areaM2, double meanPa) {
        double swing = SWING * Math.sqrt(Math.max(0, 1 - meanPa / ambient.pressurePa()));
        double sum = 0;
        for (double phase : PHASES) {
            double pressure = Math.min(ambient.pressurePa(), meanPa * (1 + swing * phase));
            sum += Orifice.massFlowKgPerS(areaM2, ambient.pressurePa(), ambient.temperatureK(), pressure);
        }
        return sum / PHASES.length;
    }

    double pressurePa(double speedRpm, double throttlePct) {
        return pressurePa.value(speedRpm, throttlePct);
    }

    /** Volumetric efficiency related to manifold density. */
    double efficiency(double speedRpm, double atPressurePa) {
        return breathing.efficiency(speedRpm, engine.redlineRpm(), atPressurePa, ambient.pressurePa());
    }

    /** Air per cycle as a share of the displacement full of ambient air. */
    double charge(double speedRpm, double atPressurePa) {
        return efficiency(speedRpm, atPressurePa) * atPressurePa / ambient.pressurePa();
    }

    double flowGPerS(double speedRpm, double atPressurePa) {
        return charge(speedRpm, atPressurePa) * engine.fullChargeG(ambient) * speedRpm / 120;
    }
}
