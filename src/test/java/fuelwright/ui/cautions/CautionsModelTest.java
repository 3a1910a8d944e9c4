package fuelwright.ui.cautions;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.safety.Caution;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import org.junit.jupiter.api.Test;

class CautionsModelTest {

    private final Session session = new Session(new FixtureServices(), new SameThreadRunner());
    private final CautionsModel model = new CautionsModel(session);

    @Test
    void theWorstIsSelectedFirstAndStaysSelected() {
        session.openSample();
        assertEquals(Caution.Level.STOP, model.selectedProperty().get().level());
        model.selectedProperty().set(model.cautions().get(1));
        session.edit(job -> job.withName("other"));
        assertEquals(Caution.Level.CHECK, model.selectedProperty().get().level());
        assertEquals("1 Stop, 1 Check, 1 Note. Worst first.", model.summary());
    }

    @Test
    void aCautionLeadsToItsCellAndItsMoment() {
        session.openSample();
        model.showCell();
        assertEquals(Stage.PROPOSAL, session.stageProperty().get());
        assertEquals(
                model.selectedProperty().get().cells().first(),
                session.cellProperty().get());
        Caution.Moment moment = model.selectedProperty().get().worst().orElseThrow();
        model.showMoment();
        assertEquals(Stage.RIDES, session.stageProperty().get());
        assertEquals(moment, session.momentProperty().get());
        assertTrue(model.words(moment).startsWith("ride-1.csv at 1:52.4"), model.words(moment));
        assertEquals("λ 1.02", model.worst(moment).orElseThrow());
    }

    @Test
    void selectingACautionSelectsTheCellOfItsWorstMoment() {
        session.openSample();
        assertEquals(-1, session.cellProperty().get());
        model.select(model.cautions().get(0));
        assertEquals("Selected: 5500 rpm × 85 % throttle", model.selectedCell());
        assertTrue(model.mapProperty()
                .get()
                .cells()
                .get(session.cellProperty().get())
                .stop());
        model.select(model.cautions().get(1));
        assertEquals(
                model.cautions().get(1).cells().first(), session.cellProperty().get());
        assertEquals(-1, model.index());
        model.select(model.cautions().get(2));
        assertEquals(
                model.cautions().get(1).cells().first(), session.cellProperty().get());
    }

    @Test
    void momentsAreGoneThroughAndEndAtTheLast() {
        session.openSample();
        model.select(model.cautions().get(0));
        assertEquals(0, model.index());
        model.step(1);
        assertEquals(0, model.index());
        assertEquals(
                model.cautions().get(0).worst().orElseThrow(),
                model.momentProperty().get());
    }
}
