package fuelwright.ui.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
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
}
