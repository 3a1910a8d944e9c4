package fuelwright.ui.handover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.job.HardwareProfile;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HardwareModelTest {

    private final Session session = new Session(new FixtureServices(), new SameThreadRunner());
    private final HandoverModel stage = new HandoverModel(session);
    private final HardwareModel model = stage.hardware();

    @BeforeEach
    void open() {
        session.openSample();
    }

    private void type(HardwareForm.Field field, String text) {
        model.textProperty(field).set(text);
        model.commit();
    }

    private HardwareProfile hardware() {
        return session.job().hardware();
    }

    @Test
    void nothingSaidIsTheTableAsItIs() {
        assertTrue(model.isPlain());
        assertTrue(model.costProperty().get().contains("as it is"));
        model.commit();
        assertFalse(session.canUndoProperty().get(), "committing the same is no change");
    }

    @Test
    void aChangeInPercentIsShownWithWhatItAdds() {
        model.hold(HardwareProfile.Holds.PERCENT_CHANGE);
        type(HardwareForm.Field.STEP, "1");
        assertEquals(1, session.job().proposal().step());
        assertTrue(model.costProperty().get().contains("Added error")
                || model.costProperty().get().contains("added error"));
        assertEquals("%", model.unit());
        assertEquals(0, stage.sheetProperty().get().before().at(0));
    }

    @Test
    void stepAndRangeStayWithTheUnitThatTheyWereTypedIn() {
        type(HardwareForm.Field.STEP, "0.01");
        type(HardwareForm.Field.MOST, "90");
        model.hold(HardwareProfile.Holds.PERCENT_CHANGE);
        assertEquals("", model.textProperty(HardwareForm.Field.STEP).get());
        assertEquals(0, session.job().proposal().step());
        assertTrue(Double.isInfinite(hardware().most()));
        type(HardwareForm.Field.STEP, "0.5");
        model.hold(HardwareProfile.Holds.VALUE);
        assertEquals(0.01, session.job().proposal().step());
        assertEquals(90, hardware().most());
        model.hold(HardwareProfile.Holds.PERCENT_CHANGE);
        assertEquals(0.5, session.job().proposal().step());
    }

    @Test
    void typedBreakpointsBecomeTheGridThatIsTyped() {
        type(HardwareForm.Field.SPEEDS, "1000 2500; 4000, 7000,5");
        assertEquals(
                Optional.of(new Axis(Axis.Kind.ENGINE_SPEED, 1000, 2500, 4000, 7000.5)),
                hardware().speed());
        assertEquals(4, stage.mapProperty().get().speeds().size());
        model.sameBreakpoints();
        assertTrue(hardware().keepsCells());
        assertEquals("", model.textProperty(HardwareForm.Field.SPEEDS).get());
    }

    @Test
    void theFuelTablesOwnBreakpointsAreNoOthers() {
        type(HardwareForm.Field.LOADS, model.fuelBreakpoints(HardwareForm.Field.LOADS));
        assertTrue(hardware().load().isEmpty());
    }

    @Test
    void whatIsWrongIsSaidAndNotTaken() {
        for (String wrong : new String[] {"1000", "2000 1000", "1000 1000", "a b", "1000 2000 x", "1e999 5"}) {
            type(HardwareForm.Field.SPEEDS, wrong);
            assertFalse(model.problemProperty(HardwareForm.Field.SPEEDS).get().isEmpty(), wrong);
            assertTrue(hardware().speed().isEmpty(), wrong);
        }
        model.sameBreakpoints();
        type(HardwareForm.Field.STEP, "-1");
        assertFalse(model.problemProperty(HardwareForm.Field.STEP).get().isEmpty());
        type(HardwareForm.Field.STEP, "");
        type(HardwareForm.Field.LEAST, "20");
        type(HardwareForm.Field.MOST, "10");
        assertFalse(model.problemProperty(HardwareForm.Field.MOST).get().isEmpty());
        assertTrue(Double.isInfinite(hardware().most()));
    }

    @Test
    void aRangeThatCutsFuelAtHighLoadIsAStop() {
        type(HardwareForm.Field.MOST, "60");
        assertTrue(
                model.cautionsProperty().get().stream().anyMatch(c -> c.isStop()),
                () -> "" + model.cautionsProperty().get());
    }

    @Test
    void orientationAndDecimalSignAreThoseOfTheClipboard() {
        stage.stopsReadProperty().set(true);
        model.orient(Optional.of(Table.Orientation.SPEED_ACROSS));
        model.useComma(true);
        stage.stopsReadProperty().set(true);
        String text = stage.copy();
        assertTrue(text.contains("throttle [%] \\ engine speed [rpm];900;1200"), text);
        assertTrue(text.matches("(?s).*\\d,\\d;\\d.*"), text);
    }

    @Test
    void breakpointsComeFromATableFile(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("own.csv");
        Files.writeString(
                file, "# quantity: change [%]\nengine speed [rpm] \\ throttle [%],0,50,100\n1000,0,0,0\n8000,0,0,0\n");
        model.breakpointsOf(file);
        assertEquals("1000 8000", model.textProperty(HardwareForm.Field.SPEEDS).get());
        assertEquals(6, stage.sheetProperty().get().after().cells());
        Files.writeString(
                file,
                "# quantity: change [%]\nengine speed [rpm] \\ manifold pressure [kPa],20,50,100\n1000,0,0,0\n8000,0,0,0\n");
        model.breakpointsOf(file);
        assertTrue(
                model.fileProblemProperty().get().contains("same load"),
                model.fileProblemProperty().get());
        Files.writeString(file, "no table");
        model.breakpointsOf(file);
        assertFalse(model.fileProblemProperty().get().isEmpty());
        assertEquals(6, stage.sheetProperty().get().after().cells());
    }

    @Test
    void undoBringsTheFormBack() {
        model.hold(HardwareProfile.Holds.MULTIPLIER);
        session.undo();
        assertEquals(HardwareProfile.Holds.VALUE, model.formProperty().get().holds());
    }

    @Test
    void aStepIsHeldAgainstWhatItIsTypedForAndMendedWhereItWasTyped() {
        model.hold(HardwareProfile.Holds.PERCENT_CHANGE);
        type(HardwareForm.Field.STEP, "50");
        assertEquals("", model.problemProperty(HardwareForm.Field.STEP).get(), "a step in % is no fuel of the table");
        assertEquals(50, session.job().proposal().step());
        assertEquals(java.util.List.of(), session.refusalProperty().get());
        type(HardwareForm.Field.STEP, "150");
        assertTrue(
                model.problemProperty(HardwareForm.Field.STEP).get().contains("step of 150"),
                model.problemProperty(HardwareForm.Field.STEP).get());
        assertEquals(50, session.job().proposal().step(), "what can't be isn't taken");
        model.hold(HardwareProfile.Holds.VALUE);
        type(HardwareForm.Field.STEP, "99");
        assertFalse(model.problemProperty(HardwareForm.Field.STEP).get().isEmpty());
    }

    @Test
    void nothingGoesOutBeforeItIsKnownWhatTheCellsHold() {
        assertTrue(model.isNowKnown(), "not asked of hardware that holds the table's own figures");
        model.hold(HardwareProfile.Holds.PERCENT_CHANGE);
        stage.stopsReadProperty().set(true);
        assertFalse(model.isNowKnown());
        assertFalse(stage.mayLeave());
        assertTrue(stage.whyNot().contains("cells hold now"), stage.whyNot());
        model.holdNothing();
        stage.stopsReadProperty().set(true);
        assertTrue(stage.mayLeave());
        assertTrue(stage.isDone(HandoverModel.Step.HARDWARE));
        model.hold(HardwareProfile.Holds.MULTIPLIER);
        assertFalse(model.isNowKnown(), "what was said in per cents is no multiplier");
    }

    @Test
    void whatTheCellsHoldCanBePasted() {
        model.hold(HardwareProfile.Holds.PERCENT_CHANGE);
        Table like = model.nowProperty().get().orElseThrow().figures();
        double[] figures = new double[like.cells()];
        java.util.Arrays.fill(figures, 8);
        model.holdPasted("good morning");
        assertFalse(model.nowProblemProperty().get().isEmpty());
        assertFalse(model.isNowKnown());
        model.holdPasted(fuelwright.table.TableWriter.cells(like.withValues(figures), false));
        assertTrue(model.isNowKnown());
        assertEquals("", model.nowProblemProperty().get());
        assertEquals(8, stage.sheetProperty().get().before().at(17));
        double[] none = new double[like.cells()];
        java.util.Arrays.fill(none, -100);
        model.holdPasted(fuelwright.table.TableWriter.cells(like.withValues(none), false));
        assertFalse(model.nowProblemProperty().get().isEmpty(), "no fuel would be left");
    }

    @Test
    void theStageOpensOnTheHardwareUntilSomebodyHasSaidWhatItTakes() {
        assertEquals(HandoverModel.Step.HARDWARE, stage.stepProperty().get());
        assertFalse(stage.isDone(HandoverModel.Step.HARDWARE));
        assertTrue(model.confirm());
        assertTrue(hardware().told());
        assertTrue(stage.isDone(HandoverModel.Step.HARDWARE));
        assertEquals(
                HandoverModel.Step.WRITE,
                new HandoverModel(session).stepProperty().get());
    }
}
