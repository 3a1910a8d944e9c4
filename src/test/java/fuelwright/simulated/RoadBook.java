package fuelwright.simulated;

import fuelwright.simulated.Manoeuvre.Kind;
import java.util.Random;

/** Draws a road ride's next manoeuvre: a mixture of town, country road and open throttle. */
final class RoadBook {
    private final RideProfile profile;
    private final Random random;
    private int drawn;
    private int opened;

    RoadBook(RideProfile profile, Random random) {
        this.profile = profile;
        this.random = random;
    }

    Manoeuvre next(boolean warm) {
        drawn++;
        if (drawn == 1) {
            return new Manoeuvre(Kind.STAND, warm ? 6 : 35, 0, 0, 0, 0);
        }
        double dice = random.nextDouble();
        if (dice < 0.05) {
            return new Manoeuvre(Kind.STAND, 5 + 12 * random.nextDouble(), 0, 0, 0, 0);
        }
        if (dice < 0.17) {
            return new Manoeuvre(Kind.COAST, 2 + 3 * random.nextDouble(), 0, 0, 0, 0);
        }
        if (dice < 0.27) {
            return new Manoeuvre(
                    Kind.WIND,
                    8 + 10 * random.nextDouble(),
                    10 + 18 * random.nextDouble(),
                    0.4 + 0.3 * random.nextDouble(),
                    0,
                    0);
        }
        if (dice < 0.56 || !warm) {
            double pace = warm ? 0.2 + 0.6 * random.nextDouble() : 0.15 + 0.25 * random.nextDouble();
            double slope =
                    random.nextDouble() < 0.35 ? 0.03 + 0.06 * random.nextDouble() : 0.02 * random.nextGaussian();
            double speed = warm ? 0.22 + 0.6 * random.nextDouble() : 0.25 + 0.2 * random.nextDouble();
            return new Manoeuvre(Kind.CRUISE, 7 + 12 * random.nextDouble(), pace, speed, 0, slope);
        }
        return new Manoeuvre(
                Kind.ROLL_ON,
                9,
                opening(),
                0.16 + 0.22 * random.nextDouble(),
                2 + random.nextInt(4),
                0.03 * random.nextDouble());
    }

    /** Every third roll-on goes to the limit, the others are spread evenly over ln(throttle). */
    private double opening() {
        opened++;
        if (opened % 3 == 0) {
            return profile.highestThrottlePct();
        }
        double highest = StrictMath.log(Math.min(95, profile.highestThrottlePct()) / 7);
        return 7 * StrictMath.exp(highest * random.nextDouble());
    }
}
