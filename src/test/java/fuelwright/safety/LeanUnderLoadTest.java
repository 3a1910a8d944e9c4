package fuelwright.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.ride.Role;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenSettings;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LeanUnderLoadTest {

    private static PlantedRide ride() {
        return new PlantedRide(20).clean(3);
    }

    private static Optional<Caution> judge(String rule, PlantedRide ride) {
        return new PlantedCase().ride(ride.named("ride")).judge(rule);
    }

    private static void assertNoLean(PlantedRide ride) {
        assertEquals(
                java.util.List.of(),
                new PlantedCase()
                        .ride(ride.named("ride")).judge().stream()
                                .filter(c ->
                                        c.rule().startsWith("lean") || c.rule().startsWith("fuel-supply"))
                                .map(Caution::sentence)
                                .toList());
    }

    @Test
    void aCleanRideWithFuelCutsAndPullsIsQuiet() {
        assertNoLean(ride());
    }

    @Test
    void aLeanSecondOfFullThrottleInAnUnriddenPlaceIsAStopWithItsMoment() {
        Caution caution = judge(
                        "lean-under-load", ride().phase(2, 5000, 20, 1.0).phase(1.5, 5000, 100, 0.99))
                .orElseThrow();
        assertEquals(Caution.Level.STOP, caution.level());
        Caution.Moment worst = caution.worst().orElseThrow();
        // What was lean from the first reading on counts from where load got high.
        assertEquals(179.0, worst.startS(), 0.2);
        assertTrue(worst.lengthS() > 1.0 && worst.lengthS() < 1.5, worst.toString());
        assertEquals(0.99, worst.worst(), 0.02);
        assertEquals(5000, worst.speedRpm(), 1);
        assertTrue(caution.cells().contains(PlantedCase.cell(6, 4)));
    }

    @Test
    void justWithinTheLimitIsQuiet() {
        assertNoLean(ride().phase(2, 5000, 20, 1.0).phase(3, 5000, 100, 0.91));
    }

    @Test
    void shorterThanAMomentIsQuiet() {
        assertNoLean(
                ride().phase(5, 5000, 100, 0.87).phase(0.3, 5000, 100, 1.05).phase(5, 5000, 100, 0.87));
    }

    @Test
    void theSameLeanMixtureAtLightLoadIsNotLeanUnderLoad() {
        assertNoLean(ride().phase(10, 5000, 30, 1.0));
    }

    @Test
    void aPeggedReadingAtFullThrottleIsADangerAndNoSensorFault() {
        Caution caution = judge(
                        "lean-under-load",
                        ride().phase(2, 5000, 20, 1.0).phase(3, 5000, 100, 1.6).noise(0))
                .orElseThrow();
        assertTrue(caution.isStop());
        assertEquals(1.36, caution.worst().orElseThrow().worst(), 0.01);
    }

    @Test
    void aLonePullWithoutAClosedThrottleHidesNothing() {
        PlantedRide pull = new PlantedRide(20).phase(5, 4000, 7000, 100, 1.3, 1.3, Map.of());
        assertTrue(judge("lean-under-load", pull).orElseThrow().isStop());
    }

    @Test
    void aLimiterThatCutsTheFuelIsNotLean() {
        assertNoLean(ride().phase(4, 7900, 7900, 100, 0.87, 0.87, Map.of())
                .phase(2, 8000, 8000, 100, 1.5, 1.5, Map.of(Role.FUEL_CUT, 1.0))
                .phase(4, 7000, 20, 1.0));
    }

    @Test
    void aFlagThatIsAlwaysSetHidesNothing() {
        PlantedRide ride =
                ride().phase(2, 5000, 20, 1.0).phase(1.5, 5000, 100, 0.99).steady(Role.FUEL_CUT, 1);
        assertTrue(judge("lean-under-load", ride).isPresent());
    }

    @Test
    void fullThrottleStraightAfterAnOverrunIsQuiet() {
        assertNoLean(ride().phase(4, 6000, 0, 1.5).phase(5, 5500, 100, 0.87));
    }

    @Test
    void leanThatStaysAfterAnOverrunIsFound() {
        assertTrue(judge("lean-under-load", ride().phase(4, 6000, 0, 1.5).phase(5, 5500, 100, 1.0))
                .isPresent());
    }

    @Test
    void coldDoesNotHideIt() {
        PlantedRide ride =
                ride().phase(2, 5000, 20, 1.0).phase(1.5, 5000, 100, 0.99).steady(Role.COOLANT, 30);
        assertTrue(judge("lean-under-load", ride).isPresent());
    }

    @Test
    void aMovingThrottleDoesNotHideIt() {
        PlantedRide ride = ride();
        for (int i = 0; i < 8; i++) {
            ride.phase(0.4, 5000, i % 2 == 0 ? 70 : 95, 1.0);
        }
        assertTrue(judge("lean-under-load", ride).isPresent());
    }

    @Test
    void theOpeningThrottlesLeanMomentIsToldApart() {
        PlantedRide ride = ride().phase(2, 5000, 20, 1.0)
                .phase(1.2, 5000, 5100, 100, 1.25, 0.85, Map.of())
                .phase(3, 5100, 100, 0.87);
        assertTrue(judge("lean-tip-in", ride).orElseThrow().isStop(), "half a second beyond 0.95 is never less");
        assertTrue(judge("lean-under-load", ride).isEmpty());
        PlantedRide milder = ride().phase(2, 5000, 20, 1.0)
                .phase(1.2, 5000, 5100, 100, 0.96, 0.87, Map.of())
                .phase(3, 5100, 100, 0.87);
        assertEquals(
                Caution.Level.CHECK, judge("lean-tip-in", milder).orElseThrow().level());
    }

    @Test
    void anOpeningMomentInACellThatIsLeanByEvidenceIsTheTablesDoing() {
        PlantedRide ride = ride().phase(2, 5000, 20, 1.0)
                .phase(1.2, 5000, 5100, 100, 1.25, 0.85, Map.of())
                .phase(3, 5100, 100, 0.87);
        PlantedCase planted = new PlantedCase().ride(ride.named("ride"));
        planted.logFactors[PlantedCase.cell(6, 4)] = 0.12;
        assertTrue(planted.judge("lean-under-load").isPresent());
    }

    @Test
    void fuelThatFadesOverALongPullIsTheSupply() {
        PlantedRide ride = ride().phase(5, 7000, 20, 1.0)
                .phase(8, 7000, 7000, 100, 0.86, 0.86, Map.of())
                .phase(8, 7000, 7000, 100, 0.86, 1.10, Map.of())
                .phase(5, 4000, 20, 1.0);
        Caution caution = judge("fuel-supply-fading", ride).orElseThrow();
        assertTrue(caution.isStop());
        assertTrue(judge("lean-under-load", ride).isEmpty());
    }

    @Test
    void aHoleAtFullThrottleIsTheTableAlthoughLessThrottleWasFineBefore() {
        PlantedRide ride = ride();
        for (int i = 0; i < 3; i++) {
            ride.phase(5, 6000, 20, 1.0).phase(3, 6000, 92, 0.87).phase(5, 5950, 6150, 100, 1.0, 1.0, Map.of());
        }
        assertTrue(judge("fuel-supply-fading", ride).isEmpty());
        assertTrue(judge("lean-under-load", ride).orElseThrow().isStop());
    }

    @Test
    void whatWarmUpEnrichmentHidIsTheTableWithTheScreenOffToo() {
        PlantedRide ride = new PlantedRide(20).clean(1);
        Map<Role, Double> cold = Map.of(Role.COOLANT, 40.0);
        Map<Role, Double> warm = Map.of(Role.COOLANT, 85.0);
        for (int i = 0; i < 10; i++) {
            Map<Role, Double> coolant = i < 4 ? cold : warm;
            double lambda = i < 4 ? 0.87 : 1.0;
            ride.phase(20, 6000, 6000, 20, 1.0, 1.0, coolant).phase(3, 6000, 6000, 100, lambda, lambda, coolant);
        }
        ScreenSettings off = ScreenSettings.defaults().with(Screen.TOO_COLD, false);
        PlantedCase planted = new PlantedCase().ride(ride.named("ride"), off);
        assertTrue(planted.judge("fuel-supply-fading").isEmpty());
        assertTrue(planted.judge("lean-under-load").orElseThrow().isStop());
    }

    @Test
    void whatLaterRidesWithThePresentTableShowToBeRightIsNoStop() {
        PlantedRide faded = ride().phase(5, 7000, 20, 1.0)
                .phase(8, 7000, 7000, 100, 0.86, 0.86, Map.of())
                .phase(8, 7000, 7000, 100, 0.86, 1.10, Map.of())
                .phase(5, 4000, 20, 1.0);
        PlantedCase planted = new PlantedCase().ride(faded.named("before"));
        planted.fuelTable =
                PlantedCase.table(fuelwright.table.Quantity.VOLUMETRIC_EFFICIENCY, PlantedCase.THROTTLE, c -> 81);
        planted.evidence(0, 0.005, 50);
        planted.ride(ride().phase(5, 7000, 20, 1.0).phase(4, 7000, 100, 0.87).named("short"));
        assertTrue(planted.judge("fuel-supply-fading").orElseThrow().isStop(), "not drawn for as long");
        planted.ride(ride().phase(5, 7000, 20, 1.0).phase(16, 7000, 100, 0.87).named("after"));
        assertTrue(planted.judge("fuel-supply-fading").isEmpty());
        assertEquals(
                Caution.Level.CHECK,
                planted.judge("lean-with-earlier-table").orElseThrow().level());
    }

    @Test
    void aTipInWithAnEarlierTableIsNotSettledBySteadyFullThrottle() {
        PlantedRide opening = ride().phase(2, 5000, 20, 1.0)
                .phase(1.2, 5000, 5100, 100, 1.25, 0.85, Map.of())
                .phase(3, 5100, 100, 0.87);
        PlantedCase planted = new PlantedCase().ride(opening.named("before"));
        planted.fuelTable =
                PlantedCase.table(fuelwright.table.Quantity.VOLUMETRIC_EFFICIENCY, PlantedCase.THROTTLE, c -> 81);
        planted.evidence(0, 0.005, 50);
        planted.ride(ride().phase(5, 5000, 20, 1.0).phase(6, 5000, 100, 0.87).named("after"));
        assertTrue(planted.judge("lean-tip-in").orElseThrow().isStop());
    }

    @Test
    void fullThrottleIsTheWorstAndAClosingThrottleNever() {
        PlantedRide ride = new PlantedRide(20);
        for (int i = 0; i < 2; i++) {
            ride.phase(4, 6500, 20, 1.0)
                    .phase(2, 6500, 6500, 65, 1.02, 1.02, Map.of())
                    .phase(4, 5000, 20, 1.0)
                    .phase(3, 5000, 100, 0.96)
                    .phase(0.3, 5000, 62, 1.3)
                    .phase(4, 5000, 20, 1.0);
        }
        Caution caution = judge("lean-under-load", ride).orElseThrow();
        Caution.Moment worst = caution.worst().orElseThrow();
        assertEquals(
                100,
                worst.load(),
                1,
                new PlantedCase().ride(ride.named("ride")).judge().toString());
        assertEquals(0.96, worst.worst(), 0.02);
    }

    @Test
    void onlyWhatGetsLeanerAtSteadyLoadMakesTheSupplyASuspect() {
        String suspect = "fuel supply (pump, filter, pressure)";
        PlantedRide steady = ride().phase(2, 5000, 20, 1.0).phase(5, 5000, 5000, 100, 0.95, 1.08, Map.of());
        String said = judge("lean-under-load", steady).orElseThrow().what();
        assertTrue(said.contains(suspect), said);
        assertTrue(
                java.util.regex.Pattern.compile(
                                "; there the mixture kept getting leaner while load stayed, from lambda 0.9\\d to lambda 1.0\\d in [45].\\d s")
                        .matcher(said)
                        .find(),
                said);
        PlantedRide closing = ride().phase(2, 5000, 20, 1.0);
        for (int i = 0; i < 10; i++) {
            closing.phase(0.5, 5000, 100 - 4 * i, 0.95 + 0.013 * i);
        }
        assertTrue(!judge("lean-under-load", closing).orElseThrow().what().contains(suspect));
    }

    @Test
    void whatAnotherMomentShowsIsNotSaidOfTheWorst() {
        // The worst, at full throttle, is flat; a lesser one at 70 % gets leaner to its end.
        PlantedRide ride = ride().phase(2, 7000, 20, 1.0)
                .phase(5, 7000, 100, 1.05)
                .phase(4, 7000, 20, 1.0)
                .phase(4, 5000, 5000, 70, 0.97, 1.10, Map.of())
                .phase(4, 4000, 20, 1.0);
        String said = judge("lean-under-load", ride).orElseThrow().what();
        assertTrue(!said.contains("; there the mixture"), said);
        assertTrue(said.contains("; not there, but in 1 of the 2 moments (such as "), said);
        assertTrue(said.contains("(not the leanest: that was"), said);
        PlantedRide flat =
                ride().phase(2, 7000, 20, 1.0).phase(5, 7000, 100, 1.05).phase(4, 4000, 20, 1.0);
        String alone = judge("lean-under-load", flat).orElseThrow().what();
        assertTrue(!alone.contains("kept getting leaner") && !alone.contains("the leanest"), alone);
    }

    @Test
    void aFlatMixtureUnderATargetThatGetsRicherIsNotSaidToGetLeaner() {
        // 6500 rpm and on: the target falls with engine speed, lambda stays at 1.00.
        PlantedCase planted = new PlantedCase();
        planted.target = PlantedCase.table(
                fuelwright.table.Quantity.LAMBDA,
                PlantedCase.THROTTLE,
                c -> PlantedCase.SPEED.at(c % PlantedCase.SPEED.size()) >= 8000 ? 0.80 : planted.targetFigure(c));
        planted.ride(ride().phase(2, 5000, 20, 1.0)
                .phase(5, 7000, 8000, 100, 1.0, 1.0, Map.of())
                .phase(4, 4000, 20, 1.0)
                .named("ride"));
        String said = planted.judge("lean-under-load").orElseThrow().what();
        assertTrue(!said.contains("kept getting leaner"), said);
    }

    @Test
    void aTipInWhereTheTableIsLeanAsWellSaysSo() {
        PlantedRide ride = ride().phase(2, 5000, 20, 1.0)
                .phase(1.2, 5000, 5100, 100, 1.25, 0.85, Map.of())
                .phase(3, 5100, 100, 0.87);
        PlantedCase planted = new PlantedCase().ride(ride.named("ride"));
        assertTrue(planted.judge("lean-tip-in").orElseThrow().todo().contains("can't cure"));
        planted.logFactors[PlantedCase.cell(6, 4)] = 0.045;
        Caution both = planted.judge("lean-tip-in").orElseThrow();
        assertTrue(both.isStop());
        assertTrue(both.what().contains("the table itself is lean there, by up to 5 %"), both.what());
        assertTrue(both.todo().contains("before you touch the accel enrichment"), both.todo());
    }

    @Test
    void aLeanHoleThatEveryPullCrossesIsTheTable() {
        PlantedRide ride = new PlantedRide(20);
        for (int i = 0; i < 5; i++) {
            ride.phase(10, 3000, 20, 1.0)
                    .phase(2, 3000, 4600, 100, 0.87, 0.87, Map.of())
                    .phase(0.7, 4600, 5200, 100, 0.87, 1.02, Map.of())
                    .phase(0.7, 5200, 5800, 100, 1.02, 0.87, Map.of())
                    .phase(2, 5800, 7500, 100, 0.87, 0.87, Map.of());
        }
        Caution caution = judge("lean-under-load", ride).orElseThrow();
        assertEquals(5, caution.moments().size());
        assertTrue(judge("fuel-supply-fading", ride).isEmpty());
        assertTrue(judge("lean-moment", ride).isEmpty());
    }

    @Test
    void onceAndShortInACellThatIsFineOtherwiseIsACheck() {
        PlantedRide ride =
                ride().phase(6, 5000, 100, 0.87).phase(0.75, 5000, 100, 0.94).phase(6, 5000, 100, 0.87);
        assertEquals(
                Caution.Level.CHECK, judge("lean-moment", ride).orElseThrow().level());
        assertTrue(judge("lean-under-load", ride).isEmpty());
        PlantedRide leaner =
                ride().phase(6, 5000, 100, 0.87).phase(0.75, 5000, 100, 0.97).phase(6, 5000, 100, 0.87);
        assertTrue(judge("lean-moment", leaner).orElseThrow().isStop(), "half a second beyond 0.95 is never less");
    }

    @Test
    void aCellThatIsLeanByEvidenceIsAStopThoughEveryCrossingWasShort() {
        PlantedCase planted = new PlantedCase().ride(ride().named("ride"));
        planted.logFactors[PlantedCase.cell(5, 3)] = 0.08;
        Caution caution = planted.judge("lean-under-load").orElseThrow();
        assertEquals(java.util.Set.of(PlantedCase.cell(5, 3)), caution.cells());
        planted.logFactors[PlantedCase.cell(5, 3)] = 0.05;
        assertTrue(planted.judge("lean-under-load").isEmpty());
    }

    @Test
    void aFrozenSensorIsNotTakenForALeanEngine() {
        PlantedRide frozen =
                new PlantedRide(20).noise(0).phase(30, 3000, 20, 1.0).phase(4, 3000, 6000, 100, 1.0, 1.0, Map.of());
        assertTrue(judge("lean-under-load", frozen).isEmpty());
    }

    @Test
    void withoutAMixtureChannelItSaysThatNothingWasChecked() {
        Caution caution = judge("lean-not-checked", ride().withoutMixture()).orElseThrow();
        assertEquals(Caution.Level.CHECK, caution.level());
        assertTrue(judge("lean-not-checked", ride()).isEmpty());
    }

    @Test
    void aPressureTableIsJudgedByPressureWithoutAThrottle() {
        PlantedRide ride = ride().phase(2, 5000, 20, 1.0)
                .phase(1.5, 5000, 100, 0.99)
                .withPressure()
                .withoutThrottle();
        assertTrue(new PlantedCase()
                .byPressure()
                .ride(ride.named("ride"))
                .judge("lean-under-load")
                .isPresent());
    }

    @Test
    void aSecondLeanCylinderIsFoundByItsOwnSensor() {
        Caution caution = judge("lean-under-load", ride().secondSensor(1.1)).orElseThrow();
        assertTrue(caution.isStop());
    }

    @Test
    void anEarlierTablesLeanIsACheckOnceThePresentTableAddsEnough() {
        PlantedRide ride = ride().phase(2, 5000, 20, 1.0).phase(1.5, 5000, 100, 0.99);
        PlantedCase planted = new PlantedCase();
        planted.ride(ride.named("ride"));
        CaseFile.JudgedRide old = planted.rides.get(0);
        planted.fuelTable =
                PlantedCase.table(fuelwright.table.Quantity.VOLUMETRIC_EFFICIENCY, PlantedCase.THROTTLE, c -> 90);
        planted.evidence(0, 0.005, 50);
        assertEquals(80, old.madeWith().at(0));
        assertEquals(
                Caution.Level.CHECK,
                planted.judge("lean-with-earlier-table").orElseThrow().level());
        assertTrue(planted.judge("lean-under-load").isEmpty());
        planted.fuelTable =
                PlantedCase.table(fuelwright.table.Quantity.VOLUMETRIC_EFFICIENCY, PlantedCase.THROTTLE, c -> 83);
        planted.evidence(0, 0.005, 50);
        assertTrue(planted.judge("lean-under-load").orElseThrow().isStop());
    }

    @Test
    void farLeanerThanAskedAtLightLoadIsACheck() {
        PlantedCase planted = new PlantedCase().ride(ride().named("ride"));
        planted.logFactors[PlantedCase.cell(1, 4)] = 0.16;
        assertEquals(
                Caution.Level.CHECK,
                planted.judge("lean-light-load").orElseThrow().level());
        planted.logFactors[PlantedCase.cell(1, 4)] = 0.13;
        assertTrue(planted.judge("lean-light-load").isEmpty());
        planted.withEstimate = false;
        assertTrue(planted.judge("lean-light-load").isEmpty());
    }

    @Test
    void missingReadingsDoNotHideWhatTheOthersSay() {
        PlantedRide ride =
                ride().phase(2, 5000, 20, 1.0).phase(1.5, 5000, 100, 0.99).everyOtherMissing();
        assertTrue(judge("lean-under-load", ride).orElseThrow().isStop());
    }

    @Test
    void aGapInTheLogDoesNotJoinTwoMomentsToOne() {
        PlantedRide ride = ride().phase(6, 5000, 100, 0.87)
                .phase(0.3, 5000, 100, 1.05)
                .gap(20)
                .phase(0.3, 5000, 100, 1.05)
                .phase(6, 5000, 100, 0.87);
        assertTrue(judge("lean-under-load", ride).isEmpty());
        assertTrue(judge("lean-moment", ride).isEmpty());
    }

    @Test
    void aRestartOfTheLogDoesNotJoinTwoMomentsToOne() {
        PlantedRide ride = ride().phase(6, 5000, 100, 0.87)
                .phase(0.3, 5000, 100, 1.05)
                .restart()
                .phase(0.3, 5000, 100, 1.05)
                .phase(6, 5000, 100, 0.87);
        assertTrue(judge("lean-under-load", ride).isEmpty());
    }

    @Test
    void aSensorThatWarmsUpAtItsLeanEndIsNotALeanEngine() {
        PlantedRide ride = new PlantedRide(20).noise(0).phase(4, 1500, 5, 1.6).phase(4, 5000, 100, 1.6);
        assertTrue(judge("lean-under-load", ride.phase(60, 3000, 20, 1.0)).isEmpty());
    }

    @Test
    void aPullThatIsPeggedFromItsFirstRowIsADanger() {
        PlantedRide ride = new PlantedRide(20).noise(0).phase(8, 4000, 7000, 100, 1.6, 1.6, Map.of());
        assertTrue(judge("lean-under-load", ride).orElseThrow().isStop());
        assertTrue(judge("lean-under-load", ride.phase(60, 3000, 20, 1.0))
                .orElseThrow()
                .isStop());
    }

    @Test
    void aRideWithoutRowsOrWithoutLoadIsSaidNotToHaveBeenChecked() {
        assertTrue(judge("lean-not-checked", new PlantedRide(20)).isPresent());
        assertTrue(judge("lean-not-checked", ride().withoutThrottle()).isPresent());
    }

    /** Beyond both the target's excess and the ceiling, for as long as makes an event: whatever it looks like, it is a Stop. */
    @Test
    void aMomentBeyondBothLimitsIsAStopAlthoughTheCellIsFineOtherwise() {
        PlantedRide once = ride().phase(2, 5000, 20, 1.0)
                .phase(4, 5000, 100, 0.87)
                .phase(0.7, 5000, 100, 0.98)
                .phase(6, 5000, 100, 0.87);
        assertTrue(judge("lean-moment", once).orElseThrow().isStop());
    }

    @Test
    void aMomentBeyondTheTargetsExcessOnlyIsACheck() {
        PlantedRide once = ride().phase(2, 5000, 20, 1.0)
                .phase(4, 5000, 100, 0.87)
                .phase(0.8, 5000, 100, 0.935)
                .phase(6, 5000, 100, 0.87);
        assertEquals(
                Caution.Level.CHECK, judge("lean-moment", once).orElseThrow().level());
    }

    @Test
    void whatWasLeanAllAlongCountsFromWhereLoadGotHigh() {
        PlantedRide opened =
                ride().phase(3, 5000, 20, 1.1).phase(0.6, 5000, 100, 1.1).phase(2, 5000, 20, 1.1);
        assertTrue(new PlantedCase()
                .ride(opened.named("ride")).judge().stream()
                        .anyMatch(c -> c.isStop() && c.rule().startsWith("lean")));
    }

    @Test
    void whatComesAndGoesOverTheRideIsNotAFadingSupply() {
        PlantedRide misfiring = new PlantedRide(20).clean(1);
        for (int i = 0; i < 6; i++) {
            misfiring.phase(20, 5000, 20, 1.0).phase(4, 5000, 100, 0.87);
            misfiring.phase(0.9, 5000, 100, i % 2 == 0 ? 0.87 : 1.0).phase(4, 5000, 100, 0.87);
        }
        assertTrue(judge("fuel-supply-fading", misfiring).isEmpty());
    }
}
