package fuelwright.cli;

import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.UnsupportedCharsetException;
import java.util.Locale;

/** How a log is written, as options say it: by a word, or by the sign itself. */
final class DialectWords {

    private DialectWords() {}

    static char delimiter(String text) {
        switch (text.toLowerCase(Locale.ROOT)) {
            case "comma":
            case ",":
                return ',';
            case "semicolon":
            case ";":
                return ';';
            case "tab":
            case "\t":
                return '\t';
            case "bar":
            case "|":
                return '|';
            default:
                throw CommandFailed.usage("--delimiter '" + text + "' must be comma, semicolon, tab or bar");
        }
    }

    static char decimalSign(String text) {
        switch (text.toLowerCase(Locale.ROOT)) {
            case "point":
            case ".":
                return '.';
            case "comma":
            case ",":
                return ',';
            default:
                throw CommandFailed.usage("--decimal '" + text + "' must be point or comma");
        }
    }

    static Charset encoding(String name) {
        try {
            return Charset.forName(name);
        } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
            throw CommandFailed.usage(
                    "--encoding '" + name + "' isn't known; for instance UTF-8, UTF-16LE or windows-1252");
        }
    }
}
