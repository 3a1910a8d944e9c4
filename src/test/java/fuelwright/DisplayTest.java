package fuelwright;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class DisplayTest {

    private String platform;

    /** The tests themselves run on a toolkit that needs no display. */
    @BeforeEach
    void withoutTheTestToolkit() {
        platform = System.clearProperty("glass.platform");
    }

    @AfterEach
    void withItAgain() {
        if (platform != null) {
            System.setProperty("glass.platform", platform);
        }
    }

    @Test
    void start01_no_display_is_said_without_looking_for_gtk() {
        for (Map<String, String> none : java.util.List.of(Map.<String, String>of(), Map.of("DISPLAY", " "))) {
            assertEquals(Optional.of("There is no display"), Display.whatIsMissing("Linux", none, () -> {
                throw new AssertionError("not asked");
            }));
        }
    }

    @Test
    void start02_a_display_without_gtk_names_the_package_to_install() {
        Optional<String> missing = Display.whatIsMissing("Linux", Map.of("DISPLAY", ":0"), () -> false);
        assertTrue(missing.orElseThrow().contains("libgtk-3-0"), missing.toString());
    }

    @Test
    void start03_a_display_with_gtk_is_enough_and_other_systems_bring_their_own() {
        assertEquals(Optional.empty(), Display.whatIsMissing("Linux", Map.of("DISPLAY", ":0"), () -> true));
        assertEquals(Optional.empty(), Display.whatIsMissing("Mac OS X", Map.of(), () -> false));
        assertEquals(Optional.empty(), Display.whatIsMissing("Windows 11", Map.of(), () -> false));
    }
}
