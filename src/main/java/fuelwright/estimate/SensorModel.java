package fuelwright.estimate;

/**
 * How late and slow the mixture reading is: dead time {@code fixedS + cycles · 120/rpm + gasG / flow}, then a first-order lag. One
 * engine cycle of a four-stroke is 120/rpm seconds; the gas column between valve and sensor is a mass over the flow. Model form: first
 * order plus dead time that varies with speed and flow (SAE 970613; arXiv 2107.14321).
 *
 * @param fixedS constant part of the dead time, s: logging and instrument
 * @param cycles engine cycles between fuelling and exhaust
 * @param gasG exhaust gas between valve and sensor, g
 * @param lagS time constant of the sensor, s
 */
public record SensorModel(double fixedS, double cycles, double gasG, double lagS) {

    public SensorModel {
        require("fixedS", fixedS);
        require("cycles", cycles);
        require("gasG", gasG);
        require("lagS", lagS);
    }

    private static void require(String name, double value) {
        if (!(value >= 0 && value < 100)) {
            throw new IllegalArgumentException(name + " " + value + " must be from 0 to 100");
        }
    }

    /** No delay and no lag: the reading is believed as it stands. */
    public static SensorModel none() {
        return new SensorModel(0, 0, 0, 0);
    }

    /**
     * Dead time, s.
     *
     * @param speedRpm engine speed, rpm, above 0
     * @param flowGPerS exhaust mass flow, g/s, above 0; infinite where unknown, then the gas part is left out
     */
    public double delayS(double speedRpm, double flowGPerS) {
        return fixedS + cycles * 120 / speedRpm + gasG / flowGPerS;
    }
}
