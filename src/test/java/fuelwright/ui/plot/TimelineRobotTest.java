package fuelwright.ui.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.StackPane;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The timeline under mouse, wheel and keys. */
@ExtendWith(ApplicationExtension.class)
class TimelineRobotTest {

    private static final int ROWS = 6000;

    private Timeline timeline;
    private final List<Trace.Mark> chosen = new ArrayList<>();

    @Start
    void start(Stage stage) {
        timeline = new Timeline();
        timeline.setOnMark(chosen::add);
        stage.setScene(new Scene(new StackPane(timeline), 900, 500));
        stage.show();
        Lane lane = Lane.fitted("Engine", "rpm", "lane-0", ROWS, i -> 3000 + i, Optional.empty(), 0, 20000, 0, 1)
                .expecting(i -> 3100 + i);
        timeline.traceProperty()
                .set(new Trace(
                        new RideClock(ROWS, i -> i / 10.0, List.of(0)),
                        List.of(lane),
                        new Shading(ROWS, 5, row -> row < 2000 ? row / 400 : -1),
                        List.of(OutKind.values()),
                        row -> row < 2000 ? "too cold" : "",
                        List.of(
                                new Trace.Mark(300, 302, true, "Stop: lean"),
                                new Trace.Mark(500, 501, false, "Check"))));
    }

    private TimeWindow window() {
        WaitForAsyncUtils.waitForFxEvents();
        return timeline.windowProperty().get();
    }

    @Test
    void theWheelZoomsAroundThePointer(FxRobot robot) {
        TimeWindow whole = window();
        double plot = timeline.getWidth() - TimelinePainter.left() - TimelinePainter.RIGHT;
        double x = whole.xOf(200, TimelinePainter.left(), plot);
        robot.interact(() -> wheel(x, 40));
        TimeWindow near = window();
        assertTrue(near.lengthS() < whole.lengthS());
        assertEquals(x, near.xOf(200, TimelinePainter.left(), plot), 1e-6);
        for (int i = 0; i < 5; i++) {
            robot.interact(() -> wheel(x, -40));
        }
        assertEquals(whole, window());
    }

    private void wheel(double x, double deltaY) {
        timeline.fireEvent(new ScrollEvent(
                ScrollEvent.SCROLL,
                x,
                100,
                x,
                100,
                false,
                false,
                false,
                false,
                false,
                false,
                0,
                deltaY,
                0,
                deltaY,
                ScrollEvent.HorizontalTextScrollUnits.NONE,
                0,
                ScrollEvent.VerticalTextScrollUnits.NONE,
                0,
                0,
                null));
    }

    @Test
    void draggingAndKeysMove(FxRobot robot) {
        robot.clickOn(timeline);
        robot.type(KeyCode.PLUS, KeyCode.PLUS, KeyCode.PLUS);
        TimeWindow before = window();
        robot.drag(timeline, MouseButton.PRIMARY).moveBy(-120, 0).drop();
        TimeWindow dragged = window();
        assertTrue(dragged.fromS() > before.fromS());
        assertEquals(before.lengthS(), dragged.lengthS(), 1e-9);
        robot.type(KeyCode.LEFT);
        assertTrue(window().fromS() < dragged.fromS());
        robot.type(KeyCode.END);
        assertEquals(599.9, window().toS(), 1e-6);
        robot.type(KeyCode.HOME);
        assertEquals(599.9, window().lengthS(), 1e-6);
    }

    @Test
    void theCrosshairIsReadOutToThoseWhoCannotSeeIt(FxRobot robot) {
        robot.clickOn(timeline);
        String before = timeline.getAccessibleText();
        robot.press(KeyCode.SHIFT).type(KeyCode.RIGHT).release(KeyCode.SHIFT);
        WaitForAsyncUtils.waitForFxEvents();
        assertNotEquals(before, timeline.getAccessibleText());
        assertTrue(timeline.getAccessibleText().contains("Engine"), timeline.getAccessibleText());
        assertTrue(timeline.getAccessibleText().contains("rpm, expected"), timeline.getAccessibleText());
    }

    @Test
    void marksAreChosenByKeyAndByMouse(FxRobot robot) {
        robot.clickOn(timeline);
        robot.type(KeyCode.HOME, KeyCode.N);
        WaitForAsyncUtils.waitForFxEvents();
        assertEquals(300, chosen.get(0).fromS(), 201);
        chosen.clear();
        double plot = timeline.getWidth() - TimelinePainter.left() - TimelinePainter.RIGHT;
        double x = window().xOf(301, TimelinePainter.left(), plot);
        robot.clickOn(timeline.localToScreen(x, 8));
        WaitForAsyncUtils.waitForFxEvents();
        assertEquals(
                List.of("Stop: lean"), chosen.stream().map(Trace.Mark::words).toList());
    }
}
