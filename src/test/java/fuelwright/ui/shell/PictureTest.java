package fuelwright.ui.shell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.ui.FixtureServices;
import fuelwright.ui.WindowApp;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.theme.Theme;
import java.io.StringReader;
import java.nio.file.Path;
import java.util.List;
import javafx.application.Application;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

/** What a page shows, as a picture file; SVG read back by the XML parser of the JDK, PNG by its image reader. */
@ExtendWith(ApplicationExtension.class)
class PictureTest {

    private Session session;
    private Shell shell;

    @Start
    void start(javafx.stage.Stage window) {
        session = new Session(new FixtureServices(), new SameThreadRunner());
        Application.setUserAgentStylesheet(Theme.LIGHT.base());
        shell = new Shell(session, WindowApp.panes(session));
        window.setScene(shell.scene());
        window.show();
        session.openSample();
    }

    private static <T> T onWindow(java.util.concurrent.Callable<T> work) {
        return WaitForAsyncUtils.waitForAsyncFx(20_000, work);
    }

    @Test
    void theProposalsMapHoldsEveryFigureAsText() throws Exception {
        onWindow(() -> {
            session.stageProperty().set(Stage.PROPOSAL);
            return null;
        });
        WaitForAsyncUtils.waitForFxEvents();
        String svg = onWindow(() ->
                Picture.of(shell.root(), Theme.LIGHT, List.of()).orElseThrow().svg());
        Document document =
                DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
        int cells = session.job().fuelTable().orElseThrow().cells();
        assertTrue(!svg.contains("Stop"), "nothing to be said");
        assertTrue(document.getElementsByTagName("text").getLength() > cells, "a figure and its ± in every cell");
    }

    @Test
    void aPictureOfATableSaysItsStopCautionsBelow() throws Exception {
        onWindow(() -> {
            session.stageProperty().set(Stage.PROPOSAL);
            return null;
        });
        WaitForAsyncUtils.waitForFxEvents();
        String stop = "Stop · Lean under load: " + "lean again ".repeat(40) + "at last.";
        String svg = onWindow(() -> Picture.of(shell.root(), Theme.LIGHT, List.of(stop))
                .orElseThrow()
                .svg());
        assertTrue(svg.contains("Stop · Lean under load"), "said");
        assertTrue(svg.contains("at last."), "to its end");
    }

    @Test
    void aFileIsOfTheKindThatItsNameSays(@TempDir Path folder) throws Exception {
        onWindow(() -> {
            session.stageProperty().set(Stage.EVIDENCE);
            return null;
        });
        WaitForAsyncUtils.waitForFxEvents();
        Path png = folder.resolve("map.png");
        double width = onWindow(() -> {
            Picture picture = Picture.of(shell.root(), Theme.LIGHT, List.of("Stop · Lean under load: once."))
                    .orElseThrow();
            picture.take(png).write();
            picture.take(folder.resolve("map.svg")).write();
            return shell.scene().getWidth();
        });
        var image = ImageIO.read(png.toFile());
        assertTrue(image.getWidth() > width, "twice as sharp as the screen");
        assertEquals(
                "svg",
                DocumentBuilderFactory.newInstance()
                        .newDocumentBuilder()
                        .parse(folder.resolve("map.svg").toFile())
                        .getDocumentElement()
                        .getNodeName());
    }
}
