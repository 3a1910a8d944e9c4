package fuelwright.ui.shell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.ui.FixtureServices;
import fuelwright.ui.WindowApp;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Theme;
import fuelwright.work.StateFolder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javafx.application.Application;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/** The jobs opened last, beside Open. */
@ExtendWith(ApplicationExtension.class)
class RecentJobsTest {

    @TempDir
    static Path folder;

    private Session session;

    @Start
    void start(Stage window) throws IOException {
        StateFolder state = StateFolder.at(folder.resolve("state"));
        state.opened(Files.writeString(folder.resolve("one.fwjob"), "{}"));
        state.opened(Files.writeString(folder.resolve("two.fwjob"), "{}"));
        session = new Session(
                new FixtureServices() {
                    @Override
                    public StateFolder state() {
                        return state;
                    }
                },
                new SameThreadRunner());
        Application.setUserAgentStylesheet(Theme.LIGHT.base());
        Shell shell = new Shell(session, WindowApp.panes(session));
        window.setScene(shell.scene());
        window.setWidth(1280);
        window.setHeight(800);
        window.show();
    }

    @Test
    void theyAreFoundBesideOpenTheOpenOneAside(FxRobot robot) {
        MenuButton recent = robot.lookup("#top-recent").queryAs(MenuButton.class);
        assertTrue(recent.isVisible());
        List<String> names = recent.getItems().stream().map(MenuItem::getText).toList();
        assertEquals(2, names.size());
        assertTrue(names.get(0).startsWith("two.fwjob, in "), names.toString());
        robot.interact(() -> session.desk().saveAs(folder.resolve("three.fwjob"), done -> {}));
        assertTrue(recent.getItems().stream().noneMatch(i -> i.getText().startsWith("three.fwjob")));
        robot.interact(() -> session.desk().saveAs(folder.resolve("four.fwjob"), done -> {}));
        assertTrue(recent.getItems().get(0).getText().startsWith("three.fwjob"));
        assertFalse(recent.getItems().stream().anyMatch(i -> i.getText().startsWith("four.fwjob")));
    }
}
