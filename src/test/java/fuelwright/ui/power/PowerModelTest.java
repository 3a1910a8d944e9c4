package fuelwright.ui.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.PowerCorrection;
import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.power.PowerModel.Field;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Measures;
import fuelwright.unit.Unit;
import fuelwright.work.PowerPulls;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

class PowerModelTest {

    private final PowerModel model = new PowerModel(new Session(new FixtureServices(), new SameThreadRunner()));

    @Test
    void aFieldOutsideItsBoundsStopsTheCurvesAndIsSaid() {
        assertTrue(model.settings().orElseThrow().road().isEmpty());
        model.type(Field.MASS, "2");
        assertTrue(model.problem(Field.MASS).orElseThrow().contains("50"));
        assertTrue(model.settings().isEmpty());
        model.type(Field.MASS, "290,5");
        assertEquals(290.5, model.settings().orElseThrow().road().orElseThrow().massKg());
    }

    @Test
    void aStandardAsksForTheAirOfTheDay() {
        model.choose(Optional.of(PowerCorrection.ISO_1585));
        assertTrue(model.problem(Field.PRESSURE).isPresent());
        assertTrue(model.settings().isEmpty());
        model.type(Field.PRESSURE, "98");
        model.type(Field.TEMPERATURE, "20");
        assertEquals(
                Optional.of(PowerCorrection.ISO_1585),
                model.settings().orElseThrow().standard());
    }

    @Test
    void ridesWithoutAPullDontHideTheOthersAndFirstAndLastAreCompared() {
        PowerPulls.Settings settings = model.settings().orElseThrow();
        PowerModel.Shown shown = PowerModel.of(
                List.of(ride("idle", 0, 40), ride("a", 100, 40), ride("b", 100, 41), ride("c", 100, 44)), settings);
        PowerPulls.Outcome outcome = shown.outcome().orElseThrow();
        assertEquals("a", outcome.curves().get(0).get(0).pull().ride().name());
        assertEquals("c", outcome.curves().get(1).get(0).pull().ride().name());
        assertEquals(10, outcome.comparisons().get(0).pays().get(0).meanPercent(), 0.1);
        assertTrue(shown.issues().stream().anyMatch(i -> i.sentence().contains("No pull found")));
    }

    @Test
    void aJobWithoutARideIsSaidAndNothingFails() {
        model.workOut();
        assertEquals(List.of(), model.session().issues());
        assertTrue(model.shownProperty().get().outcome().isEmpty());
        assertEquals("No ride yet", model.whyNot().title());
        assertEquals(1, model.whyNot().sentences().size());
        PowerPulls.Settings settings = model.settings().orElseThrow();
        assertTrue(PowerPulls.of(List.of(), settings).value().isEmpty());
        assertTrue(PowerPulls.firstAndLast(List.of(), settings)
                .issues()
                .get(0)
                .sentence()
                .startsWith("No ride yet"));
    }

    @Test
    void theAirOfTheDayCountsOnlyWhereItIsUsed() {
        model.type(Field.PRESSURE, "nonsense");
        assertFalse(model.counts(Field.PRESSURE));
        assertTrue(model.problem(Field.PRESSURE).isEmpty());
        assertTrue(model.settings().isPresent());
        model.type(Field.MASS, "290");
        assertTrue(model.counts(Field.PRESSURE), "drag needs the air");
        assertTrue(model.problem(Field.PRESSURE).isPresent());
        model.type(Field.MASS, "");
        model.choose(Optional.of(PowerCorrection.ISO_1585));
        assertTrue(model.counts(Field.HUMIDITY));
    }

    @Test
    void anUncertaintyThatRoundsToNothingIsLeftOut() {
        assertEquals("", PowerModel.plusMinus(0.04));
        assertEquals("±0.1", PowerModel.plusMinus(0.06));
    }

    private static Ride ride(String name, double throttle, double most) {
        return new Ride(
                name,
                column(i -> 0.05 * i),
                List.of(
                        channel("rpm", Role.ENGINE_SPEED, i -> 2500 + 25 * i),
                        channel("throttle", Role.THROTTLE, i -> throttle),
                        channel("power", Role.POWER, i -> most * (2500 + 25 * i) / 7500)),
                List.of(0),
                List.of());
    }

    private static Channel channel(String heading, Role role, IntToDoubleFunction value) {
        return new Channel(heading, role, Unit.ONE, column(value), Channel.Confidence.SURE, "");
    }

    private static Column column(IntToDoubleFunction value) {
        double[] values = new double[201];
        for (int i = 0; i < values.length; i++) {
            values[i] = value.applyAsDouble(i);
        }
        return Column.of(values);
    }

    @Test
    void whatIsTypedIsInTheUnitThatIsShownAndStaysTheSameQuantity() {
        model.choose(Optional.of(PowerCorrection.ISO_1585));
        model.type(Field.MASS, "290");
        model.type(Field.PRESSURE, "98");
        model.type(Field.TEMPERATURE, "20");
        PowerPulls.Settings metric = model.settings().orElseThrow();
        model.session().measuresProperty().set(Measures.IMPERIAL);
        assertEquals(
                List.of("639", "5.92", "68", "14.2"),
                List.of(
                        model.text(Field.MASS),
                        model.text(Field.DRAG),
                        model.text(Field.TEMPERATURE),
                        model.text(Field.PRESSURE)));
        assertEquals("Mass with rider, lb", model.name(Field.MASS));
        assertEquals(metric, model.settings().orElseThrow(), "shown otherwise, not moved");
        model.type(Field.MASS, "700");
        assertEquals(
                317.5147,
                model.settings().orElseThrow().road().orElseThrow().massKg(),
                1e-4,
                "700 · 0.45359237 (NIST SP 811)");
        model.type(Field.TEMPERATURE, "150");
        assertEquals(
                "From −40 to 140, please.", model.problem(Field.TEMPERATURE).orElseThrow());
    }
}
