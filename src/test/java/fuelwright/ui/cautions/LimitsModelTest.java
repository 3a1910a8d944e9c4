package fuelwright.ui.cautions;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.safety.Limit;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Measures;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LimitsModelTest {

    private final LimitsModel model = new LimitsModel(new Session(new FixtureServices(), new SameThreadRunner()));

    @Test
    void everyFigureOfALineHasAsManyDecimals() {
        for (Limit limit : Limit.values()) {
            String[] bounds = model.bounds(limit).split(" to ");
            assertEquals(decimals(bounds[0]), decimals(bounds[1]), limit.key());
            assertEquals(decimals(bounds[0]), decimals(model.usual(limit)), limit.key());
            assertEquals(decimals(bounds[0]), decimals(model.text(limit)), limit.key());
        }
    }

    private static int decimals(String figure) {
        return figure.indexOf('.') < 0 ? 0 : figure.length() - figure.indexOf('.');
    }

    @Test
    void limitsAreShownAndTypedInTheUnitsThatWereChosen() {
        Session session = model.session();
        session.measuresProperty().set(Measures.IMPERIAL);
        session.afrProperty().set(true);
        assertEquals("Coolant at least, °F", model.name(Limit.COOLANT_LEAST));
        assertEquals("158", model.text(Limit.COOLANT_LEAST));
        assertEquals("36", model.text(Limit.INTAKE_APART), "a step, 20 K");
        assertEquals("0.6", model.usual(Limit.BAROMETER_APART));
        assertEquals("about 1150 ft of height (ISO 2533)", model.origin(Limit.BAROMETER_APART));
        assertEquals("13.96", model.text(Limit.LEAN_CEILING));
        assertEquals("11.76 to 14.70", model.bounds(Limit.LEAN_CEILING));
        assertEquals("Lean ceiling, AFR", model.name(Limit.LEAN_CEILING));
        assertEquals("85", model.text(Limit.DUTY_CHECK));
        assertEquals(Optional.empty(), model.take(Limit.COOLANT_LEAST, "165"));
        assertEquals("165", model.text(Limit.COOLANT_LEAST));
        assertEquals(73.888889, session.job().limits().of(Limit.COOLANT_LEAST), 1e-6);
        assertEquals(Optional.empty(), model.take(Limit.COOLANT_LEAST, "158"));
        assertFalse(model.isChanged(Limit.COOLANT_LEAST), "what is shown as the usual figure is the usual figure");
        assertEquals(Optional.empty(), model.take(Limit.LEAN_CEILING, "11.76"));
        assertEquals(0.80, session.job().limits().of(Limit.LEAN_CEILING), "so is a bound");
        assertTrue(model.take(Limit.EXHAUST_STOP, "1000").orElseThrow().contains("1292"), "the least, 700 °C");
    }
}
