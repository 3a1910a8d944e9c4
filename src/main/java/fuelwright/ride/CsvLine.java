package fuelwright.ride;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** One line of a delimited file into fields, without the spaces around them. */
final class CsvLine {

    private CsvLine() {}

    /** Fields by Commons CSV (RFC 4180 quotes); null where a quote isn't closed or is followed by something. */
    static String[] byReference(String line, char delimiter) {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(delimiter)
                .setIgnoreSurroundingSpaces(delimiter != ' ')
                .setIgnoreEmptyLines(false)
                .get();
        try (CSVParser parser = CSVParser.parse(line, format)) {
            List<CSVRecord> records = parser.getRecords();
            if (records.isEmpty()) {
                return new String[] {""};
            }
            String[] fields = records.get(0).values();
            for (int i = 0; i < fields.length; i++) {
                fields[i] = fields[i].strip();
            }
            return records.size() == 1 ? fields : null;
        } catch (IOException | UncheckedIOException | IllegalStateException e) {
            return null;
        }
    }

    /** The same fields, without a parser where the line has no quotes. */
    static String[] split(String line, char delimiter) {
        if (line.indexOf('"') >= 0) {
            return byReference(line, delimiter);
        }
        List<String> fields = new ArrayList<>();
        int from = 0;
        for (int at = line.indexOf(delimiter); at >= 0; at = line.indexOf(delimiter, from)) {
            fields.add(line.substring(from, at).strip());
            from = at + 1;
        }
        fields.add(line.substring(from).strip());
        return fields.toArray(String[]::new);
    }
}
