package fuelwright.ride;

import fuelwright.unit.Unit;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A heading taken apart.
 *
 * @param text as the file has it
 * @param name without the unit and its brackets
 * @param unit the unit that is stated, if it is known
 * @param unitText the unit as stated, empty where none is
 * @param words the name in lower-case words with one space around each: {@code " engine speed "}
 */
record Heading(String text, String name, Optional<Unit> unit, String unitText, String words) {

    private static final Pattern BRACKETS = Pattern.compile("\\[([^\\[\\]]*)\\]|\\(([^()]*)\\)|\\{([^{}]*)\\}");
    private static final Pattern CAMEL = Pattern.compile("(?<=\\p{Ll})(?=\\p{Lu})");
    private static final Pattern NOT_WORD = Pattern.compile("[^\\p{L}\\p{N}]+");
    private static final Pattern GAUGE =
            Pattern.compile("\\s*[( ]?(gauge|abs(olute)?|rel(ative)?|g|a)\\)?$", Pattern.CASE_INSENSITIVE);

    static Heading parse(String text, String unitRow) {
        String name = text.strip();
        String stated = unitRow.strip().replaceAll("^[\\[({]|[\\])}]$", "").strip();
        Optional<Unit> unit = stated.isEmpty() ? Optional.empty() : unitOf(stated);
        if (stated.isEmpty()) {
            Matcher brackets = BRACKETS.matcher(name);
            int from = -1;
            int to = -1;
            while (brackets.find()) {
                String inside = inside(brackets);
                Optional<Unit> found = unitOf(inside);
                if (inside.isEmpty() || found.isPresent() || name.charAt(brackets.start()) == '[') {
                    from = brackets.start();
                    to = brackets.end();
                    stated = inside;
                    unit = found;
                }
            }
            if (from >= 0) {
                name = (name.substring(0, from) + name.substring(to)).strip();
            } else {
                stated = lastWordAsUnit(name);
                unit = stated.isEmpty() ? Optional.empty() : unitOf(stated);
            }
        }
        return new Heading(
                text, name.isEmpty() ? text.strip() : name, unit, stated, wordsOf(name.isEmpty() ? text : name));
    }

    private static String inside(Matcher brackets) {
        for (int g = 1; g <= 3; g++) {
            if (brackets.group(g) != null) {
                return brackets.group(g).strip();
            }
        }
        return "";
    }

    private static String lastWordAsUnit(String name) {
        int cut = Math.max(name.lastIndexOf(' '), name.lastIndexOf('_'));
        String last = cut < 0 ? "" : name.substring(cut + 1);
        boolean clear = last.length() > 1 || last.equals("%") || last.equals("V") || last.equals("s");
        return clear && unitOf(last).isPresent() && !last.equalsIgnoreCase("afr") && !last.equalsIgnoreCase("lambda")
                ? last
                : "";
    }

    /** The unit written as {@code text}, with or without a word for gauge or absolute. */
    static Optional<Unit> unitOf(String text) {
        if (text.isBlank()) {
            return Optional.empty();
        }
        Optional<Unit> unit = Unit.parse(text);
        if (unit.isEmpty()) {
            Matcher gauge = GAUGE.matcher(text);
            unit = gauge.find() ? Unit.parse(text.substring(0, gauge.start())) : unit;
        }
        return unit.filter(u -> u != Unit.ONE || text.strip().equals("1"));
    }

    /** Lower-case words of a name, with one space around each. */
    static String wordsOf(String name) {
        String spaced = CAMEL.matcher(name).replaceAll(" ");
        return " "
                + NOT_WORD.matcher(spaced.toLowerCase(Locale.ROOT))
                        .replaceAll(" ")
                        .strip() + " ";
    }

    /** Whether name or unit says that pressure is counted from the barometer. */
    boolean saysGauge() {
        String unitWords = unitText.toLowerCase(Locale.ROOT);
        return words.contains(" gauge ")
                || words.contains(" boost ")
                || words.contains(" relative ")
                || unitWords.matches(".*(gauge|rel|\\(g\\)|psig|kpag|barg)$");
    }

    /** Whether name or unit says that pressure is counted from nothing. */
    boolean saysAbsolute() {
        String unitWords = unitText.toLowerCase(Locale.ROOT);
        return words.contains(" absolute ")
                || words.contains(" abs ")
                || words.contains(" map ")
                || unitWords.matches(".*(abs|absolute|\\(a\\)|psia|kpaa|bara)$");
    }
}
