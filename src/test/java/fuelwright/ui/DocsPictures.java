package fuelwright.ui;

import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.ui.theme.Words;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javafx.application.Application;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/**
 * Makes the pictures of the documents anew, from the sample job: {@code mvn -B -q test -Dtest=DocsPictures -Dpictures=docs}. No
 * build makes them by itself.
 */
class DocsPictures {

    private static final Path FOLDER = Path.of("docs", "images");

    /** An installed picture must not make the documents heavy. */
    private static final long MOST_BYTES = 250_000;

    @Test
    @EnabledIfSystemProperty(named = "pictures", matches = "docs")
    void everyStageLightAndTheTwoThatMatterMostDark() throws Exception {
        Application.launch(
                Pictures.class,
                FOLDER.toString(),
                "real",
                "1280x800",
                "light",
                "plain",
                "cell=130",
                "press=" + Words.of("hardware.done.plain"),
                "also=proposal-dark",
                "also=cautions-dark");
        for (String name : List.of("machine", "tables", "rides", "evidence", "proposal", "cautions", "handover")) {
            check(name + "-light.png");
        }
        check("proposal-dark.png");
        check("cautions-dark.png");
    }

    private static void check(String name) throws Exception {
        Path file = FOLDER.resolve(name);
        assertTrue(Files.size(file) < MOST_BYTES, name + " has " + Files.size(file) + " bytes");
    }
}
