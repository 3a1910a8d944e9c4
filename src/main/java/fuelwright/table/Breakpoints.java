package fuelwright.table;

import java.util.Locale;
import java.util.OptionalDouble;

/** Takes the breakpoints of one axis in turn and reports each that is no number or doesn't ascend. */
final class Breakpoints {

    private final boolean decimalComma;
    private final Problems problems;
    private double previous = Double.NEGATIVE_INFINITY;
    private boolean failed;

    Breakpoints(boolean decimalComma, Problems problems) {
        this.decimalComma = decimalComma;
        this.problems = problems;
    }

    boolean failed() {
        return failed;
    }

    double next(String text, int line, int column) {
        OptionalDouble number = Numerals.parse(text, decimalComma);
        if (number.isEmpty()) {
            failed = true;
            reportNoNumber(text, line, column, decimalComma, problems);
            return Double.NaN;
        }
        double value = number.getAsDouble();
        if (value <= previous) {
            failed = true;
            problems.error(
                    line,
                    column,
                    value == previous
                            ? "The breakpoint " + text + " is repeated"
                            : "The breakpoint " + text + " comes after " + Numerals.shortest(previous),
                    "Breakpoints must ascend, each once; move or remove the line or column");
        }
        previous = value;
        return value;
    }

    static void reportNoNumber(String text, int line, int column, boolean decimalComma, Problems problems) {
        String lower = text.toLowerCase(Locale.ROOT);
        if (text.isEmpty()) {
            problems.error(line, column, "The cell is empty", "Write a number");
        } else if (lower.equals("nan") || lower.contains("inf")) {
            problems.error(line, column, "'" + text + "' is no figure that a table can hold", "Write a number");
        } else if (decimalComma && text.indexOf('.') >= 0) {
            problems.error(
                    line,
                    column,
                    "'" + text + "' has a point where the file has decimal commas",
                    "Use one decimal sign and no separators of thousands");
        } else {
            problems.error(line, column, "'" + text + "' is no number", "Write a number");
        }
    }
}
