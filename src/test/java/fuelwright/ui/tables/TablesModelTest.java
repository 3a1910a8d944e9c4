package fuelwright.ui.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.plot.GridShape;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import org.junit.jupiter.api.Test;

class TablesModelTest {

    private final Session session = new Session(new FixtureServices(), new SameThreadRunner());
    private final TablesModel model = new TablesModel(session);

    @Test
    void nothingIsShownWhereThereIsNoTable() {
        assertNull(model.mapProperty().get());
        model.shownProperty().set(TablesModel.Shown.FIRST_RIDE);
        assertNull(model.mapProperty().get());
    }

    @Test
    void aTargetIsShownInTheChosenNotation() {
        session.openSample();
        model.shownProperty().set(TablesModel.Shown.TARGET);
        model.cellProperty().set(0);
        assertEquals("λ 0.98", model.selected().orElseThrow().figure());
        session.afrProperty().set(true);
        assertEquals("14.4 AFR", model.selected().orElseThrow().figure());
        assertEquals("14.4", model.mapProperty().get().cells().get(0).figure());
    }

    @Test
    void theGridCanLieAsInItsFile() {
        session.openSample();
        assertEquals(GridShape.View.CHART, model.viewProperty().get());
        model.asFileProperty().set(true);
        assertEquals(GridShape.View.SPEED_DOWN, model.viewProperty().get());
    }

    @Test
    void theFirstRideTableIsAllHatchedAndFollowsTheMachine() {
        session.openSample();
        model.shownProperty().set(TablesModel.Shown.FIRST_RIDE);
        assertNotNull(model.firstRideProperty().get());
        assertTrue(model.mapProperty().get().cells().stream().allMatch(c -> c.hatched()));
        var before = model.firstRideProperty().get();
        session.edit(job -> job.withName("other"));
        assertEquals(before, model.firstRideProperty().get());
        session.edit(job -> job.withMachine(fuelwright.airflow.Machine.unknown()));
        assertNull(model.firstRideProperty().get());
        assertNull(model.mapProperty().get());
    }

    @Test
    void onlyAPulseTableAsksForTheDeadTime() {
        session.openSample();
        assertFalse(model.asksForDeadTime());
        Table table = session.job().fuelTable().orElseThrow();
        session.edit(job -> job.withFuelTable(table.with(Quantity.INJECTOR_PULSE, table.toArray())));
        assertTrue(model.asksForDeadTime());
        model.deadTime("0,9");
        assertEquals(0.9, session.job().proposal().deadTimeMs());
        model.deadTime("-1");
        model.deadTime("much");
        assertEquals(0.9, session.job().proposal().deadTimeMs());
    }
}
