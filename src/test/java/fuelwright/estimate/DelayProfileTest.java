package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.Machine;
import fuelwright.screen.ScreenedRide;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Rides made with a known delay. */
class DelayProfileTest {

    private static final MadeUpRide MADE =
            new MadeUpRide((rpm, load) -> 1.06 + 0.05 * Math.sin(rpm / 1500) - 0.0008 * load, 25, MadeUpRide.SENSOR);

    private static DelayProfile profile(ScreenedRide ride) {
        List<Estimator.Source> rides = List.of(new Estimator.Source(ride, MADE.old));
        Estimator estimator = new Estimator(MADE.old, MADE.target, rides, Machine.unknown(), 0);
        estimator.run(() -> {});
        return estimator.delayProfile();
    }

    @Test
    void onALivelyRideTheTroughLiesAtTheDelayThatTheRideWasMadeWith() {
        DelayProfile profile =
                profile(MADE.made("a", 240, MadeUpRide.wandering(1800, 6800, 41), MadeUpRide.lively(1, 75, 2.1)));
        double made = MadeUpRide.SENSOR.delayS(DelayProfile.SPEED_RPM, DelayProfile.FLOW_G_PER_S);
        DelayProfile.Tried best = profile.tried().stream()
                .min(Comparator.comparingDouble(DelayProfile.Tried::standardErrors))
                .orElseThrow();
        assertEquals(made, best.delayS(), 1.5 * profile.tried().get(1).delayS());
        assertTrue(profile.tried().get(0).standardErrors() > 3, profile.toString());
        assertTrue(profile.used().standardErrors() < 2, profile.toString());
    }

    @Test
    void onASteadyRideTheCurveIsFlat() {
        DelayProfile profile = profile(MADE.made("a", 240, t -> 4000, t -> 20));
        assertTrue(profile.tried().stream().allMatch(t -> t.standardErrors() < 3), profile.toString());
    }
}
