package fuelwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** The cases of {@code table-cases.txt}: a file, and everything that reading it says. */
class TableCasesTest {

    private record Case(String title, String file, String expected) {}

    @TestFactory
    Stream<DynamicTest> cases() throws IOException {
        List<Case> cases = cases(resource());
        assertTrue(cases.size() >= 46, "cases found: " + cases.size());
        return cases.stream()
                .map(c -> DynamicTest.dynamicTest(c.title(), () -> assertEquals(c.expected(), outcome(c.file()))));
    }

    private static String outcome(String file) {
        Loaded<Table> loaded = TableReader.read("t.csv", file);
        String said = loaded.issues().stream().map(TableCasesTest::line).collect(Collectors.joining());
        return said
                + loaded.value()
                        .map(t -> TableWriter.write(t)
                                .lines()
                                .map(l -> "= " + l + "\n")
                                .collect(Collectors.joining()))
                        .orElse("");
    }

    private static String line(Issue issue) {
        String mark = issue.severity() == Issue.Severity.ERROR
                ? "! "
                : issue.severity() == Issue.Severity.WARNING ? "? " : "i ";
        return mark + issue.sentence() + "\n";
    }

    private static String resource() throws IOException {
        try (InputStream in = TableCasesTest.class.getResourceAsStream("table-cases.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static List<Case> cases(String text) {
        List<Case> cases = new ArrayList<>();
        for (String part : text.split("(?m)^=== ")) {
            int title = part.indexOf('\n');
            int cut = part.indexOf("\n---\n");
            if (cut >= 0) {
                String file = part.substring(title + 1, cut + 1)
                        .replace('→', '\t')
                        .replace('␍', '\r')
                        .replace('⍽', '\u00A0');
                cases.add(new Case(part.substring(0, title), file, part.substring(cut + 5)));
            }
        }
        return cases;
    }
}
