package fuelwright.simulated;

/** Pulls on a braked roller: each a sweep at one throttle opening, then a rest on closed throttle that falls back through fuel cut. */
final class DynoRider implements Rider {
    static final double SWEEP_S = 14;
    static final double REST_S = 7;

    private final RideProfile profile;

    DynoRider(RideProfile profile) {
        this.profile = profile;
    }

    @Override
    public void ride(Drive drive, double timeS, double dtS) {
        double low = 1.5 * drive.machine.engine().idleRpm();
        double high = 0.985 * drive.machine.engine().redlineRpm();
        double period = SWEEP_S + REST_S;
        double into = (timeS - REST_S) % period;
        int pull = (int) Math.floor((timeS - REST_S) / period);
        drive.clutchOpen = false;
        drive.gear = 4;
        if (timeS < REST_S || pull >= profile.pulls().size()) {
            drive.wantedThrottlePct = 0;
            drive.forcedRpm = drive.idleRpm();
        } else if (into < SWEEP_S) {
            drive.wantedThrottlePct = profile.pulls().get(pull);
            double settle = 1.5;
            drive.forcedRpm = low + (high - low) * Math.max(0, into - settle) / (SWEEP_S - settle);
        } else {
            drive.wantedThrottlePct = 0;
            double share = (into - SWEEP_S) / REST_S;
            drive.forcedRpm = high + (low - high) * Math.min(1, share * 1.25);
        }
        drive.roadSpeedMPerS = drive.machine.vehicle().roadSpeedMPerS(drive.speedRpm, drive.gear);
    }
}
