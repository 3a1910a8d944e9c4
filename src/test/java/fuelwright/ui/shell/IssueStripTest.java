package fuelwright.ui.shell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.Progress;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.control.Labeled;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.util.WaitForAsyncUtils;

@ExtendWith(ApplicationExtension.class)
class IssueStripTest {

    private static final Issue NOTHING_COUNTS = Issue.error(
            "ride-1.csv", 0, 0, "no reading is left as evidence", "name the column (--role \"COLUMN=lambda\")");

    private final Session session = new Session(
            new FixtureServices() {
                @Override
                public Loaded<Analysis> analyse(Job job, Progress progress, Cancellation cancellation) {
                    return Loaded.refused(List.of(NOTHING_COUNTS));
                }
            },
            new SameThreadRunner());

    private static List<String> words(IssueStrip strip) {
        return strip.lookupAll("*").stream()
                .filter(n -> n instanceof Labeled)
                .map(n -> ((Labeled) n).getText())
                .toList();
    }

    @Test
    void aRefusalIsToldWhereItIsPutRightAndInOneLineBeforeThat() {
        WaitForAsyncUtils.waitForAsyncFx(20_000, () -> {
            IssueStrip strip = new IssueStrip(session);
            session.openSample();
            session.stageProperty().set(Stage.MACHINE);
            assertEquals(List.of("The proposal can't be worked out yet", "Show"), words(strip));
            session.stageProperty().set(Stage.EVIDENCE);
            assertFalse(strip.isVisible(), "the page itself says it");
            session.stageProperty().set(Stage.TABLES);
            ((Button) strip.lookup("#issues-show")).fire();
            assertEquals(Stage.RIDES, session.stageProperty().get());
            assertTrue(words(strip).stream().anyMatch(w -> w.contains("(what each column is taken for)")));
        });
    }
}
