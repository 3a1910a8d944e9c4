package fuelwright.handover;

import fuelwright.estimate.CellProposal;
import fuelwright.job.Answer;
import fuelwright.safety.Caution;
import fuelwright.table.Table;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * Cautions as CSV (RFC 4180). The first line of a caution says it in full, at its worst place and with the count of all; a short line for
 * each further place follows, first its moments, then its cells. Text that a spreadsheet would
 * take for a formula gets an apostrophe in front (OWASP, "CSV Injection": fields beginning with {@code = + - @}, tab or carriage return).
 */
final class CautionSheet {

    private static final CSVFormat FORMAT = CSVFormat.RFC4180;

    /** The rule that is about the target, not about the fuel. */
    private static final String OF_TARGET = "target-lean";

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
                    "what to do",
                    "answer",
                    "note");
            for (Caution caution : handed.cautions()) {
                boolean first = true;
                Optional<Answer> answer = handed.job().answers().stream()
                        .filter(a -> a.isFor(caution))
                        .reduce((a, b) -> b);
                for (String[] place : places(handed, caution)) {
                    out.printRecord(
                            caution.level().words(),
                            harmless(caution.rule()),
                            harmless(first ? caution.title() + ": " + caution.what() : caution.title()),
                            place[0],
                            place[1],
                            harmless(place[2]),
                            harmless(place[3]),
                            first ? harmless(caution.todo()) : "",
                            first ? answer.map(a -> a.words(caution)).orElse("") : "",
                            first ? answer.map(a -> harmless(a.note())).orElse("") : "");
                    first = false;
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /** The worst place first, with how many there are. */
    private static List<String[]> places(Handed handed, Caution caution) {
        List<String[]> places = new ArrayList<>();
        for (Caution.Moment m : caution.moments()) {
            places.add(new String[] {
                number(m.load()),
                number(m.speedRpm()),
                m.rideName() + " at " + Figures.moment(m.startS()),
                m.worstWords() + " for " + fixed(m.lengthS(), 2) + " s"
            });
        }
        Table table = handed.proposal().before();
        List<Integer> cells = new ArrayList<>(caution.cells());
        cells.sort(Comparator.comparingDouble(
                (Integer c) -> caution.rule().equals(OF_TARGET) ? -targetLambda(handed, c) : -weight(handed, c)));
        for (int cell : cells) {
            places.add(new String[] {
                number(table.loadAt(cell)),
                number(table.speedAt(cell)),
                "",
                caution.rule().equals(OF_TARGET) ? target(handed, cell) : fuel(handed, cell)
            });
        }
        if (places.isEmpty()) {
            places.add(new String[] {"", "", "", ""});
        } else if (places.size() > 1) {
            places.get(0)[3] = "worst of " + count(caution) + ": " + places.get(0)[3];
        }
        return places;
    }

    private static String fuel(Handed handed, int cell) {
        CellProposal c = handed.proposal().cell(cell);
        return "now " + number(c.before()) + "; proposed " + number(c.after()) + "; change "
                + fixed(c.changePercent(), 1)
                + " %; uncertainty " + fixed(handed.estimate().uncertaintyPercent(cell), 1) + " %; readings "
                + CellLook.readings(handed.estimate().independentReadings(cell));
    }

    private static String target(Handed handed, int cell) {
        double lambda = targetLambda(handed, cell);
        return Double.isFinite(lambda) ? "target lambda " + fixed(lambda, 3) : "";
    }

    private static double targetLambda(Handed handed, int cell) {
        Table table = handed.proposal().before();
        return handed.job()
                .targetLambda()
                .filter(t -> t.load().kind() == table.load().kind())
                .map(t -> t.value(table.speedAt(cell), table.loadAt(cell)))
                .orElse(Double.NaN);
    }

    private static String count(Caution caution) {
        int moments = caution.moments().size();
        int cells = caution.cells().size();
        String times = moments == 0 ? "" : moments == 1 ? "1 moment" : moments + " moments";
        String places = cells == 0 ? "" : cells == 1 ? "1 cell" : cells + " cells";
        return times + (moments > 0 && cells > 0 ? " in " : "") + places;
    }

    /** Among a caution's cells the worst is the one that needs the largest change; among those that need none, the least certain. */
    private static double weight(Handed handed, int cell) {
        double needed = Math.abs(Math.log(handed.proposal().cell(cell).neededFactor()));
        return needed + 1e-3 * handed.estimate().uncertaintyPercent(cell);
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
