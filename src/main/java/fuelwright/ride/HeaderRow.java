package fuelwright.ride;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Finds the headings, the units row and the first row of figures, below whatever a logger writes on top. */
final class HeaderRow {

    private static final int JOINED_LINES = 5;

    private final String file;
    private final Sample sample;
    private final Dialect dialect;
    private final List<Record> records = new ArrayList<>();

    /** One record of the head: usually a line, more where a quoted heading has line breaks. */
    private record Record(int line, int nextLine, String text, String[] fields) {
        boolean isBlank() {
            return Arrays.stream(fields).allMatch(String::isEmpty);
        }
    }

    private HeaderRow(String file, Sample sample, Dialect dialect) {
        this.file = file;
        this.sample = sample;
        this.dialect = dialect;
        List<String> head = sample.head();
        for (int i = 0; i < head.size(); i++) {
            String text = head.get(i);
            String[] fields = CsvLine.split(text, dialect.delimiter());
            int next = i + 1;
            for (int j = 1; fields == null && j <= JOINED_LINES && i + j < head.size(); j++) {
                fields = CsvLine.split(String.join("\n", head.subList(i, i + j + 1)), dialect.delimiter());
                next = i + j + 1;
            }
            boolean closed = fields != null;
            records.add(new Record(i, closed ? next : i + 1, text, closed ? fields : new String[] {text}));
            i = closed ? next - 1 : i;
        }
    }

    static Loaded<Layout> find(String file, Sample sample, Dialect dialect) {
        return new HeaderRow(file, sample, dialect).find();
    }

    private Loaded<Layout> find() {
        int first = firstRow();
        if (first < 0) {
            return Loaded.refused(Say.error(
                    file,
                    1,
                    1,
                    "no row of figures was found",
                    "choose a log with one heading row and one row a sample"));
        }
        List<String[]> rows = rowsFrom(first);
        int width = usual(rows, false);
        int filled = usual(rows, true);
        int units = unitsRowAbove(first);
        int heading = headingAbove(units >= 0 ? units : first, filled);
        if (heading < 0 && units >= 0) {
            heading = units;
            units = -1;
        }
        if (heading < 0) {
            return Loaded.refused(Say.error(
                    file,
                    records.get(first).line() + 1,
                    1,
                    "there is no heading row above the first row of figures",
                    "write a line with the columns' names above it, such as: time [s]" + dialect.delimiter()
                            + "engine speed [rpm]"));
        }
        return layout(rows, width, filled, heading, units, first);
    }

    private Loaded<Layout> layout(List<String[]> rows, int width, int filled, int heading, int units, int first) {
        Record headingRecord = records.get(heading);
        List<String> names = new ArrayList<>(Arrays.asList(uncommented(headingRecord)));
        while (names.size() > filled && names.get(names.size() - 1).isEmpty()) {
            names.remove(names.size() - 1);
        }
        int headingLine = headingRecord.line() + 1;
        boolean decimalCommas = dialect.delimiter() == ','
                && filled * 2 >= names.size() * 3
                && rows.stream().flatMap(Arrays::stream).noneMatch(f -> f.indexOf('.') >= 0);
        if (decimalCommas) {
            return Loaded.refused(Say.error(
                    file,
                    headingLine,
                    0,
                    "rows have " + filled + " fields under " + names.size()
                            + " headings: the figures look written with decimal commas between commas",
                    "export the log again with semicolons or tabs between fields, or with decimal points"));
        }
        List<Issue> issues = new ArrayList<>();
        int above = heading;
        if (above > 0) {
            issues.add(Say.note(
                    file, (headingLine - 1) + (headingLine == 2 ? " line" : " lines") + " above the headings skipped"));
        }
        for (int c = names.size(); c < filled; c++) {
            issues.add(Say.warning(
                    file,
                    headingLine,
                    c + 1,
                    "column " + (c + 1) + " has figures but no heading",
                    "check that no heading is missing: the headings may be shifted"));
        }
        int columns = Math.max(names.size(), filled);
        List<String> unitFields = units < 0 ? List.of() : List.of(uncommented(records.get(units)));
        List<Heading> headings = headings(names, unitFields, columns, headingLine, issues);
        List<ColumnForm> forms = new ArrayList<>();
        for (int c = 0; c < columns; c++) {
            int column = c;
            List<String> cells = rows.stream()
                    .filter(r -> r.length > column)
                    .map(r -> r[column])
                    .toList();
            forms.add(ColumnForm.of(cells, dialect.decimalSign()));
        }
        long shorter = rows.stream().filter(r -> r.length < width).count();
        Record firstRecord = records.get(first);
        return Loaded.of(
                new Layout(
                        dialect,
                        headings,
                        List.copyOf(names),
                        unitFields,
                        List.copyOf(forms),
                        sample.starts().get(firstRecord.line()),
                        firstRecord.line() + 1,
                        headingLine,
                        width,
                        shorter >= 3 && shorter * 5 > rows.size(),
                        baseDay(rows),
                        List.copyOf(issues)),
                List.of());
    }

    private List<Heading> headings(
            List<String> names, List<String> unitFields, int columns, int headingLine, List<Issue> issues) {
        List<Heading> headings = new ArrayList<>();
        Map<String, Integer> seen = new HashMap<>();
        for (int c = 0; c < columns; c++) {
            String text = c < names.size() ? names.get(c).replaceAll("\\s+", " ") : "";
            if (text.isEmpty()) {
                text = "column " + (c + 1);
            }
            int times = seen.merge(text, 1, Integer::sum);
            if (times > 1) {
                issues.add(Say.warning(
                        file,
                        headingLine,
                        c + 1,
                        "the heading " + text + " is there " + times + " times; this one is called " + text + " #"
                                + times,
                        "check that both are meant"));
            }
            Heading heading = Heading.parse(text, c < unitFields.size() ? unitFields.get(c) : "");
            headings.add(
                    times == 1
                            ? heading
                            : new Heading(
                                    text + " #" + times,
                                    heading.name() + " #" + times,
                                    heading.unit(),
                                    heading.unitText(),
                                    heading.words()));
        }
        return List.copyOf(headings);
    }

    private static String[] uncommented(Record record) {
        String[] fields = record.fields().clone();
        fields[0] = fields[0].replaceFirst("^(#+|//)\\s*", "");
        return fields;
    }

    private int firstRow() {
        for (int i = 0; i < records.size(); i++) {
            if (isFigures(records.get(i).fields())
                    && nextIsFigures(i, records.get(i).fields().length)) {
                return i;
            }
        }
        return -1;
    }

    /** Whether one of the next two lines that hold anything is a row as well, or nothing follows. */
    private boolean nextIsFigures(int row, int width) {
        int looked = 0;
        for (int i = row + 1; i < records.size() && looked < 2; i++) {
            Record next = records.get(i);
            if (!next.isBlank()) {
                looked++;
                if (isFigures(next.fields()) && Math.abs(next.fields().length - width) * 2 <= width) {
                    return true;
                }
            }
        }
        return looked == 0 || row + 2 >= records.size();
    }

    private boolean isFigures(String[] fields) {
        int readable = 0;
        int text = 0;
        for (String field : fields) {
            switch (Cells.form(field, dialect.decimalSign())) {
                case NUMBER, CLOCK -> readable++;
                case TEXT -> text += Cells.hasDigit(field) ? 1 : 0;
                default -> {}
            }
        }
        return readable >= 2 && readable > text && !fields[0].startsWith("#");
    }

    private List<String[]> rowsFrom(int first) {
        List<String[]> rows = new ArrayList<>();
        for (Record record : records.subList(first, records.size())) {
            if (isFigures(record.fields())) {
                rows.add(record.fields());
            }
        }
        for (String line : sample.later()) {
            String[] fields = CsvLine.split(line, dialect.delimiter());
            if (fields != null && isFigures(fields)) {
                rows.add(fields);
            }
        }
        return rows;
    }

    /** The most frequent number of fields; of equals, the greatest. With {@code filled}, up to the last one that isn't empty. */
    private static int usual(List<String[]> rows, boolean filled) {
        Map<Integer, Integer> counts = new HashMap<>();
        int widest = 0;
        for (String[] row : rows) {
            int width = row.length;
            while (filled && width > 0 && row[width - 1].isEmpty()) {
                width--;
            }
            counts.merge(width, 1, Integer::sum);
            widest = Math.max(widest, width);
        }
        return counts.entrySet().stream()
                .max(Map.Entry.<Integer, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                .map(Map.Entry::getKey)
                .orElse(widest);
    }

    private int unitsRowAbove(int first) {
        int above = filledAbove(first);
        if (above < 0) {
            return -1;
        }
        int units = 0;
        int others = 0;
        for (String field : uncommented(records.get(above))) {
            String bare = field.replaceAll("^[\\[({]|[\\])}]$", "").strip();
            boolean bracketed = field.matches("[\\[({].*[\\])}]");
            boolean none = bare.isEmpty() || bare.equals("-");
            if (!none) {
                boolean unit = bracketed
                        || Heading.unitOf(bare).isPresent()
                        || bare.equals("h:mm:ss")
                        || bare.equals("hh:mm:ss");
                units += unit ? 1 : 0;
                others += unit ? 0 : 1;
            }
        }
        return units >= 1 && units >= others ? above : -1;
    }

    private int headingAbove(int row, int filled) {
        int above = filledAbove(row);
        if (above < 0) {
            return -1;
        }
        Record record = records.get(above);
        long texts = Arrays.stream(record.fields())
                .filter(f -> Cells.form(f, dialect.decimalSign()) == Cells.Form.TEXT)
                .count();
        boolean wide = record.fields().length >= 2 && texts >= 2 && texts * 2 >= Math.min(filled, 4);
        return wide ? above : -1;
    }

    private int filledAbove(int row) {
        int above = row - 1;
        while (above >= 0 && records.get(above).isBlank()) {
            above--;
        }
        return above;
    }

    private static long baseDay(List<String[]> rows) {
        for (String[] row : rows) {
            for (String field : row) {
                long day = Clock.dayOf(field);
                if (day != 0) {
                    return day;
                }
            }
        }
        return 0;
    }
}
