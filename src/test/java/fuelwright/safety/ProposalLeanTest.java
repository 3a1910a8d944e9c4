package fuelwright.safety;

import static fuelwright.safety.PlantedCase.cell;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.CellProposal.Kind;
import fuelwright.estimate.Standing;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ProposalLeanTest {

    private final PlantedCase planted =
            new PlantedCase().ride(new PlantedRide(20).clean(3).named("ride"));

    @Test
    void nothingPlantedIsQuiet() {
        assertEquals(List.of(), planted.stops());
        assertTrue(
                planted.judge().stream().noneMatch(c -> !c.cells().isEmpty()),
                planted.judge().toString());
    }

    @Test
    void aCapThatLeavesHighLoadBeyondItsLimitIsAStopThatSaysHowLean() {
        Caution caution = planted.plant(cell(6, 4), 1.4, 1.55, Standing.MEASURED, Kind.CAP_ON_ADDING)
                .judge("cap-holds-back-fuel")
                .orElseThrow();
        assertEquals(Caution.Level.STOP, caution.level());
        assertEquals(Set.of(cell(6, 4)), caution.cells());
        // 0.87 · 1.55 / 1.4 = 0.963
        assertTrue(caution.what().contains("11 % lean, lambda 0.96"), caution.what());
    }

    @Test
    void aCapThatLeavesHighLoadShortButWithinItsLimitIsACheck() {
        assertEquals(
                Caution.Level.CHECK,
                planted.plant(cell(6, 4), 1.4, 1.46, Standing.MEASURED, Kind.CAP_ON_ADDING)
                        .judge("cap-holds-back-fuel")
                        .orElseThrow()
                        .level());
    }

    @Test
    void aCapThatHardlyHoldsAnythingBackIsQuiet() {
        assertTrue(planted.plant(cell(6, 4), 1.4, 1.41, Standing.MEASURED, Kind.CAP_ON_ADDING)
                .judge("cap-holds-back-fuel")
                .isEmpty());
    }

    @Test
    void aCapAtLightLoadIsACheckOnlyWhenFarBeyondTheTarget() {
        planted.plant(cell(1, 4), 1.4, 1.65, Standing.MEASURED, Kind.CAP_ON_ADDING);
        assertEquals(
                Caution.Level.CHECK,
                planted.judge("cap-holds-back-fuel").orElseThrow().level());
        planted.plant(cell(1, 4), 1.4, 1.55, Standing.MEASURED, Kind.CAP_ON_ADDING);
        assertTrue(planted.judge("cap-holds-back-fuel").isEmpty());
    }

    @Test
    void aHeldCellThatStaysLeanAtHighLoadIsSaid() {
        planted.plant(cell(5, 3), 1, 1.09, Standing.MEASURED, Kind.HELD);
        assertTrue(planted.judge("held-lean").orElseThrow().isStop());
        planted.plant(cell(5, 3), 1, 1.03, Standing.MEASURED, Kind.HELD);
        assertEquals(
                Caution.Level.CHECK, planted.judge("held-lean").orElseThrow().level());
        planted.plant(cell(5, 3), 1, 1.0, Standing.MEASURED, Kind.HELD);
        assertTrue(planted.judge("held-lean").isEmpty());
    }

    @Test
    void aHeldCellThatNobodyRodeStillFires() {
        planted.plant(cell(5, 3), 1, 1.09, Standing.INFERRED, Kind.HELD);
        assertTrue(planted.judge("held-lean").orElseThrow().isStop());
    }

    @Test
    void aHeldCellBesideHighLoadIsJudgedAsItsEdge() {
        // 0.92 · 1.13 = 1.04; the limit at the edge is 0.97.
        Caution caution = planted.plant(cell(3, 3), 1, 1.13, Standing.MEASURED, Kind.HELD)
                .judge("held-lean")
                .orElseThrow();
        assertEquals(Caution.Level.STOP, caution.level());
        assertTrue(
                caution.what().contains("at the edge of high load, beyond the lean limit, short of fuel"),
                caution.what());
        assertTrue(caution.what().contains("13 % lean, lambda 1.04 for a target of 0.92, limit 0.97"), caution.what());
        planted.plant(cell(3, 3), 1, 1.05, Standing.MEASURED, Kind.HELD);
        assertEquals(
                Caution.Level.CHECK, planted.judge("held-lean").orElseThrow().level());
        planted.plant(cell(3, 3), 1, 1.005, Standing.MEASURED, Kind.HELD);
        assertTrue(planted.judge("held-lean").isEmpty());
    }

    @Test
    void aSetCellWithATargetOfFullLoadIsJudgedAsItsEdgeWhereverItLies() {
        planted.target = PlantedCase.table(
                fuelwright.table.Quantity.LAMBDA,
                PlantedCase.THROTTLE,
                c -> c == cell(1, 3) ? 0.90 : planted.targetFigure(c));
        planted.plant(cell(1, 3), 0.9, 0.99, Standing.MEASURED, Kind.SET);
        assertTrue(planted.judge("held-lean").orElseThrow().isStop());
        planted.target = PlantedCase.table(
                fuelwright.table.Quantity.LAMBDA,
                PlantedCase.THROTTLE,
                c -> c == cell(1, 3) ? 0.91 : planted.targetFigure(c));
        assertTrue(planted.judge("held-lean").isEmpty(), "light load: 10 % are 0.09 lambda");
    }

    @Test
    void atLightLoadAHeldCellIsACheckHoweverLean() {
        planted.plant(cell(1, 3), 1, 1.3, Standing.MEASURED, Kind.HELD);
        assertEquals(
                Caution.Level.CHECK, planted.judge("held-lean").orElseThrow().level());
    }

    @Test
    void holdingWhereTheRidesWereLeanUnderLoadTakesTheCureAway() {
        PlantedCase lean = new PlantedCase()
                .ride(new PlantedRide(20)
                        .clean(3)
                        .phase(2, 5000, 20, 1.0)
                        .phase(1.5, 5000, 100, 0.99)
                        .named("ride"));
        int stop = lean.judge("lean-under-load").orElseThrow().cells().first();
        // 0.87 · 1.04 = 0.905 is within the limit of 0.92.
        Caution caution = lean.plant(stop, 1, 1.04, Standing.MEASURED, Kind.HELD)
                .judge("held-lean")
                .orElseThrow();
        assertEquals(Caution.Level.STOP, caution.level());
        assertTrue(!caution.sentence().contains("within the lean limit"), caution.sentence());
        lean.plant(stop, 1, 1.005, Standing.MEASURED, Kind.HELD);
        assertTrue(lean.judge("held-lean").isEmpty());
        Caution capped = lean.plant(stop, 1, 1.04, Standing.MEASURED, Kind.CAP_ON_ADDING)
                .judge("cap-holds-back-fuel")
                .orElseThrow();
        assertEquals(Caution.Level.CHECK, capped.level());
        assertTrue(!capped.sentence().contains("within the lean limit"), capped.sentence());
    }

    @Test
    void withoutARideNothingWasSeenLean() {
        PlantedCase unridden = new PlantedCase();
        unridden.plant(cell(6, 4), 1, 1.04, Standing.MEASURED, Kind.HELD);
        assertEquals(
                Caution.Level.CHECK, unridden.judge("held-lean").orElseThrow().level());
    }

    @Test
    void aRichHeldCellIsQuiet() {
        planted.plant(cell(5, 3), 1, 0.8, Standing.MEASURED, Kind.HELD);
        assertTrue(planted.judge("held-lean").isEmpty());
    }

    @Test
    void shortOfFuelForNoNamedReasonIsTheProposalsFault() {
        planted.plant(cell(5, 3), 1.0, 1.09, Standing.MEASURED);
        assertTrue(planted.judge("proposal-lean").orElseThrow().isStop());
    }

    @Test
    void leaningHighLoadWithoutMeasurementIsAStop() {
        planted.plant(cell(6, 5), 0.97, 0.9, Standing.THIN);
        assertTrue(planted.judge("leaned-unmeasured").orElseThrow().isStop());
        planted.plant(cell(6, 5), 0.9999, 0.9, Standing.THIN);
        assertTrue(planted.judge("leaned-unmeasured").isEmpty());
    }

    @Test
    void leaningMeasuredHighLoadWithinTheEvidenceIsQuietAndBeyondItAsksForALook() {
        planted.plant(cell(6, 5), 0.97, 0.95, Standing.MEASURED);
        assertTrue(planted.judge().stream().noneMatch(c -> c.rule().startsWith("leaned")));
        planted.plant(cell(6, 5), 0.995, 0.995, Standing.MEASURED);
        assertEquals(
                Caution.Level.CHECK,
                planted.judge("leaned-in-doubt").orElseThrow().level());
    }

    @Test
    void leaningLightLoadIsNoSafetyMatter() {
        planted.plant(cell(1, 5), 0.9, 0.9, Standing.THIN);
        assertTrue(planted.judge().stream().noneMatch(c -> c.rule().startsWith("leaned")));
    }

    @Test
    void severalFaultsEachGetTheirCautionWorstFirst() {
        planted.plant(cell(6, 4), 1.4, 1.46, Standing.MEASURED, Kind.CAP_ON_ADDING);
        planted.plant(cell(5, 3), 1, 1.09, Standing.MEASURED, Kind.HELD);
        planted.plant(cell(6, 5), 0.97, 0.9, Standing.THIN);
        List<String> rules = planted.judge().stream().map(Caution::rule).toList();
        assertTrue(
                rules.containsAll(List.of("held-lean", "leaned-unmeasured", "cap-holds-back-fuel")), rules.toString());
        assertTrue(rules.indexOf("leaned-unmeasured") < rules.indexOf("cap-holds-back-fuel"));
    }

    @Test
    void withoutAProposalThereIsNothingToSayAboutIt() {
        planted.proposed = null;
        assertTrue(planted.judge().stream()
                .noneMatch(c -> c.rule().startsWith("leaned")
                        || c.rule().contains("holds")
                        || c.rule().equals("cliff")));
    }
}
