package fuelwright;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StartTest {

    @TempDir
    private Path folder;

    @Test
    void filesAloneAreOpenedInTheWindow() throws IOException {
        String ride = Files.createFile(folder.resolve("ride.csv")).toString();
        assertTrue(Start.isForWindow(ride));
        assertTrue(Start.isForWindow("--stage=rides", ride));
        assertTrue(Start.isForWindow());
    }

    @Test
    void commandsAndWhatIsNoFileGoToTheCommandLine() {
        assertFalse(Start.isForWindow("propose", "--help"));
        assertFalse(Start.isForWindow(folder.resolve("gone.csv").toString()));
        assertFalse(Start.isForWindow("--help"));
        assertFalse(Start.isForWindow("nul\0"));
    }
}
