package fuelwright;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Run by the build after the tests: fails it where fewer ran than there should be. A test class whose name doesn't end in Test isn't run,
 * and nothing else would say so.
 */
public final class TestCount {

    private static final Pattern SUITE = Pattern.compile(
            "<testsuite [^>]*?\\btests=\"(\\d+)\"[^>]*?\\bskipped=\"(\\d+)\"|<testsuite [^>]*?\\btests=\"(\\d+)\"");

    private TestCount() {}

    /** @param arguments folder of the reports, least number of tests */
    public static void main(String[] arguments) throws IOException {
        int least = Integer.parseInt(arguments[1]);
        int ran = count(Path.of(arguments[0]));
        if (ran < least) {
            throw new IllegalStateException(
                    "only " + ran + " tests ran, at least " + least + " should: does a test class end in Test?");
        }
    }

    static int count(Path reports) throws IOException {
        int tests = 0;
        try (Stream<Path> files = Files.list(reports)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".xml")).toList()) {
                Matcher suite = SUITE.matcher(Files.readString(file));
                if (suite.find()) {
                    tests += suite.group(1) != null
                            ? Integer.parseInt(suite.group(1)) - Integer.parseInt(suite.group(2))
                            : Integer.parseInt(suite.group(3));
                }
            }
        }
        return tests;
    }
}
