package fuelwright.table;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;

/**
 * The raw lines of a table file: notes apart, the grid cut into fields, the delimiter (tab, semicolon or comma) found from the first
 * line of the grid. Each field keeps its line; its column is its place in the row plus one.
 */
final class Grid {

    /** One line of the grid. */
    record Row(int line, List<String> fields) {}

    /** One {@code #} line, without the {@code #}. */
    record Remark(int line, String text) {}

    final List<Row> rows = new ArrayList<>();
    final List<Remark> remarks = new ArrayList<>();
    private boolean decimalComma;

    private Grid() {}

    boolean decimalComma() {
        return decimalComma;
    }

    static Grid cut(String text, Problems problems) {
        Grid grid = new Grid();
        String[] lines = text.split("\r\n|\r|\n", -1);
        String first = Arrays.stream(lines)
                .filter(l -> !isRemark(l) && !blank(l))
                .findFirst()
                .orElse("");
        char delimiter = delimiter(first);
        List<String> remarks = new ArrayList<>();
        List<Integer> remarkLines = new ArrayList<>();
        boolean ended = false;
        for (int i = 0; i < lines.length; i++) {
            int line = i + 1;
            if (isRemark(lines[i])) {
                remarks.add(lines[i].strip());
                remarkLines.add(line);
                if (!grid.rows.isEmpty()) {
                    problems.warning(
                            line,
                            0,
                            "A # line stands below the beginning of the grid",
                            "It is kept as a note and will be written above the grid");
                }
            } else if (blank(lines[i])) {
                ended = !grid.rows.isEmpty();
            } else if (ended) {
                problems.error(
                        line,
                        0,
                        "There is something below the blank line that ends the grid",
                        "Keep one table in a file, and no blank lines within it");
                break;
            } else {
                grid.addRow(line, lines[i], delimiter, problems);
            }
        }
        grid.addRemarks(remarks, remarkLines, delimiter);
        grid.dropEmptyColumns(problems);
        grid.findDecimalSeparator(delimiter, problems);
        return grid;
    }

    private void addRow(int line, String text, char delimiter, Problems problems) {
        try {
            rows.add(new Row(line, fields(text, delimiter)));
        } catch (IOException | RuntimeException badQuotes) {
            problems.error(line, 0, "The quotation marks of this line don't pair up", "Remove the odd one");
        }
    }

    private static List<String> fields(String text, char delimiter) throws IOException {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(delimiter)
                .setIgnoreEmptyLines(false)
                .get();
        try (CSVParser parser = CSVParser.parse(new StringReader(text), format)) {
            List<String> fields = new ArrayList<>();
            parser.iterator().next().forEach(f -> fields.add(Numerals.strip(f)));
            return fields;
        }
    }

    private static char delimiter(String gridLine) {
        if (gridLine.indexOf('\t') >= 0) {
            return '\t';
        }
        return gridLine.indexOf(';') >= 0 ? ';' : ',';
    }

    private static boolean isRemark(String line) {
        String stripped = line.strip();
        return stripped.startsWith("#") || stripped.startsWith("\"#");
    }

    private static boolean blank(String line) {
        return line.chars().allMatch(c -> Character.isWhitespace(c) || c == ',' || c == ';' || c == '\u00A0');
    }

    /** Spreadsheets quote notes and pad them with delimiters to the grid's width; both are undone. */
    private void addRemarks(List<String> lines, List<Integer> at, char delimiter) {
        int width = rows.isEmpty() ? 0 : rows.get(0).fields().size();
        String padding = width > 1 ? String.valueOf(delimiter).repeat(width - 1) : "";
        boolean padded = !padding.isEmpty() && lines.stream().allMatch(l -> l.endsWith(padding));
        for (int i = 0; i < lines.size(); i++) {
            String text = lines.get(i);
            if (padded) {
                text = text.substring(0, text.length() - padding.length());
            }
            if (text.startsWith("\"")) {
                text = unquoted(text, delimiter);
            }
            remarks.add(
                    new Remark(at.get(i), text.substring(text.indexOf('#') + 1).strip()));
        }
    }

    private static String unquoted(String text, char delimiter) {
        try {
            return fields(text, delimiter).get(0);
        } catch (IOException | RuntimeException badQuotes) {
            return text;
        }
    }

    private void dropEmptyColumns(Problems problems) {
        int used = 0;
        int widest = 0;
        for (Row row : rows) {
            int last = row.fields().size();
            widest = Math.max(widest, last);
            while (last > 0 && row.fields().get(last - 1).isEmpty()) {
                last--;
            }
            used = Math.max(used, last);
        }
        if (used == widest || rows.isEmpty()) {
            return;
        }
        for (int i = 0; i < rows.size(); i++) {
            List<String> fields = rows.get(i).fields();
            rows.set(i, new Row(rows.get(i).line(), List.copyOf(fields.subList(0, Math.min(used, fields.size())))));
        }
        problems.note(rows.get(0).line(), used + 1, "Empty columns at the right are left out");
    }

    private void findDecimalSeparator(char delimiter, Problems problems) {
        boolean commas = false;
        for (int i = 0; i < rows.size(); i++) {
            List<String> fields = rows.get(i).fields();
            for (int j = i == 0 ? 1 : 0; j < fields.size(); j++) {
                commas |= Numerals.parse(fields.get(j), true).isPresent()
                        && fields.get(j).indexOf(',') >= 0;
            }
        }
        decimalComma = commas;
        if (commas) {
            problems.note(rows.get(0).line(), 0, "Commas within numbers are read as decimal commas");
        }
    }
}
