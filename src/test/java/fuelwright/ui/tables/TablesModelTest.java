package fuelwright.ui.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.InjectorSet;
import fuelwright.airflow.Machine;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.plot.GridShape;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.ShownTable;
import fuelwright.ui.session.Stage;
import fuelwright.ui.session.StageState;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class TablesModelTest {

    private final Session session = new Session(new FixtureServices(), new SameThreadRunner());
    private final TablesModel model = new TablesModel(session);

    @Test
    void nothingIsShownWhereThereIsNoTable() {
        assertNull(model.mapProperty().get());
        model.shownProperty().set(ShownTable.FIRST_RIDE);
        assertNull(model.mapProperty().get());
    }

    @Test
    void aTargetIsShownInTheChosenNotation() {
        session.openSample();
        model.shownProperty().set(ShownTable.TARGET);
        model.cellProperty().set(0);
        assertEquals("λ 0.98", model.selected().orElseThrow().figure());
        session.afrProperty().set(true);
        assertEquals("AFR 14.4", model.selected().orElseThrow().figure());
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
        model.shownProperty().set(ShownTable.FIRST_RIDE);
        assertNotNull(model.firstRideProperty().get());
        assertTrue(model.mapProperty().get().cells().stream().allMatch(c -> c.hatched()));
        var before = model.firstRideProperty().get();
        session.edit(job -> job.withName("other"));
        assertEquals(before, model.firstRideProperty().get());
        session.edit(job -> job.withMachine(fuelwright.airflow.Machine.unknown()));
        assertNull(model.firstRideProperty().get());
        assertNull(model.mapProperty().get());
    }

    private void target(Quantity quantity, double scale) {
        Table now = session.job().targetTable().orElseThrow();
        session.edit(job -> job.withNewTarget(now.with(
                quantity, Arrays.stream(now.toArray()).map(v -> scale * v).toArray())));
    }

    /** A target that is lean at full throttle is a Stop against the first-ride table, whenever it comes. */
    @Test
    void theFirstRideTableFollowsTheTarget() {
        session.openSample();
        model.shownProperty().set(ShownTable.FIRST_RIDE);
        assertEquals(List.of(), model.stops());
        var before = model.firstRideProperty().get();
        target(Quantity.LAMBDA, 1.2);
        assertNotNull(model.firstRideProperty().get());
        assertNotEquals(before, model.firstRideProperty().get());
        assertFalse(model.stops().isEmpty());
        assertFalse(session.outputs().stops().isEmpty());
        session.undo();
        assertEquals(List.of(), model.stops());
        // A target typed while another table is looked at.
        model.shownProperty().set(ShownTable.TARGET);
        target(Quantity.LAMBDA, 1.2);
        assertNull(model.firstRideProperty().get());
        session.undo();
        model.shownProperty().set(ShownTable.FIRST_RIDE);
        assertNotNull(model.firstRideProperty().get(), "also where the job is again what it was");
    }

    @Test
    void whereRidesAreOpenNothingSaysThatThereIsNone() {
        session.openSample();
        model.shownProperty().set(ShownTable.FIRST_RIDE);
        var rules = model.firstRideProperty().get().cautions().stream()
                .map(c -> c.rule())
                .toList();
        assertFalse(rules.contains("lean-not-checked") || rules.contains("injector-duty-not-checked"), rules + "");
        session.edit(job -> job.withRides(List.of()).withMachine(job.machine().with(fuelwright.mixture.Fuel.E5)));
        rules = model.firstRideProperty().get().cautions().stream()
                .map(c -> c.rule())
                .toList();
        assertTrue(rules.contains("lean-not-checked"), rules + "");
    }

    @Test
    void aFirstRideTableThatComesLateIsDropped() {
        SameThreadRunner runner = new SameThreadRunner();
        Session slow = new Session(new FixtureServices(), runner);
        TablesModel late = new TablesModel(slow);
        slow.openSample();
        runner.hold();
        late.shownProperty().set(ShownTable.FIRST_RIDE);
        late.shownProperty().set(ShownTable.TARGET);
        slow.edit(job -> job.withTargetTable(job.targetTable()
                .orElseThrow()
                .withValues(Arrays.stream(job.targetTable().orElseThrow().toArray())
                        .map(v -> 1.2 * v)
                        .toArray())));
        runner.release();
        assertNull(late.firstRideProperty().get());
        late.shownProperty().set(ShownTable.FIRST_RIDE);
        assertFalse(late.stops().isEmpty());
    }

    @Test
    void theRatioOfAnAfrTargetIsItsOwnAskedForAndGoesWithIt() {
        session.openSample();
        model.shownProperty().set(ShownTable.TARGET);
        assertFalse(model.isTargetRatioNeeded());
        target(Quantity.AFR, 14.1);
        assertTrue(model.isTargetRatioNeeded());
        assertTrue(session.job().asksForTargetRatio());
        assertEquals(StageState.NEEDS_YOU, StageState.of(Stage.TABLES, session.job(), null, false, false));
        assertEquals(0.87 * 14.1 / 14.7, fullThrottle(), 1e-9);
        assertFalse(model.targetRatio("141"));
        assertFalse(model.targetRatio("much"));
        assertTrue(model.targetRatio("14,1"));
        assertFalse(session.job().asksForTargetRatio());
        assertEquals(0.87, fullThrottle(), 1e-9);
        model.cellProperty().set(session.job().fuelTable().orElseThrow().cells() - 1);
        session.edit(job -> job.withDisplayRatio(13.5));
        session.afrProperty().set(true);
        assertEquals("AFR 12.3", model.selected().orElseThrow().figure(), "in the target's own figures");
        assertTrue(model.targetWords().startsWith("Below 14.1 is rich"), model.targetWords());
        session.afrProperty().set(false);
        assertTrue(model.targetWords().startsWith("Below 1.00 is rich"), model.targetWords());
        target(Quantity.AFR, 1);
        assertTrue(session.job().asksForTargetRatio(), "another target has another ratio");
    }

    private double fullThrottle() {
        Table lambda = session.job().targetLambda().orElseThrow();
        return lambda.at(lambda.cells() - 1);
    }

    @Test
    void aSlipOfTheFingerIsSaidWithItsPlaceWhileTheTableIsShown() {
        session.openSample();
        assertEquals(List.of(), model.oddCells());
        Table fuel = session.job().fuelTable().orElseThrow();
        double[] cells = fuel.toArray();
        int slip = fuel.cell(3, 4);
        cells[slip] = cells[slip] / 10;
        session.edit(job -> job.withFuelTable(fuel.withValues(cells)));
        assertEquals(1, model.oddCells().size());
        assertEquals(model.placeOf(slip), model.oddCells().get(0).words());
        model.shownProperty().set(ShownTable.TARGET);
        assertEquals(List.of(), model.oddCells());
    }

    @Test
    void onlyAPulseTableAsksForTheDeadTime() {
        session.openSample();
        assertFalse(model.asksForDeadTime());
        Table table = session.job().fuelTable().orElseThrow();
        session.edit(job -> job.withFuelTable(table.with(Quantity.INJECTOR_PULSE, table.toArray())));
        assertTrue(model.asksForDeadTime());
        assertTrue(model.isDeadTimeUntold());
        model.deadTime("0,9");
        assertEquals(0.9, session.job().proposal().deadTimeMs());
        assertFalse(model.deadTime("-1"));
        assertFalse(model.deadTime("much"));
        assertEquals(0.9, session.job().proposal().deadTimeMs());
    }

    private static Machine with(double deadTimeMs, Machine m) {
        InjectorSet injectors = new InjectorSet(
                OptionalInt.of(2), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.of(deadTimeMs));
        return m.with(injectors);
    }

    @Test
    void theInjectorsDeadTimeIsOnlyOfferedForThePulsesAndNoneIsAnAnswer() {
        session.openSample();
        session.edit(job -> job.withMachine(with(0.85, job.machine())));
        Table table = session.job().fuelTable().orElseThrow();
        session.edit(job -> job.withFuelTable(table.with(Quantity.INJECTOR_PULSE, table.toArray())));
        assertTrue(model.isDeadTimeUntold(), "nobody has said what the pulses contain");
        assertEquals(0.85, model.injectorDeadTimeMs().orElseThrow());
        model.shownProperty().set(ShownTable.FIRST_RIDE);
        assertNull(model.firstRideProperty().get());
        assertEquals(List.of(), session.issues(), "a question is no error");
        assertTrue(model.deadTime("0"));
        assertFalse(model.isDeadTimeUntold());
        assertNotNull(model.firstRideProperty().get());
        assertEquals(0, session.job().proposal().deadTimeToldMs().orElseThrow());
        assertEquals(0.85, session.job().machine().injectors().deadTimeMs().orElseThrow());
        assertTrue(model.deadTime(""));
        assertTrue(model.isDeadTimeUntold());
    }
}
