package fuelwright.ride;

import java.nio.charset.Charset;
import java.util.List;

/**
 * How a log is written, and what of it is no row.
 *
 * @param delimiter between fields
 * @param decimalSign of figures
 * @param charset of its bytes
 * @param charsetWords the encoding in words
 * @param headings as the file has them, the time column included
 * @param timeHeading the column that is the time; empty where rows are counted by a rate
 * @param leftOut lines that aren't rows, by reason
 */
public record LogForm(
        char delimiter,
        char decimalSign,
        Charset charset,
        String charsetWords,
        List<String> headings,
        String timeHeading,
        List<LeftOut> leftOut) {

    /**
     * Lines that aren't rows, for one reason.
     *
     * @param what what they are, in words
     * @param count how many
     * @param firstLines numbers of the first few hundred, from 1
     * @param bad whether they should have been rows
     */
    public record LeftOut(String what, long count, List<Integer> firstLines, boolean bad) {
        public LeftOut {
            firstLines = List.copyOf(firstLines);
        }
    }

    public LogForm {
        headings = List.copyOf(headings);
        leftOut = List.copyOf(leftOut);
    }

    /** What stands between fields, in words. */
    public static String delimiterWords(char delimiter) {
        return Dialect.delimiterWord(delimiter);
    }

    /** An encoding in words. */
    public static String charsetWords(Charset charset) {
        return Dialect.charsetWord(charset);
    }
}
