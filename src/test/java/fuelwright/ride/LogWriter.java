package fuelwright.ride;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Random logs of known figures in a chosen dialect with chosen traps. The figures are decimal texts; what they mean is parseDouble. */
final class LogWriter {

    enum Encoding {
        UTF_8,
        UTF_8_MARK,
        UTF_16LE,
        UTF_16BE,
        UTF_16LE_BARE,
        WINDOWS_1252
    }

    enum Trap {
        NONE,
        PREAMBLE,
        COMMENT,
        UNITS_ROW,
        GLUED,
        EMPTY_BRACKETS,
        RAW_FRAME,
        REPEATED_HEADING,
        CUT_LAST_LINE,
        TRAILING_DELIMITER,
        NUL,
        TEXT_CELL,
        BLANK_LINES,
        TOO_MANY_FIELDS,
        OPEN_QUOTE
    }

    static final String[] NAMES = {"time", "engine speed", "throttle", "manifold pressure", "lambda", "coolant"};
    static final String[] UNITS = {"s", "rpm", "%", "kPa", "λ", "°C"};

    final char delimiter;
    final char sign;
    final Encoding encoding;
    final boolean quoted;
    final String lineEnd;
    final Trap trap;
    final List<String[]> rows = new ArrayList<>();
    int bad;

    LogWriter(char delimiter, char sign, Encoding encoding, boolean quoted, String lineEnd, Trap trap, Random random) {
        this.delimiter = delimiter;
        this.sign = sign;
        this.encoding = encoding;
        this.quoted = quoted;
        this.lineEnd = lineEnd;
        this.trap = trap;
        double time = random.nextInt(100);
        for (int i = 0; i < 25; i++) {
            time += 0.01 + random.nextInt(90) / 1000.0;
            rows.add(new String[] {
                String.format(java.util.Locale.ROOT, "%.3f", time),
                figure(random, 900, 8000),
                i == 0 ? "0" : i == 1 ? "100" : figure(random, 0, 100),
                figure(random, 25, 102),
                figure(random, 0.7, 1.3),
                figure(random, 60, 95)
            });
        }
    }

    /** A figure with anything from no to seventeen decimals, and odd but right spellings. */
    private static String figure(Random random, double low, double high) {
        double value = low + (high - low) * random.nextDouble();
        switch (random.nextInt(8)) {
            case 0:
                return Double.toString(value);
            case 1:
                return new java.math.BigDecimal(value)
                        .setScale(17, java.math.RoundingMode.HALF_EVEN)
                        .toPlainString();
            case 2:
                return String.format(java.util.Locale.ROOT, "%.3e", value);
            case 3:
                return "+" + String.format(java.util.Locale.ROOT, "%08.3f", value);
            default:
                return String.format(java.util.Locale.ROOT, "%." + random.nextInt(7) + "f", value);
        }
    }

    private String field(String text) {
        return quoted ? '"' + text + '"' : text;
    }

    private String line(String[] fields) {
        StringBuilder line = new StringBuilder();
        for (int c = 0; c < fields.length; c++) {
            line.append(c == 0 ? "" : String.valueOf(delimiter)).append(field(fields[c]));
        }
        return line + (trap == Trap.TRAILING_DELIMITER ? String.valueOf(delimiter) : "") + lineEnd;
    }

    private String heading() {
        String[] names = NAMES.clone();
        for (int c = 0; c < names.length; c++) {
            if (trap == Trap.EMPTY_BRACKETS) {
                names[c] += " ()";
            } else if (trap != Trap.UNITS_ROW && trap != Trap.GLUED) {
                names[c] += " [" + unit(c) + "]";
            }
        }
        return line(names)
                + (trap == Trap.UNITS_ROW
                        ? line(new String[] {unit(0), unit(1), unit(2), unit(3), unit(4), unit(5)})
                        : "");
    }

    private String unit(int c) {
        return encoding == Encoding.WINDOWS_1252 && c == 4 ? "lambda" : UNITS[c];
    }

    byte[] bytes() {
        StringBuilder text = new StringBuilder();
        text.append(trap == Trap.PREAMBLE ? "A logger" + lineEnd + "serial: 17" + lineEnd + lineEnd : "")
                .append(heading());
        for (int i = 0; i < rows.size(); i++) {
            String[] fields = rows.get(i).clone();
            for (int c = 0; c < fields.length; c++) {
                fields[c] = fields[c].replace('.', sign) + (trap == Trap.GLUED ? unit(c) : "");
            }
            if (i == 5) {
                trap(text);
            }
            text.append(line(fields)).append(trap == Trap.BLANK_LINES ? lineEnd : "");
        }
        if (trap == Trap.CUT_LAST_LINE) {
            text.append("999").append(delimiter).append("45");
            bad++;
        }
        return encode(text.toString());
    }

    private void trap(StringBuilder text) {
        String good = line(new String[] {"1", "2", "3", "4", "5", "6"});
        switch (trap) {
            case COMMENT ->
                text.append("# a comment ").append(delimiter).append(" 12").append(lineEnd);
            case RAW_FRAME -> text.append("7E8 04 41 0C 1A F8").append(lineEnd);
            case REPEATED_HEADING -> text.append(heading());
            case NUL -> text.append(good.replace('3', '\0'));
            case TEXT_CELL ->
                text.append(good.replace("2", "ERR")
                        .replace("3", "ERR")
                        .replace("4", "ERR")
                        .replace("5", "ERR"));
            case TOO_MANY_FIELDS -> text.append(good.replace(lineEnd, delimiter + "7" + lineEnd));
            case OPEN_QUOTE ->
                text.append("1")
                        .append(delimiter)
                        .append("\"2")
                        .append(delimiter)
                        .append("3")
                        .append(lineEnd);
            default -> {
                return;
            }
        }
        bad += trap == Trap.COMMENT || trap == Trap.REPEATED_HEADING ? 0 : 1;
    }

    private byte[] encode(String text) {
        return switch (encoding) {
            case UTF_8 -> text.getBytes(StandardCharsets.UTF_8);
            case UTF_8_MARK -> ("\uFEFF" + text).getBytes(StandardCharsets.UTF_8);
            case UTF_16LE -> ("\uFEFF" + text).getBytes(StandardCharsets.UTF_16LE);
            case UTF_16BE -> ("\uFEFF" + text).getBytes(StandardCharsets.UTF_16BE);
            case UTF_16LE_BARE -> text.getBytes(StandardCharsets.UTF_16LE);
            case WINDOWS_1252 -> text.getBytes(Charset.forName("windows-1252"));
        };
    }
}
