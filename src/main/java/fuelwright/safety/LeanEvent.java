package fuelwright.safety;

import java.util.Optional;

/**
 * A stretch at high load that was leaner than its limit.
 *
 * @param ride index of the ride
 * @param sensor index of the mixture channel
 * @param startS start on the ride's clock, when burnt, s
 * @param lengthS from the first to the last lean reading, s
 * @param readings lean readings in it
 * @param leanest reading at its worst moment, lambda
 * @param limit the limit at that reading, lambda
 * @param target the target there, lambda; NaN where it has none
 * @param speedRpm engine speed there, rpm
 * @param load load there, in the table's unit
 * @param throttlePercent throttle there, %; NaN where unknown
 * @param pressureKpa manifold pressure there, kPa; NaN where unknown
 * @param row the ride's row of the leanest reading
 * @param cell the fuel table's cell that weighs most there
 * @param kind what it looks like
 * @param growing how it went on getting leaner, also against the target, while load stayed; empty where it didn't
 * @param closing whether the throttle was closing at its worst moment
 * @param grave whether it was beyond both the target's excess and the lean ceiling for as long as makes an event: never less than a Stop
 */
record LeanEvent(
        int ride,
        int sensor,
        double startS,
        double lengthS,
        int readings,
        double leanest,
        double limit,
        double target,
        double speedRpm,
        double load,
        double throttlePercent,
        double pressureKpa,
        int row,
        int cell,
        Kind kind,
        Optional<SteadyRun.Growth> growing,
        boolean closing,
        boolean grave) {

    private static final double FULL_THROTTLE = 85;
    private static final double FULL_KPA = 95;
    /** A closing throttle leaves wall film and air behind: what is lean then passes with the load. */
    static final double CLOSING_SHARE = 0.1;

    enum Kind {
        /** The cell is lean: it repeats, or nothing speaks against it. */
        TABLE,
        /** Fuel that fades with time although the cell was fine earlier. */
        SUPPLY,
        /** Once, short, in a cell that is fine otherwise. */
        ONCE,
        /** Right after load rose, gone while load stayed high. */
        TIP_IN
    }

    /** How far beyond the limit, lambda. */
    double excess() {
        return leanest - limit;
    }

    /**
     * By what to call one event worse than another: how far beyond the limit, times engine speed (heat goes with flow), times time up to 3 s,
     * times the square of load.
     */
    double danger() {
        return weight(throttlePercent, pressureKpa, closing)
                * excess()
                * speedRpm
                * Math.min(Math.max(lengthS, 0.1), 3);
    }

    /** What a lean moment weighs by its load: the square of throttle, or of pressure where there is none. */
    static double weight(double throttlePercent, double pressureKpa, boolean closing) {
        double share = (Double.isNaN(throttlePercent) ? pressureKpa : throttlePercent) / 100;
        return share * share * (closing ? CLOSING_SHARE : 1);
    }

    /** Whether it is wide open and more than a little lean: such moments are named before all others. */
    boolean isFullLoad() {
        boolean full = Double.isNaN(throttlePercent) ? pressureKpa >= FULL_KPA : throttlePercent >= FULL_THROTTLE;
        return full && !closing && (grave || excess() >= 0.02);
    }

    LeanEvent with(Kind other) {
        return new LeanEvent(
                ride,
                sensor,
                startS,
                lengthS,
                readings,
                leanest,
                limit,
                target,
                speedRpm,
                load,
                throttlePercent,
                pressureKpa,
                row,
                cell,
                other,
                growing,
                closing,
                grave);
    }
}
