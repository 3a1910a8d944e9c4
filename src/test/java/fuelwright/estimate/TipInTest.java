package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.Machine;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenSettings;
import fuelwright.screen.ScreenedFixture;
import fuelwright.screen.ScreenedRide;
import fuelwright.screen.Screens;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** A known lean moment after each opening is found again, delay and lag undone. */
class TipInTest {

    private static final MadeUpRide.Figure FACTOR = (rpm, load) -> 1.05 - 0.0005 * load;
    private static final double[] PLACES = {4, 12, 20, 9, 30, 6, 16, 25};
    /** Opens or closes every 4 s, within 0.3 s. */
    private static final DoubleUnaryOperator THROTTLE = t -> {
        int k = (int) (t / 4);
        double part = Math.min(1, (t - 4 * k) / 0.3);
        double from = PLACES[k % PLACES.length];
        return from + part * (PLACES[(k + 1) % PLACES.length] - from);
    };

    private static final DoubleUnaryOperator SPEED = MadeUpRide.wandering(2100, 3900, 61);

    /** Lean by this much from the start of each opening for as long. */
    private static TipIn tipIn(double lean, double forS, SensorModel sensor, double hz) {
        return estimate(ride(lean, forS, sensor, hz)).tipIn();
    }

    private static Ride ride(double lean, double forS, SensorModel sensor, double hz) {
        return new MadeUpRide(FACTOR, hz, sensor)
                .withExtra(u -> {
                    int k = (int) (u / 4);
                    boolean opens = u >= 0 && PLACES[(k + 1) % PLACES.length] > PLACES[k % PLACES.length];
                    return opens && u - 4 * k < forS ? lean : 0;
                })
                .ride("tip-in", 400, SPEED, THROTTLE);
    }

    private static Estimate estimate(Ride ride) {
        MadeUpRide made = new MadeUpRide(FACTOR, 25, MadeUpRide.SENSOR);
        ScreenedRide screened = Screens.apply(ride, ScreenSettings.defaults(), made.old.speed(), made.old.load());
        return estimate(made, screened);
    }

    private static Estimate estimate(MadeUpRide made, ScreenedRide screened) {
        return new Estimator(
                        made.old, made.target, List.of(new Estimator.Source(screened, made.old)), Machine.unknown(), 0)
                .run(() -> {});
    }

    @Test
    void aRideWithoutATipInErrorShowsNone() {
        TipIn tipIn = tipIn(0, 0, MadeUpRide.SENSOR, 25);
        assertTrue(tipIn.openings() >= 40, tipIn.toString());
        for (TipIn.Bin bin : tipIn.bins()) {
            assertEquals(0, bin.meanPercent(), Math.max(0.5, 3 * bin.uncertaintyPercent()), bin.toString());
            assertTrue(!bin.isClear(), bin.toString());
        }
    }

    /** Each opening lasts 0.3 s; with the half second after it the lean part is 0.4 of 0.8 s. */
    @Test
    void aLeanMomentIsFoundWithItsSize() {
        TipIn tipIn = tipIn(0.08, 0.4, MadeUpRide.SENSOR, 25);
        assertTrue(tipIn.openings() >= 40, tipIn.toString());
        for (TipIn.Bin bin : tipIn.bins()) {
            assertTrue(bin.isClear(), bin.toString());
            assertEquals(100 * Math.expm1(0.04), bin.meanPercent(), 3 * bin.uncertaintyPercent() + 0.5, bin.toString());
            assertEquals(100 * Math.expm1(0.08), bin.worstPercent(), 3, bin.toString());
        }
    }

    /**
     * A known shortfall: the same moment after every opening is partly laid to cells, delay and lag, so that up to a third of its size is
     * missing, far beyond the stated standard error (decision 0121). Sign and order of size hold.
     */
    @Test
    void aRichMomentIsNegativeThoughTooSmall() {
        double planted = 100 * Math.expm1(-0.04);
        for (TipIn.Bin bin : tipIn(-0.08, 0.4, MadeUpRide.SENSOR, 25).bins()) {
            assertTrue(bin.isClear(), bin.toString());
            assertTrue(bin.meanPercent() < planted * 2 / 3 && bin.meanPercent() > planted - 0.5, bin.toString());
            assertTrue(bin.worstPercent() < -5, bin.toString());
        }
    }

    @Test
    void binsTellQuickOpeningsFromSlowOnesAndLowSpeedsFromHigh() {
        TipIn tipIn = tipIn(0.08, 0.4, MadeUpRide.SENSOR, 25);
        assertTrue(tipIn.bins().size() >= 2, tipIn.toString());
        for (TipIn.Bin bin : tipIn.bins()) {
            assertTrue(bin.rateFrom() >= 20 && bin.rateFrom() < 100, bin.toString());
            assertEquals(2000, bin.speedFromRpm(), 0, bin.toString());
        }
    }

    @Test
    void openingsOfAColdEngineAreLeftOutAndCounted() {
        Ride ride = ride(0.08, 0.4, MadeUpRide.SENSOR, 25);
        MadeUpRide made = new MadeUpRide(FACTOR, 25, MadeUpRide.SENSOR);
        Screen[] reasons = new Screen[ride.size()];
        for (int row = 0; row < reasons.length; row++) {
            reasons[row] = row < reasons.length / 2 ? Screen.TOO_COLD : null;
        }
        TipIn tipIn = estimate(made, ScreenedFixture.of(ride, reasons)).tipIn();
        int all = Opening.of(RideTrack.of(ride)).size();
        assertEquals(all, tipIn.openings() + tipIn.leftOut());
        assertEquals(all / 2.0, tipIn.leftOut(), 2);
    }

    @Test
    void theSizeOfAnOpeningThatTheSensorCouldNotShowIsMarked() {
        Ride ride = ride(0.4, 0.4, MadeUpRide.SENSOR, 25);
        double[] lambda = ride.column(Role.LAMBDA).orElseThrow().toArray();
        for (int i = 0; i < lambda.length; i++) {
            lambda[i] = Math.min(1.3, lambda[i]);
        }
        MadeUpRide made = new MadeUpRide(FACTOR, 25, MadeUpRide.SENSOR);
        Ride cut = MadeUpRide.ride(
                "limit",
                ride.timeS().toArray(),
                ride.column(Role.ENGINE_SPEED).orElseThrow().toArray(),
                ride.column(Role.THROTTLE).orElseThrow().toArray(),
                lambda);
        ScreenedRide screened =
                Screens.apply(cut, ScreenSettings.defaults().withLambda(0.66, 1.3), made.old.speed(), made.old.load());
        assertTrue(estimate(made, screened).tipIn().bins().stream().anyMatch(b -> b.atLimit() > 0));
    }

    @Test
    void aSteadyThrottleHasNoOpenings() {
        Ride ride =
                new MadeUpRide(FACTOR, 25, MadeUpRide.SENSOR).ride("steady", 60, SPEED, t -> 20 + 5 * Math.sin(t / 3));
        assertTrue(Opening.of(RideTrack.of(ride)).isEmpty());
    }

    @Test
    void anOpeningEndsWhereTheThrottleClosesAgain() {
        Ride ride = new MadeUpRide(FACTOR, 50, MadeUpRide.SENSOR)
                .ride("blip", 10, t -> 3000, t -> t < 5 ? 5 : t < 5.2 ? 5 + (t - 5) * 200 : t < 5.5 ? 45 : 5);
        Opening opening = Opening.of(RideTrack.of(ride)).get(0);
        assertEquals(5, opening.startS(), 0.021);
        assertEquals(5.48, opening.untilS(), 0.021);
        assertEquals(200, opening.rate(), 15);
    }
}
