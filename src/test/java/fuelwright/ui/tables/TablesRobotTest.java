package fuelwright.ui.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.table.Table;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.WindowApp;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.plot.Projection;
import fuelwright.ui.plot.SurfacePlot;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.shell.Shell;
import fuelwright.ui.theme.Theme;
import javafx.application.Application;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/** Editing tables in the real window, without a display. */
@ExtendWith(ApplicationExtension.class)
class TablesRobotTest {

    private Session session;

    @Start
    void start(Stage window) {
        session = new Session(new FixtureServices(), new SameThreadRunner());
        Application.setUserAgentStylesheet(Theme.LIGHT.base());
        Shell shell = new Shell(session, WindowApp.panes(session));
        window.setScene(shell.scene());
        window.show();
        session.openSample();
    }

    @BeforeEach
    void enter(FxRobot robot) {
        robot.clickOn("#rail-2");
    }

    private Table fuel() {
        return session.job().fuelTable().orElseThrow();
    }

    private static HeatGrid select(FxRobot robot, int cell) {
        HeatGrid grid = robot.lookup("#tables-grid").queryAs(HeatGrid.class);
        robot.clickOn(grid.localToScreen(grid.middleOf(cell)));
        return grid;
    }

    private static void with(FxRobot robot, KeyCode modifier, KeyCode key) {
        robot.press(modifier).type(key).release(modifier);
    }

    @Test
    void typingReplacesEnterGoesDownEscapeLeavesAndUndoBringsBack(FxRobot robot) {
        double old = fuel().at(100);
        HeatGrid grid = select(robot, 100);
        robot.write("61.5").type(KeyCode.ENTER);
        assertEquals(61.5, fuel().at(100));
        assertEquals(85, grid.selectedProperty().get());
        robot.type(KeyCode.F2).write("77").type(KeyCode.ESCAPE);
        assertNotEquals(77, fuel().at(85));
        with(robot, KeyCode.CONTROL, KeyCode.Z);
        assertEquals(old, fuel().at(100));
    }

    @Test
    void aRefusedFigureStaysToBeMended(FxRobot robot) {
        double old = fuel().at(100);
        select(robot, 100);
        robot.write("5 %").type(KeyCode.ENTER);
        TextField field = robot.lookup("#tables-cell").queryAs(TextField.class);
        assertTrue(field.isVisible());
        assertEquals("5 %", field.getText());
        assertEquals(old, fuel().at(100));
        robot.write("+5 %").type(KeyCode.ENTER);
        assertFalse(field.isVisible());
        assertEquals(1.05 * old, fuel().at(100), 1e-9);
    }

    @Test
    void aBlockIsCopiedFilledAndPastedBackByKeys(FxRobot robot) {
        Table before = fuel();
        select(robot, 100);
        robot.press(KeyCode.SHIFT).type(KeyCode.RIGHT).type(KeyCode.UP).release(KeyCode.SHIFT);
        with(robot, KeyCode.CONTROL, KeyCode.C);
        robot.clickOn("#tables-amount").write("50").clickOn("#tables-edit-fill");
        for (int cell : new int[] {100, 101, 115, 116}) {
            assertEquals(50, fuel().at(cell));
        }
        HeatGrid grid = robot.lookup("#tables-grid").queryAs(HeatGrid.class);
        robot.interact(grid::requestFocus);
        with(robot, KeyCode.CONTROL, KeyCode.V);
        assertEquals(before, fuel());
    }

    @Test
    void deletingIsRefusedWithWords(FxRobot robot) {
        Table before = fuel();
        select(robot, 100);
        robot.type(KeyCode.DELETE);
        assertEquals(before, fuel());
        assertTrue(robot.lookup("#tables-said").queryAs(Label.class).getText().contains("no empty cell"));
    }

    @Test
    void takingBackWhileTypingLeavesTheCellAsItWas(FxRobot robot) {
        Table before = fuel();
        select(robot, 100);
        robot.write("x12").type(KeyCode.ENTER);
        with(robot, KeyCode.CONTROL, KeyCode.Z);
        robot.type(KeyCode.RIGHT);
        assertEquals(before, fuel());
    }

    @Test
    void everyCellIsSelectedAndChangedAtOnce(FxRobot robot) {
        Table before = fuel();
        select(robot, 3);
        with(robot, KeyCode.CONTROL, KeyCode.A);
        robot.clickOn("#tables-amount").write("10").clickOn("#tables-edit-percent");
        for (int cell = 0; cell < before.cells(); cell++) {
            assertEquals(1.1 * before.at(cell), fuel().at(cell), 1e-9);
        }
    }

    @Test
    void theSurfaceIsReachedByKeyAndTurnedByKeys(FxRobot robot) {
        select(robot, 100);
        robot.type(KeyCode.S);
        SurfacePlot surface = robot.lookup("#tables-surface").queryAs(SurfacePlot.class);
        assertTrue(surface.isVisible());
        assertTrue(surface.isFocused());
        Projection before = surface.projection();
        robot.type(KeyCode.RIGHT).type(KeyCode.UP);
        assertEquals(before.turned(5, 5), surface.projection());
        robot.drag(surface).moveBy(40, 0).drop();
        assertTrue(surface.projection().turnDeg() > before.turnDeg() + 10);
        robot.type(KeyCode.C);
        Node curves = robot.lookup("#tables-curves").query();
        assertTrue(curves.isFocused());
        robot.type(KeyCode.UP);
        robot.type(KeyCode.M);
        assertEquals(
                115,
                robot.lookup("#tables-grid")
                        .queryAs(HeatGrid.class)
                        .selectedProperty()
                        .get());
    }

    @Test
    void aTargetTableIsMadeFromChoices(FxRobot robot) {
        robot.clickOn("Target table").clickOn("#target-make");
        TextField full = robot.lookup("#target-fullload").queryAs(TextField.class);
        robot.interact(() -> full.setText("0.99"));
        Node take = robot.lookup("#target-take").query();
        assertTrue(take.isDisabled());
        robot.interact(() -> full.setText("0.86"));
        assertFalse(take.isDisabled());
        robot.clickOn("#target-take");
        Table target = session.job().targetTable().orElseThrow();
        assertEquals(0.86, target.at(target.cells() - 1), 1e-9);
    }
}
