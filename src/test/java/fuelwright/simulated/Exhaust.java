package fuelwright.simulated;

/**
 * From the valve to the sensor's tip: delay = fixedS + cycles·120/rpm + pipeG/flow. The pipe's part is volume × density over mass flow.
 *
 * @param fixedS filter and logger, s
 * @param cycles engine cycles from injection to the exhaust valve
 * @param pipeG exhaust gas that the pipe holds as far as the sensor, g
 * @param leakGPerS fresh air drawn in ahead of the sensor at rest; it dies away as the flow grows
 */
public record Exhaust(double fixedS, double cycles, double pipeG, double leakGPerS) {

    static double gasInPipeG(double lengthM, double diameterM, double temperatureK) {
        double volume = Math.PI * diameterM * diameterM / 4 * lengthM;
        return volume * 100_000 / (287 * temperatureK) * 1000;
    }

    public Exhaust withLeak(double otherLeakGPerS) {
        return new Exhaust(fixedS, cycles, pipeG, otherLeakGPerS);
    }

    double delayS(double speedRpm, double flowGPerS) {
        return fixedS + cycles * 120 / speedRpm + pipeG / flowGPerS;
    }

    /** Equivalence ratio at the sensor for one at the valve. */
    double diluted(double equivalence, double flowGPerS) {
        double leak = leakGPerS * StrictMath.exp(-flowGPerS / 12);
        return equivalence * flowGPerS / (flowGPerS + leak);
    }
}
