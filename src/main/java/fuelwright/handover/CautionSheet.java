package fuelwright.handover;

import fuelwright.estimate.CellProposal;
import fuelwright.safety.Caution;
import fuelwright.table.Table;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * Cautions as CSV (RFC 4180): one line for each place of each caution, first its moments, then its cells. Text that a spreadsheet would
 * take for a formula gets an apostrophe in front (OWASP, "CSV Injection": fields beginning with {@code = + - @}, tab or carriage return).
 */
final class CautionSheet {

    private static final CSVFormat FORMAT = CSVFormat.RFC4180;

    private CautionSheet() {}

    static String write(Handed handed) {
        Table table = handed.proposal().before();
        String loadUnit = table.load().kind().unit().symbol();
        StringBuilder text = new StringBuilder();
        try (CSVPrinter out = new CSVPrinter(text, FORMAT)) {
            out.printRecord(
                    "level",
                    "rule",
                    "what",
                    "load [" + loadUnit + "]",
                    "engine speed [rpm]",
                    "when",
                    "figures",
                    "what to do");
            for (Caution caution : handed.cautions()) {
                for (String[] place : places(handed, caution)) {
                    out.printRecord(
                            caution.level().words(),
                            harmless(caution.rule()),
                            harmless(caution.title() + ": " + caution.what()),
                            place[0],
                            place[1],
                            harmless(place[2]),
                            harmless(place[3]),
                            harmless(caution.todo()));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static List<String[]> places(Handed handed, Caution caution) {
        List<String[]> places = new ArrayList<>();
        for (Caution.Moment m : caution.moments()) {
            places.add(new String[] {
                number(m.load()),
                number(m.speedRpm()),
                m.rideName() + " at " + fixed(m.startS(), 1) + " s",
                "worst " + number(m.worst()) + " for " + fixed(m.lengthS(), 2) + " s"
            });
        }
        Table table = handed.proposal().before();
        for (int cell : caution.cells()) {
            CellProposal c = handed.proposal().cell(cell);
            places.add(new String[] {
                number(table.loadAt(cell)),
                number(table.speedAt(cell)),
                "",
                "now " + number(c.before()) + "; proposed " + number(c.after()) + "; change "
                        + fixed(c.changePercent(), 1)
                        + " %; uncertainty " + fixed(handed.estimate().uncertaintyPercent(cell), 1) + " %; readings "
                        + fixed(handed.estimate().independentReadings(cell), 1)
            });
        }
        if (places.isEmpty()) {
            places.add(new String[] {"", "", "", ""});
        }
        return places;
    }

    /** Text that no spreadsheet runs. */
    static String harmless(String text) {
        if (text.isEmpty() || "=+-@\t\r\n".indexOf(text.charAt(0)) < 0) {
            return text;
        }
        return "'" + text;
    }

    private static String number(double value) {
        return Double.isFinite(value) ? Figures.trimmed(value, 4).replace('−', '-') : "";
    }

    private static String fixed(double value, int decimals) {
        return Double.isFinite(value) ? String.format(Locale.ROOT, "%." + decimals + "f", value) : "";
    }
}
