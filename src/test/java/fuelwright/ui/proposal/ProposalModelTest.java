package fuelwright.ui.proposal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Decision;
import fuelwright.estimate.Standing;
import fuelwright.handover.CellLook;
import fuelwright.handover.RoundEnds;
import fuelwright.safety.Caution;
import fuelwright.table.Table;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Colours;
import fuelwright.ui.theme.Theme;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.scene.paint.Color;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class ProposalModelTest {

    private final Session session = new Session(new FixtureServices(), new SameThreadRunner());
    private final ProposalModel model = new ProposalModel(session);
    private Table table;

    /** The last digit that a file shows of an efficiency. */
    private static final double FINEST = 0.01 + 1e-9;

    @BeforeEach
    void open() {
        session.openSample();
        table = session.job().fuelTable().orElseThrow();
    }

    @Test
    void everyCellIsThere() {
        assertEquals(table.cells(), model.mapProperty().get().cells().size());
        assertTrue(
                model.summaryProperty().get().contains("14.6\u00a0%"),
                model.summaryProperty().get());
    }

    @Test
    void inferredCellsAreHatchedAndNeverLookLikeNoChange() {
        for (int cell = 0; cell < table.cells(); cell++) {
            HeatCell drawn = model.mapProperty().get().cells().get(cell);
            boolean inferred = session.analysis().estimate().standing(cell) == Standing.INFERRED;
            assertEquals(inferred, drawn.hatched());
            assertFalse(inferred && drawn.figure().equals("0.0"), drawn.words());
        }
    }

    @Test
    void whatIsNotKnownIsNeverZeroUnderDifferenceEither() {
        List<HeatCell> change = model.mapProperty().get().cells();
        model.shownProperty().set(ProposalMap.Shown.DIFFERENCE);
        List<HeatCell> difference = model.mapProperty().get().cells();
        int unknown = 0;
        for (int cell = 0; cell < table.cells(); cell++) {
            boolean known = !change.get(cell).figure().equals("?");
            unknown += known ? 0 : 1;
            assertEquals(known, !difference.get(cell).figure().equals("?"), "cell " + cell);
        }
        assertTrue(unknown > 0);
    }

    @Test
    void aCellSetByHandIsNotUncertain() {
        session.cellProperty().set(100);
        model.set("-20 %");
        HeatCell drawn = model.mapProperty().get().cells().get(100);
        assertEquals("", drawn.below());
        assertFalse(drawn.words().contains("plus or minus"), drawn.words());
        assertEquals("", model.explanationProperty().get().uncertainty());
    }

    @Test
    void aCapIsANumberWithinItsBounds() {
        assertEquals(12.5, Cap.most(" 12,5 ").value().orElseThrow());
        for (Cap wrong : List.of(
                Cap.most(""), Cap.most("-1"), Cap.most("Infinity"), Cap.least("100"), Cap.most("NaN"), Cap.most("x"))) {
            assertTrue(wrong.value().isEmpty());
            assertFalse(wrong.problem().isEmpty());
        }
    }

    @Test
    void aStopIsSaidInWordsToo() {
        int stop = session.analysis().stops().get(0).cells().first();
        HeatCell drawn = model.mapProperty().get().cells().get(stop);
        assertTrue(drawn.stop());
        assertTrue(drawn.words().contains("Stop"), drawn.words());
    }

    /** By day fills fade into white, by night into the page's dark: never do the least sure cells stand out most. */
    @Test
    void theLessSureTheNearerIsAFillToThePage() {
        for (Theme theme : Theme.values()) {
            Color page = theme.palette().faded();
            for (double change : new double[] {-1, -0.5, 0.5, 1}) {
                Color full = theme.palette().diverging().at(change);
                double before = Double.POSITIVE_INFINITY;
                for (double unsure = Standing.MEASURED_PERCENT; unsure <= 20; unsure += 1) {
                    Color fill = Colours.mix(page, full, CellLook.strength(Standing.INFERRED, unsure));
                    double now = Math.abs(Colours.lab(fill)[0] - Colours.lab(page)[0]);
                    assertTrue(now < before, theme + " " + change + " ±" + unsure);
                    assertTrue(Colours.contrast(Colours.inkOn(fill), fill) >= Colours.TEXT_CONTRAST);
                    before = now;
                }
            }
        }
    }

    @Test
    void aStopOfTheCellIsOneShortLineWithWhatItSawHereAndWhetherItIsAnswered() {
        Caution stop = session.analysis().stops().get(0);
        session.cellProperty().set(stop.cells().first());
        List<String> lines = model.explanationProperty().get().stops();
        assertEquals(1, lines.size());
        assertTrue(lines.get(0).startsWith("Stop · " + stop.title()), lines.get(0));
        assertTrue(lines.get(0).endsWith("· open"), lines.get(0));
        assertTrue(lines.get(0).length() < 80, lines.get(0));
    }

    @Test
    void scalesEndInRoundFigures() {
        for (ProposalMap.Shown shown : ProposalMap.Shown.values()) {
            RoundEnds ends = ProposalMap.ends(session.analysis(), shown);
            assertTrue(ends.high() > ends.low());
        }
        assertEquals(
                0,
                ProposalMap.ends(session.analysis(), ProposalMap.Shown.UNCERTAINTY)
                        .low());
        RoundEnds both = ProposalMap.ends(session.analysis(), ProposalMap.Shown.DIFFERENCE);
        assertEquals(-both.low(), both.high());
    }

    @Test
    void roundingIsToldWhereItIsNotSet() {
        assertEquals("", model.roundedWords());
        model.rules(40, 5, 0.5);
        assertTrue(model.roundedWords().contains("0.5"), model.roundedWords());
        assertTrue(model.roundedWords().contains("Handover"), model.roundedWords());
    }

    @Test
    void theNextRideIsATableAsWideAsItsHeadings() {
        model.nextRide().forEach(row -> assertEquals(model.nextRideHeadings().size(), row.size()));
    }

    @Test
    void figuresCanBeReadOnTheirFillsInBothThemes() {
        for (Theme theme : Theme.values()) {
            session.themeProperty().set(theme);
            for (HeatCell cell : model.mapProperty().get().cells()) {
                assertTrue(Colours.contrast(Colours.inkOn(cell.fill()), cell.fill()) >= Colours.TEXT_CONTRAST);
            }
        }
    }

    @Test
    void aHeldCellKeepsItsFigureAndCanBeGivenBack() {
        session.cellProperty().set(100);
        String free = model.explanationProperty().get().beforeAfter();
        model.hold();
        CellExplanation held = model.explanationProperty().get();
        assertEquals(Decision.Kind.HELD, held.decision().orElseThrow());
        assertEquals("0.0", held.change());
        assertNotEquals(free, held.beforeAfter());
        assertEquals(
                HeatCell.Mark.HELD, model.mapProperty().get().cells().get(100).mark());
        model.release();
        assertEquals(free, model.explanationProperty().get().beforeAfter());
        session.undo();
        assertTrue(model.explanationProperty().get().decision().isPresent());
    }

    @Test
    void aTypedFigureIsTakenWithPointOrComma() {
        session.cellProperty().set(100);
        model.set(" 61,5 ");
        assertEquals(
                new Decision(Decision.Kind.SET, 61.5),
                session.job().proposal().decisions().get(100));
        assertEquals("", model.messageProperty().get());
    }

    @Test
    void whatIsNoFigureOrNoFuelIsSaidAndNotTaken() {
        session.cellProperty().set(100);
        model.set("a lot");
        assertTrue(model.messageProperty().get().contains("number"));
        model.set("-3");
        assertTrue(model.messageProperty().get().contains("no fuel"));
        assertTrue(session.job().proposal().decisions().isEmpty());
    }

    @Test
    void aCapOrStepWithoutEndIsNotTaken() {
        var before = model.settings();
        model.rules(Double.POSITIVE_INFINITY, 5, 0);
        model.rules(40, 5, Double.POSITIVE_INFINITY);
        assertEquals(before, model.settings());
        model.rules(30, 4, 0.5);
        assertEquals(30, model.settings().maxAddPercent());
    }

    @Test
    void nothingIsDecidedWithoutASelectedCell() {
        model.hold();
        assertTrue(session.job().proposal().decisions().isEmpty());
        assertNull(model.explanationProperty().get());
    }

    @Test
    void capsGoIntoTheJobAndImpossibleOnesDont() {
        model.rules(25, 3, 0.5);
        assertEquals(25, session.job().proposal().maxAddPercent());
        assertEquals(0.5, session.job().proposal().step());
        model.rules(-1, 3, 0.5);
        model.rules(25, 100, 0.5);
        model.rules(Double.NaN, 3, 0.5);
        assertEquals(25, session.job().proposal().maxAddPercent());
        assertEquals(3, session.job().proposal().maxCutPercent());
    }

    @Test
    void theRangeIsTheSmallestThatHoldsEverythingOrTheChosenOne() {
        assertEquals(40, model.shownRange());
        model.rangeProperty().set(20);
        assertEquals(20, model.shownRange());
    }

    @Test
    void aCellIsExplainedFromItsReadingsToItsFigure() {
        session.cellProperty().set(table.cell(8, 8));
        CellExplanation e = model.explanationProperty().get();
        assertEquals("4500\u00a0rpm × 35\u00a0% throttle", e.place());
        assertEquals(e.change() + " %", e.steps().get(e.steps().size() - 1).change());
        assertTrue(e.readings().contains("λ"));
        session.afrProperty().set(true);
        assertTrue(model.explanationProperty().get().readings().contains("AFR"));
    }

    private void selectBlock() {
        session.cellProperty().set(100);
        session.selection().blockProperty().set(Set.of(100, 101, 115, 116));
    }

    @Test
    void aBlockIsHeldInOneStepAndGivenBack() {
        selectBlock();
        assertEquals("4 cells", model.blockProperty().get().title());
        model.hold();
        assertEquals(
                Set.of(100, 101, 115, 116), session.job().proposal().decisions().keySet());
        assertEquals("4 held, 0 set", model.blockProperty().get().decisions());
        session.undo();
        assertTrue(session.job().proposal().decisions().isEmpty());
        session.redo();
        model.release();
        assertTrue(session.job().proposal().decisions().isEmpty());
    }

    @Test
    void aTypedChangeIsOneOfTheOldFigureInEveryCell() {
        selectBlock();
        model.set("+4 %");
        session.job()
                .proposal()
                .decisions()
                .forEach((cell, d) -> assertEquals(1.04 * table.at(cell), d.value(), FINEST));
        model.set("−100 %");
        assertTrue(model.messageProperty().get().contains("no fuel"));
        model.set("5 %");
        assertTrue(model.messageProperty().get().contains("+4\u00a0%"), "a figure or a change");
        assertEquals(
                1.04 * table.at(100),
                session.job().proposal().decisions().get(100).value(),
                FINEST);
        model.set("61.5");
        assertEquals(61.5, session.job().proposal().decisions().get(100).value());
    }

    @Test
    void anotherCellGivesUpTheBlock() {
        selectBlock();
        session.cellProperty().set(7);
        assertNull(model.blockProperty().get());
        assertEquals(Set.of(7), session.selection().cells());
    }

    @Test
    void aRuleSelectsExactlyTheCellsThatFitIt() {
        CellRule rule = new CellRule(
                Set.of(Standing.THIN),
                CellRule.Direction.MORE_FUEL,
                60,
                Double.POSITIVE_INFINITY,
                0,
                Double.POSITIVE_INFINITY,
                false,
                false);
        model.select(rule);
        Set<Integer> chosen = session.selection().cells();
        for (int cell = 0; cell < table.cells(); cell++) {
            boolean fits = session.analysis().estimate().standing(cell) == Standing.THIN
                    && table.loadAt(cell) >= 60
                    && session.analysis().proposal().cell(cell).changePercent() > 0.05;
            assertEquals(fits, chosen.contains(cell), "cell " + cell);
        }
        assertEquals(model.count(rule), chosen.size());
        assertEquals(table.cells(), model.count(CellRule.all()));
    }

    @Test
    void takenAsFittedAHighLoadCellNeverGetsLessThanProposed() {
        var before = session.analysis().proposal();
        session.selection().select(CellRule.all().cells(session.analysis()));
        model.takeFitted();
        int left = 0;
        for (var c : session.analysis().proposal().cells()) {
            var old = before.cell(c.cell());
            double expected = c.highLoad() ? Math.max(old.neededFactor(), old.factor()) : old.neededFactor();
            assertEquals(expected * c.before(), c.after(), FINEST, "cell " + c.cell());
            assertTrue(!c.highLoad() || c.factor() >= expected - 1e-9, "never leaner at high load: cell " + c.cell());
            boolean taken = !old.highLoad() || old.neededFactor() >= old.factor();
            assertEquals(taken, c.decision().isPresent(), "cell " + c.cell());
            left += taken ? 0 : 1;
        }
        assertTrue(left > 0);
        assertTrue(
                model.messageProperty().get().startsWith(left + " of " + table.cells()),
                model.messageProperty().get());
    }

    @Test
    void aFigureTypedTenTimesTooLargeIsAskedAboutAtOnceAndUndoTakesItBack() {
        int cell = table.cell(5, 5);
        session.cellProperty().set(cell);
        assertTrue(model.set(String.valueOf(10 * table.at(cell))));
        assertTrue(model.slipProperty().get());
        String asked = model.messageProperty().get();
        assertTrue(asked.startsWith("A slip of a digit? This is 900\u00a0% more fuel than the old figure"), asked);
        assertEquals(asked, session.saidProperty().get());
        assertEquals(
                HeatCell.Mark.FAR, model.mapProperty().get().cells().get(cell).mark());
        assertEquals(asked, model.explanationProperty().get().far());
        session.undo();
        assertFalse(model.slipProperty().get());
        assertEquals("", model.messageProperty().get());
        assertEquals(
                HeatCell.Mark.NONE, model.mapProperty().get().cells().get(cell).mark());
    }

    @Test
    void aFigureNearTheOldOneOrNearTheFittedOneIsNotAskedAbout() {
        int cell = table.cell(5, 5);
        session.cellProperty().set(cell);
        model.set("+20 %");
        assertFalse(model.slipProperty().get());
        assertEquals(
                HeatCell.Mark.SET, model.mapProperty().get().cells().get(cell).mark());
        model.set("-30 %");
        assertTrue(model.messageProperty().get().contains("30\u00a0% less fuel than the old figure"));
        model.set("+5 %");
        assertFalse(model.slipProperty().get());
        CellProposal needy = new CellProposal(
                0,
                50,
                70,
                1.4,
                1.38,
                Standing.MEASURED,
                false,
                Optional.of(new Decision(Decision.Kind.SET, 70)),
                List.of());
        assertTrue(FarFigure.of(needy).isEmpty(), "the rides ask for it");
    }

    @Test
    void cautionsOfTheCellAreInTheNotationThatWasChosen() {
        session.cellProperty().set(session.analysis().stops().get(0).cells().first());
        session.afrProperty().set(true);
        var shown = model.explanationProperty().get().cautions().get(0);
        assertEquals(session.analysis().stops().get(0).in(session.shownIn()), shown);
        session.selection().select(CellRule.all().cells(session.analysis()));
        assertEquals(shown, model.blockProperty().get().cautions().get(0));
        session.afrProperty().set(false);
        assertEquals(
                session.analysis().stops().get(0),
                model.blockProperty().get().cautions().get(0));
    }

    @Test
    void softeningDrawsACellTowardsItsNeighboursAndIsOneStepOfUndo() {
        int light = -1;
        for (var c : session.analysis().proposal().cells()) {
            double soft = Softened.factor(session.analysis().proposal(), c.cell());
            if (!c.highLoad() && Math.abs(soft / c.factor() - 1) > 0.01) {
                light = c.cell();
            }
        }
        session.cellProperty().set(light);
        double wanted = Softened.factor(session.analysis().proposal(), light);
        double old = session.analysis().proposal().cell(light).factor();
        model.soften();
        var soft = session.analysis().proposal().cell(light);
        assertEquals(wanted * soft.before(), soft.after(), FINEST);
        session.undo();
        assertEquals(old, session.analysis().proposal().cell(light).factor(), 1e-12);
    }

    @Test
    void whatAButtonSetsIsAWholeNumberOfSteps() {
        model.rules(40, 5, 0.5);
        session.selection().select(CellRule.all().cells(session.analysis()));
        model.takeFitted();
        assertWholeSteps();
        model.soften();
        assertWholeSteps();
        model.set("+3.3 %");
        assertWholeSteps();
        model.set("50.123");
        assertEquals(50.123, session.analysis().proposal().cell(0).after(), "typed as it is");
    }

    private void assertWholeSteps() {
        session.job().proposal().decisions().forEach((cell, d) -> assertEquals(0, d.value() % 0.5, "cell " + cell));
        assertFalse(session.job().proposal().decisions().isEmpty());
    }

    @Test
    void aSliceHoldsTheRowOfTheSelectedCell() {
        session.cellProperty().set(table.cell(4, 3));
        var along = slice(true);
        assertEquals(table.speed().size(), along.points().size());
        assertEquals(table.cell(4, 0), along.cells().get(0));
        assertEquals(
                session.analysis().estimate().shortfallPercent(table.cell(4, 3)),
                along.points().get(3).fitted());
        assertEquals(table.load().size(), slice(false).points().size());
    }

    private fuelwright.ui.plot.Slice slice(boolean alongSpeed) {
        fuelwright.ui.plot.Slice[] found = new fuelwright.ui.plot.Slice[1];
        model.slice(alongSpeed, now -> found[0] = now);
        return found[0];
    }
}
