package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.HighLoad;
import fuelwright.estimate.CellProposal.Kind;
import fuelwright.estimate.CellProposal.Step;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Each rule on the way from an estimate to the figure handed over. High load is throttle from 60 % on. */
class ProposalMakerTest {

    private static final Axis SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 1000, 4000);
    private static final Axis LOAD = new Axis(Axis.Kind.THROTTLE, 10, 30, 50, 80);
    private static final int LIGHT = 2;
    private static final int EDGE = 4;
    private static final int HIGH = 6;
    private static final double SURE = 0.004;
    private static final double MANY = 50;
    private static final ProposalSettings SETTINGS = ProposalSettings.defaults();

    private static CellProposal propose(int cell, double log, double sd, double readings, ProposalSettings settings) {
        return propose(Quantity.VOLUMETRIC_EFFICIENCY, 50, cell, log, sd, readings, settings);
    }

    private static CellProposal propose(
            Quantity quantity, double value, int cell, double log, double sd, double readings, ProposalSettings rules) {
        double[] values = new double[SPEED.size() * LOAD.size()];
        Arrays.fill(values, value);
        Table table = Table.of(quantity, SPEED, LOAD, values);
        Estimate estimate = MadeUpEstimates.estimate(table, c -> log, c -> sd, c -> readings);
        CellMeans.Mean mean = new CellMeans.Mean(readings, 100 * Math.expm1(log), 1, 1, (int) readings);
        CellMeans.Mean[] means = new CellMeans.Mean[values.length];
        Arrays.fill(means, mean);
        return propose(estimate, means, cell, rules);
    }

    private static CellProposal propose(Estimate estimate, CellMeans.Mean[] means, int cell, ProposalSettings rules) {
        return ProposalMaker.make(estimate, EstimateFixture.means(means), HighLoad.byThrottle(), rules)
                .cell(cell);
    }

    private static List<Kind> kinds(CellProposal cell) {
        return cell.steps().stream()
                .map(Step::kind)
                .filter(k -> k != Kind.OBSERVED)
                .toList();
    }

    @Test
    void atLightLoadTheEstimateItselfIsProposed() {
        CellProposal cell = propose(LIGHT, Math.log(1.10), 0.02, MANY, SETTINGS);
        assertEquals(55, cell.after(), 1e-9);
        assertEquals(1.10, cell.factor(), 1e-9);
        assertEquals(10, cell.changePercent(), 1e-6);
        assertEquals(List.of(Kind.FITTED), kinds(cell));
        assertTrue(!cell.highLoad());
    }

    @Test
    void doubtBeyondWhatASensorTellsApartAddsFuelAtHighLoad() {
        CellProposal cell = propose(HIGH, 0.05, 0.025, MANY, SETTINGS);
        assertTrue(cell.highLoad());
        assertEquals(Math.exp(0.05 + 1.65 * 0.02), cell.factor(), 2.1e-4);
        assertTrue(cell.factor() >= Math.exp(0.05 + 1.65 * 0.02));
        assertEquals(List.of(Kind.FITTED, Kind.RICH_SIDE), kinds(cell));
        assertEquals(List.of(Kind.FITTED), kinds(propose(HIGH, 0.05, 0.005, MANY, SETTINGS)));
    }

    @Test
    void justBelowHighLoadHalfTheDoubtCountsAndIsNotCalledHighLoad() {
        CellProposal cell = propose(EDGE, 0.05, 0.025, MANY, SETTINGS);
        assertTrue(!cell.highLoad());
        assertEquals(Math.exp(0.05 + 0.5 * 1.65 * 0.02), cell.factor(), 1.1e-4);
        assertEquals(List.of(Kind.FITTED, Kind.RICH_SIDE_BELOW), kinds(cell));
    }

    @Test
    void atHighLoadOnlyAMeasuredAndSurelyRichCellIsLeaned() {
        assertEquals(Math.exp(-0.03), propose(HIGH, -0.03, SURE, MANY, SETTINGS).factor(), 2.1e-4);
        CellProposal doubtful = propose(HIGH, -0.03, 0.0151, MANY, SETTINGS);
        assertEquals(1, doubtful.factor(), 1e-12);
        assertEquals(List.of(Kind.FITTED, Kind.RICH_SIDE, Kind.NOT_LEANED), kinds(doubtful));
        CellProposal thin = propose(HIGH, -0.03, SURE, 9, SETTINGS);
        assertEquals(Standing.THIN, thin.standing());
        assertEquals(1, thin.factor(), 1e-12);
        assertEquals(List.of(Kind.FITTED, Kind.NOT_LEANED), kinds(thin));
        assertEquals(1, propose(HIGH, -0.03, SURE, 0, SETTINGS).factor(), 1e-12);
    }

    private static CellProposal atFullLoad(double log, double leftOver, CellMeans.Mean mean) {
        double[] values = new double[SPEED.size() * LOAD.size()];
        Arrays.fill(values, 50);
        Table table = Table.of(Quantity.VOLUMETRIC_EFFICIENCY, SPEED, LOAD, values);
        Estimate estimate = MadeUpEstimates.estimate(table, c -> log, c -> SURE, c -> MANY, c -> leftOver);
        CellMeans.Mean[] means = new CellMeans.Mean[values.length];
        Arrays.fill(means, mean);
        return propose(estimate, means, HIGH, SETTINGS);
    }

    @Test
    void atHighLoadACellIsLeanedNoFurtherThanThePlainMeanOfItsReadings() {
        CellProposal rich = atFullLoad(-0.03, 0, new CellMeans.Mean(MANY, -1, 1, 0.87, 50));
        assertEquals(0.99, rich.factor(), 2.1e-4);
        assertEquals(List.of(Kind.FITTED, Kind.LEANED_LESS), kinds(rich));
        CellProposal right = atFullLoad(-0.03, 0, new CellMeans.Mean(MANY, 0.2, 1, 0.87, 50));
        assertEquals(1, right.factor(), 1e-12);
        assertEquals(1, atFullLoad(-0.03, 0, null).factor(), 1e-12);
    }

    @Test
    void atHighLoadACellIsNotLeanedForWhatTheControlUnitAskedFor() {
        CellProposal asked = atFullLoad(-0.06, 0, new CellMeans.Mean(MANY, -6, 1, 0.82, 50, 5));
        assertEquals(0.99, asked.factor(), 2.1e-4);
        assertEquals(List.of(Kind.FITTED, Kind.COMMANDED_RICHER), kinds(asked));
        assertEquals(
                1,
                atFullLoad(-0.06, 0, new CellMeans.Mean(MANY, -6, 1, 0.82, 50, 7))
                        .factor(),
                1e-12);
    }

    @Test
    void atLightLoadOnlyAMeasuredCellIsLeanedAgainstItsRows() {
        double[] values = new double[SPEED.size() * LOAD.size()];
        Arrays.fill(values, 50);
        Table table = Table.of(Quantity.VOLUMETRIC_EFFICIENCY, SPEED, LOAD, values);
        CellMeans.Mean[] means = new CellMeans.Mean[values.length];
        Arrays.fill(means, new CellMeans.Mean(0.1, 3.8, 1, 1.04, 1));
        Estimate thin = MadeUpEstimates.estimate(table, c -> -0.04, c -> 0.02, c -> 0.1);
        assertEquals(1, propose(thin, means, LIGHT, SETTINGS).factor(), 1e-12);
        Estimate measured = MadeUpEstimates.estimate(table, c -> -0.04, c -> SURE, c -> MANY);
        assertEquals(Math.exp(-0.04), propose(measured, means, LIGHT, SETTINGS).factor(), 1.1e-4);
    }

    @Test
    void whatWasNotMeasuredIsRoundedUp() {
        assertEquals(
                50.5, propose(LIGHT, 0.001, 0.03, 0, SETTINGS.withStep(0.5)).after(), 1e-9);
        assertEquals(
                50, propose(LIGHT, 0.001, SURE, MANY, SETTINGS.withStep(0.5)).after(), 1e-9);
    }

    @Test
    void atHighLoadReadingsThatAskForMoreThanTheirNeighboursAreHeard() {
        CellProposal lean = atFullLoad(0.01, 0.015, new CellMeans.Mean(MANY, 2.5, 1, 0.89, 50));
        assertEquals(Math.exp(0.025), lean.factor(), 2.1e-4);
        assertEquals(List.of(Kind.FITTED, Kind.OWN_READINGS), kinds(lean));
    }

    @Test
    void elsewhereACellThatNobodyRodeIsLeanedOnlyByWhatIsBeyondDoubt() {
        CellProposal cell = propose(LIGHT, -0.04, 0.03, 0, SETTINGS);
        assertEquals(Standing.INFERRED, cell.standing());
        assertEquals(Math.exp(-0.01), cell.factor(), 2.1e-4);
        assertEquals(List.of(Kind.FITTED, Kind.NOT_LEANED), kinds(cell));
        assertEquals(1, propose(LIGHT, -0.04, 0.05, 0, SETTINGS).factor(), 1e-12);
        CellProposal thin = propose(LIGHT, -0.026, 0.041, 45, SETTINGS);
        assertEquals(Standing.THIN, thin.standing());
        assertEquals(1, thin.factor(), 1e-12);
        assertEquals(Math.exp(0.04), propose(LIGHT, 0.04, 0.05, 0, SETTINGS).factor(), 2.1e-4);
    }

    @Test
    void capsHoldBackAndSayWhatIsLeft() {
        CellProposal adding = propose(LIGHT, Math.log(1.6), SURE, MANY, SETTINGS);
        assertEquals(1.4, adding.factor(), 1e-9);
        assertEquals(List.of(Kind.FITTED, Kind.CAP_ON_ADDING), kinds(adding));
        assertEquals(100 * (1.6 / 1.4 - 1), adding.leftLeanPercent(), 1e-6);
        CellProposal taking = propose(LIGHT, Math.log(0.8), SURE, MANY, SETTINGS);
        assertEquals(0.95, taking.factor(), 1e-9);
        assertEquals(List.of(Kind.FITTED, Kind.CAP_ON_TAKING), kinds(taking));
        assertEquals(
                1.6,
                propose(LIGHT, Math.log(1.6), SURE, MANY, SETTINGS.withCaps(60, 5))
                        .factor(),
                1e-9);
    }

    @Test
    void roundingNeverTakesMoreAwayThanTheCap() {
        Random random = new Random(4);
        for (int i = 0; i < 3000; i++) {
            double before = 5 + 60 * random.nextDouble();
            double log = -0.12 * random.nextDouble();
            double step = new double[] {0, 0.1, 0.5, 1}[i % 4];
            CellProposal cell =
                    propose(Quantity.VOLUMETRIC_EFFICIENCY, before, LIGHT, log, SURE, MANY, SETTINGS.withStep(step));
            assertTrue(cell.factor() >= 0.95 - 1e-9, before + " by " + Math.exp(log) + " became " + cell.after());
        }
        // 9 × 0.955 = 8.595: the nearest half is 8.5, and that is 5.6 % less.
        CellProposal near =
                propose(Quantity.VOLUMETRIC_EFFICIENCY, 9, LIGHT, Math.log(0.955), SURE, MANY, SETTINGS.withStep(0.5));
        assertEquals(9, near.after(), 0.0);
    }

    @Test
    void roundingGoesUpAtHighLoadAndToTheNearestElsewhere() {
        ProposalSettings whole = SETTINGS.withStep(1);
        assertEquals(52, propose(LIGHT, Math.log(1.044), SURE, MANY, whole).after(), 0.0);
        assertEquals(53, propose(HIGH, Math.log(1.044), SURE, MANY, whole).after(), 0.0);
        assertEquals(53, propose(LIGHT, Math.log(1.052), SURE, MANY, whole).after(), 0.0);
        // A figure that is on the step already stays, in spite of the last bits.
        assertEquals(53, propose(HIGH, Math.log(1.06), SURE, MANY, whole).after(), 0.0);
        CellProposal tenths =
                propose(Quantity.MULTIPLIER, 0.2, HIGH, Math.log(1.3), SURE, MANY, SETTINGS.withStep(0.1));
        assertEquals(0.3, tenths.after(), 0.0);
        assertEquals(List.of(Kind.FITTED, Kind.CAP_ON_ADDING), kinds(propose(LIGHT, 1, SURE, MANY, SETTINGS)));
        assertEquals(List.of(Kind.FITTED, Kind.ROUNDED), kinds(propose(LIGHT, 0.1, SURE, MANY, whole)));
    }

    @Test
    void aCellThatIsToStayKeepsItsFigureWhereNoStepRoundsIt() {
        for (ProposalSettings rules : List.of(SETTINGS, SETTINGS.withLeanNoCell(true))) {
            // Rich, but not surely: at high load nothing is taken away, and nothing is added either.
            CellProposal cell = propose(Quantity.VOLUMETRIC_EFFICIENCY, 50.123456, HIGH, -0.01, 0.0055, MANY, rules);
            assertEquals(50.123456, cell.after(), 0.0);
            assertEquals(1, cell.factor(), 0.0);
            assertEquals(Kind.NOT_LEANED, kinds(cell).get(kinds(cell).size() - 1));
        }
    }

    @Test
    void aHeldCellKeepsItsFigureToTheLastDigit() {
        ProposalSettings held =
                SETTINGS.withStep(1).withDecisions(Map.of(HIGH, new Decision(Decision.Kind.HELD, 50.123)));
        CellProposal cell = propose(Quantity.VOLUMETRIC_EFFICIENCY, 50.123, HIGH, 0.2, SURE, MANY, held);
        assertEquals(50.123, cell.after(), 0.0);
        assertEquals(1, cell.factor(), 0.0);
        assertEquals(100 * Math.expm1(0.2), cell.leftLeanPercent(), 1e-9);
        assertEquals(List.of(Kind.FITTED, Kind.HELD), kinds(cell));
        assertEquals(Decision.Kind.HELD, cell.decision().orElseThrow().kind());
        assertTrue(propose(LIGHT, 0.2, SURE, MANY, held).decision().isEmpty());
    }

    @Test
    void aSetCellHasTheTypedFigureWhateverTheRules() {
        ProposalSettings set = SETTINGS.withStep(1).withDecisions(Map.of(HIGH, new Decision(Decision.Kind.SET, 30.5)));
        CellProposal cell = propose(HIGH, 0.6, SURE, MANY, set);
        assertEquals(30.5, cell.after(), 0.0);
        assertEquals(0.61, cell.factor(), 1e-12);
        assertEquals(List.of(Kind.FITTED, Kind.CAP_ON_ADDING, Kind.SET), kinds(cell));
    }

    @Test
    void trimsCompose() {
        CellProposal cell = propose(Quantity.FUEL_TRIM, 10, LIGHT, Math.log(1.1), SURE, MANY, SETTINGS);
        assertEquals(21, cell.after(), 1e-9);
        assertEquals(1.1, cell.factor(), 1e-9);
        assertEquals(
                -5,
                propose(Quantity.FUEL_TRIM, 0, LIGHT, Math.log(0.8), SURE, MANY, SETTINGS)
                        .after(),
                1e-9);
    }

    @Test
    void thePulsesDeadTimeIsNotMultiplied() {
        ProposalSettings with = SETTINGS.withDeadTimeMs(1);
        CellProposal cell = propose(Quantity.INJECTOR_PULSE, 3, LIGHT, Math.log(1.2), SURE, MANY, with);
        assertEquals(3.4, cell.after(), 1e-9);
        assertEquals(1.2, cell.factor(), 1e-9);
        CellProposal without = propose(Quantity.INJECTOR_PULSE, 3, LIGHT, Math.log(1.2), SURE, MANY, SETTINGS);
        assertEquals(3.6, without.after(), 1e-9);
        // The cap is on the fuel, not on the pulse.
        CellProposal capped = propose(Quantity.INJECTOR_PULSE, 3, LIGHT, Math.log(0.5), SURE, MANY, with);
        assertEquals(1 + 2 * 0.95, capped.after(), 1e-9);
    }

    @Test
    void whileNobodySaidWhatPulsesContainNoneIsShortened() {
        double rich = Math.log(0.97);
        ProposalSettings told = SETTINGS.withDeadTimeMs(0);
        assertEquals(
                2.91,
                propose(Quantity.INJECTOR_PULSE, 3, LIGHT, rich, SURE, MANY, told)
                        .after(),
                1e-9);
        CellProposal untold = propose(Quantity.INJECTOR_PULSE, 3, LIGHT, rich, SURE, MANY, SETTINGS);
        assertEquals(3, untold.after(), 1e-9);
        assertEquals(List.of(Kind.FITTED, Kind.DEAD_TIME_UNTOLD), kinds(untold));
        assertEquals(
                2.91,
                propose(Quantity.VOLUMETRIC_EFFICIENCY, 3, LIGHT, rich, SURE, MANY, SETTINGS)
                        .after(),
                0.051);
    }

    @Test
    void stepsAreInTheirOrderAndTheLastOneIsWhatTheCellGets() {
        Random random = new Random(8);
        for (int i = 0; i < 4000; i++) {
            ProposalSettings rules = SETTINGS.withStep(i % 3 == 0 ? 0.5 : 0);
            int cell = random.nextInt(8);
            if (i % 7 == 0) {
                Decision.Kind kind = i % 2 == 0 ? Decision.Kind.HELD : Decision.Kind.SET;
                rules = rules.withDecisions(Map.of(cell, new Decision(kind, 47)));
            }
            CellProposal made = propose(
                    cell, 0.3 * random.nextGaussian(), 0.03 * random.nextDouble(), 20 * random.nextDouble(), rules);
            List<Step> steps = made.steps();
            for (int k = 1; k < steps.size(); k++) {
                assertTrue(
                        steps.get(k - 1).kind().compareTo(steps.get(k).kind()) < 0,
                        kinds(made).toString());
            }
            assertEquals(made.factor(), steps.get(steps.size() - 1).factor(), 1e-12);
            assertEquals(made.before() * made.factor(), made.after(), 1e-9);
            if (made.highLoad()
                    && made.standing() != Standing.MEASURED
                    && made.decision().isEmpty()) {
                assertTrue(made.factor() >= 1 - 1e-12, "leaned without measurement");
            }
        }
    }

    @Test
    void thePlainMeanComesFirstWhereThereIsOne() {
        Table table =
                Table.of(Quantity.VOLUMETRIC_EFFICIENCY, SPEED, LOAD, new double[] {50, 50, 50, 50, 50, 50, 50, 50});
        CellMeans.Mean[] means = new CellMeans.Mean[8];
        means[LIGHT] = new CellMeans.Mean(12, 7.5, 1, 1.07, 30);
        Estimate estimate = MadeUpEstimates.estimate(table, c -> 0.06, c -> SURE, c -> MANY);
        Proposal proposal = ProposalMaker.make(estimate, EstimateFixture.means(means), HighLoad.byThrottle(), SETTINGS);
        assertEquals(
                new Step(Kind.OBSERVED, 1.075), proposal.cell(LIGHT).steps().get(0));
        assertEquals(List.of(Kind.FITTED), kinds(proposal.cell(LIGHT)));
        assertEquals(Kind.FITTED, proposal.cell(0).steps().get(0).kind());
        assertEquals(proposal.cell(LIGHT).after(), proposal.corrected().at(LIGHT), 0.0);
        assertEquals(proposal.cell(LIGHT).changePercent(), proposal.change().at(LIGHT), 0.0);
        assertEquals(Quantity.CHANGE, proposal.change().quantity());
    }

    @Test
    void whatTheReadingsAskForByThemselvesStandsBeforeWhatTheFitMakesOfThem() {
        Table table =
                Table.of(Quantity.VOLUMETRIC_EFFICIENCY, SPEED, LOAD, new double[] {50, 50, 50, 50, 50, 50, 50, 50});
        CellMeans.Mean[] means = new CellMeans.Mean[8];
        means[LIGHT] = new CellMeans.Mean(12, 7.5, 1, 1.07, 30);
        double[] fitted = new double[8];
        Arrays.fill(fitted, 0.06);
        Estimate estimate = EstimateFixture.estimate(table, fitted, fitted.clone(), fitted.clone());
        Proposal proposal = ProposalMaker.make(estimate, EstimateFixture.means(means), HighLoad.byThrottle(), SETTINGS);
        List<Step> steps = proposal.cell(LIGHT).steps();
        assertEquals(Kind.OBSERVED, steps.get(0).kind());
        assertEquals(new Step(Kind.BURNT, Math.exp(0.06)), steps.get(1));
        assertEquals(Kind.FITTED, steps.get(2).kind());
    }

    @Test
    void aPressureIndexedTableIsJudgedByItsPressure() {
        Axis pressure = new Axis(Axis.Kind.MANIFOLD_PRESSURE, 40, 100);
        Table table = Table.of(Quantity.VOLUMETRIC_EFFICIENCY, SPEED, pressure, new double[] {50, 50, 50, 50});
        assertTrue(!ProposalMaker.isHighLoad(HighLoad.byThrottle(), table, 0));
        assertTrue(ProposalMaker.isHighLoad(HighLoad.byThrottle(), table, 3));
    }

    @Test
    void whereNoCellIsToBeLeanedTheOldFigureStaysRoundedUpToTheStep() {
        ProposalSettings whole = SETTINGS.withLeanNoCell(true).withStep(1);
        CellProposal kept = propose(Quantity.VOLUMETRIC_EFFICIENCY, 50.3, LIGHT, -0.04, SURE, MANY, whole);
        assertEquals(51, kept.after(), 1e-9);
        assertEquals(List.of(Kind.FITTED, Kind.ROUNDED, Kind.NO_CELL_LEANED), kinds(kept));
        assertTrue(kept.decision().isEmpty());
        CellProposal added = propose(Quantity.VOLUMETRIC_EFFICIENCY, 50.3, LIGHT, 0.1, SURE, MANY, whole);
        assertEquals(56, added.after(), 1e-9);
        assertEquals(List.of(Kind.FITTED, Kind.ROUNDED), kinds(added));
        CellProposal typed = propose(
                Quantity.VOLUMETRIC_EFFICIENCY,
                50.3,
                LIGHT,
                0,
                SURE,
                MANY,
                whole.withDecisions(Map.of(LIGHT, new Decision(Decision.Kind.SET, 45))));
        assertEquals(51, typed.after(), 1e-9);
    }
}
