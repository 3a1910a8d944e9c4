package fuelwright.ui.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.Decision;
import fuelwright.mixture.Fuel;
import fuelwright.table.AxisEdit;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.plot.Curves;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.ShownTable;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class TableEditorTest {

    private final Session session = new Session(new FixtureServices(), new SameThreadRunner());
    private final TablesModel model = new TablesModel(session);
    private final TableEditor editor = model.editor();

    @BeforeEach
    void open() {
        session.openSample();
    }

    private Table fuel() {
        return session.job().fuelTable().orElseThrow();
    }

    private Table target() {
        return session.job().targetTable().orElseThrow();
    }

    private void select(int cell, Integer... block) {
        model.cellProperty().set(cell);
        model.blockProperty().set(Set.of(block));
    }

    private String said() {
        return editor.saidProperty().get();
    }

    @Test
    void aTypedFigureReplacesOneCellAndEachStepIsUndone() {
        double old = fuel().at(20);
        select(20);
        assertTrue(editor.type("61,5"));
        assertEquals(61.5, fuel().at(20));
        assertTrue(editor.type("+10 %"));
        assertEquals(67.65, fuel().at(20), 1e-9);
        session.undo();
        assertEquals(61.5, fuel().at(20));
        session.undo();
        assertEquals(old, fuel().at(20));
        session.redo();
        assertEquals(61.5, fuel().at(20));
    }

    @Test
    void whatNoTableCanHoldIsRefusedWithWordsAndChangesNothing() {
        Table before = fuel();
        select(20);
        assertFalse(editor.type("much"));
        assertTrue(said().contains("no number"));
        assertFalse(editor.type("5 %"));
        assertTrue(said().contains("could be"), said());
        assertFalse(editor.type("-3"));
        assertTrue(said().contains("no fuel"), said());
        assertTrue(said().contains("rpm"), said());
        assertFalse(editor.delete());
        assertTrue(said().contains("no empty cell"));
        model.cellProperty().set(-1);
        assertFalse(editor.type("5"));
        assertFalse(editor.fill("5"));
        assertFalse(editor.soften());
        assertTrue(editor.refusedProperty().get());
        assertEquals(before, fuel());
        model.shownProperty().set(ShownTable.TARGET);
        select(3);
        assertFalse(editor.type("14.7"));
        assertTrue(said().contains("0.50 to 2.00"), said());
    }

    @Test
    void aTargetIsTypedAsItIsShown() {
        model.shownProperty().set(ShownTable.TARGET);
        session.afrProperty().set(true);
        select(3);
        assertTrue(editor.type("13.23"));
        assertEquals(0.9, target().at(3), 1e-9);
        assertEquals("13.23", editor.figure().orElseThrow());
        assertTrue(editor.add("0.147"));
        assertEquals(0.91, target().at(3), 1e-9);
    }

    @Test
    void aPercentageOfAPulseIsOfWhatReallyInjects() {
        Table table = fuel();
        session.edit(job -> job.withFuelTable(TableOf.pulses(table))
                .withProposal(job.proposal().withDeadTimeMs(1)));
        select(20);
        assertTrue(editor.type("3"));
        assertTrue(editor.addPercent("10"));
        assertEquals(3.2, fuel().at(20), 1e-9);
        assertTrue(editor.times("0.5"));
        assertEquals(2.1, fuel().at(20), 1e-9);
    }

    @Test
    void whatIsCopiedCanBePastedBackWithAndWithoutBreakpoints() {
        Table before = fuel();
        for (boolean headed : new boolean[] {false, true}) {
            for (boolean asFile : new boolean[] {false, true}) {
                model.asFileProperty().set(asFile);
                select(20, 20, 21, 22, 35, 36, 37);
                String text = editor.copy(headed);
                assertEquals(
                        headed ? (asFile ? 4 : 3) : (asFile ? 3 : 2),
                        text.lines().filter(line -> !line.startsWith("#")).count());
                assertEquals(
                        session.outputs().stops().stream()
                                .map(stop -> "# caution: " + stop)
                                .toList(),
                        text.lines().filter(line -> line.startsWith("#")).toList());
                assertTrue(editor.fill("12"));
                assertTrue(editor.paste(text), said());
                assertEquals(before, fuel());
            }
        }
    }

    @Test
    void aStopCautionGoesOutAboveACopiedTable() {
        session.edit(job -> job.withFuelTable(
                fuel().withNotes(List.of(new Table.Note("caution", "Stop · Lean under load: once. Add the fuel.")))));
        select(20, 20, 21);
        assertTrue(!session.outputs().stops().isEmpty(), "carried, or found anew");
        assertTrue(editor.copy(false).startsWith("# caution: Stop · "), editor.copy(false));
        assertTrue(said().contains("Stop caution"), said());
    }

    @Test
    void oneFigureFillsTheSelectionAndABlockMustFit() {
        select(20, 20, 21, 35, 36);
        assertTrue(editor.paste("33"));
        assertEquals(33, fuel().at(36));
        select(fuel().cell(0, 14));
        assertFalse(editor.paste("1\t2\n3\t4"));
        assertTrue(said().contains("don't fit"), said());
        assertFalse(editor.paste("1\tx"));
        assertTrue(said().contains("Row 1, column 2"), said());
    }

    @Test
    void ridesKeepTheTableTheyWereMadeWithAndDecisionsAboutChangedCellsGo() {
        Table before = fuel();
        assertEquals(Optional.empty(), session.job().rides().get(0).madeWith());
        session.edit(job -> job.withProposal(job.proposal()
                .withDecisions(Map.of(
                        20, new Decision(Decision.Kind.HELD, before.at(20)),
                        21, new Decision(Decision.Kind.HELD, before.at(21))))));
        select(20);
        editor.type("40");
        assertEquals(Optional.of(before), session.job().rides().get(0).madeWith());
        assertTrue(model.ridesKeepAnotherTable());
        assertEquals(Set.of(21), session.job().proposal().decisions().keySet());
        editor.type("41");
        assertEquals(Optional.of(before), session.job().rides().get(0).madeWith());
        session.undo();
        session.undo();
        assertEquals(Optional.empty(), session.job().rides().get(0).madeWith());
    }

    @Test
    void anAxisIsEditedAtTheSelectedCell() {
        select(fuel().cell(4, 7));
        assertTrue(editor.move(AxisEdit.Side.LOAD, "8"));
        assertEquals(8, fuel().load().at(4));
        assertTrue(editor.insert(AxisEdit.Side.SPEED, "4250"));
        assertEquals(16, fuel().speed().size());
        assertEquals(-1, model.cellProperty().get());
        assertFalse(editor.remove(AxisEdit.Side.SPEED));
        select(fuel().cell(0, 8));
        assertTrue(editor.remove(AxisEdit.Side.SPEED));
        assertEquals(15, fuel().speed().size());
        select(fuel().cell(4, 7));
        assertFalse(editor.move(AxisEdit.Side.LOAD, "50"));
        assertTrue(said().contains("ascend"), said());
    }

    @Test
    void theFirstRideTableIsNotEditedByHand() {
        model.shownProperty().set(ShownTable.FIRST_RIDE);
        select(20);
        assertFalse(editor.isEditable());
        assertFalse(editor.type("40"));
        assertTrue(said().contains("isn't edited"), said());
    }

    @Test
    void curvesGoThroughTheSelectedCellsLine() {
        select(fuel().cell(4, 7), fuel().cell(4, 7), fuel().cell(5, 7));
        Curves curves = model.curves().orElseThrow();
        assertEquals(15, curves.xs().size());
        assertEquals(fuel().cell(4, 7), curves.cells().get(7));
        assertEquals(Curves.Weight.BOLD, curves.lines().get(4).weight());
        assertEquals(Curves.Weight.CHOSEN, curves.lines().get(5).weight());
        assertEquals(fuel().at(fuel().cell(4, 7)), curves.lines().get(4).ys().get(7));
        model.alongLoadProperty().set(true);
        assertEquals(13, model.curves().orElseThrow().xs().size());
        assertEquals(195, model.surface().orElseThrow().heights().size());
        assertTrue(model.surface().orElseThrow().heights().stream().allMatch(h -> Math.abs(h) <= 1));
    }

    @Test
    void aTargetIsSeenBeforeItIsTakenAndTakenAsOneStep() {
        model.shownProperty().set(ShownTable.TARGET);
        Table before = target();
        TargetModel making = model.target();
        making.openProperty().set(true);
        assertEquals("0.87", making.fullLoadProperty().get());
        assertNotNull(making.previewProperty().get());
        assertEquals(making.previewProperty().get(), model.table().orElseThrow());
        assertFalse(editor.isEditable());
        assertEquals(before, target());
        making.fullLoadProperty().set("0.97");
        assertTrue(
                making.problemProperty().get().contains("0.95"),
                making.problemProperty().get());
        assertNull(making.previewProperty().get());
        making.fuelProperty().set(Fuel.E85);
        assertEquals("0.85", making.fullLoadProperty().get());
        Table seen = making.previewProperty().get();
        making.take();
        assertEquals(seen, target());
        assertEquals(Fuel.E85, session.job().machine().fuel());
        assertFalse(making.openProperty().get());
        session.undo();
        assertEquals(before, target());
        assertEquals(Fuel.PETROL, session.job().machine().fuel());
    }

    @Test
    void aTargetBeingMadeStaysTheSameInTheOtherNotation() {
        model.shownProperty().set(ShownTable.TARGET);
        TargetModel making = model.target();
        making.openProperty().set(true);
        making.idleProperty().set("0.93");
        Table seen = making.previewProperty().get();
        session.afrProperty().set(true);
        assertEquals("13.7", making.idleProperty().get());
        assertEquals("12.8", making.fullLoadProperty().get());
        assertEquals(seen, making.previewProperty().get(), "what is only shown otherwise isn't rounded");
        making.fullLoadProperty().set("14.5");
        assertTrue(
                making.problemProperty().get().startsWith("Full load lies from AFR 10.3 to 14.0 on petrol"),
                making.problemProperty().get());
        making.fullLoadProperty().set("12.5");
        session.afrProperty().set(false);
        assertEquals("0.85", making.fullLoadProperty().get());
    }

    /** Tables for these tests. */
    private static final class TableOf {
        static Table pulses(Table table) {
            double[] pulses = new double[table.cells()];
            java.util.Arrays.fill(pulses, 4);
            return table.with(Quantity.INJECTOR_PULSE, pulses);
        }
    }
}
