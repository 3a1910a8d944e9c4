package fuelwright.ride;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The page of cases lists every case that is tested, and no other. */
class RideCasesTest {

    private static final Path SPECS = Path.of("src", "test", "java", "fuelwright", "ride");

    private static Set<String> ids(String text, String pattern) {
        Set<String> ids = new TreeSet<>();
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        while (matcher.find()) {
            ids.add(matcher.group(1));
        }
        return ids;
    }

    @Test
    void everyCaseIsOnThePageAndEveryLineOfThePageIsTested() throws IOException {
        StringBuilder specs = new StringBuilder();
        for (String spec : new String[] {"DialectSpecTest", "TimeSpecTest", "TrapSpecTest", "RoleSpecTest"}) {
            specs.append(Files.readString(SPECS.resolve(spec + ".java")));
        }
        Set<String> tested = ids(specs.toString(), "\"(R-[DTXR]-\\d\\d) ");
        Set<String> listed = ids(Files.readString(Path.of("docs", "rides.md")), "(?m)^\\| (R-[DTXR]-\\d\\d) \\|");
        assertEquals(tested, listed);
        assertTrue(tested.size() > 80, "cases: " + tested.size());
    }
}
