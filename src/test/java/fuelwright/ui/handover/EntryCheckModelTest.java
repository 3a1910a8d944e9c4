package fuelwright.ui.handover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.handover.EntryDifference;
import fuelwright.job.HardwareProfile;
import fuelwright.table.Table;
import fuelwright.table.TableWriter;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class EntryCheckModelTest {

    private final Session session = new Session(new FixtureServices(), new SameThreadRunner());
    private final HandoverModel stage = new HandoverModel(session);
    private final EntryCheckModel model = stage.check();

    @BeforeEach
    void open() {
        session.openSample();
    }

    private Table meant() {
        return stage.sheetProperty().get().after();
    }

    private Table with(int cell, double figure) {
        double[] cells = meant().toArray();
        cells[cell] = figure;
        return meant().withValues(cells);
    }

    @Test
    void whatWasTypedRightIsSaidToBeRight() {
        for (String text : new String[] {headed(false), headed(true), TableWriter.cells(meant(), false)}) {
            model.textProperty().set(text);
            assertTrue(
                    model.saidProperty().get().startsWith("All 195 cells"),
                    model.saidProperty().get() + model.remarkProperty().get());
            assertTrue(model.found().isEmpty());
        }
    }

    /** With breakpoints, as a spreadsheet copies it. */
    private String headed(boolean decimalComma) {
        String text = TableWriter.write(meant(), decimalComma);
        return text.substring(text.indexOf('\n') + 1).replace(decimalComma ? ';' : ',', '\t');
    }

    /** Copied, and pasted again without having been read back: that all is as meant says nothing about the hardware. */
    @Test
    void theProgramsOwnTableIsNeverSaidToBeRight() {
        stage.stopsReadProperty().set(true);
        for (String own : new String[] {
            stage.copy(), stage.copy().replace("\n", "\r\n").strip(), "# caution: Stop · lean\n" + headed(false)
        }) {
            model.textProperty().set(own);
            assertTrue(model.refusedProperty().get(), own);
            assertTrue(
                    model.remarkProperty().get().contains("the program's own table"),
                    model.remarkProperty().get());
        }
        String figures = TableWriter.cells(meant(), false);
        model.textProperty().set(figures);
        assertFalse(model.refusedProperty().get());
        stage.copied(figures);
        model.textProperty().set("");
        model.textProperty().set(figures);
        assertTrue(model.refusedProperty().get(), "figures alone too, once they were copied from here");
    }

    @Test
    void nothingLooksTypedBeforeAnythingWasPasted() {
        assertNull(model.mapProperty().get());
        model.textProperty().set("good morning");
        assertNull(model.mapProperty().get());
        model.textProperty().set(TableWriter.cells(meant(), false));
        assertNotNull(model.mapProperty().get());
        model.textProperty().set("");
        assertNull(model.mapProperty().get());
    }

    @Test
    void aSlipIsFoundNamedAndJumpedTo() {
        int cell = meant().cell(12, 8);
        model.textProperty().set(TableWriter.cells(with(cell, meant().at(cell) / 10), false));
        assertEquals(1, model.found().size());
        EntryDifference d = model.found().get(0);
        assertEquals(cell, d.cell());
        assertTrue(d.isStop());
        assertEquals(cell, stage.cellProperty().get());
        assertEquals(cell, session.cellProperty().get(), "the cells are those of the fuel table");
        assertTrue(
                model.saidProperty().get().contains("1 of them lean at high load or its edge"),
                model.saidProperty().get());
        assertTrue(model.mapProperty().get().cells().get(cell).stop());
        assertTrue(model.effect(d).contains("leaner than meant at high load"), model.effect(d));
        model.textProperty().set("");
        assertEquals("", model.saidProperty().get());
        assertTrue(model.found().isEmpty());
    }

    @Test
    void partOfATableIsNotTakenForTheWhole() {
        String whole = TableWriter.write(meant());
        model.textProperty().set(whole.substring(0, whole.lastIndexOf('\n', whole.length() - 2)));
        assertTrue(model.refusedProperty().get());
        assertTrue(
                model.remarkProperty().get().contains("all cells"),
                model.remarkProperty().get());
        String cells = TableWriter.cells(meant(), false);
        model.textProperty().set(cells.substring(cells.indexOf('\n') + 1));
        assertTrue(model.refusedProperty().get());
        model.textProperty().set("good morning");
        assertTrue(model.refusedProperty().get());
        assertTrue(model.found().isEmpty());
    }

    @Test
    void otherHardwareIsCheckedInItsOwnCells() {
        stage.hardware().textProperty(HardwareForm.Field.SPEEDS).set("1000 3000 5000 8000");
        stage.hardware().textProperty(HardwareForm.Field.STEP).set("1");
        stage.hardware().hold(HardwareProfile.Holds.PERCENT_CHANGE);
        assertEquals(4 * 13, meant().cells());
        model.textProperty().set(TableWriter.cells(with(7, meant().at(7) + 1), false));
        assertEquals(1, model.found().size());
        assertEquals(7, stage.cellProperty().get());
        assertEquals(-1, session.cellProperty().get(), "the fuel table has no such cell");
        assertFalse(model.place(model.found().get(0)).isEmpty());
    }
}
