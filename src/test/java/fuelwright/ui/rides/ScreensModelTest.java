package fuelwright.ui.rides;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.screen.Screen;
import fuelwright.screen.ScreenSettings;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.session.Runner;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import java.time.Duration;
import org.junit.jupiter.api.Test;

/** Screens while they are being set: live, the newest only, and the job itself only when a slider is let go. */
class ScreensModelTest {

    /** Counts what is really done in the lane of the screens. */
    private static final class Counting implements Runner {
        private final SameThreadRunner runner = new SameThreadRunner();
        private int screenings;

        @Override
        public <T> void latest(String lane, Duration delay, Work<T> work, Listener<T> listener) {
            runner.latest(
                    lane,
                    delay,
                    (progress, cancellation) -> {
                        screenings += lane.equals("look-screens") ? 1 : 0;
                        return work.run(progress, cancellation);
                    },
                    listener);
        }

        @Override
        public void cancel(String lane) {
            runner.cancel(lane);
        }

        @Override
        public void close() {
            runner.close();
        }
    }

    private final Counting runner = new Counting();
    private final Session session = new Session(new FixtureServices(), runner);
    private final RidesModel rides = new RidesModel(session);
    private final ScreensModel model = rides.screens();

    private long count(Screen screen) {
        return model.statesProperty().get().stream()
                .filter(s -> s.screen() == screen)
                .findFirst()
                .orElseThrow()
                .count();
    }

    @Test
    void aDraggedThresholdShowsWhatItWouldKeepOutAndTheJobStaysAsItIs() {
        session.openSample();
        ScreenSettings before = session.job().screens();
        long cold = count(Screen.TOO_COLD);
        model.preview(before.withCoolantAtLeast(-40));
        assertEquals(0, count(Screen.TOO_COLD));
        assertTrue(cold > 0);
        assertFalse(rides.traceProperty().get().screenedOut().get(10));
        assertEquals(before, session.job().screens());
    }

    @Test
    void sixtyChangesASecondAreWorkedOutOnceTheWorkIsFree() {
        session.openSample();
        runner.runner.hold();
        runner.screenings = 0;
        for (int i = 0; i < 60; i++) {
            model.preview(session.job().screens().withCoolantAtLeast(i));
        }
        runner.runner.release();
        assertEquals(1, runner.screenings);
        assertEquals(59, model.shownProperty().get().coolantAtLeastC());
    }

    @Test
    void lettingGoTakesItInOneStepOfUndo() {
        session.openSample();
        ScreenSettings before = session.job().screens();
        for (int i = 60; i > 40; i--) {
            model.preview(before.withCoolantAtLeast(i));
        }
        model.take();
        assertEquals(41, session.job().screens().coolantAtLeastC());
        model.take();
        session.undo();
        assertEquals(before, session.job().screens());
        assertEquals(before, model.shownProperty().get());
    }

    @Test
    void theUsualSettingsComeBack() {
        session.openSample();
        model.preview(session.job().screens().withLambda(0.8, 1.1).withFrozen(9).withSpeedRate(2));
        model.take();
        assertEquals(0.8, session.job().screens().lambdaFrom());
        model.usual();
        assertEquals(ScreenSettings.defaults(), session.job().screens());
    }
}
