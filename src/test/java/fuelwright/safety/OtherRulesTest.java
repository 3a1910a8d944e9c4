package fuelwright.safety;

import static fuelwright.safety.PlantedCase.cell;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.InjectorSet;
import fuelwright.airflow.Machine;
import fuelwright.estimate.CellProposal;
import fuelwright.estimate.ProposalSettings;
import fuelwright.estimate.SensorFit;
import fuelwright.estimate.SensorModel;
import fuelwright.estimate.Standing;
import fuelwright.mixture.Fuel;
import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.table.Quantity;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Each rule: a case that fires, one just below, one with the data missing. */
class OtherRulesTest {

    private static final Caution.Level STOP = Caution.Level.STOP;
    private static final Caution.Level CHECK = Caution.Level.CHECK;
    private static final Caution.Level NOTE = Caution.Level.NOTE;

    private static PlantedRide ride() {
        return new PlantedRide(20).clean(3);
    }

    private static PlantedCase with(PlantedRide ride) {
        return new PlantedCase().ride(ride.named("ride"));
    }

    private static void assertLevel(Caution.Level level, String rule, PlantedCase planted) {
        List<Caution> all = planted.judge();
        Optional<Caution> found =
                all.stream().filter(c -> c.rule().equals(rule)).findFirst();
        assertTrue(found.isPresent(), rule + " missing in " + all);
        assertEquals(level, found.get().level(), found.get().sentence());
        assertFalse(found.get().todo().isBlank());
    }

    private static void assertQuiet(String rule, PlantedCase planted) {
        assertEquals(Optional.empty(), planted.judge(rule));
    }

    /** Published worked figures: 15 ms is 37.5 % at 3000 rpm and 75 % at 6000 rpm for one pulse a cycle of a four-stroke. */
    @Test
    void dutyIsTheShareOfTwoTurns() {
        assertEquals(37.5, Injectors.dutyPercent(3000, 15, 1), 1e-12);
        assertEquals(75, Injectors.dutyPercent(6000, 15, 1), 1e-12);
        assertEquals(75, Injectors.dutyPercent(3000, 15, 2), 1e-12);
    }

    private static PlantedRide pulse(double ms) {
        return ride().phase(3, 7500, 7500, 100, 0.87, 0.87, Map.of(Role.INJECTOR_PULSE, ms / 1000))
                .steady(Role.INJECTOR_PULSE, 0.004);
    }

    @Test
    void injectorDutyNow() {
        // 7500 rpm: 100 % is 16 ms
        assertLevel(STOP, "injector-duty", with(pulse(15.3)));
        assertLevel(CHECK, "injector-duty", with(pulse(15.1)));
        assertLevel(CHECK, "injector-duty", with(pulse(13.7)));
        assertQuiet("injector-duty", with(pulse(13.5)));
        assertLevel(NOTE, "injector-duty-not-checked", with(ride()));
        assertQuiet("injector-duty-not-checked", with(pulse(13.5)));
    }

    @Test
    void injectorDutyWithTheProposal() {
        PlantedCase planted = with(pulse(13));
        for (int i = 6; i < 8; i++) {
            planted.plant(cell(6, i), 1.2, 1.2, Standing.MEASURED);
        }
        assertLevel(STOP, "injector-duty-proposed", planted);
        planted.limits = planted.limits.with(Limit.DUTY_STOP, 98);
        assertLevel(CHECK, "injector-duty-proposed", planted);
        assertQuiet("injector-duty-proposed", with(pulse(13)));
    }

    @Test
    void aPulseTableThatAsksTooMuch() {
        PlantedCase planted = new PlantedCase();
        planted.fuelTable =
                PlantedCase.table(Quantity.INJECTOR_PULSE, PlantedCase.THROTTLE, c -> c == cell(6, 7) ? 14.4 : 5);
        planted.evidence(0, 0.005, 50);
        assertLevel(STOP, "injector-duty-table", planted);
        planted.fuelTable = PlantedCase.table(Quantity.INJECTOR_PULSE, PlantedCase.THROTTLE, c -> 12.6);
        planted.evidence(0, 0.005, 50);
        assertQuiet("injector-duty-table", planted);
    }

    @Test
    void deadTimeThatTheTableDoesNotContainCountsForItsDuty() {
        PlantedCase planted = new PlantedCase();
        planted.fuelTable =
                PlantedCase.table(Quantity.INJECTOR_PULSE, PlantedCase.THROTTLE, c -> c == cell(6, 7) ? 12.6 : 5);
        planted.evidence(0, 0.005, 50);
        planted.machine = Machine.unknown()
                .with(new InjectorSet(
                        OptionalInt.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.of(0.9)));
        assertQuiet("injector-duty-table", planted);
        planted.settings = ProposalSettings.defaults().withDeadTimeMs(0.9);
        assertQuiet("injector-duty-table", planted);
        planted.settings = ProposalSettings.defaults().withDeadTimeMs(0);
        assertLevel(CHECK, "injector-duty-table", planted);
        assertTrue(
                planted.judge().stream().anyMatch(c -> c.what().startsWith("1 cell of the pulse table asks for")),
                () -> planted.judge().toString());
    }

    @Test
    void aTargetLeanerThanSafe() {
        PlantedCase planted = with(ride());
        planted.target = PlantedCase.table(
                Quantity.LAMBDA, PlantedCase.THROTTLE, c -> c == cell(6, 4) ? 0.96 : planted.targetFigure(c));
        assertLevel(STOP, "target-lean", planted);
        planted.target = PlantedCase.table(
                Quantity.LAMBDA, PlantedCase.THROTTLE, c -> c == cell(6, 4) ? 0.95 : planted.targetFigure(c));
        assertQuiet("target-lean", planted);
        // 60 % throttle is the edge of high load here
        planted.target = PlantedCase.table(
                Quantity.LAMBDA, PlantedCase.THROTTLE, c -> c == cell(4, 4) ? 0.97 : planted.targetFigure(c));
        assertLevel(CHECK, "target-lean", planted);
        planted.target = PlantedCase.table(
                Quantity.LAMBDA, PlantedCase.THROTTLE, c -> c == cell(4, 4) ? 1.05 : planted.targetFigure(c));
        assertLevel(STOP, "target-lean", planted);
    }

    @Test
    void aTargetJustAboveTheCeilingIsShownAboveIt() {
        PlantedCase planted = with(ride());
        planted.target = PlantedCase.table(
                Quantity.LAMBDA, PlantedCase.THROTTLE, c -> c == cell(6, 4) ? 0.9524 : planted.targetFigure(c));
        String what = planted.judge("target-lean").orElseThrow().what();
        assertTrue(what.contains("leaner than lambda 0.95. Leanest: 0.952 at"), what);
    }

    @Test
    void aTargetOnAnotherFuelsScale() {
        PlantedCase planted = with(ride());
        planted.fuel = Fuel.E85;
        planted.target = PlantedCase.table(Quantity.AFR, PlantedCase.THROTTLE, c -> 14.7 * planted.targetFigure(c));
        assertLevel(STOP, "target-scale", planted);
        planted.target = PlantedCase.table(Quantity.AFR, PlantedCase.THROTTLE, c -> 9.8 * planted.targetFigure(c));
        assertQuiet("target-scale", planted);
        assertQuiet("target-lean", planted);
    }

    @Test
    void aMixtureThatGoesWithItsTargetIsNotUpsideDown() {
        assertLevel(STOP, "mixture-upside-down", with(lightAndFull(1.0)));
        assertLevel(STOP, "mixture-upside-down", with(lightAndFull(1.16)));
        assertQuiet("mixture-upside-down", with(lightAndFull(1.2)));
    }

    private static PlantedRide lightAndFull(double light) {
        return new PlantedRide(20)
                .noise(0.002)
                .phase(2, 2000, 0, 1.0)
                .phase(60, 3000, 6, light)
                .phase(60, 5000, 100, 1 / 0.87);
    }

    @Test
    void aFrozenSensor() {
        PlantedRide high = ride().phase(4, 4000, 20, 1.0);
        assertQuiet("sensor-frozen", with(high));
        PlantedRide quiet = new PlantedRide(20).noise(0).phase(60, 4000, 20, 1.0);
        assertQuiet("sensor-frozen", with(quiet.phase(5, 4000, 100, 0.87)));
        PlantedRide frozen = ride().frozen(100, 105);
        assertLevel(CHECK, "sensor-frozen", with(frozen));
        assertLevel(STOP, "sensor-frozen", with(ride().frozen(87, 94)));
        assertQuiet("sensor-frozen", with(ride().frozen(100, 101.5)));
        assertQuiet("sensor-frozen", with(ride().frozen(87, 94).withoutMixture()));
        assertQuiet("sensor-frozen", with(ride().noReading(0, 100)));
        assertQuiet("sensor-frozen", with(ride().noReading(60, 100_000)));
    }

    @Test
    void aSensorAtItsEnd() {
        assertLevel(CHECK, "sensor-at-its-end", with(ride().phase(20, 3000, 20, 1.6)));
        assertQuiet("sensor-at-its-end", with(ride().phase(5, 3000, 20, 1.6)));
        assertLevel(STOP, "sensor-at-its-end", with(new PlantedRide(20).phase(200, 3000, 20, 1.6)));
        assertLevel(CHECK, "sensor-at-its-end", with(ride().phase(20, 3000, 20, 0.6)));
    }

    @Test
    void aSlowSensor() {
        PlantedCase planted = with(ride());
        planted.sensor = new SensorFit(new SensorModel(0.04, 1, 0, 0.35), true, 0.01, 0.01, Sentence.NONE);
        assertLevel(CHECK, "sensor-slow", planted);
        planted.sensor = new SensorFit(new SensorModel(0.04, 1, 0, 0.29), true, 0.01, 0.01, Sentence.NONE);
        assertQuiet("sensor-slow", planted);
        planted.sensor = new SensorFit(new SensorModel(0.04, 1, 0, 0.35), false, Double.NaN, Double.NaN, Sentence.NONE);
        assertQuiet("sensor-slow", planted);
    }

    private static PlantedRide cuts(double lambda) {
        PlantedRide ride = ride();
        for (int i = 0; i < 4; i++) {
            ride.phase(3, 5000, 3500, 0, lambda, lambda, Map.of(Role.FUEL_CUT, 1.0))
                    .phase(5, 3500, 20, 1.0);
        }
        return ride;
    }

    @Test
    void aFuelCutThatReadsNoFreeAir() {
        assertLevel(CHECK, "sensor-blind-to-fuel-cut", with(cuts(1.1)));
        assertQuiet("sensor-blind-to-fuel-cut", with(cuts(1.5)));
        assertQuiet("sensor-blind-to-fuel-cut", with(ride()));
    }

    @Test
    void twoSensorsApart() {
        assertLevel(CHECK, "sensors-apart", with(ride().secondSensor(1.05)));
        assertLevel(CHECK, "sensors-apart", with(ride().secondSensor(0.95)));
        assertQuiet("sensors-apart", with(ride().secondSensor(1.03)));
        assertQuiet("sensors-apart", with(ride()));
        assertLevel(NOTE, "one-sensor", with(ride()));
        assertQuiet("one-sensor", with(ride().secondSensor(1.03)));
    }

    @Test
    void aTrimThatStandsAtHighLoadIsAskedAbout() {
        assertLevel(CHECK, "trim-at-high-load", with(ride().steady(Role.LONG_TRIM, -10)));
        assertLevel(NOTE, "trim-at-high-load", with(ride().steady(Role.LONG_TRIM, 10)));
        assertQuiet("trim-at-high-load", with(ride().steady(Role.LONG_TRIM, -2)));
        assertQuiet("trim-at-high-load", with(ride()));
        PlantedRide moving = ride().steady(Role.LONG_TRIM, -10);
        for (int i = 0; i < 8; i++) {
            moving.phase(4, 5000, 5000, 100, 0.87, 0.87, Map.of(Role.LONG_TRIM, -6.0 - i));
        }
        assertQuiet("trim-at-high-load", with(moving));
    }

    /** A sensor that shows no more than its top; full throttle twice, lean the second time. */
    static PlantedRide clipped(double top, double lean) {
        PlantedRide ride = new PlantedRide(20).top(top);
        for (int i = 0; i < 5; i++) {
            ride.phase(8, 4000, 20, 0.98)
                    .phase(4, 5000, 5500, 100, i < 4 ? 0.87 : lean, i < 4 ? 0.87 : lean, Map.of())
                    .phase(1, 5000, 20, 0.98)
                    .phase(3, 5000, 3500, 0, 1.5, 1.5, Map.of());
        }
        return ride;
    }

    @Test
    void aSensorThatShowsNoMoreThanALowFigure() {
        assertLevel(STOP, "sensor-top-low", with(clipped(1.15, 1.3)));
        assertLevel(CHECK, "sensor-top-low", with(clipped(1.15, 0.88)));
        assertQuiet("sensor-top-low", with(clipped(1.36, 1.3)));
        assertQuiet("sensor-top-low", with(ride()));
        PlantedRide rich = new PlantedRide(20);
        for (int i = 0; i < 6; i++) {
            rich.phase(8, 4000, 20, 0.98).phase(5, 5000, 100, 0.87).phase(4, 5000, 3500, 0, 0.9, 1.05, Map.of());
        }
        assertQuiet("sensor-top-low", with(rich));
    }

    private static PlantedRide overruns(int times, double reads, double cut) {
        PlantedRide ride = new PlantedRide(20).noise(0.004);
        for (int i = 0; i < times; i++) {
            ride.phase(8, 4000, 20, 0.84)
                    .phase(5, 5000, 5500, 100, 0.93, 0.93, Map.of())
                    .phase(3, 5000, 3500, 0, reads, reads, Map.of(Role.FUEL_CUT, cut));
        }
        return ride;
    }

    @Test
    void anOverrunThatReadsRicherThanAnythingBurnsIsAFuelAirRatio() {
        assertLevel(STOP, "mixture-upside-down", with(overruns(4, 0.5, 0)));
        assertLevel(STOP, "mixture-upside-down", with(overruns(4, 0.74, 1)));
        assertQuiet("mixture-upside-down", with(overruns(4, 0.74, 0)));
        assertQuiet("mixture-upside-down", with(overruns(2, 0.5, 0)));
        assertLevel(CHECK, "mixture-upside-down", with(overruns(8, 0.74, 0)));
        assertQuiet("mixture-upside-down", with(overruns(8, 0.82, 0)));
        assertQuiet("mixture-upside-down", with(overruns(8, 1.3, 1)));
        assertQuiet("mixture-upside-down", with(overruns(8, 0.5, 0).withoutMixture()));
    }

    private static PlantedCase leaner(double factor) {
        PlantedRide ride = new PlantedRide(20).secondSensor(factor);
        for (int i = 0; i < 4; i++) {
            ride.phase(8, 4000, 20, 0.98).phase(5, 5000, 100, 0.87);
        }
        return with(ride);
    }

    @Test
    void theLeanerOfTwoCylindersThatOneTableFeedsIsAStopWithWhatIsLeft() {
        Caution left = leaner(1.2).judge("leaner-cylinder-left").orElseThrow();
        assertEquals(STOP, left.level());
        assertEquals(List.of(cell(6, 4)), List.copyOf(left.cells()));
        assertTrue(left.what().contains("still up to 10 % lean"), left.what());
        assertLevel(STOP, "leaner-cylinder-left", leaner(0.9));
        assertQuiet("leaner-cylinder-left", leaner(1.04));
        PlantedCase enriched = leaner(1.2).plant(cell(6, 4), 1.1, 1.0, Standing.MEASURED);
        assertQuiet("leaner-cylinder-left", enriched);
        PlantedCase own = new PlantedCase();
        own.fuelTable = own.fuelTable.ofCylinder(java.util.OptionalInt.of(1));
        own.rides.addAll(leaner(1.2).rides);
        assertQuiet("leaner-cylinder-left", own);
    }

    private static PlantedRide drifting(double factor) {
        PlantedRide ride = new PlantedRide(20);
        for (int i = 0; i < 12; i++) {
            double f = i < 6 ? 1 : factor;
            ride.phase(5, 3000, 20, f)
                    .phase(5, 4000, 10, f)
                    .phase(5, 4000, 20, f)
                    .phase(5, 5000, 20, f);
        }
        return ride;
    }

    @Test
    void aReadingThatDrifts() {
        assertLevel(CHECK, "reading-drifts", with(drifting(1.06)));
        assertQuiet("reading-drifts", with(drifting(1.03)));
        assertQuiet("reading-drifts", with(drifting(1.06).withoutMixture()));
        assertQuiet("reading-drifts", with(drifting(1.06).steady(Role.SHORT_TRIM, 0)));
    }

    private static PlantedRide bursts(int count, double lambda) {
        PlantedRide ride = ride();
        for (int i = 0; i < count; i++) {
            ride.phase(4, 5000, 20, 0.98).phase(0.3, 5000, 20, lambda);
        }
        return ride.phase(4, 5000, 20, 0.98);
    }

    @Test
    void misfireReadsLeanInBursts() {
        assertLevel(CHECK, "misfire", with(bursts(6, 1.3)));
        assertQuiet("misfire", with(bursts(3, 1.3)));
        assertQuiet("misfire", with(bursts(6, 1.03)));
        assertQuiet("misfire", with(bursts(6, 1.3).withoutMixture()));
    }

    @Test
    void misfireThroughoutIsNamedThoughBurstsAreTheUsualThing() {
        PlantedRide missing = new PlantedRide(20);
        for (int i = 0; i < 120; i++) {
            missing.phase(0.25, 5000, 60, 0.88).phase(0.25, 5000, 60, 1.5);
        }
        assertLevel(CHECK, "misfire", with(missing));
        assertQuiet("misfire", with(new PlantedRide(20).whiteNoise(0.15).phase(120, 5000, 60, 0.95)));
    }

    private static PlantedRide leak(double lambda) {
        return ride().phase(30, 1500, 2, lambda).phase(30, 7000, 60, 0.88);
    }

    @Test
    void leanOnlyWhereLittleFlows() {
        PlantedCase planted = new PlantedCase();
        planted.fuelTable = PlantedCase.table(Quantity.VOLUMETRIC_EFFICIENCY, PlantedCase.THROTTLE, c -> 20 + c);
        planted.evidence(0, 0.005, 50);
        assertLevel(CHECK, "leak", planted.ride(leak(1.12).named("ride")));
        planted.rides.clear();
        assertQuiet("leak", planted.ride(leak(1.05).named("ride")));
        planted.rides.clear();
        assertQuiet("leak", planted.ride(leak(1.12).withoutMixture().named("ride")));
    }

    @Test
    void withoutACoolantTemperatureItIsSaidAndThatEarlyReadingsAreRicher() {
        Caution plain = with(drifting(1.0)).judge("coolant-not-logged").orElseThrow();
        assertTrue(!plain.what().contains("first third"), plain.what());
        Caution warming = with(drifting(1.06)).judge("coolant-not-logged").orElseThrow();
        assertEquals(CHECK, warming.level());
        assertTrue(warming.what().contains("do read 6 % richer in the first third"), warming.what());
        assertQuiet("coolant-not-logged", with(drifting(1.06).steady(Role.COOLANT, 85)));
    }

    @Test
    void conditionsOfTheRide() {
        assertLevel(CHECK, "mostly-cold", with(ride().steady(Role.COOLANT, 60)));
        assertQuiet("mostly-cold", with(ride().steady(Role.COOLANT, 75)));
        assertQuiet("mostly-cold", with(ride()));
        assertLevel(CHECK, "heat-soaked", with(ride().steady(Role.COOLANT, 112)));
        assertQuiet("heat-soaked", with(ride().steady(Role.COOLANT, 109)));
        assertLevel(CHECK, "intake-hot", with(ride().steady(Role.INTAKE_AIR, 62)));
        assertQuiet("intake-hot", with(ride().steady(Role.INTAKE_AIR, 55)));
        assertLevel(CHECK, "battery-low", with(ride().steady(Role.BATTERY, 12.2)));
        assertQuiet("battery-low", with(ride().steady(Role.BATTERY, 13.8)));
        assertQuiet("battery-low", with(ride()));
    }

    @Test
    void ridesInDifferentAir() {
        PlantedCase planted = with(ride().steady(Role.INTAKE_AIR, 10).steady(Role.BAROMETER, 101));
        planted.ride(
                ride().steady(Role.INTAKE_AIR, 35).steady(Role.BAROMETER, 95).named("second"));
        assertLevel(CHECK, "intake-apart", planted);
        assertLevel(CHECK, "barometer-apart", planted);
        PlantedCase near = with(ride().steady(Role.INTAKE_AIR, 10).steady(Role.BAROMETER, 101));
        near.ride(ride().steady(Role.INTAKE_AIR, 28).steady(Role.BAROMETER, 98).named("second"));
        assertQuiet("intake-apart", near);
        assertQuiet("barometer-apart", near);
    }

    @Test
    void aShortRide() {
        assertLevel(CHECK, "ride-short", with(new PlantedRide(20).phase(110, 3000, 20, 1.0)));
        assertQuiet("ride-short", with(new PlantedRide(20).phase(125, 3000, 20, 1.0)));
    }

    @Test
    void aRideThatLeavesTheTable() {
        assertLevel(CHECK, "outside-table", with(ride().phase(5, 8400, 20, 1.0)));
        assertQuiet("outside-table", with(ride().phase(5, 8100, 20, 1.0)));
        assertQuiet("outside-table", with(ride().phase(0.5, 8400, 20, 1.0)));
    }

    @Test
    void exhaustTemperature() {
        assertLevel(
                STOP,
                "exhaust-hot",
                with(ride().phase(2, 7000, 7000, 100, 0.87, 0.87, Map.of(Role.EXHAUST_TEMPERATURE, 940.0))));
        assertLevel(
                CHECK,
                "exhaust-hot",
                with(ride().phase(2, 7000, 7000, 100, 0.87, 0.87, Map.of(Role.EXHAUST_TEMPERATURE, 860.0))));
        assertQuiet("exhaust-hot", with(ride().steady(Role.EXHAUST_TEMPERATURE, 840)));
        assertQuiet("exhaust-hot", with(ride()));
    }

    private static PlantedRide knocks(int times, double throttle) {
        PlantedRide ride = ride();
        for (int i = 0; i < times; i++) {
            ride.phase(3, 6000, throttle, 0.87).phase(0.1, 6000, 6000, throttle, 0.87, 0.87, Map.of(Role.KNOCK, 1.0));
        }
        return ride.phase(3, 6000, throttle, 0.87);
    }

    @Test
    void knockAtHighLoad() {
        assertLevel(STOP, "knock", with(knocks(3, 100)));
        assertLevel(CHECK, "knock", with(knocks(1, 100)));
        assertQuiet("knock", with(knocks(3, 30)));
        assertQuiet("knock", with(ride()));
    }

    @Test
    void aKnockLevelThatIsNeverQuietIsNotJudged() {
        PlantedRide ride = new PlantedRide(20);
        for (int i = 0; i < 200; i++) {
            ride.phase(1, 5000, 5000, 100, 0.87, 0.87, Map.of(Role.KNOCK, 10.0 + (i * 37) % 11));
        }
        assertLevel(NOTE, "knock-not-judged", with(ride));
        assertQuiet("knock", with(ride));
    }

    @Test
    void severalFaultsTogetherComeWorstFirst() {
        PlantedCase planted =
                with(cuts(1.1).phase(2, 5000, 20, 1.0).phase(3, 5000, 100, 1.0).steady(Role.BATTERY, 12));
        planted.readings[cell(6, 2)] = 0;
        List<Caution> all = planted.judge();
        List<String> rules = all.stream().map(Caution::rule).toList();
        assertTrue(
                rules.containsAll(
                        List.of("lean-under-load", "high-load-not-ridden", "sensor-blind-to-fuel-cut", "battery-low")),
                rules.toString());
        for (int i = 1; i < all.size(); i++) {
            assertTrue(all.get(i - 1).level().compareTo(all.get(i).level()) <= 0);
        }
        assertEquals(all, planted.judge());
    }

    /** Ten steady stretches at light load and three pulls, with these mixtures. */
    private static PlantedRide lightAndHigh(double light, double high) {
        PlantedRide ride = new PlantedRide(20).noise(0.002);
        for (int i = 0; i < 10; i++) {
            ride.phase(5, 3000, 8, light).phase(1, 3800, 25, light);
        }
        for (int i = 0; i < 3; i++) {
            ride.phase(5, 6000, 100, high);
        }
        return ride;
    }

    private static java.util.Optional<Caution> closedLoop(PlantedRide ride) {
        return new PlantedCase().ride(ride.named("ride")).judge("closed-loop-unlogged");
    }

    @Test
    void lightLoadOnTargetWithHighLoadOffItAsksForAClosedLoop() {
        Caution caution = closedLoop(lightAndHigh(1.0, 0.81)).orElseThrow();
        assertEquals(Caution.Level.CHECK, caution.level());
    }

    @Test
    void highLoadNearlyOnTargetOrLightLoadOffItAsksNothing() {
        assertTrue(closedLoop(lightAndHigh(1.0, 0.85)).isEmpty());
        assertTrue(closedLoop(lightAndHigh(1.02, 0.81)).isEmpty());
    }

    @Test
    void withTrimsInTheLogOrWithoutAMixtureNoClosedLoopIsAskedFor() {
        assertTrue(
                closedLoop(lightAndHigh(1.0, 0.81).steady(Role.SHORT_TRIM, 0)).isEmpty());
        assertTrue(closedLoop(lightAndHigh(1.0, 0.81).withoutMixture()).isEmpty());
    }

    private static java.util.Optional<Caution> throttleShort(double most, int times, boolean logged) {
        PlantedRide ride = new PlantedRide(20);
        for (int i = 0; i < times; i++) {
            ride.phase(3, 3000, 20, 1.0).phase(3, 5000, most, 0.87);
        }
        ride.phase(3, 3000, 20, 1.0);
        return new PlantedCase()
                .ride((logged ? ride : ride.withoutThrottle()).named("ride"))
                .judge("throttle-short");
    }

    @Test
    void aThrottleThatStandsShortOfOpenAgainAndAgainIsAskedFor() {
        assertEquals(
                Caution.Level.CHECK, throttleShort(82, 3, true).orElseThrow().level());
    }

    @Test
    void twiceOrFullyOpenOrNotLoggedIsNoThrottleThatStandsShort() {
        assertTrue(throttleShort(82, 2, true).isEmpty());
        assertTrue(throttleShort(99, 3, true).isEmpty());
        assertTrue(throttleShort(82, 3, false).isEmpty());
    }

    private static Ride reading(String name, double factor) {
        PlantedRide ride = new PlantedRide(20).clean(1);
        for (int i = 0; i < 8; i++) {
            ride.phase(5, 4500, 20, 0.98).phase(5, 5000, 100, 0.87 * factor).phase(5, 6000, 100, 0.87 * factor);
        }
        return ride.named(name);
    }

    @Test
    void ridesThatDisagreeAtHighLoadAreAStopThatNamesTheCells() {
        PlantedCase planted = new PlantedCase().ride(reading("A", 1.0)).ride(reading("B", 0.87));
        Caution apart = planted.judge("rides-apart").orElseThrow();
        assertTrue(apart.isStop(), apart.sentence());
        assertTrue(
                apart.cells().containsAll(List.of(cell(6, 4), cell(6, 5))),
                apart.cells().toString());
        assertTrue(apart.what().contains("A reads 12 % leaner than B"), apart.what());
        assertTrue(apart.todo().contains("with which table each ride was made"), apart.todo());
        assertQuiet("rides-apart", new PlantedCase().ride(reading("A", 1.0)).ride(reading("B", 0.97)));
        PlantedCase declared = new PlantedCase().ride(reading("A", 1.0));
        declared.fuelTable = PlantedCase.table(Quantity.VOLUMETRIC_EFFICIENCY, PlantedCase.THROTTLE, c -> 91);
        declared.evidence(0, 0.005, 50);
        assertQuiet("rides-apart", declared.ride(reading("B", 0.87)));
    }

    @Test
    void leanAtSmallOpeningsOfAnUndescribedEngineMayBeItsBodies() {
        PlantedCase unknown = new PlantedCase();
        unknown.fuelTable = PlantedCase.table(Quantity.VOLUMETRIC_EFFICIENCY, PlantedCase.THROTTLE, c -> 20 + c);
        unknown.evidence(0, 0.005, 50);
        Caution leak = unknown.ride(leak(1.12).named("ride")).judge("leak").orElseThrow();
        assertTrue(leak.what().contains("bigger bodies do just that"), leak.what());
        assertTrue(leak.what().indexOf("bigger bodies") < leak.what().indexOf("a leak ahead"), leak.what());
    }

    private static Ride withColumn(String heading, java.util.function.DoubleUnaryOperator ofShare) {
        Ride ride = drifting(1.0).named("ride");
        double[] values = new double[ride.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = ofShare.applyAsDouble((double) i / values.length);
        }
        List<Channel> channels = new java.util.ArrayList<>(ride.channels());
        channels.add(new Channel(heading, Role.OTHER, Unit.ONE, Column.of(values), Channel.Confidence.SURE, ""));
        return new Ride("ride", ride.timeS(), channels, ride.segmentStarts(), List.of());
    }

    @Test
    void aColumnThatWarmsUpAsACoolantDoesIsNamed() {
        Caution named = new PlantedCase()
                .ride(withColumn("engine T [°C]", x -> 86 - 70 * Math.exp(-5 * x)))
                .judge("coolant-not-logged")
                .orElseThrow();
        assertTrue(named.what().contains("'engine T [°C]'"), named.what());
        assertTrue(named.todo().contains("give it that role"), named.todo());
        Caution steady = new PlantedCase()
                .ride(withColumn("load", x -> 40 + 40 * Math.sin(200 * x)))
                .judge("coolant-not-logged")
                .orElseThrow();
        assertFalse(steady.what().contains("'load'"), steady.what());
    }

    @Test
    void aSlippedDigitIsAskedForAndNoInjectorIsFittedForIt() {
        PlantedCase planted = new PlantedCase();
        planted.fuelTable = PlantedCase.table(Quantity.INJECTOR_PULSE, PlantedCase.THROTTLE, c -> 10.41);
        planted.evidence(0, 0.005, 50);
        planted.plant(cell(6, 5), 10, 1, Standing.MEASURED, CellProposal.Kind.SET);
        planted.ride(ride().named("ride"));
        Caution slip = planted.judge("figure-slipped").orElseThrow();
        assertEquals(Set.of(cell(6, 5)), slip.cells());
        assertTrue(slip.what().contains("6000 rpm, 100 % throttle was set to 104.1; the table has 10.41"), slip.what());
        assertQuiet("injector-duty-table", planted);
        assertQuiet("cliff", planted);
        planted.plant(cell(6, 5), 14.01 / 10.41, 1, Standing.MEASURED, CellProposal.Kind.SET);
        assertTrue(planted.judge("figure-slipped").orElseThrow().what().contains("two digits swapped"));
        planted.plant(cell(6, 5), 1.3, 1, Standing.MEASURED, CellProposal.Kind.SET);
        assertQuiet("figure-slipped", planted);
    }

    @Test
    void whatStaysLeanWithTheProposalIsSaidWithItsAmount() {
        PlantedRide hole = ride().phase(2, 5000, 20, 1.0).phase(2, 5000, 100, 1.06);
        PlantedCase planted = with(hole);
        for (int c = 0; c < planted.proposed.size(); c++) {
            planted.plant(c, 1.05, 1.05, Standing.MEASURED);
        }
        Caution left = planted.judge("lean-after-proposal").orElseThrow();
        assertTrue(left.isStop());
        assertTrue(left.what().startsWith("1 of 1 lean moment at high load"), left.what());
        assertEquals(1.06 / 1.05, left.worst().orElseThrow().worst(), 0.015);
        for (int c = 0; c < planted.proposed.size(); c++) {
            planted.plant(c, 1.2, 1.2, Standing.MEASURED);
        }
        assertQuiet("lean-after-proposal", planted);
    }
}
