package fuelwright.airflow;

/**
 * What counts as high load: manifold pressure, measured or modelled from bodies and engine speed, at or above 85 % of the barometer;
 * where neither can be had, throttle at or above 60 % (common practice, no source). With big bodies a third of the throttle at low
 * engine speed is already full load.
 */
public interface HighLoad {

    /** Share of the barometer from which on load is high. */
    double PRESSURE_SHARE = 0.85;

    /** Throttle, %, from which on load is high where nothing better is known. */
    double THROTTLE_PERCENT = 60;

    /** Standard barometer, kPa (ISO 2533), where none was logged. */
    double STANDARD_BAROMETER_KPA = 101.325;

    /** What the throttle of high load is known from. */
    enum Basis {
        /** The engine's displacement and bodies. */
        ENGINE,
        /** Manifold pressure that was logged. */
        PRESSURE,
        /** Nothing: {@link #THROTTLE_PERCENT}. */
        THROTTLE
    }

    /**
     * Whether a moment of a ride, or a cell of a throttle-indexed table, is at high load.
     *
     * @param speedRpm engine speed, rpm
     * @param throttlePercent throttle, %; NaN where unknown
     * @param pressureKpa measured manifold pressure, kPa; NaN where there is none
     * @param barometerKpa barometer, kPa; NaN where unknown: the standard one is taken
     */
    boolean at(double speedRpm, double throttlePercent, double pressureKpa, double barometerKpa);

    default Basis basis() {
        return Basis.ENGINE;
    }

    /** Where either says so; on this one's basis. */
    default HighLoad or(HighLoad other) {
        HighLoad one = this;
        return new HighLoad() {
            @Override
            public boolean at(double speedRpm, double throttlePercent, double pressureKpa, double barometerKpa) {
                return one.at(speedRpm, throttlePercent, pressureKpa, barometerKpa)
                        || other.at(speedRpm, throttlePercent, pressureKpa, barometerKpa);
            }

            @Override
            public Basis basis() {
                return one.basis();
            }
        };
    }

    /**
     * The rule for a machine. Either evidence suffices: a measured pressure, or the throttle; whichever says more counts. The throttle is
     * judged by the intake model where displacement and the body fitted now are known, else by {@link #THROTTLE_PERCENT}; by both where
     * only the number of bodies isn't, as more of them fill the engine sooner than one. A moment of
     * which neither pressure nor throttle is known isn't high load. Where no barometer was logged the machine's altitude stands in for it.
     * Thread-safe and cheap: called for every reading.
     */
    static HighLoad of(Machine machine) {
        return atStation(isDescribed(machine) ? modelled(machine) : byThrottle(), machine);
    }

    /** Whether displacement and the body fitted now are known. */
    static boolean isDescribed(Machine machine) {
        return machine.displacementCc().isPresent() && machine.after().isPresent();
    }

    /** A rule with the machine's altitude standing in for a barometer that wasn't logged. */
    static HighLoad atStation(HighLoad rule, Machine machine) {
        return atStation(rule, machine.barometerKpa());
    }

    /** The same with a barometer that was told otherwise, kPa; NaN for the standard one. */
    static HighLoad atStation(HighLoad rule, double stationKpa) {
        return Double.isNaN(stationKpa) ? rule : new HighLoadAtStation(rule, stationKpa);
    }

    private static HighLoad modelled(Machine machine) {
        HighLoad model =
                new ModelledHighLoad(BypassAir.intake(machine, machine.after().orElseThrow()));
        return machine.bodies().isPresent() ? model : model.or(byThrottle());
    }

    /** The rule where neither bodies nor displacement are known. */
    static HighLoad byThrottle() {
        return new HighLoadLine(rpm -> THROTTLE_PERCENT, Basis.THROTTLE);
    }

    /** Whether a measured pressure alone says high load; false where there is none. */
    static boolean measured(double pressureKpa, double barometerKpa) {
        double barometer = barometerKpa > 0 ? barometerKpa : STANDARD_BAROMETER_KPA;
        return pressureKpa >= PRESSURE_SHARE * barometer;
    }
}
