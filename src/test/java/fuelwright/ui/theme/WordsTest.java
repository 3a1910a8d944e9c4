package fuelwright.ui.theme;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class WordsTest {

    private static final Pattern KEY = Pattern.compile(
            "(?:Words\\.of|button|action|toggle|card|callout)\\(\\s*\"([a-z]+(?:\\.[a-zA-Z]+)+)\"\\s*[,)]");

    @Test
    void everySentenceThatTheWindowAsksForIsThere() throws IOException {
        List<String> missing = new ArrayList<>();
        int found = 0;
        try (Stream<Path> files = Files.walk(Path.of("src/main/java/fuelwright/ui"))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                Matcher matcher = KEY.matcher(Files.readString(file));
                while (matcher.find()) {
                    found++;
                    if (!Words.has(matcher.group(1))) {
                        missing.add(file.getFileName() + ": " + matcher.group(1));
                    }
                }
            }
        }
        assertTrue(found > 100, "keys found: " + found);
        assertEquals(List.of(), missing);
    }

    @Test
    void noApostropheIsLost() throws IOException {
        Pattern lost = Pattern.compile("(?i)\\b(do|does|did|is|isn|are|was|has|have|can|could|would)nt\\b|[a-z]'[a-z]");
        Path file = Path.of("src/main/resources/fuelwright/ui/window.properties");
        List<String> wrong;
        try (Stream<String> lines = Files.lines(file)) {
            wrong = lines.filter(l -> lost.matcher(l.replace("''", "’")).find()).toList();
        }
        assertEquals(List.of(), wrong);
    }

    @Test
    void noSentenceOfTheWindowNamesAnOptionOfTheCommandLine() throws IOException {
        Pattern option = Pattern.compile("--[a-z]");
        Pattern literal = Pattern.compile("\"(?:[^\"\\\\]|\\\\.)*\"");
        List<String> left = new ArrayList<>();
        int said = 0;
        try (Stream<Path> files = Files.walk(Path.of("src/main/java/fuelwright"))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java"))
                    .filter(f -> !f.toString().contains("cli") && !f.toString().contains("ui"))
                    .filter(f -> f.getNameCount() > 5)
                    .toList()) {
                // Literals that are put together stand in one sentence.
                Matcher matcher = literal.matcher(Files.readString(file));
                while (matcher.find()) {
                    if (option.matcher(matcher.group()).find()) {
                        said++;
                        String shown = Words.inWindow(matcher.group().replaceAll("\\(--([^)]*)\"$", "(--$1)"));
                        if (option.matcher(shown).find()) {
                            left.add(file.getFileName() + ": " + shown);
                        }
                    }
                }
            }
        }
        assertTrue(said > 5, "options said: " + said);
        assertEquals(List.of(), left);
        String own = Files.readString(Path.of("src/main/resources/fuelwright/ui/window.properties"));
        assertTrue(!option.matcher(own).find());
        assertEquals("Say the rows (stage 3, Rides: rows a second)", Words.inWindow("Say the rows (--rate HZ)"));
        assertEquals("Allow it", Words.inWindow("Allow it (--replace)"));
    }

    @Test
    void numbersAndApostrophesComeOutAsWritten() {
        assertEquals("2 Stop", Words.of("rail.stops", 2));
        assertTrue(Words.of("status.stops", 1)
                .startsWith("1 Stop caution stands: read it before handing over; don't ride"));
        assertTrue(Words.of("status.stops", 2).startsWith("2 Stop cautions stand"));
        assertTrue(Words.of("status.stops.answered", 2).endsWith("don't ride before their causes are dealt with"));
    }

    /** Of a key that stands twice the last sentence is read and the other is dead, whoever wrote it. */
    @Test
    void noKeyStandsTwice() throws IOException {
        Path file = Path.of("src/main/resources/fuelwright/ui/window.properties");
        List<String> keys = Files.readAllLines(file).stream()
                .filter(l -> !l.isBlank() && !l.startsWith("#") && l.indexOf('=') > 0)
                .map(l -> l.substring(0, l.indexOf('=')).strip())
                .toList();
        List<String> twice = keys.stream()
                .filter(k -> Collections.frequency(keys, k) > 1)
                .distinct()
                .toList();
        assertEquals(List.of(), twice);
    }

    @Test
    void aStagesNameIsLeftOutOnThatStage() {
        String said = "name the column (--role \"COLUMN=lambda\")";
        assertEquals(
                "name the column (stage 3, Rides: what each column is taken for)", Words.onStage(1, "Machine", said));
        assertEquals("name the column (what each column is taken for)", Words.onStage(3, "Rides", said));
    }

    @Test
    void theSignOfAnUncertaintyStandsAtItsFigure() throws IOException {
        Pattern apart = Pattern.compile("± (\\d|%[.\\d]*[fds]|\\{|\"\\s*\\+)");
        List<String> wrong = new ArrayList<>();
        try (Stream<Path> files = Files.walk(Path.of("src/main"))) {
            for (Path file : files.filter(Files::isRegularFile)
                    .filter(f -> f.toString().matches(".*\\.(java|properties|ftlh)"))
                    .toList()) {
                Files.readString(file)
                        .lines()
                        .filter(l -> apart.matcher(l).find())
                        .forEach(l -> wrong.add(file.getFileName() + ": " + l.strip()));
            }
        }
        assertEquals(List.of(), wrong);
    }
}
