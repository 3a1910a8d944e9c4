package fuelwright.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import fuelwright.ui.session.Stage;
import fuelwright.ui.theme.Exhibit;
import fuelwright.ui.theme.TextSize;
import fuelwright.ui.theme.Theme;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ScrollPane;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The gallery has every control of our own, and nothing in it goes wrong in any theme or size of text. */
@ExtendWith(ApplicationExtension.class)
class GalleryTest {

    private final List<String> said = Collections.synchronizedList(new ArrayList<>());
    private final Handler ear = new Handler() {
        @Override
        public void publish(LogRecord message) {
            if (message.getLevel().intValue() >= Level.WARNING.intValue()) {
                said.add(message.getLoggerName() + ": " + message.getMessage() + " " + message.getThrown());
            }
        }

        @Override
        public void flush() {}

        @Override
        public void close() {}
    };

    private Gallery gallery;

    @Start
    void start(javafx.stage.Stage window) {
        Logger.getLogger("").addHandler(ear);
        gallery = new Gallery(new FixtureServices(), Theme.LIGHT, TextSize.NORMAL);
        window.setScene(gallery.scene());
        window.show();
    }

    private void enter(int room) {
        WaitForAsyncUtils.waitForAsyncFx(60_000, () -> gallery.enter(room));
        WaitForAsyncUtils.waitForFxEvents();
    }

    @Test
    void everyControlIsShownWithoutAWarningInEveryThemeAndAtTheLargestText() {
        for (Theme theme : Theme.values()) {
            for (TextSize size : List.of(TextSize.NORMAL, TextSize.LARGEST)) {
                WaitForAsyncUtils.waitForAsyncFx(60_000, () -> gallery.show(theme, size));
                WaitForAsyncUtils.waitForFxEvents();
            }
            // Stages and pages at the largest text are the heaviest; the size changes nothing else about them.
            for (int room = 1; room < Gallery.roomCount(); room++) {
                enter(room);
            }
            enter(0);
        }
        WaitForAsyncUtils.waitForAsyncFx(60_000, () -> gallery.show(Theme.LIGHT, TextSize.NORMAL));
        Logger.getLogger("").removeHandler(ear);
        assertEquals(List.of(), said);
    }

    /** Every class of a node that the gallery shows, whatever it lies in. */
    private Set<String> shown() {
        Set<String> found = new TreeSet<>();
        for (int room = 0; room < Gallery.roomCount(); room++) {
            enter(room);
            WaitForAsyncUtils.waitForAsyncFx(
                    60_000, () -> collect(gallery.scene().getRoot(), found));
        }
        return found;
    }

    private static void collect(Node node, Set<String> found) {
        found.add(node.getClass().getName());
        if (node instanceof ScrollPane scroll && scroll.getContent() != null) {
            collect(scroll.getContent(), found);
        }
        if (node instanceof Parent parent) {
            parent.getChildrenUnmodifiable().forEach(child -> collect(child, found));
        }
    }

    @Test
    void everyControlPaneAndPageOfOurOwnIsThere() throws TimeoutException {
        awaitStages();
        Set<String> missing = missing();
        // What is worked out beside the stages, a first-ride table, comes when it is ready.
        for (int tries = 0; !missing.isEmpty() && tries < 20; tries++) {
            WaitForAsyncUtils.sleep(500, TimeUnit.MILLISECONDS);
            missing = missing();
        }
        assertEquals(Set.of(), missing);
    }

    /** Classes of ours that can stand in a window and that no room shows. */
    private Set<String> missing() throws TimeoutException {
        Set<String> shown = shown();
        return new ClassFileImporter()
                .importPackages("fuelwright.ui").stream()
                        .filter(c -> c.isAssignableTo(Node.class)
                                && !c.getModifiers().contains(JavaModifier.ABSTRACT)
                                && c.isTopLevelClass())
                        .map(JavaClass::getName)
                        .filter(name -> !name.matches(".*(Test|Start|Timing).*"))
                        .filter(name -> !shown.contains(name))
                        .collect(Collectors.toCollection(TreeSet::new));
    }

    private void awaitStages() throws TimeoutException {
        WaitForAsyncUtils.waitFor(
                60,
                TimeUnit.SECONDS,
                () -> gallery.session(StageExhibits.State.FILLED).analysis() != null);
        WaitForAsyncUtils.waitFor(
                60,
                TimeUnit.SECONDS,
                () -> gallery.session(StageExhibits.State.STALE).staleProperty().get());
        WaitForAsyncUtils.waitFor(
                60,
                TimeUnit.SECONDS,
                () -> !gallery.session(StageExhibits.State.FAILED)
                        .refusalProperty()
                        .get()
                        .isEmpty());
        WaitForAsyncUtils.waitForFxEvents();
    }

    @Test
    void everyStageIsThereInEveryState() throws TimeoutException {
        awaitStages();
        List<Exhibit> exhibits = new ArrayList<>();
        for (int room = 0; room < Gallery.roomCount(); room++) {
            int which = room;
            exhibits.addAll(WaitForAsyncUtils.waitForAsyncFx(60_000, () -> gallery.exhibits(which)));
        }
        Set<String> names =
                exhibits.stream().map(e -> e.control() + ": " + e.state()).collect(Collectors.toSet());
        for (Stage stage : Stage.values()) {
            for (StageExhibits.State state : StageExhibits.State.values()) {
                assertTrue(names.contains("Stage " + stage.words() + ": " + state.words), stage + ", " + state);
            }
        }
        assertTrue(exhibits.size() > 100, exhibits.size() + " exhibits");
        assertEquals(exhibits.size(), names.size(), "states are told apart");
        assertNull(gallery.session(StageExhibits.State.EMPTY).analysis());
        assertTrue(
                gallery.session(StageExhibits.State.LOADING).workingProperty().get());
        assertNull(gallery.session(StageExhibits.State.LOADING).analysis());
        assertTrue(gallery.session(StageExhibits.State.FILLED).cellProperty().get() >= 0);
    }
}
