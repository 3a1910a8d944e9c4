package fuelwright.ride;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;

/** What wasn't read as a row, and why: nothing is dropped without an entry here. */
final class RowLog {

    /** Why a line isn't a row. */
    enum Skip {
        BLANK("blank line", "blank lines", false),
        COMMENT("comment line", "comment lines", false),
        HEADING("repeated heading (the logger was restarted)", "repeated headings (the logger was restarted)", false),
        NUL("line with NUL bytes", "lines with NUL bytes", true),
        TOO_LONG("line longer than 65,536 characters", "lines longer than 65,536 characters", true),
        STRAY_RETURN("line with a carriage return inside", "lines with a carriage return inside", true),
        QUOTE("line with a quote that isn't closed", "lines with a quote that isn't closed", true),
        TOO_MANY("line with more fields than columns", "lines with more fields than columns", true),
        CUT("line cut short", "lines cut short", true),
        NOT_FIGURES("line that isn't figures", "lines that aren't figures", true),
        NO_TIME("line without a time", "lines without a time", true),
        TIME_OUT_OF_LINE(
                "line whose time doesn't fit the lines around it",
                "lines whose time doesn't fit the lines around them",
                true);

        private final String one;
        private final String many;
        private final boolean bad;

        Skip(String one, String many, boolean bad) {
            this.one = one;
            this.many = many;
            this.bad = bad;
        }

        String words(long count) {
            return count == 1 ? one : many;
        }

        /** Whether the line should have been a row. */
        boolean isBad() {
            return bad;
        }
    }

    private final Map<Skip, Lines> skipped = new TreeMap<>();
    private final Map<Integer, Lines> unreadable = new TreeMap<>();
    private final Map<Integer, String> examples = new LinkedHashMap<>();

    void skip(Skip why, int line) {
        skipped.computeIfAbsent(why, w -> new Lines()).add(line);
    }

    void unreadable(int column, int line, String text) {
        unreadable.computeIfAbsent(column, c -> new Lines()).add(line);
        examples.putIfAbsent(column, text.length() > 24 ? text.substring(0, 24) + "…" : text);
    }

    void addAll(RowLog later) {
        later.skipped.forEach(
                (why, lines) -> skipped.computeIfAbsent(why, w -> new Lines()).addAll(lines));
        later.unreadable.forEach(
                (c, lines) -> unreadable.computeIfAbsent(c, w -> new Lines()).addAll(lines));
        later.examples.forEach(examples::putIfAbsent);
    }

    Map<Skip, Lines> skipped() {
        return skipped;
    }

    /** Fields of figure columns that hold something else, by column. */
    Map<Integer, Lines> unreadable() {
        return unreadable;
    }

    String example(int column) {
        return examples.getOrDefault(column, "");
    }

    long skippedCount() {
        return skipped.values().stream().mapToLong(Lines::count).sum();
    }

    long badCount() {
        return skipped.entrySet().stream()
                .filter(e -> e.getKey().isBad())
                .mapToLong(e -> e.getValue().count())
                .sum();
    }
}
