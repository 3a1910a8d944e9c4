package fuelwright.ui.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.Machine;
import fuelwright.mixture.Fuel;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MachineModelTest {

    private final Session session = new Session(new FixtureServices(), new SameThreadRunner());
    private final MachineModel model = new MachineModel(session);

    @Test
    void aMachineSurvivesTheForm() {
        session.openSample();
        Machine machine = session.job().machine();
        assertEquals(machine, MachineForm.of(machine).machine().orElseThrow());
        assertEquals(
                Machine.unknown(), MachineForm.of(Machine.unknown()).machine().orElseThrow());
    }

    @Test
    void whatIsTypedGoesIntoTheJobAndCanBeUndone() {
        session.openSample();
        model.textProperty(MachineForm.Field.BORE_AFTER).set("46");
        model.commit();
        assertEquals(46, session.job().machine().after().orElseThrow().boreMm());
        session.undo();
        assertEquals("44", model.textProperty(MachineForm.Field.BORE_AFTER).get());
    }

    @ParameterizedTest
    @CsvSource({"BORE_AFTER,4", "BORE_AFTER,abc", "SHAFT_AFTER,45", "OPEN_AFTER,3", "BODIES,1.5", "DISPLACEMENT,-7"})
    void whatCannotBeIsSaidBesideItsFieldAndNotTaken(MachineForm.Field field, String text) {
        session.openSample();
        Machine before = session.job().machine();
        model.textProperty(field).set(text);
        model.commit();
        assertFalse(model.problemProperty(field).get().isEmpty());
        assertEquals(before, session.job().machine());
    }

    @Test
    void anEmptyFieldMeansNotKnown() {
        session.openSample();
        model.textProperty(MachineForm.Field.BORE_BEFORE).set("");
        model.commit();
        assertTrue(session.job().machine().before().isEmpty());
        assertTrue(model.consequenceProperty().get().startsWith("With both bores"));
    }

    @Test
    void anotherFuelIsTakenAtOnce() {
        session.openSample();
        model.fuelProperty().set(Fuel.E85);
        assertEquals(Fuel.E85, session.job().machine().fuel());
    }

    @Test
    void theGrowthOfTheBoreIsSaid() {
        session.openSample();
        assertTrue(
                model.consequenceProperty().get().contains("+34 %"),
                model.consequenceProperty().get());
    }
}
