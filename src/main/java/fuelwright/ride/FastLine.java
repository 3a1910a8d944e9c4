package fuelwright.ride;

import java.nio.charset.Charset;

/**
 * Lines of plain figures straight from bytes into columns. A decimal number of at most 2^53 and at most 22 decimals is one exact
 * division by a power of ten, so it is the very double that {@link Double#parseDouble} gives (Clinger, "How to read floating point
 * numbers accurately", 1990, from memory); anything else in a field goes to the slow reader. For one thread.
 */
final class FastLine {

    /** What a line was. */
    enum Outcome {
        ROW,
        /** Not plain: the slow reader has to judge it. */
        ODD
    }

    private static final double[] POWERS = new double[23];

    static {
        double power = 1;
        for (int i = 0; i < POWERS.length; i++) {
            POWERS[i] = power;
            power *= 10;
        }
    }

    private static final long EXACT = 1L << 53;
    private static final int DIGITS = 18;

    private final RowReader slow;
    private final byte delimiter;
    private final byte sign;
    private final int usualWidth;
    private final Charset charset;
    private final ColumnForm.Kind[] kinds;
    private final byte[][] suffixes;
    private int end;
    private double value;

    FastLine(Layout layout, RowReader slow) {
        this.slow = slow;
        delimiter = (byte) layout.dialect().delimiter();
        sign = (byte) layout.dialect().decimalSign();
        usualWidth = layout.usualWidth();
        charset = layout.dialect().charset();
        kinds = new ColumnForm.Kind[layout.columns()];
        suffixes = new byte[layout.columns()][];
        for (int c = 0; c < kinds.length; c++) {
            kinds[c] = layout.forms().get(c).kind();
            suffixes[c] = layout.forms().get(c).suffix().getBytes(charset);
        }
    }

    /** Whether this way can be taken at all. */
    static boolean canRead(Layout layout) {
        char d = layout.dialect().delimiter();
        return d == ',' || d == ';' || d == '\t' || d == '|' || d == ':' || d == '&' || d == '~';
    }

    /** Where the line that was read last ends (its line feed); only after {@link Outcome#ROW}. */
    int end() {
        return end;
    }

    /**
     * Reads one line that starts at {@code from} into row {@code row} of {@code columns}.
     *
     * @param b a line feed must follow somewhere
     * @param columns Modified, at {@code row} only
     */
    Outcome read(byte[] b, int from, double[][] columns, int row) {
        int p = from;
        int readable = 0;
        int last = kinds.length - 1;
        if (kinds[0] == ColumnForm.Kind.TEXT && isComment(b, from)) {
            return Outcome.ODD;
        }
        for (int c = 0; ; c++) {
            int next = kinds[c] == ColumnForm.Kind.NUMBER ? number(b, p, c) : other(b, p, c);
            if (next < 0) {
                return Outcome.ODD;
            }
            columns[c][row] = value;
            readable += value == value ? 1 : 0;
            p = next;
            if (b[p] != delimiter) {
                return finish(p, c, last, readable, columns, row);
            }
            p++;
            if (c == last) {
                return trailing(b, p, c + 1, readable);
            }
        }
    }

    private static boolean isComment(byte[] b, int from) {
        int p = from;
        while (b[p] == ' ' || b[p] == '\t') {
            p++;
        }
        return b[p] == '#' || b[p] == '/';
    }

    private Outcome finish(int p, int c, int last, int readable, double[][] columns, int row) {
        if (c + 1 < usualWidth || readable == 0) {
            return Outcome.ODD;
        }
        for (int rest = c + 1; rest <= last; rest++) {
            columns[rest][row] = Double.NaN;
        }
        end = p;
        return Outcome.ROW;
    }

    /** Empty fields after the last column. */
    private Outcome trailing(byte[] b, int from, int fields, int readable) {
        int p = from;
        int count = fields + 1;
        while (b[p] == delimiter || b[p] == ' ') {
            count += b[p] == delimiter ? 1 : 0;
            p++;
        }
        p = overReturns(b, p);
        if (b[p] != '\n' || count < usualWidth || readable == 0) {
            return Outcome.ODD;
        }
        end = p;
        return Outcome.ROW;
    }

    /** Reads a figure; returns where the field ends (delimiter or line feed), or -1. */
    private int number(byte[] b, int from, int column) {
        int p = from;
        while (b[p] == ' ') {
            p++;
        }
        boolean negative = b[p] == '-';
        if (negative || b[p] == '+') {
            p++;
        }
        int start = p;
        long whole = 0;
        int digit = b[p] - '0';
        while (digit >= 0 && digit <= 9) {
            whole = whole * 10 + digit;
            digit = b[++p] - '0';
        }
        int digits = p - start;
        int decimals = 0;
        if (b[p] == sign && sign != delimiter) {
            int point = ++p;
            digit = b[p] - '0';
            while (digit >= 0 && digit <= 9) {
                whole = whole * 10 + digit;
                digit = b[++p] - '0';
            }
            decimals = p - point;
            digits += decimals;
        }
        if (digits == 0 || digits > DIGITS || whole > EXACT) {
            return slowly(b, from, column);
        }
        double magnitude = decimals == 0 ? whole : whole / POWERS[decimals];
        value = negative ? -magnitude : magnitude;
        byte after = b[p];
        if (after == delimiter || after == '\n') {
            return p;
        }
        byte[] suffix = suffixes[column];
        int q = p;
        while (suffix.length > 0 && b[q] == ' ') {
            q++;
        }
        if (suffix.length > 0 && matches(b, q, suffix)) {
            p = q + suffix.length;
        }
        while (b[p] == ' ') {
            p++;
        }
        p = overReturns(b, p);
        return b[p] == delimiter || b[p] == '\n' ? p : slowly(b, from, column);
    }

    /** Over the carriage returns of a line end; any other one makes the line odd. */
    private static int overReturns(byte[] b, int from) {
        int p = from;
        while (b[p] == '\r') {
            p++;
        }
        return b[p] == '\n' ? p : from;
    }

    private static boolean matches(byte[] b, int from, byte[] suffix) {
        for (int i = 0; i < suffix.length; i++) {
            if (b[from + i] != suffix[i]) {
                return false;
            }
        }
        return true;
    }

    private int other(byte[] b, int from, int column) {
        if (kinds[column] == ColumnForm.Kind.CLOCK) {
            int p = clock(b, from);
            if (p >= 0) {
                return p;
            }
        }
        return slowly(b, from, column);
    }

    /** {@code h:mm:ss.fff} without anything around it. */
    private int clock(byte[] b, int from) {
        int p = from;
        long hours = 0;
        while (b[p] >= '0' && b[p] <= '9' && p - from < 3) {
            hours = hours * 10 + b[p++] - '0';
        }
        boolean form = p > from
                && b[p] == ':'
                && isDigit(b[p + 1])
                && isDigit(b[p + 2])
                && b[p + 3] == ':'
                && isDigit(b[p + 4])
                && isDigit(b[p + 5]);
        if (!form) {
            return -1;
        }
        long minutes = (b[p + 1] - '0') * 10 + b[p + 2] - '0';
        long seconds = (b[p + 4] - '0') * 10 + b[p + 5] - '0';
        if (minutes > 59 || seconds > 60) {
            return -1;
        }
        long whole = hours * 3600 + minutes * 60 + seconds;
        p += 6;
        int decimals = 0;
        if (b[p] == '.' || b[p] == ',' && delimiter != ',') {
            int point = ++p;
            while (isDigit(b[p]) && p - point < 10) {
                whole = whole * 10 + b[p++] - '0';
            }
            decimals = p - point;
            if (decimals == 0 || decimals > 9) {
                return -1;
            }
        }
        if (whole > EXACT) {
            return -1;
        }
        value = whole / POWERS[decimals];
        return b[p] == delimiter || b[p] == '\n' ? p : -1;
    }

    private static boolean isDigit(byte b) {
        return b >= '0' && b <= '9';
    }

    /** One field as text; -1 where the whole line has to be judged. */
    private int slowly(byte[] b, int from, int column) {
        int p = from;
        while (b[p] != delimiter && b[p] != '\n') {
            if (b[p] == '"' || b[p] == 0 || b[p] == '\r' && b[overReturns(b, p)] != '\n') {
                return -1;
            }
            p++;
        }
        if (kinds[column] == ColumnForm.Kind.TEXT) {
            value = Double.NaN;
            return p;
        }
        String field = new String(b, from, p - from, charset).strip();
        value = slow.cell(column, field);
        return value == value || Cells.isMissing(field) ? p : -1;
    }
}
