package fuelwright.cli;

import fuelwright.handover.StopNotes;
import fuelwright.issue.Issue;
import fuelwright.safety.Caution;
import java.io.PrintWriter;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** How remarks and cautions are said. */
final class Said {

    private Said() {}

    /** What was left out, doubted or decided in reading, one line each. */
    static void remarks(List<Issue> remarks, PrintWriter err) {
        remarks.stream()
                .filter(i -> i.severity() != Issue.Severity.ERROR)
                .map(Said::line)
                .distinct()
                .forEach(err::println);
    }

    /** Stop cautions with what to do, one line each. */
    static void stops(List<Caution> cautions, PrintWriter err) {
        cautions.stream().filter(Caution::isStop).forEach(c -> err.println(StopNotes.text(c)));
    }

    /** Every caution with what to do, one line each, worst first: for a command without a report. */
    static void all(List<Caution> cautions, PrintWriter err) {
        cautions.forEach(c -> err.println(StopNotes.text(c)));
    }

    /** How many there are of each level. */
    static String counts(List<Caution> cautions) {
        return Arrays.stream(Caution.Level.values())
                .map(level -> cautions.stream().filter(c -> c.level() == level).count() + " " + level.words())
                .collect(Collectors.joining(", ", "Cautions: ", ""));
    }

    /** One line: place, what, what to do. */
    static String sentence(Issue issue) {
        String todo = issue.todo().isEmpty()
                ? ""
                : issue.todo().substring(0, 1).toUpperCase(Locale.ROOT)
                        + issue.todo().substring(1);
        return new Issue(issue.severity(), issue.file(), issue.line(), issue.column(), issue.said(), todo).sentence();
    }

    /** What was decided in reading isn't called a note: Note is a level of cautions, which stand in the same stream. */
    private static String line(Issue issue) {
        return (issue.severity() == Issue.Severity.WARNING ? "Look · " : "Read · ") + sentence(issue);
    }

    static Map<String, Object> asMap(Caution caution) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("level", caution.level().words());
        map.put("rule", caution.rule());
        map.put("title", caution.title());
        map.put("what", caution.what());
        map.put("toDo", caution.todo());
        map.put("cells", caution.cells().size());
        map.put("moments", caution.moments().size());
        return map;
    }

    static Map<String, Object> asMap(Issue issue) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("severity", issue.severity().name().toLowerCase(Locale.ROOT));
        map.put("file", issue.file());
        map.put("line", issue.line());
        map.put("column", issue.column());
        map.put("what", issue.what());
        map.put("toDo", issue.todo());
        return map;
    }
}
