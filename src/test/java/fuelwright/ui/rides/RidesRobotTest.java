package fuelwright.ui.rides;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.safety.Caution;
import fuelwright.table.Table;
import fuelwright.table.TableWriter;
import fuelwright.ui.Fixture;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.WindowApp;
import fuelwright.ui.plot.SvgInk;
import fuelwright.ui.plot.Timeline;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.shell.Shell;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Theme;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.OpenRide;
import fuelwright.work.Progress;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import java.util.regex.Pattern;
import javafx.application.Application;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.paint.Color;
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

    private static final Caution.Moment MILD = new Caution.Moment(0, "ride-1.csv", 60, 2, 1.0, 4000, 40);

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

                    @Override
                    public Loaded<Analysis> analyse(Job job, Progress progress, Cancellation cancellation) {
                        Loaded<Analysis> found = super.analyse(job, progress, cancellation);
                        return new Loaded<>(found.value().map(a -> mildly(a)), found.issues());
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

    /** With a moment of a caution that is only a Check. */
    private static Analysis mildly(Analysis a) {
        List<Caution> cautions = new ArrayList<>(a.cautions());
        cautions.add(new Caution("mild", Caution.Level.CHECK, "mild", "mild", "look", new TreeSet<>(), List.of(MILD)));
        return Fixture.with(a, cautions);
    }

    /** What the timeline's marked stretch is painted in. */
    private static boolean markedIn(FxRobot robot, Color colour) {
        Timeline timeline = robot.lookup("#timeline").queryAs(Timeline.class);
        SvgInk ink = new SvgInk(800, 400, Color.WHITE);
        robot.interact(() -> timeline.paint(ink, 800, 400));
        String hex = colour.toString().substring(2, 8);
        return Pattern.compile("<rect [^>]*height=\"3\"[^>]*" + hex)
                .matcher(ink.document())
                .find();
    }

    @Test
    void aMomentIsMarkedByTheLevelOfItsCaution(FxRobot robot) {
        robot.interact(() -> session.openSample());
        robot.clickOn("#rail-3");
        Palette palette = Theme.LIGHT.palette();
        robot.interact(() -> session.momentProperty().set(MILD));
        assertTrue(markedIn(robot, palette.check()));
        assertFalse(markedIn(robot, palette.stop()));
        Caution.Moment grave = session.analysis().cautions().get(0).moments().get(0);
        robot.interact(() -> session.momentProperty().set(grave));
        assertTrue(markedIn(robot, palette.stop()));
        assertFalse(markedIn(robot, palette.check()));
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
    void wideBandVoltsCountOnceTheirTwoPointsAreTyped(FxRobot robot) throws IOException {
        open(robot, log("volts.csv", "wideband [V]", 2));
        robot.clickOn("#rail-3");
        assertTrue(session.job().rides().get(0).ride().mixtures().isEmpty());
        robot.clickOn("#volts-volt1").write("0.5");
        robot.clickOn("#volts-lambda1").write("0.7");
        robot.clickOn("#volts-volt2").write("4.5").type(javafx.scene.input.KeyCode.ENTER);
        assertTrue(robot.lookup(".field-message").queryAllAs(Labeled.class).stream()
                .anyMatch(m -> m.getText()
                        .startsWith("Four figures, please: two voltages that differ, and lambda from 0.3 to 10")));
        robot.clickOn("#volts-lambda2").write("1.3");
        robot.clickOn("Use these");
        WaitForAsyncUtils.waitForFxEvents();
        assertEquals(
                0.7 + (1.8 - 0.5) * 0.15,
                session.job().rides().get(0).ride().mixtures().get(0).values().at(0),
                1e-9);
        assertEquals("0.5", robot.lookup("#volts-volt1").queryTextInputControl().getText());
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

    private static boolean isOnThePage(FxRobot robot) {
        Node owner = robot.window(0).getScene().getFocusOwner();
        for (Node at = owner; at != null; at = at.getParent()) {
            if (at.getStyleClass().contains("top-bar")) {
                return false;
            }
        }
        return owner != null;
    }

    @Test
    void afterAnAnswerTheKeyboardStaysOnThePage(FxRobot robot) throws IOException {
        String odd = Files.readString(log("odd.csv", "lambda", 1)).replace("rpm", "kanal 7");
        open(robot, Files.writeString(folder.resolve("odd.csv"), odd));
        robot.interact(
                () -> robot.lookup("#refused-engine-speed").queryComboBox().requestFocus());
        ComboBox<String> speed = robot.lookup("#refused-engine-speed").queryComboBox();
        robot.interact(() -> speed.setValue("kanal 7"));
        press(robot, "Read it again");
        assertEquals(1, session.job().rides().size());
        assertTrue(isOnThePage(robot), "after a log was read again");
        openTwo(robot);
        robot.interact(() -> session.outputs().tableText());
        open(robot, log("three.csv", "lambda", 1.01), log("four.csv", "lambda", 1.02));
        press(robot, "Leave them out");
        assertTrue(isOnThePage(robot), "after rides were left out");
        open(robot, log("five.csv", "lambda", 1.01));
        press(robot, "#question-same");
        assertTrue(isOnThePage(robot), "after a table was said");
    }

    /** With the keyboard, as somebody does who doesn't use the mouse. */
    private static void press(FxRobot robot, String words) {
        robot.interact(() -> robot.lookup(words).query().requestFocus());
        robot.type(javafx.scene.input.KeyCode.SPACE);
        WaitForAsyncUtils.waitForFxEvents();
        robot.interact(() -> {});
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
