package fuelwright.ride;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/**
 * How a log is written.
 *
 * @param charset of the bytes as they are read
 * @param delimiter between fields
 * @param decimalSign of figures
 */
record Dialect(Charset charset, char delimiter, char decimalSign) {

    static final Charset WINDOWS_1252 = Charset.forName("windows-1252");

    private static final Map<Character, String> DELIMITERS =
            Map.of(',', "comma", ';', "semicolon", '\t', "tab", '|', "vertical bar");

    /** The dialect in words, without the encoding. */
    String words() {
        return delimiterWord(delimiter) + ", decimal " + (decimalSign == ',' ? "comma" : "point");
    }

    static String delimiterWord(char delimiter) {
        return DELIMITERS.getOrDefault(delimiter, "'" + delimiter + "'");
    }

    static String charsetWord(Charset charset) {
        if (charset.equals(WINDOWS_1252)) {
            return "Windows-1252";
        }
        return charset.equals(StandardCharsets.UTF_8) ? "UTF-8" : charset.name();
    }
}
