package fuelwright.ride;

import fuelwright.ride.RowLog.Skip;
import java.util.List;

/**
 * One line into one row, slowly and with an answer for everything. The fast reader hands over every line that isn't plain figures, so
 * that both ways decide alike.
 */
final class RowReader {

    private static final int LONGEST_LINE = 65_536;

    private final Layout layout;
    private final RowLog log;
    private final boolean alwaysReference;
    private boolean restart;

    /** @param alwaysReference whether lines without quotes go through Commons CSV too */
    RowReader(Layout layout, RowLog log, boolean alwaysReference) {
        this.layout = layout;
        this.log = log;
        this.alwaysReference = alwaysReference;
    }

    /**
     * Reads a line into {@code row}.
     *
     * @param ended whether the line has a line end; a short last line without one was cut
     * @param row Modified
     * @return whether it is a row; if not, why not is in the log
     */
    boolean read(String line, int lineNumber, boolean ended, double[] row) {
        Skip why = judge(line, lineNumber, ended, row);
        if (why != null) {
            log.skip(why, lineNumber);
        }
        return why == null;
    }

    /** Whether a repeated heading was seen since the last call. */
    boolean takeRestart() {
        boolean was = restart;
        restart = false;
        return was;
    }

    private Skip judge(String line, int lineNumber, boolean ended, double[] row) {
        if (line.length() > LONGEST_LINE) {
            return Skip.TOO_LONG;
        }
        if (line.indexOf('\0') >= 0) {
            return Skip.NUL;
        }
        if (line.indexOf('\r') >= 0) {
            return Skip.STRAY_RETURN;
        }
        String stripped = line.strip();
        if (stripped.isEmpty()) {
            return Skip.BLANK;
        }
        char delimiter = layout.dialect().delimiter();
        if (stripped.startsWith("#") || stripped.startsWith("//") || stripped.startsWith("\"#")) {
            return lineNumber > layout.dataLine() && isAsWideAsRows(line, delimiter) ? Skip.NOT_FIGURES : Skip.COMMENT;
        }
        String[] fields = alwaysReference ? CsvLine.byReference(line, delimiter) : CsvLine.split(line, delimiter);
        if (fields == null) {
            return Skip.QUOTE;
        }
        int filled = fields.length;
        while (filled > 0 && fields[filled - 1].isEmpty()) {
            filled--;
        }
        if (filled == 0) {
            return Skip.BLANK;
        }
        if (repeats(fields, layout.headingFields())) {
            restart = true;
            return Skip.HEADING;
        }
        if (!layout.unitFields().isEmpty() && repeats(fields, layout.unitFields())) {
            return Skip.HEADING;
        }
        return figures(fields, filled, lineNumber, ended, row);
    }

    /** A comment among rows hardly has as many fields as they have: that is a row with an error for its first figure. */
    private boolean isAsWideAsRows(String line, char delimiter) {
        String[] fields = CsvLine.split(line, delimiter);
        return fields != null && fields.length > 1 && fields.length >= layout.usualWidth();
    }

    private Skip figures(String[] fields, int filled, int lineNumber, boolean ended, double[] row) {
        int readable = 0;
        int unreadable = 0;
        for (int c = 0; c < layout.columns(); c++) {
            String field = c < fields.length ? fields[c] : "";
            row[c] = cell(c, field);
            boolean missing = Cells.isMissing(field);
            boolean text = layout.forms().get(c).kind() == ColumnForm.Kind.TEXT;
            readable += Double.isNaN(row[c]) ? 0 : 1;
            unreadable += Double.isNaN(row[c]) && !missing && !text ? 1 : 0;
        }
        if (readable == 0 || unreadable > readable) {
            return Skip.NOT_FIGURES;
        }
        if (filled > layout.columns()) {
            return Skip.TOO_MANY;
        }
        if (fields.length < layout.usualWidth() && !(layout.shortRowsUsual() && ended)) {
            return Skip.CUT;
        }
        for (int c = 0; unreadable > 0 && c < layout.columns(); c++) {
            String field = c < fields.length ? fields[c] : "";
            if (Double.isNaN(row[c])
                    && !Cells.isMissing(field)
                    && layout.forms().get(c).kind() != ColumnForm.Kind.TEXT) {
                log.unreadable(c, lineNumber, field);
            }
        }
        return null;
    }

    /** The figure in a field, NaN where it is missing or can't be read. */
    double cell(int column, String field) {
        ColumnForm form = layout.forms().get(column);
        char sign = layout.dialect().decimalSign();
        switch (form.kind()) {
            case CLOCK:
                return Clock.seconds(field, layout.baseDay());
            case TEXT:
                return Double.NaN;
            case FLAG:
                return Cells.isNumber(field, sign) ? Cells.number(field, sign) : ColumnForm.flag(field);
            default:
                if (Cells.isNumber(field, sign)) {
                    return Cells.number(field, sign);
                }
                if (!form.suffix().isEmpty() && field.endsWith(form.suffix())) {
                    String bare = field.substring(
                                    0, field.length() - form.suffix().length())
                            .strip();
                    return Cells.isNumber(bare, sign) ? Cells.number(bare, sign) : Double.NaN;
                }
                return Double.NaN;
        }
    }

    private static boolean repeats(String[] fields, List<String> headings) {
        int same = 0;
        int named = 0;
        for (int i = 0; i < headings.size(); i++) {
            String heading = headings.get(i);
            if (!heading.isEmpty()) {
                named++;
                same += i < fields.length && fields[i].equalsIgnoreCase(heading) ? 1 : 0;
            }
        }
        return same >= 2 && same * 5 >= named * 3;
    }
}
