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
        robot.moveTo(timeline);
        double whole = window().lengthS();
        robot.scroll(3, javafx.geometry.VerticalDirection.UP);
        TimeWindow near = window();
        assertTrue(near.lengthS() < whole);
        robot.scroll(40, javafx.geometry.VerticalDirection.DOWN);
        assertEquals(whole, window().lengthS(), 1e-9);
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
        assertTrue(timeline.getAccessibleText().contains("rpm →"), timeline.getAccessibleText());
    }

    @Test
    void marksAreChosenByKeyAndByMouse(FxRobot robot) {
        robot.clickOn(timeline);
        robot.type(KeyCode.HOME, KeyCode.N);
        WaitForAsyncUtils.waitForFxEvents();
        assertEquals(300, chosen.get(0).fromS(), 201);
        chosen.clear();
        double plot = timeline.getWidth() - TimelinePainter.LEFT - TimelinePainter.RIGHT;
        double x = window().xOf(301, TimelinePainter.LEFT, plot);
        robot.clickOn(timeline.localToScreen(x, 8));
        WaitForAsyncUtils.waitForFxEvents();
        assertEquals(
                List.of("Stop: lean"), chosen.stream().map(Trace.Mark::words).toList());
    }
}
