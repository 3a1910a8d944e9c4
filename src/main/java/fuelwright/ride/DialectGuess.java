package fuelwright.ride;

import java.nio.charset.Charset;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The delimiter and decimal sign under which the most fields of a sample are figures, times or empty. A field with figures
 * in it that is none counts against, twice, so that a decimal comma isn't taken for a delimiter.
 */
final class DialectGuess {

    private static final char[] DELIMITERS = {',', ';', '\t', '|'};
    private static final char[] SIGNS = {'.', ','};

    private DialectGuess() {}

    /** The dialect, or empty where no delimiter gives a table of figures. */
    static Optional<Dialect> of(Sample sample, Charset charset, RideOptions options) {
        Dialect best = null;
        long bestScore = 0;
        for (char delimiter : DELIMITERS) {
            for (char sign : SIGNS) {
                char chosenDelimiter = options.delimiter().orElse(delimiter);
                char chosenSign = options.decimalSign().orElse(sign);
                Dialect dialect = new Dialect(charset, chosenDelimiter, chosenSign);
                long score = Stream.of(sample.head(), sample.later())
                        .flatMap(List::stream)
                        .mapToLong(line -> score(line, dialect))
                        .sum();
                if (score > bestScore) {
                    bestScore = score;
                    best = dialect;
                }
            }
        }
        return Optional.ofNullable(best);
    }

    private static long score(String line, Dialect dialect) {
        if (line.indexOf(dialect.delimiter()) < 0) {
            return 0;
        }
        String[] fields = CsvLine.split(line, dialect.delimiter());
        if (fields == null) {
            return 0;
        }
        long score = 0;
        for (String field : fields) {
            switch (Cells.form(field, dialect.decimalSign())) {
                case NUMBER, CLOCK -> score++;
                case TEXT -> score -= Cells.hasDigit(field) ? 2 : 0;
                default -> {}
            }
        }
        return Math.max(0, score);
    }
}
