package fuelwright.ride;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;

/** What wasn't read as a row, and why: nothing is dropped without an entry here. */
final class RowLog {

    /** Why a line isn't a row. */
    enum Skip {
        BLANK("blank lines", false),
        COMMENT("comment lines", false),
        HEADING("repeated headings (the logger was restarted)", false),
        NUL("lines with NUL bytes", true),
        TOO_LONG("lines longer than 65,536 characters", true),
        QUOTE("lines with a quote that isn't closed", true),
        TOO_MANY("lines with more fields than columns", true),
        CUT("lines cut short", true),
        NOT_FIGURES("lines that aren't figures", true),
        NO_TIME("lines without a time", true),
        TIME_OUT_OF_LINE("lines whose time doesn't fit the lines around them", true);

        private final String words;
        private final boolean bad;

        Skip(String words, boolean bad) {
            this.words = words;
            this.bad = bad;
        }

        String words() {
            return words;
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
        later.skipped.forEach((why, lines) -> skipped.computeIfAbsent(why, w -> new Lines()).addAll(lines));
        later.unreadable.forEach((c, lines) -> unreadable.computeIfAbsent(c, w -> new Lines()).addAll(lines));
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
