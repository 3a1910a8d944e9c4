package fuelwright.ui.rides;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Loaded;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.table.Table;
import fuelwright.table.TableWriter;
import fuelwright.ui.Fixture;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.WindowApp;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.shell.Shell;
import fuelwright.ui.theme.Theme;
import fuelwright.work.Cancellation;
import fuelwright.work.OpenRide;
import fuelwright.work.Progress;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import javafx.application.Application;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The stage Rides in the real window, without a display. */
@ExtendWith(ApplicationExtension.class)
class RidesRobotTest {

    @TempDir
    Path folder;

    private Session session;

    @Start
    void start(Stage window) {
        session = new Session(
                new FixtureServices() {
                    @Override
                    public Loaded<Ride> readRide(
                            Path file, RideOptions options, Progress progress, Cancellation cancellation) {
                        return OpenRide.read(file, options, progress, cancellation);
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

    private Path log(String name, String mixture, double scale) throws IOException {
        StringBuilder text =
                new StringBuilder("time [s],rpm,throttle [%],").append(mixture).append(",coolant [°C]\n");
        for (int i = 0; i < 400; i++) {
            text.append(String.format(
                    Locale.ROOT,
                    "%.2f,%d,%d,%.3f,80\n",
                    i / 20.0,
                    2000 + 10 * i + (int) scale,
                    i / 8,
                    scale * (0.9 + i % 7 / 100.0)));
        }
        return Files.writeString(folder.resolve(name), text);
    }

    private void open(FxRobot robot, Path... files) {
        robot.interact(() -> session.open(List.of(files)));
        WaitForAsyncUtils.waitForFxEvents();
    }

    private void openTwo(FxRobot robot) throws IOException {
        open(
                robot,
                table("fuel.csv", Fixture.job().fuelTable().orElseThrow()),
                table("target.csv", Fixture.job().targetTable().orElseThrow()),
                log("one.csv", "lambda", 1),
                log("two.csv", "wideband", 14.7));
        robot.clickOn("#rail-3");
    }

    private Path table(String name, Table table) throws IOException {
        return Files.writeString(folder.resolve(name), TableWriter.write(table));
    }

    @Test
    void anotherRidesChannelsAreShownFromTheTopHoweverFarTheOldOnesWereScrolled(FxRobot robot) throws IOException {
        openTwo(robot);
        for (String[] turn : new String[][] {{"2 · two.csv", "“wideband”"}, {"1 · one.csv", "“lambda”"}}) {
            ScrollPane before = channels(robot);
            robot.interact(() -> before.setVvalue(0.4));
            robot.clickOn(turn[0]);
            WaitForAsyncUtils.waitForFxEvents();
            assertNotSame(before, channels(robot), "with new content the old one may go on showing what was in it");
            assertEquals(0, channels(robot).getVvalue());
            assertTrue(robot.from(channels(robot)).lookup(turn[1]).tryQuery().isPresent(), turn[1]);
        }
        ScrollPane pane = channels(robot);
        robot.clickOn(robot.from(pane).lookup(".role-choice").nth(1).<Node>query());
        WaitForAsyncUtils.waitForFxEvents();
        assertTrue(robot.from(pane)
                .lookup(".role-choice")
                .nth(1)
                .<ComboBox<?>>query()
                .isShowing());
    }

    private static ScrollPane channels(FxRobot robot) {
        return robot.lookup("#rides-channels").queryAs(ScrollPane.class);
    }

    @Test
    void aLogWithoutTimeIsReadOnceTheRowsASecondAreSaid(FxRobot robot) throws IOException {
        String timed = Files.readString(log("timed.csv", "lambda", 1));
        String bare = timed.lines()
                .map(line -> line.substring(line.indexOf(',') + 1))
                .collect(java.util.stream.Collectors.joining("\n"));
        open(robot, Files.writeString(folder.resolve("bare.csv"), bare));
        assertEquals(0, session.job().rides().size());
        assertEquals(fuelwright.ui.session.Stage.RIDES, session.stageProperty().get());
        robot.lookup(".label").<Labeled>queryAll().stream()
                .map(Labeled::getText)
                .forEach(t -> assertFalse(t != null && t.contains("--r"), t));
        robot.clickOn("#refused-rate").write("20").type(javafx.scene.input.KeyCode.ENTER);
        WaitForAsyncUtils.waitForFxEvents();
        assertEquals(19.95, session.job().rides().get(0).ride().durationS(), 1e-9);
        assertEquals(List.of(), session.refused().all());
        assertFalse(robot.lookup("#refused-logs").query().isVisible());
    }

    @Test
    void aLogWhoseEngineSpeedIsCalledOddlyIsReadOnceItsColumnIsSaid(FxRobot robot) throws IOException {
        String odd = Files.readString(log("odd.csv", "lambda", 1)).replace("rpm", "kanal 7");
        open(robot, Files.writeString(folder.resolve("odd.csv"), odd));
        assertEquals(0, session.job().rides().size());
        ComboBox<String> speed = robot.lookup("#refused-engine-speed").queryComboBox();
        robot.interact(() -> speed.setValue("kanal 7"));
        robot.clickOn("Read it again");
        WaitForAsyncUtils.waitForFxEvents();
        assertEquals(1, session.job().rides().size());
    }

    @Test
    void aNewRideAfterAHandoverAsksForItsTableAboveTheRides(FxRobot robot) throws IOException {
        openTwo(robot);
        robot.interact(() -> session.outputs().tableText());
        open(robot, log("three.csv", "lambda", 1.01));
        assertEquals(2, session.job().rides().size());
        Node question = robot.lookup("#table-question").query();
        assertTrue(question.isVisible());
        robot.clickOn("#question-other");
        assertEquals(3, session.job().rides().size());
        assertTrue(session.job().rides().get(0).madeWith().isPresent());
        assertTrue(session.job().rides().get(2).madeWith().isEmpty());
        assertFalse(question.isVisible());
    }
}
