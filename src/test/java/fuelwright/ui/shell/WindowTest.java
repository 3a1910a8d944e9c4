package fuelwright.ui.shell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Issue;
import fuelwright.job.FirstStart;
import fuelwright.ride.Role;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.WindowApp;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.records.RecordsModel;
import fuelwright.ui.records.RecordsView;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.OverPage;
import fuelwright.ui.theme.Theme;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import javafx.application.Application;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The real window on the made-up job, without a display. */
@ExtendWith(ApplicationExtension.class)
class WindowTest {

    private static final Logger JAVAFX = Logger.getLogger("javafx");

    private final List<String> warnings = new ArrayList<>();
    private final Handler listener = new Handler() {
        @Override
        public void publish(LogRecord record) {
            if (record.getLevel().intValue() >= Level.WARNING.intValue()
                    && !String.valueOf(record.getMessage()).startsWith("Unsupported JavaFX configuration")) {
                warnings.add(record.getMessage());
            }
        }

        @Override
        public void flush() {}

        @Override
        public void close() {}
    };

    private Session session;
    private Stage stage;
    private OverPage page;
    private RecordsView records;

    @BeforeEach
    void listen() {
        JAVAFX.addHandler(listener);
    }

    @AfterEach
    void listenNoMore() {
        JAVAFX.removeHandler(listener);
    }

    @Start
    void start(Stage window) {
        stage = window;
        session = new Session(new FixtureServices(), new SameThreadRunner());
        Application.setUserAgentStylesheet(Theme.LIGHT.base());
        Shell shell = new Shell(session, WindowApp.panes(session));
        page = new OverPage("test-page", "gain.title", "gain.below") {};
        shell.addPage("page", page);
        records = new RecordsView(new RecordsModel(session));
        shell.addPage("records", records);
        window.setScene(shell.scene());
        window.show();
        session.openSample();
    }

    private static void onWindow(Runnable action) {
        WaitForAsyncUtils.waitForAsyncFx(20_000, action);
        WaitForAsyncUtils.waitForFxEvents();
    }

    @Test
    void everyStageOpensInBothThemesWithoutAWarning(FxRobot robot) {
        for (Theme theme : Theme.values()) {
            onWindow(() -> session.themeProperty().set(theme));
            for (int number = 1; number <= 7; number++) {
                Node item = robot.lookup("#rail-" + number).query();
                robot.clickOn(item);
                assertEquals(number, session.stageProperty().get().number());
                onWindow(() -> stage.getScene().getRoot().applyCss());
            }
        }
        assertEquals(List.of(), warnings);
    }

    @Test
    void everyStageOpensEmptyToo(FxRobot robot) {
        onWindow(() -> session.startNew());
        assertFalse(session.job().isReady());
        for (int number = 1; number <= 7; number++) {
            robot.clickOn("#rail-" + number);
            assertEquals(number, session.stageProperty().get().number());
        }
        assertEquals(List.of(), warnings);
    }

    @Test
    void aCellIsSelectedByMouseAndMovedByKeys(FxRobot robot) {
        robot.clickOn("#rail-5");
        HeatGrid grid = robot.lookup("#proposal-grid").queryAs(HeatGrid.class);
        Point2D middle = grid.localToScreen(grid.middleOf(100));
        robot.clickOn(middle);
        assertEquals(100, session.cellProperty().get());
        robot.type(KeyCode.RIGHT);
        assertEquals(101, session.cellProperty().get());
        robot.type(KeyCode.UP);
        assertEquals(116, session.cellProperty().get());
        assertTrue(String.valueOf(grid.queryAccessibleAttribute(javafx.scene.AccessibleAttribute.TEXT))
                .contains("rpm"));
    }

    @Test
    void aBlockIsSelectedWithShiftByKeysAndMouse(FxRobot robot) {
        robot.clickOn("#rail-5");
        HeatGrid grid = robot.lookup("#proposal-grid").queryAs(HeatGrid.class);
        robot.clickOn(grid.localToScreen(grid.middleOf(100)));
        robot.press(KeyCode.SHIFT).type(KeyCode.RIGHT).type(KeyCode.UP).release(KeyCode.SHIFT);
        assertEquals(Set.of(100, 101, 115, 116), session.selection().cells());
        robot.press(KeyCode.SHIFT)
                .clickOn(grid.localToScreen(grid.middleOf(102)))
                .release(KeyCode.SHIFT);
        assertEquals(Set.of(100, 101, 102), session.selection().cells());
        robot.type(KeyCode.LEFT);
        assertEquals(Set.of(101), session.selection().cells());
    }

    @Test
    void theKeyboardIsOnTheMapAfterADecision(FxRobot robot) {
        robot.clickOn("#rail-5");
        HeatGrid grid = robot.lookup("#proposal-grid").queryAs(HeatGrid.class);
        robot.clickOn(grid.localToScreen(grid.middleOf(100)));
        robot.clickOn("#decide-hold");
        assertEquals(Set.of(100), session.job().proposal().decisions().keySet());
        assertTrue(grid.isFocused(), String.valueOf(stage.getScene().getFocusOwner()));
        robot.clickOn("#decide-release");
        assertTrue(session.job().proposal().decisions().isEmpty());
        assertTrue(grid.isFocused(), String.valueOf(stage.getScene().getFocusOwner()));
    }

    @Test
    void aFigureTypedOnTheMapIsThatOfTheSelectedCells(FxRobot robot) {
        robot.clickOn("#rail-5");
        HeatGrid grid = robot.lookup("#proposal-grid").queryAs(HeatGrid.class);
        robot.clickOn(grid.localToScreen(grid.middleOf(100)));
        robot.write("61.5");
        assertEquals(
                "61.5",
                robot.lookup("#decide-figure")
                        .queryAs(javafx.scene.control.TextField.class)
                        .getText());
        robot.type(KeyCode.ENTER);
        assertEquals(61.5, session.job().proposal().decisions().get(100).value());
        assertTrue(grid.isFocused());
        robot.write("7").type(KeyCode.ESCAPE);
        assertEquals(61.5, session.job().proposal().decisions().get(100).value());
        assertTrue(grid.isFocused());
        robot.press(KeyCode.CONTROL).type(KeyCode.A).release(KeyCode.CONTROL);
        assertEquals(
                session.job().fuelTable().orElseThrow().cells(),
                session.selection().cells().size());
    }

    @Test
    void theLegendTellsWhatTheMapShowsAndTheRangeRestsUnderAmounts(FxRobot robot) {
        robot.clickOn("#rail-5");
        assertTrue(robot.lookup((Node n) -> n instanceof javafx.scene.control.Label label
                        && label.getText().contains("cells measured"))
                .query()
                .isVisible());
        Node range = robot.lookup("#proposal-range").query();
        assertFalse(range.isDisabled());
        assertFalse(robot.lookup("held").query().isVisible()
                && robot.lookup("held").query().getParent().isVisible());
        robot.clickOn("Uncertainty");
        assertTrue(range.isDisabled());
        robot.clickOn("Change");
        assertFalse(range.isDisabled());
        onWindow(() -> session.cellProperty().set(100));
        robot.clickOn("#decide-hold");
        assertTrue(robot.lookup("held").query().getParent().isVisible());
    }

    @Test
    void noStageIsMarkedWhileAPageLiesOverThemAndEachLeadsBack(FxRobot robot) {
        robot.clickOn("#rail-5");
        Node rail = robot.lookup("#rail-5").query();
        assertTrue(rail.getStyleClass().contains("chosen"));
        onWindow(page::open);
        assertFalse(rail.getStyleClass().contains("chosen"));
        robot.clickOn("#rail-5");
        assertFalse(page.isVisible());
        assertTrue(rail.getStyleClass().contains("chosen"));
    }

    @Test
    void recordsWithoutAFolderAskForOneInTheMiddle(FxRobot robot) {
        onWindow(records::open);
        assertTrue(robot.lookup("#records-choose").query().isFocused());
        assertFalse(
                robot.lookup("#records-list").query().getParent().getParent().isVisible());
    }

    @Test
    void whatIsWorthALookIsNoButton(FxRobot robot) {
        robot.clickOn("#rail-3");
        Node look = robot.lookup("? worth a look").query();
        assertFalse(look.getStyleClass().contains("tag"));
    }

    @Test
    void oneRefusalTurnsNoRemarkRedAndAllCanBeShown(FxRobot robot) {
        onWindow(() -> session.issues()
                .setAll(
                        Issue.error("a.csv", 0, 0, "broken", ""),
                        Issue.warning("b.csv", 0, 0, "first remark", ""),
                        Issue.warning("c.csv", 0, 0, "second remark", ""),
                        Issue.warning("d.csv", 0, 0, "third remark", ""),
                        Issue.warning("e.csv", 0, 0, "fourth remark", "")));
        Node remark = robot.lookup("b.csv: first remark").query();
        assertTrue(remark.getParent().getStyleClass().contains("check"));
        assertTrue(robot.lookup("a.csv: broken")
                .query()
                .getParent()
                .getStyleClass()
                .contains("file"));
        assertTrue(robot.lookup("e.csv: fourth remark").tryQuery().isEmpty());
        robot.clickOn("#issues-more");
        assertTrue(robot.lookup("e.csv: fourth remark").tryQuery().isPresent());
        onWindow(() -> session.issues().clear());
    }

    @Test
    void aCapThatIsNoNumberIsSaidAndKept(FxRobot robot) {
        robot.clickOn("#rail-5");
        robot.clickOn("#proposal-limits");
        javafx.scene.control.TextField cap =
                robot.lookup("#proposal-most").queryAs(javafx.scene.control.TextField.class);
        double before = session.job().proposal().maxAddPercent();
        onWindow(() -> cap.setText("a lot"));
        robot.clickOn(cap).type(KeyCode.ENTER);
        assertEquals("a lot", cap.getText());
        assertEquals(before, session.job().proposal().maxAddPercent());
        javafx.scene.control.Label problem =
                robot.lookup("#proposal-problem").queryAs(javafx.scene.control.Label.class);
        assertTrue(problem.getText().contains("a lot"), problem.getText());
        onWindow(() -> cap.setText("31"));
        robot.type(KeyCode.ENTER);
        assertEquals(31, session.job().proposal().maxAddPercent());
        assertEquals("", problem.getText());
        javafx.scene.control.Button limits =
                robot.lookup("#proposal-limits").queryAs(javafx.scene.control.Button.class);
        assertTrue(limits.getText().contains("+31"), limits.getText());
        robot.press(KeyCode.SHORTCUT, KeyCode.Z).release(KeyCode.Z, KeyCode.SHORTCUT);
        assertEquals(before, session.job().proposal().maxAddPercent(), "right after changing it");
        assertEquals(before, Double.parseDouble(cap.getText()));
        robot.type(KeyCode.ESCAPE);
        assertTrue(robot.lookup("#proposal-most").tryQuery().isEmpty());
    }

    @Test
    void cautionsAreWalkedThroughByKeys(FxRobot robot) {
        robot.clickOn("#rail-6");
        robot.type(KeyCode.DOWN);
        int cell = session.cellProperty().get();
        assertTrue(session.analysis().cautions().get(1).cells().contains(cell));
        robot.type(KeyCode.ENTER);
        assertEquals(5, session.stageProperty().get().number());
        assertEquals(cell, session.cellProperty().get());
    }

    @Test
    void stagesAndUndoAreReachedByKeys(FxRobot robot) {
        robot.press(KeyCode.CONTROL).type(KeyCode.DIGIT6).release(KeyCode.CONTROL);
        assertEquals(6, session.stageProperty().get().number());
        String name = session.job().name();
        onWindow(() -> session.edit(job -> job.withName("other")));
        robot.press(KeyCode.CONTROL).type(KeyCode.Z).release(KeyCode.CONTROL);
        assertEquals(name, session.job().name());
    }

    @Test
    void anActionIsFoundByTyping(FxRobot robot) {
        Theme before = session.themeProperty().get();
        robot.press(KeyCode.CONTROL).type(KeyCode.K).release(KeyCode.CONTROL);
        robot.write("dark").type(KeyCode.ENTER);
        assertNotEquals(before, session.themeProperty().get());
    }

    @Test
    void theGuideGoesThroughTheStagesAndCanBeLeft(FxRobot robot) {
        robot.press(KeyCode.CONTROL).type(KeyCode.K).release(KeyCode.CONTROL);
        robot.write("guide").type(KeyCode.ENTER);
        Node card = robot.lookup("#tour").query();
        assertTrue(card.isVisible());
        robot.type(KeyCode.ENTER).type(KeyCode.ENTER);
        assertEquals(3, session.stageProperty().get().number());
        robot.clickOn("#tour-next");
        assertEquals(4, session.stageProperty().get().number());
        robot.type(KeyCode.ESCAPE);
        assertFalse(card.isVisible());
    }

    @Test
    void textGrowsByKeyAndNothingWarns(FxRobot robot) {
        javafx.scene.control.Label title = robot.lookup(".stage-title").queryAs(javafx.scene.control.Label.class);
        double before = title.getFont().getSize();
        robot.press(KeyCode.CONTROL).type(KeyCode.EQUALS).release(KeyCode.CONTROL);
        onWindow(() -> stage.getScene().getRoot().applyCss());
        assertEquals(1.2 * before, title.getFont().getSize(), 0.1);
        onWindow(() -> session.textSizeProperty().set(fuelwright.ui.theme.TextSize.NORMAL));
        assertEquals(List.of(), warnings);
    }

    @Test
    void theTableStaysUntilTheStopIsRead(FxRobot robot) {
        robot.clickOn("#rail-7");
        robot.clickOn("#hardware-done");
        Node export = robot.lookup("#export-folder").query();
        assertTrue(export.isDisabled());
        CheckBox read = robot.lookup("#stops-read").queryAs(CheckBox.class);
        onWindow(read::fire);
        assertFalse(export.isDisabled());
    }

    @Test
    void handoverSaysAStopsFiguresInWhatWasChosen(FxRobot robot) {
        onWindow(() -> session.stageProperty().set(fuelwright.ui.session.Stage.HANDOVER));
        assertTrue(texts(robot).stream().anyMatch(t -> t.contains("lambda 1.02, limit 0.92")), "a Stop stands");
        onWindow(() -> session.afrProperty().set(true));
        onWindow(() -> session.measuresProperty().set(fuelwright.ui.theme.Measures.IMPERIAL));
        assertTrue(texts(robot).stream()
                .anyMatch(t -> t.contains("AFR 15.0, limit 13.5") && t.contains("the exhaust at 1580\u00a0°F")));
        assertFalse(texts(robot).stream().anyMatch(t -> t.contains("lambda 1.02") || t.contains("860\u00a0°C")));
    }

    private static List<String> texts(FxRobot robot) {
        return robot.lookup(".label").queryAllAs(javafx.scene.control.Label.class).stream()
                .map(javafx.scene.control.Label::getText)
                .toList();
    }

    @Test
    void aStageKeepsItsNumberWhenItIsDone(FxRobot robot) {
        onWindow(() -> session.edit(job -> job.withFirstStart(EnumSet.allOf(FirstStart.class))));
        Node machine = robot.lookup("#rail-1").query();
        assertTrue(machine.getStyleClass().contains("done"));
        List<String> words = labels(machine);
        assertTrue(words.contains("1") && words.contains("✓"), words.toString());
    }

    private static List<String> labels(Node node) {
        return node.lookupAll(".label").stream()
                .map(n -> ((javafx.scene.control.Label) n).getText())
                .toList();
    }

    @Test
    void theFinderFollowsTheChoiceSaysWhatIsMissingAndKnowsThePages(FxRobot robot) {
        robot.press(KeyCode.CONTROL).type(KeyCode.K).release(KeyCode.CONTROL);
        javafx.scene.control.ListView<?> list = robot.lookup("#finder-list").queryListView();
        for (int i = 0; i < 18; i++) {
            robot.type(KeyCode.DOWN);
        }
        assertEquals(18, list.getSelectionModel().getSelectedIndex());
        javafx.scene.control.skin.VirtualFlow<?> rows =
                (javafx.scene.control.skin.VirtualFlow<?>) list.lookup(".virtual-flow");
        assertTrue(rows.getLastVisibleCell().getIndex() >= 18);
        assertTrue(rows.getFirstVisibleCell().getIndex() <= 18);
        robot.write("wxyz");
        assertFalse(list.isVisible());
        assertEquals(
                "Nothing called “wxyz”",
                robot.lookup("#finder-nothing")
                        .queryAs(javafx.scene.control.Label.class)
                        .getText());
        robot.type(KeyCode.ESCAPE);
        onWindow(() -> session.cellProperty().set(100));
        robot.press(KeyCode.CONTROL).type(KeyCode.K).release(KeyCode.CONTROL);
        robot.write("proposal: hold").type(KeyCode.ENTER);
        assertEquals(Set.of(100), session.job().proposal().decisions().keySet());
        robot.press(KeyCode.CONTROL).type(KeyCode.K).release(KeyCode.CONTROL);
        robot.write("limits").type(KeyCode.ENTER);
        assertEquals(6, session.stageProperty().get().number());
    }

    @Test
    void keysWorkAfterAButtonThatTookItselfAway(FxRobot robot) {
        onWindow(() -> session.issues().setAll(List.of(fuelwright.issue.Issue.warning("x.csv", 1, 0, "odd", "look"))));
        robot.clickOn("Dismiss");
        robot.press(KeyCode.CONTROL).type(KeyCode.DIGIT3).release(KeyCode.CONTROL);
        assertEquals(3, session.stageProperty().get().number());
    }

    @Test
    void aNarrowWindowFoldsTheJobsButtonsIntoOneAndKeepsTheProgramsName(FxRobot robot) {
        onWindow(() -> stage.setWidth(1280));
        assertFalse(robot.lookup("#top-job").query().isVisible());
        onWindow(() -> stage.setWidth(1000));
        assertTrue(robot.lookup("#top-job").query().isVisible());
        assertTrue(robot.lookup("Find").tryQuery().isPresent());
        javafx.scene.control.Label brand = robot.lookup(".brand").queryAs(javafx.scene.control.Label.class);
        assertTrue(brand.getWidth() >= brand.prefWidth(-1) - 1);
    }

    @Test
    void whatCannotBeWrittenSaysWhy(FxRobot robot) {
        robot.clickOn("#rail-7");
        assertTrue(robot.lookup("#tick-first").query().isVisible());
        CheckBox read = robot.lookup("#stops-read").queryAs(CheckBox.class);
        onWindow(read::fire);
        assertFalse(robot.lookup("#tick-first").query().isVisible());
    }

    @Test
    void buttonsThatChangeASelectionWaitForOne(FxRobot robot) {
        robot.clickOn("#rail-2");
        assertTrue(robot.lookup("#tables-edit-fill").query().isDisabled());
        HeatGrid grid = robot.lookup("#tables-grid").queryAs(HeatGrid.class);
        robot.clickOn(grid.localToScreen(grid.middleOf(30)));
        assertFalse(robot.lookup("#tables-edit-fill").query().isDisabled());
        assertTrue(robot.lookup("#tables-edit-corners").query().isDisabled());
    }

    @Test
    void aLetterGoesToTheNextMeaningOfAColumnThatBeginsWithIt(FxRobot robot) {
        robot.clickOn("#rail-3");
        ComboBox<?> roles = robot.lookup(".role-choice")
                .match(n -> n.isVisible() && !n.getStyleClass().contains("unit-choice"))
                .queryAs(ComboBox.class);
        onWindow(roles::requestFocus);
        KeyEvent letter = new KeyEvent(KeyEvent.KEY_TYPED, "t", "", KeyCode.UNDEFINED, false, false, false, false);
        var job = session.job();
        onWindow(() -> {
            roles.fireEvent(letter);
            assertTrue(roles.isShowing());
            assertTrue(Set.of(Role.THROTTLE, Role.TORQUE).contains(roles.getValue()), "a role in t");
            assertSame(job, session.job(), "nothing is taken before the list is closed");
        });
    }

    @Test
    void aBreakpointSelectsItsWholeRowOrColumn(FxRobot robot) {
        robot.clickOn("#rail-2");
        HeatGrid grid = robot.lookup("#tables-grid").queryAs(HeatGrid.class);
        Point2D middle = grid.middleOf(30);
        robot.clickOn(grid.localToScreen(new Point2D(40, middle.getY())));
        int loads = session.job().fuelTable().orElseThrow().load().size();
        int speeds = session.job().fuelTable().orElseThrow().speed().size();
        assertEquals(speeds, grid.blockProperty().get().size());
        assertTrue(grid.blockProperty().get().contains(30));
        double below = Math.min(
                grid.boundsOf(0).getMaxY() + 12, grid.seenProperty().get().getMaxY() - 32);
        int active = grid.selectedProperty().get();
        robot.clickOn(grid.localToScreen(new Point2D(grid.middleOf(active).getX(), below)));
        assertEquals(loads, grid.blockProperty().get().size());
        assertTrue(grid.blockProperty().get().contains(active));
    }

    @Test
    void whatIsTickedBeforeTheFirstStartBelongsToTheJob(FxRobot robot) {
        CheckBox trims = robot.lookup("#check-trims").queryAs(CheckBox.class);
        boolean before = session.job().firstStart().contains(FirstStart.TRIMS);
        onWindow(trims::fire);
        assertEquals(!before, session.job().firstStart().contains(FirstStart.TRIMS));
        onWindow(session::undo);
        assertEquals(before, trims.isSelected());
    }
}
