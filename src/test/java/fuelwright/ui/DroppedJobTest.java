package fuelwright.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.sun.javafx.scene.input.DragboardHelper;
import com.sun.javafx.tk.Toolkit;
import fuelwright.ui.handover.HandoverModel;
import fuelwright.ui.handover.HandoverView;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.shell.Shell;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.Theme;
import fuelwright.work.RecipeBook;
import fuelwright.work.StateFolder;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import javafx.application.Application;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.input.Clipboard;
import javafx.scene.input.ClipboardContent;
import javafx.scene.input.DragEvent;
import javafx.scene.input.Dragboard;
import javafx.scene.input.KeyCode;
import javafx.scene.input.TransferMode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The whole job in the real window with the real use cases: files dropped, Stop read, table copied, folder written. */
@ExtendWith(ApplicationExtension.class)
class DroppedJobTest {

    private static final String FOLDER = "/fuelwright/sample/";

    private Session session;
    private Shell shell;
    private Path out;

    @Start
    void start(javafx.stage.Stage window) {
        session = new Session(
                new WorkServices(new RecipeBook(Path.of("target", "state")), StateFolder.none()),
                new SameThreadRunner());
        Application.setUserAgentStylesheet(Theme.LIGHT.base());
        Map<Stage, Supplier<StagePane>> panes = WindowApp.panes(session);
        panes.put(
                Stage.HANDOVER,
                () -> new HandoverView(new HandoverModel(session), (owner, title, chosen) -> chosen.accept(out)));
        shell = new Shell(session, panes);
        window.setScene(shell.scene());
        window.show();
    }

    private static void onWindow(Runnable action) {
        WaitForAsyncUtils.waitForAsyncFx(120_000, action);
        WaitForAsyncUtils.waitForFxEvents();
    }

    private static File put(Path folder, String name) throws IOException {
        try (InputStream in = DroppedJobTest.class.getResourceAsStream(FOLDER + name)) {
            Files.copy(in, folder.resolve(name));
        }
        return folder.resolve(name).toFile();
    }

    /** What the toolkit sends when files are let go over the window. */
    private void drop(List<File> files) {
        Dragboard board = DragboardHelper.createDragboard(Toolkit.getToolkit().createLocalClipboard());
        ClipboardContent content = new ClipboardContent();
        content.putFiles(files);
        board.setContent(content);
        DragEvent event = new DragEvent(
                DragEvent.DRAG_DROPPED, board, 600, 400, 600, 400, TransferMode.COPY, null, shell.root(), null);
        shell.root().fireEvent(event);
        assertTrue(event.isDropCompleted() || event.isConsumed());
    }

    @Test
    void droppedTablesAndARideBecomeAFolder(FxRobot robot, @TempDir Path folder) throws Exception {
        List<File> files =
                List.of(put(folder, "fuel-table.csv"), put(folder, "target-table.csv"), put(folder, "dyno-pull.csv"));
        onWindow(() -> drop(files));
        assertEquals(1, session.job().rides().size());
        assertNotNull(session.analysis(), () -> session.issues().toString());
        assertFalse(session.analysis().stops().isEmpty());

        robot.clickOn("#rail-7");
        CheckBox read = robot.lookup("#stops-read").queryAs(CheckBox.class);
        onWindow(read::fire);
        Button copy = robot.lookup("#copy-table").queryAs(Button.class);
        onWindow(copy::fire);
        String[] copied = new String[1];
        onWindow(() -> copied[0] = Clipboard.getSystemClipboard().getString());
        assertTrue(copied[0].contains("Stop"), copied[0]);
        assertTrue(copied[0].indexOf("Stop") < copied[0].indexOf("\\"), "the Stop stands above the grid");

        out = folder.resolve("out");
        Button export = robot.lookup("#export-folder").queryAs(Button.class);
        onWindow(export::fire);
        assertTrue(
                Files.exists(out.resolve("corrected.csv")),
                () -> session.issues().toString());
        assertTrue(Files.exists(out.resolve("report.html")));
        assertTrue(Files.readString(out.resolve("corrected.csv")).contains("Stop"));
    }

    private void dropTheJob(Path folder) throws IOException {
        List<File> files =
                List.of(put(folder, "fuel-table.csv"), put(folder, "target-table.csv"), put(folder, "dyno-pull.csv"));
        onWindow(() -> drop(files));
        assertNotNull(session.analysis(), () -> session.issues().toString());
        out = folder.resolve("out");
    }

    private void heldAndWritten(int cell) throws IOException {
        assertEquals(
                fuelwright.estimate.Decision.Kind.HELD,
                session.job().proposal().decisions().get(cell).kind());
        assertTrue(
                Files.exists(out.resolve("corrected.csv")),
                () -> session.issues().toString());
        assertTrue(Files.readString(out.resolve("corrected.csv")).contains("Stop"));
        assertTrue(Files.exists(out.resolve("job.fwjob")));
    }

    @Test
    void theWholeJobByMouse(FxRobot robot, @TempDir Path folder) throws Exception {
        dropTheJob(folder);
        for (int stage = 1; stage <= 5; stage++) {
            robot.clickOn("#rail-" + stage);
        }
        HeatGrid grid = robot.lookup("#proposal-grid").queryAs(HeatGrid.class);
        robot.clickOn(grid.localToScreen(grid.middleOf(130)));
        robot.clickOn("#decide-hold");
        robot.clickOn("#rail-6");
        robot.clickOn("#rail-7");
        robot.clickOn("#hardware-done");
        WaitForAsyncUtils.waitForFxEvents();
        robot.clickOn("#stops-read");
        robot.clickOn("#export-folder");
        WaitForAsyncUtils.waitForFxEvents();
        heldAndWritten(130);
    }

    @Test
    void theWholeJobByKeyboardOnly(FxRobot robot, @TempDir Path folder) throws Exception {
        dropTheJob(folder);
        stage(robot, KeyCode.DIGIT5);
        robot.type(KeyCode.RIGHT, 4).type(KeyCode.UP, 3);
        int cell = session.cellProperty().get();
        assertTrue(cell >= 0);
        tabTo(robot, "decide-hold");
        robot.type(KeyCode.SPACE);
        stage(robot, KeyCode.DIGIT6);
        robot.type(KeyCode.DOWN);
        stage(robot, KeyCode.DIGIT7);
        tabTo(robot, "hardware-done");
        robot.type(KeyCode.SPACE);
        WaitForAsyncUtils.waitForFxEvents();
        tabTo(robot, "stops-read");
        robot.type(KeyCode.SPACE);
        tabTo(robot, "export-folder");
        robot.type(KeyCode.SPACE);
        WaitForAsyncUtils.waitForFxEvents();
        heldAndWritten(cell);
    }

    private static void stage(FxRobot robot, KeyCode digit) {
        robot.press(KeyCode.CONTROL).type(digit).release(KeyCode.CONTROL);
        WaitForAsyncUtils.waitForFxEvents();
    }

    private void tabTo(FxRobot robot, String id) {
        for (int presses = 0; presses < 80; presses++) {
            Node focused = shell.scene().getFocusOwner();
            if (focused != null && id.equals(focused.getId())) {
                return;
            }
            robot.type(KeyCode.TAB);
            WaitForAsyncUtils.waitForFxEvents();
        }
        fail(id + " can't be reached by the Tab key");
    }
}
