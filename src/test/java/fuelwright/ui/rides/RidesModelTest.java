package fuelwright.ui.rides;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.ride.Channel;
import fuelwright.ride.Role;
import fuelwright.screen.Screen;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class RidesModelTest {

    private final Session session = new Session(new FixtureServices(), new SameThreadRunner());
    private final RidesModel model = new RidesModel(session);

    private ScreensModel.State state(Screen screen) {
        return model.screens().statesProperty().get().stream()
                .filter(s -> s.screen() == screen)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void screensCarryTheirCounts() {
        session.openSample();
        assertEquals(800, state(Screen.TOO_COLD).count());
        assertEquals(4, model.traceProperty().get().lanes().size());
        assertTrue(model.traceProperty().get().screenedOut().get(10));
    }

    @Test
    void switchingAScreenOffWorksEverythingOutAnew() {
        session.openSample();
        int before = session.analysis().screened().get(0).kept();
        model.screens().turn(Screen.TOO_COLD, false);
        assertTrue(session.analysis().screened().get(0).kept() > before);
        assertFalse(state(Screen.TOO_COLD).on());
        assertFalse(model.traceProperty().get().screenedOut().get(790));
        session.undo();
        assertEquals(before, session.analysis().screened().get(0).kept());
    }

    @Test
    void theScreensThatAProgramNeedsStayOn() {
        session.openSample();
        model.screens().turn(Screen.NO_READING, false);
        assertTrue(session.job().screens().isOn(Screen.NO_READING));
    }

    @Test
    void removingTheLastRideLeavesNothing() {
        session.openSample();
        model.order().remove();
        assertNull(model.traceProperty().get());
        assertTrue(model.ride().isEmpty());
    }

    @Test
    void theMixtureLaneChangesItsNotation() {
        session.openSample();
        assertEquals("λ", model.traceProperty().get().lanes().get(2).unit());
        session.afrProperty().set(true);
        assertEquals("AFR", model.traceProperty().get().lanes().get(2).unit());
    }

    @Test
    void theDisplaysRatioIsAskedAndEveryReadingFollows() {
        session.openSample();
        assertTrue(model.ratio().asked());
        assertFalse(model.ratio().said());
        double before = model.ride().orElseThrow().mixtures().get(0).values().at(500);
        assertFalse(model.ratio().take("much"));
        assertFalse(model.ratio().take("147"));
        assertTrue(model.ratio().take("14,2"));
        assertTrue(model.ratio().said());
        assertEquals(14.2, session.job().displayRatio());
        assertEquals(
                before * 14.7 / 14.2,
                model.ride().orElseThrow().mixtures().get(0).values().at(500),
                1e-9);
        session.undo();
        assertEquals(14.7, session.job().displayRatio());
        assertFalse(model.ratio().said());
    }

    @Test
    void whatADisplayIsSetToNeverMovesTheTarget() {
        session.openSample();
        Table afr = session.job().targetTable().orElseThrow();
        session.edit(job -> job.withNewTarget(afr.with(
                Quantity.AFR, Arrays.stream(afr.toArray()).map(v -> 14.7 * v).toArray())));
        int fullThrottle = afr.cells() - 1;
        assertEquals(0.87, session.job().targetLambda().orElseThrow().at(fullThrottle), 1e-9);
        Table before = session.analysis().proposal().before();
        assertTrue(model.ratio().take("13,5"));
        assertEquals(0.87, session.job().targetLambda().orElseThrow().at(fullThrottle), 1e-9);
        model.order().remove();
        assertEquals(0.87, session.job().targetLambda().orElseThrow().at(fullThrottle), 1e-9);
        assertEquals(before, session.job().fuelTable().orElseThrow());
    }

    @Test
    void aColumnIsTakenForSomethingElse() {
        session.openSample();
        Channel pressure =
                model.ride().orElseThrow().channel(Role.MANIFOLD_PRESSURE).orElseThrow();
        model.role(pressure, Role.BAROMETER);
        assertTrue(model.ride().orElseThrow().channel(Role.MANIFOLD_PRESSURE).isEmpty());
        assertEquals(3, model.traceProperty().get().lanes().size());
    }
}
