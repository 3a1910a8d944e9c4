package fuelwright.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import fuelwright.ui.theme.Exhibit;
import fuelwright.ui.theme.TextSize;
import fuelwright.ui.theme.Theme;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.stream.Collectors;
import javafx.scene.Node;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The gallery has every control of our own, and nothing in it goes wrong in any theme or size of text. */
@ExtendWith(ApplicationExtension.class)
class GalleryTest {

    /** Not controls by themselves: the axes belong to HeatGrid, two jobs side by side to the page of records. */
    private static final Set<String> PARTS = Set.of("StandingAxes", "SideBySide");

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

    @Test
    void everyControlIsShownWithoutAWarningInEveryThemeAndAtTheLargestText() {
        for (Theme theme : Theme.values()) {
            for (TextSize size : List.of(TextSize.NORMAL, TextSize.LARGEST)) {
                WaitForAsyncUtils.waitForAsyncFx(60_000, () -> gallery.show(theme, size));
                WaitForAsyncUtils.waitForFxEvents();
            }
        }
        WaitForAsyncUtils.waitForAsyncFx(60_000, () -> gallery.show(Theme.LIGHT, TextSize.NORMAL));
        Logger.getLogger("").removeHandler(ear);
        assertEquals(List.of(), said);
    }

    @Test
    void everyControlOfOurOwnIsThere() {
        List<Exhibit> exhibits = WaitForAsyncUtils.waitForAsyncFx(60_000, gallery::exhibits);
        Set<String> shown = exhibits.stream()
                .map(e -> e.node().getClass().getSimpleName())
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> missing = new ClassFileImporter()
                .importPackages("fuelwright.ui").stream()
                        .filter(c -> c.isAssignableTo(Node.class)
                                && !c.getModifiers().contains(JavaModifier.ABSTRACT)
                                && c.isTopLevelClass())
                        .map(JavaClass::getSimpleName)
                        // Stages, pages and their panels are looked at in the window itself.
                        .filter(name -> !name.endsWith("View") && !name.endsWith("Pane") && !PARTS.contains(name))
                        .filter(name -> !shown.contains(name))
                        .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(Set.of(), missing);
        assertTrue(exhibits.size() > 100, exhibits.size() + " exhibits");
        assertEquals(
                exhibits.size(),
                exhibits.stream()
                        .map(e -> e.control() + ": " + e.state())
                        .distinct()
                        .count(),
                "states are told apart");
    }
}
