package fuelwright.ui.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.Machine;
import fuelwright.job.Job;
import fuelwright.mixture.Fuel;
import fuelwright.safety.Limit;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.session.StageState;
import fuelwright.ui.theme.Measures;
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
        assertEquals(
                machine, MachineForm.of(machine, session.shownIn()).machine().orElseThrow());
        assertEquals(
                Machine.unknown(),
                MachineForm.of(Machine.unknown(), session.shownIn()).machine().orElseThrow());
    }

    @Test
    void injectorsAndAltitudeGoIntoTheJobAndComeBack() {
        session.openSample();
        model.textProperty(MachineForm.Field.INJECTORS).set("2");
        model.textProperty(MachineForm.Field.INJECTOR_BEFORE).set("240");
        model.textProperty(MachineForm.Field.INJECTOR_AFTER).set("300");
        model.textProperty(MachineForm.Field.DEAD_TIME).set("0.9");
        model.textProperty(MachineForm.Field.INJECTIONS).set("2");
        model.textProperty(MachineForm.Field.ALTITUDE).set("1500");
        model.commit();
        Job job = session.job();
        assertEquals(1.25, job.machine().injectors().ratio().orElseThrow());
        assertEquals(0.9, job.machine().injectors().deadTimeMs().orElseThrow());
        assertTrue(job.proposal().deadTimeToldMs().isEmpty(), "what a table's pulses contain is another matter");
        assertEquals(2, job.limits().of(Limit.INJECTIONS_PER_CYCLE));
        assertEquals(84.56, job.machine().barometerKpa(), 0.01, "ISO 2533 at a geometric height of 1500 m");
        assertEquals(job, MachineForm.of(job, session.shownIn()).into(job).orElseThrow());
        model.textProperty(MachineForm.Field.INJECTIONS).set("");
        model.textProperty(MachineForm.Field.DEAD_TIME).set("");
        model.commit();
        assertTrue(session.job().machine().injectors().deadTimeMs().isEmpty());
        assertTrue(session.job().limits().changed().isEmpty());
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
    void whatIsUsualIsShownAsUsualAndNotAsTold() {
        model.textProperty(MachineForm.Field.BORE_BEFORE).set("38");
        model.commit();
        assertEquals(8, session.job().machine().before().orElseThrow().shaftMm());
        assertEquals("", model.textProperty(MachineForm.Field.SHAFT_BEFORE).get());
        assertEquals("usual 8", model.prompt(MachineForm.Field.SHAFT_BEFORE));
        assertEquals("usual 85", model.prompt(MachineForm.Field.OPEN_BEFORE));
        assertEquals("not known", model.prompt(MachineForm.Field.SHAFT_AFTER));
        model.textProperty(MachineForm.Field.SHAFT_BEFORE).set("8");
        model.commit();
        assertEquals("8", model.textProperty(MachineForm.Field.SHAFT_BEFORE).get(), "what was typed stays");
        model.textProperty(MachineForm.Field.SHAFT_BEFORE).set("9");
        model.commit();
        assertEquals(
                "9", MachineForm.of(session.job(), session.shownIn()).texts().get(MachineForm.Field.SHAFT_BEFORE));
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
    void howManyBodiesThereAreIsNotKnownUntilSomebodySaysIt() {
        assertEquals("", model.textProperty(MachineForm.Field.BODIES).get());
        model.textProperty(MachineForm.Field.DISPLACEMENT).set("720");
        model.textProperty(MachineForm.Field.BORE_BEFORE).set("38");
        model.textProperty(MachineForm.Field.BORE_AFTER).set("44");
        model.commit();
        assertTrue(session.job().machine().bodies().isEmpty());
        assertTrue(
                model.consequenceProperty().get().contains("the number of throttle bodies"),
                model.consequenceProperty().get());
        assertNull(model.forecastProperty().get());
        assertEquals(StageState.NEEDS_YOU, StageState.of(Stage.MACHINE, session.job(), null, false, false));
        model.textProperty(MachineForm.Field.BODIES).set("2");
        model.commit();
        assertNotNull(model.forecastProperty().get());
        assertEquals(StageState.DONE, StageState.of(Stage.MACHINE, session.job(), null, false, false));
    }

    @ParameterizedTest
    @CsvSource({"44 mm", "44mm", "44 MM", "' 44.0 mm '"})
    void aFigureMayHaveItsOwnUnitBehindIt(String typed) {
        session.openSample();
        model.textProperty(MachineForm.Field.BORE_AFTER).set("50");
        model.textProperty(MachineForm.Field.BORE_AFTER).set(typed);
        assertEquals("", model.problemProperty(MachineForm.Field.BORE_AFTER).get());
        assertEquals(44, model.typedProperty().get().after().orElseThrow().boreMm());
        model.textProperty(MachineForm.Field.DISPLACEMENT).set("720 cm³");
        model.textProperty(MachineForm.Field.OPEN_AFTER).set("85°");
        model.commit();
        assertEquals(720, session.job().machine().displacementCc().orElseThrow());
        assertEquals(44, session.job().machine().after().orElseThrow().boreMm());
        model.textProperty(MachineForm.Field.BORE_AFTER).set("44 rpm");
        assertFalse(model.problemProperty(MachineForm.Field.BORE_AFTER).get().isEmpty());
    }

    /** Closed, the forecast may be either way by more than most changes: that is no "no change". */
    @Test
    void aForecastThatCouldBeEitherWayIsNoZero() {
        session.openSample();
        HeatMap map = model.forecastProperty().get().map();
        int questions = 0;
        for (int cell = 0; cell < map.cells().size(); cell++) {
            HeatCell c = map.cells().get(cell);
            double doubt = Double.parseDouble(c.below().substring(1));
            boolean zero = c.figure().equals("0")
                    || c.figure().equals("+0")
                    || c.figure().equals("−0");
            assertFalse(zero && doubt >= 5, c.words());
            questions += c.figure().equals("?") ? 1 : 0;
        }
        assertTrue(questions > 0);
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
                model.consequenceProperty().get().contains("+34\u00a0%"),
                model.consequenceProperty().get());
    }

    @Test
    void theForecastFollowsTypingBeforeItIsCommitted() {
        session.openSample();
        BoreForecastPicture before = model.forecastProperty().get();
        assertEquals(70, before.map().cells().size());
        assertTrue(before.map().cells().stream().allMatch(c -> c.hatched()));
        model.textProperty(MachineForm.Field.BORE_AFTER).set("50");
        assertEquals(44, session.job().machine().after().orElseThrow().boreMm());
        assertTrue(middle(model.forecastProperty().get()) > middle(before) + 5);
        model.textProperty(MachineForm.Field.BORE_AFTER).set("5o");
        assertNull(model.forecastProperty().get(), "what is said to be no number isn't drawn either");
        assertTrue(model.typedProperty().get().after().isEmpty());
        model.textProperty(MachineForm.Field.BORE_AFTER).set("50");
        assertNotNull(model.forecastProperty().get());
        model.textProperty(MachineForm.Field.BORE_AFTER).set("");
        assertNull(model.forecastProperty().get());
    }

    /** More air at 5 % throttle on the bold curve. */
    private static double middle(BoreForecastPicture picture) {
        return picture.curves().lines().get(2).ys().get(5);
    }

    @Test
    void smallOpeningsGainMostAndFullThrottleLeast() {
        session.openSample();
        for (var line : model.forecastProperty().get().curves().lines()) {
            double most = java.util.Collections.max(line.ys());
            // The shaft is a smaller part of the bigger bore, so a little more than the bores' squares.
            assertTrue(most > 5 && most < 100 * (44.0 * 44 / (38 * 38) * 1.06 - 1), line.name() + ": " + most);
            assertTrue(line.ys().indexOf(most) <= 20, line.name());
            assertTrue(line.ys().get(line.ys().size() - 1) < most / 3, line.name());
        }
    }

    /** Equal angles: while the shaft doesn't hide the plate the areas go as the bores' squares, nearly, as its share of the bore differs. */
    @Test
    void theRatioOfOpenAreasIsThatOfTheBoresSquaresNearly() {
        session.openSample();
        model.throttleProperty().set(30);
        assertEquals(44.0 * 44 / (38 * 38), model.areaRatio().orElseThrow(), 0.06);
        model.throttleProperty().set(0);
        assertTrue(model.areaRatio().isEmpty());
    }

    @Test
    void altitudeIsTypedInWhatIsShownAndNeverMovedByShowingIt() {
        session.openSample();
        model.textProperty(MachineForm.Field.ALTITUDE).set("1234");
        session.measuresProperty().set(Measures.IMPERIAL);
        assertEquals("4049", model.textProperty(MachineForm.Field.ALTITUDE).get());
        assertEquals("Altitude, ft", model.name(MachineForm.Field.ALTITUDE));
        model.commit();
        assertEquals(1234, session.job().machine().altitudeM().orElseThrow());
        model.textProperty(MachineForm.Field.ALTITUDE).set("5000");
        model.commit();
        assertEquals(1524, session.job().machine().altitudeM().orElseThrow());
        assertEquals("5000", model.textProperty(MachineForm.Field.ALTITUDE).get());
        model.textProperty(MachineForm.Field.ALTITUDE).set("500 m");
        model.commit();
        assertEquals(500, session.job().machine().altitudeM().orElseThrow());
        model.textProperty(MachineForm.Field.ALTITUDE).set("30000");
        assertEquals(
                "From −1312 to 19685, please.",
                model.problemProperty(MachineForm.Field.ALTITUDE).get());
    }

    @Test
    void aPartKeepsTheUnitThatItIsNamedByAndTakesAnotherWhereItIsTyped() {
        session.openSample();
        session.measuresProperty().set(Measures.IMPERIAL);
        assertEquals("44", model.textProperty(MachineForm.Field.BORE_AFTER).get());
        assertEquals("Bore after, mm", model.name(MachineForm.Field.BORE_AFTER));
        model.textProperty(MachineForm.Field.BORE_AFTER).set("1.75 in");
        model.textProperty(MachineForm.Field.DISPLACEMENT).set("44 in³");
        model.commit();
        assertEquals(44.45, session.job().machine().after().orElseThrow().boreMm());
        assertEquals(721.030816, session.job().machine().displacementCc().orElseThrow());
    }
}
