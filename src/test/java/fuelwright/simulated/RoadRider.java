package fuelwright.simulated;

import java.util.Random;

/** Rides a {@link RoadBook}: shifts, opens, holds, closes, brakes and stops. */
final class RoadRider implements Rider {
    private final RideProfile profile;
    private final RoadBook book;
    private final Random random;

    private Manoeuvre now;
    private double sinceS;
    private boolean opened;
    private boolean settling;
    private double integral;
    private double windWantedPct;
    private double windLeftS;

    RoadRider(RideProfile profile, Random random) {
        this.profile = profile;
        this.random = random;
        this.book = new RoadBook(profile, random);
    }

    @Override
    public void ride(Drive drive, double timeS, double dtS) {
        if (now == null || over(drive)) {
            now = book.next(drive.coolantC > 60);
            sinceS = 0;
            opened = false;
            settling = false;
            integral = drive.throttlePct;
            drive.throttleRatePctPerS = 60 + 160 * random.nextDouble();
        }
        sinceS += dtS;
        drive.slope = now.slope();
        drive.brakeMPerS2 = 0;
        drive.clutchOpen = false;
        switch (now.kind()) {
            case STAND:
                stand(drive);
                break;
            case COAST:
                drive.wantedThrottlePct = 0;
                drive.brakeMPerS2 = 0.8;
                downIfSlow(drive);
                break;
            case WIND:
                wind(drive, dtS);
                break;
            case ROLL_ON:
                rollOn(drive, dtS);
                break;
            default:
                cruise(drive, pace(drive, now.share()), now.speedShare() * redline(drive), 45, dtS);
        }
        if (drive.speedRpm > profile.highestSpeedShare() * redline(drive)) {
            drive.wantedThrottlePct = 0;
        }
        drive.wantedThrottlePct = Math.min(drive.wantedThrottlePct, profile.highestThrottlePct());
    }

    private boolean over(Drive drive) {
        boolean rollOn = now.kind() == Manoeuvre.Kind.ROLL_ON;
        if (rollOn && !opened) {
            return false;
        }
        boolean ranOut = rollOn
                && (drive.speedRpm > (profile.highestSpeedShare() - 0.01) * redline(drive)
                        || drive.roadSpeedMPerS > pace(drive, 1.1));
        return ranOut || sinceS > now.seconds();
    }

    private void stand(Drive drive) {
        drive.wantedThrottlePct = 0;
        if (drive.roadSpeedMPerS > 0.3) {
            drive.brakeMPerS2 = 3.5;
            sinceS = 0;
            downIfSlow(drive);
        }
        if (drive.speedRpm < 1.35 * drive.idleRpm() || drive.roadSpeedMPerS < 2) {
            drive.clutchOpen = true;
            drive.gear = 1;
        }
    }

    private void wind(Drive drive, double dtS) {
        windLeftS -= dtS;
        if (windLeftS <= 0) {
            windLeftS = 0.6 + 2.2 * random.nextDouble();
            windWantedPct = random.nextDouble() < 0.3 ? 0 : now.share() * (0.3 + 1.2 * random.nextDouble());
        }
        gearFor(drive, now.speedShare() * redline(drive));
        drive.wantedThrottlePct = drive.roadSpeedMPerS > pace(drive, 0.9) ? 0 : windWantedPct;
    }

    private void rollOn(Drive drive, double dtS) {
        double start = Math.max(1.25 * drive.machine.engine().idleRpm(), now.speedShare() * redline(drive));
        if (!opened) {
            int gear = now.gear();
            double from = drive.machine.vehicle().roadSpeedMPerS(start, gear);
            if (sinceS > 14 || Math.abs(drive.roadSpeedMPerS - from) < 0.06 * from && drive.gear == gear) {
                opened = true;
                sinceS = 0;
            } else {
                approach(drive, from, gear, dtS);
            }
        } else {
            drive.wantedThrottlePct = now.share();
        }
    }

    private void approach(Drive drive, double from, int gear, double dtS) {
        if (drive.roadSpeedMPerS > 1.04 * from) {
            drive.wantedThrottlePct = 0;
            drive.brakeMPerS2 = 2.5;
            downIfSlow(drive);
            if (drive.roadSpeedMPerS < 1.15 * from) {
                drive.shift(gear);
            }
        } else if (drive.roadSpeedMPerS > (settling ? 0.7 : 0.9) * from) {
            // Once in the gear he stays in it, or he would change up and down for ever.
            settling = true;
            drive.shift(gear);
            cruise(drive, from * 1.01, Double.NaN, 40, dtS);
        } else {
            cruise(drive, from * 1.03, 0.5 * redline(drive), 40, dtS);
        }
    }

    /** Holds a road speed; NaN keeps the gear. */
    private void cruise(Drive drive, double wantedMPerS, double preferredRpm, double highestPct, double dtS) {
        double error = wantedMPerS - drive.roadSpeedMPerS;
        integral = Math.min(highestPct, Math.max(0, integral + 1.1 * error * dtS));
        double throttle = integral + 2.2 * error;
        // Little by little towards closed when too fast: a hand doesn't chatter between two openings.
        double leastPct = 1.5 * Math.min(1, Math.max(0, error + 3.5));
        drive.wantedThrottlePct = Math.min(highestPct, Math.max(leastPct, throttle));
        if (error < -5) {
            drive.brakeMPerS2 = 1.2;
        }
        if (!Double.isNaN(preferredRpm)) {
            gearFor(drive, preferredRpm);
        }
        if (drive.roadSpeedMPerS < 5) {
            drive.wantedThrottlePct = Math.min(drive.wantedThrottlePct, 16);
        }
    }

    private void gearFor(Drive drive, double preferredRpm) {
        if (drive.shifting()) {
            return;
        }
        if (drive.speedRpm > 1.25 * preferredRpm
                && drive.gear < drive.machine.vehicle().gears()) {
            drive.shift(drive.gear + 1);
        } else if (drive.speedRpm < 0.7 * preferredRpm && drive.gear > 1) {
            drive.shift(drive.gear - 1);
        }
    }

    private void downIfSlow(Drive drive) {
        if (!drive.shifting() && drive.gear > 1 && drive.speedRpm < 0.24 * redline(drive)) {
            drive.shift(drive.gear - 1);
        }
    }

    private static double redline(Drive drive) {
        return drive.machine.engine().redlineRpm();
    }

    /** A share of the road speed that the top gear reaches at three quarters of the redline. */
    private static double pace(Drive drive, double share) {
        Vehicle vehicle = drive.machine.vehicle();
        return share * vehicle.roadSpeedMPerS(0.75 * redline(drive), vehicle.gears());
    }
}
