package fuelwright.airflow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.mixture.Fuel;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class HighLoadTest {

    private static final double NAN = Double.NaN;

    private static Machine machine(double boreMm) {
        return new Machine(
                OptionalDouble.of(720),
                2,
                Optional.of(new ThrottleBody(38, 8, 5, 85)),
                Optional.of(new ThrottleBody(boreMm, 8, 5, 85)),
                Fuel.PETROL,
                OptionalDouble.of(9500));
    }

    @Test
    void measuredPressureDecidesAtEightyFivePerCentOfTheBarometer() {
        HighLoad rule = HighLoad.byThrottle();
        assertTrue(rule.at(3000, 20, 0.85 * 90, 90));
        assertFalse(rule.at(3000, 20, 0.849 * 90, 90));
        assertTrue(rule.at(3000, NAN, 86.2, NAN));
        assertFalse(rule.at(3000, NAN, 86.0, NAN));
    }

    @Test
    void withoutPressureAndBodiesThrottleDecidesAtSixtyPerCent() {
        HighLoad rule = HighLoad.of(Machine.unknown());
        assertTrue(rule.at(3000, 60, NAN, NAN));
        assertFalse(rule.at(3000, 59.9, NAN, NAN));
        assertFalse(rule.at(3000, NAN, NAN, NAN));
    }

    @Test
    void theModelsThresholdIsWhereTheSolvedPressureReachesTheShare() {
        Machine machine = machine(44);
        IntakeModel model = BypassAir.intake(machine, machine.after().orElseThrow());
        ModelledHighLoad rule = new ModelledHighLoad(model);
        for (double speed = 1500; speed <= 6000; speed += 450) {
            double ratio = model.pressureRatio(speed, rule.thresholdPercent(speed));
            assertEquals(HighLoad.PRESSURE_SHARE, ratio, 0.003, "at " + speed);
        }
    }

    @Test
    void withBigBodiesAThirdOfTheThrottleAtLowSpeedIsHighLoad() {
        HighLoad rule = HighLoad.of(machine(44));
        assertTrue(rule.at(2000, 33, NAN, NAN));
        assertFalse(rule.at(8000, 20, NAN, NAN));
    }

    @Test
    void wideOpenIsHighLoadHoweverSmallTheBody() {
        HighLoad rule = HighLoad.of(machine(20));
        assertTrue(rule.at(9000, 95, NAN, NAN));
        assertTrue(rule.at(9000, 90, NAN, NAN));
    }

    /** Where nobody said how many bodies there are, whatever one body or the throttle alone calls high load is high. */
    @Test
    void anUnknownNumberOfBodiesIsJudgedByBothRules() {
        Machine one = machine(44).withBodies(OptionalInt.of(1));
        HighLoad known = HighLoad.of(one);
        HighLoad unknown = HighLoad.of(one.withBodies(OptionalInt.empty()));
        for (double speed = 1000; speed < 9000; speed += 500) {
            for (double throttle = 0; throttle <= 100; throttle += 5) {
                assertEquals(
                        known.at(speed, throttle, NAN, NAN) || throttle >= 60, unknown.at(speed, throttle, NAN, NAN));
            }
        }
    }

    @Test
    void eitherEvidenceSuffices() {
        HighLoad rule = HighLoad.of(machine(44));
        assertTrue(rule.at(2000, 60, 40, 101));
        assertTrue(rule.at(2000, 3, 95, 101));
        assertFalse(rule.at(2000, 3, 40, 101));
        assertTrue(rule.at(NAN, 60, NAN, NAN));
    }

    @Test
    void aBiggerBodyReachesHighLoadAtLessThrottle() {
        Machine small = machine(38);
        Machine big = machine(46);
        ModelledHighLoad a =
                new ModelledHighLoad(BypassAir.intake(small, small.after().orElseThrow()));
        ModelledHighLoad b =
                new ModelledHighLoad(BypassAir.intake(big, big.after().orElseThrow()));
        for (double speed = 1000; speed < 7000; speed += 500) {
            assertTrue(b.thresholdPercent(speed) < a.thresholdPercent(speed), "at " + speed);
        }
    }

    /** 85 % of the standard barometer is 86.1 kPa; at 1500 m (84.6 kPa, ISO 2533) an engine never reaches it. */
    @Test
    void anAltitudeStandsInForABarometerThatWasNotLogged() {
        Machine low = Machine.unknown();
        Machine high = low.withAltitude(OptionalDouble.of(1500));
        assertFalse(HighLoad.of(low).at(4000, Double.NaN, 80, Double.NaN));
        assertTrue(HighLoad.of(high).at(4000, Double.NaN, 80, Double.NaN));
        assertFalse(HighLoad.of(high).at(4000, Double.NaN, 80, 101), "a logged barometer comes first");
    }
}
