package fuelwright.simulated;

import java.util.List;

/**
 * What kind of ride it is.
 *
 * @param startCoolantC coolant at the start; below about 70 °C the unit enriches
 * @param highestThrottlePct the rider never opens further
 * @param highestSpeedShare the rider shifts or closes before this share of the redline
 * @param pulls throttle openings of the dyno pulls, in order; unused on the road
 * @param brake whether the dyno's brake logs the torque it takes
 */
public record RideProfile(
        Kind kind,
        double durationS,
        double startCoolantC,
        double highestThrottlePct,
        double highestSpeedShare,
        List<Double> pulls,
        boolean brake,
        RideFlaws flaws) {

    public enum Kind {
        ROAD,
        DYNO
    }

    public RideProfile {
        pulls = List.copyOf(pulls);
    }

    /** A warm road ride that uses the whole throttle. */
    public static RideProfile road(double minutes) {
        return new RideProfile(Kind.ROAD, minutes * 60, 82, 100, 0.95, List.of(), false, RideFlaws.NONE);
    }

    /** Sweeps from low engine speed to the redline, each at one throttle opening, on a warm engine. */
    public static RideProfile dyno(Double... pulls) {
        return new RideProfile(
                Kind.DYNO,
                pulls.length * (DynoRider.SWEEP_S + DynoRider.REST_S) + DynoRider.REST_S,
                84,
                100,
                1,
                List.of(pulls),
                false,
                RideFlaws.NONE);
    }

    public RideProfile cold(double coolantC) {
        return new RideProfile(kind, durationS, coolantC, highestThrottlePct, highestSpeedShare, pulls, brake, flaws);
    }

    /** A ride that never passes a throttle opening or a share of the redline. */
    public RideProfile sparse(double throttlePct, double speedShare) {
        return new RideProfile(kind, durationS, startCoolantC, throttlePct, speedShare, pulls, brake, flaws);
    }

    public RideProfile with(RideFlaws other) {
        return new RideProfile(
                kind, durationS, startCoolantC, highestThrottlePct, highestSpeedShare, pulls, brake, other);
    }

    /** With the torque that the dyno's brake takes, in the log. */
    public RideProfile braked() {
        return new RideProfile(
                kind, durationS, startCoolantC, highestThrottlePct, highestSpeedShare, pulls, true, flaws);
    }
}
