package fuelwright.estimate;

import java.util.List;

/**
 * What shapes a reading besides the table, estimated together with the cells so that the cells don't take its blame. Each has a value
 * to start from and a standard deviation that says how far the rides may move it (common practice, no source, unless said).
 */
enum Nuisance {
    /** Constant part of the dead time, s. */
    FIXED_DELAY(0.02, 0.03),
    /** Engine cycles between fuelling and exhaust: 540 to 720 degrees of crank are 0.75 to 1. */
    CYCLES(0.9, 0.2),
    /** Exhaust gas between valve and sensor, g: a litre of pipe at 850 K holds 0.4 g (ideal gas). */
    GAS(0.4, 0.4),
    /** Sensor time constant, s: production broadband sensors 0.05 to 0.1 s (Sensors and Actuators B 120 (2006) 199). */
    LAG(0.08, 0.05),
    /** Share of the fuel that goes to the wall film while the fuel flow moves: X of Aquino, SAE 810494. */
    WALL_FILM(0.1, 0.2),
    /** What accel enrichment makes up for of it while fuel for each cycle rises. */
    OPENING(0, 0.3),
    /** The same while it falls. */
    CLOSING(0, 0.3),
    /** Enrichment left over between the working temperature and 90 °C, ln of lambda for each 20 K. */
    WARM_UP(0, 0.01);

    static final int COUNT = values().length;
    /** The parts of the dead time. */
    static final List<Nuisance> DELAYS = List.of(FIXED_DELAY, CYCLES, GAS);
    /** What makes a reading late. */
    static final List<Nuisance> LATENESS = List.of(FIXED_DELAY, CYCLES, GAS, LAG);

    final double start;
    final double spread;

    Nuisance(double start, double spread) {
        this.start = start;
        this.spread = spread;
    }

    static double[] spreads() {
        double[] all = new double[COUNT];
        for (Nuisance nuisance : values()) {
            all[nuisance.ordinal()] = nuisance.spread;
        }
        return all;
    }

    static double[] starts() {
        double[] all = new double[COUNT];
        for (Nuisance nuisance : values()) {
            all[nuisance.ordinal()] = nuisance.start;
        }
        return all;
    }

    /** The sensor model inside a vector of nuisances; what can't be negative is taken as 0. */
    static SensorModel sensor(double[] nuisances) {
        return new SensorModel(
                Math.max(0, nuisances[FIXED_DELAY.ordinal()]),
                Math.max(0, nuisances[CYCLES.ordinal()]),
                Math.max(0, nuisances[GAS.ordinal()]),
                Math.max(0, nuisances[LAG.ordinal()]));
    }
}
