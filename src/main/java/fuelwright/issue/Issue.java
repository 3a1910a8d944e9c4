package fuelwright.issue;

import fuelwright.unit.Sentence;
import fuelwright.unit.Units;
import java.util.Locale;
import java.util.Objects;

/**
 * Something wrong, doubtful or decided about an input, as a value: where it is, what it is, and what to do about it.
 *
 * @param severity how much it matters
 * @param file the file's name as the user knows it; empty where there is none
 * @param line 1-based line, 0 where none applies
 * @param column 1-based column (field number in a delimited file), 0 where none applies
 * @param said what is wrong, one sentence without a full stop at the end
 * @param todo what the user can do, one sentence without a full stop; may be empty for a {@link Severity#NOTE}
 */
public record Issue(Severity severity, String file, int line, int column, Sentence said, String todo) {

    /** How much an issue matters. */
    public enum Severity {
        /** The input can't be used. */
        ERROR,
        /** The input was used, but something in it was left out or looks wrong. */
        WARNING,
        /** A decision taken in reading, said so that it can be overruled. */
        NOTE
    }

    public Issue {
        Objects.requireNonNull(severity, "severity");
        Objects.requireNonNull(file, "file");
        Objects.requireNonNull(said, "said");
        Objects.requireNonNull(todo, "todo");
    }

    /** Where what is wrong holds no physical figure. */
    public Issue(Severity severity, String file, int line, int column, String what, String todo) {
        this(severity, file, line, column, Sentence.text(what), todo);
    }

    /** What is wrong, as command line and files have it. */
    public String what() {
        return said.toString();
    }

    public static Issue error(String file, int line, int column, String what, String todo) {
        return new Issue(Severity.ERROR, file, line, column, what, todo);
    }

    public static Issue warning(String file, int line, int column, String what, String todo) {
        return new Issue(Severity.WARNING, file, line, column, what, todo);
    }

    public static Issue note(String file, String what) {
        return new Issue(Severity.NOTE, file, 0, 0, what, "");
    }

    /** The place, as {@code file:line:column} with the parts that are known. */
    public String place() {
        String place = file;
        if (line > 0) {
            place += ":" + line;
            if (column > 0) {
                place += ":" + column;
            }
        }
        return place;
    }

    /** One line for a person: place, what, what to do. */
    public String sentence() {
        return sentence(Units.CANONICAL);
    }

    /** The same in the units that somebody reads. */
    public String sentence(Units units) {
        String where = place();
        return (where.isEmpty() ? "" : where + ": ") + said.in(units) + (todo.isEmpty() ? "" : ". " + capital(todo));
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
