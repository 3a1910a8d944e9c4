package fuelwright.ui.shell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.ui.FixtureServices;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.theme.Measures;
import fuelwright.ui.theme.TextSize;
import fuelwright.ui.theme.Theme;
import fuelwright.work.StateFolder;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RememberedTest {

    @TempDir
    private Path folder;

    /** A new start of the program. */
    private Session start() {
        Session session = new Session(
                new FixtureServices() {
                    @Override
                    public StateFolder state() {
                        return StateFolder.at(folder);
                    }
                },
                new SameThreadRunner());
        new Remembered(session).follow();
        return session;
    }

    @Test
    void looksNotationAndStageAreFoundAsTheyWereLeft() {
        Session first = start();
        assertEquals(Theme.LIGHT, first.themeProperty().get());
        first.themeProperty().set(Theme.CONTRAST);
        first.textSizeProperty().set(TextSize.LARGEST);
        first.afrProperty().set(true);
        first.measuresProperty().set(Measures.IMPERIAL);
        first.stageProperty().set(Stage.EVIDENCE);
        Session second = start();
        assertEquals(Theme.CONTRAST, second.themeProperty().get());
        assertEquals(TextSize.LARGEST, second.textSizeProperty().get());
        assertTrue(second.afrProperty().get());
        assertEquals(Measures.IMPERIAL, second.measuresProperty().get());
        assertEquals(Stage.EVIDENCE, second.stageProperty().get());
    }

    @Test
    void whatWasChangedJustBeforeTheEndIsKept() {
        SameThreadRunner runner = new SameThreadRunner();
        Session session = new Session(
                new FixtureServices() {
                    @Override
                    public StateFolder state() {
                        return StateFolder.at(folder);
                    }
                },
                runner);
        Remembered remembered = new Remembered(session);
        remembered.follow();
        runner.hold();
        session.themeProperty().set(Theme.DARK);
        session.close();
        remembered.keepNow();
        assertEquals(Theme.DARK, start().themeProperty().get());
    }

    @Test
    void whatAnotherVersionLeftIsAsIfItWereNotThere() {
        StateFolder.at(folder).put("theme", "SEPIA");
        StateFolder.at(folder).put("afr", "perhaps");
        Session session = start();
        assertEquals(Theme.LIGHT, session.themeProperty().get());
        assertFalse(session.afrProperty().get());
    }

    @Test
    void aUserIsGreetedOnce() {
        assertTrue(new Remembered(start()).isFirstTime());
        assertFalse(new Remembered(start()).isFirstTime());
    }
}
