package fuelwright.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What can happen to a log between the machine and the workshop. Each takes the text of a log and gives it back changed. */
final class LogEdit {

    static final int TIME = 0;
    static final int SPEED = 1;
    static final int THROTTLE = 2;
    static final int MIXTURE = 4;
    static final int PULSE = 5;
    static final int COOLANT = 6;
    static final int INTAKE = 7;

    private LogEdit() {}

    /** A figure and how far the ride has come, 0 to 1. */
    interface Figure {
        double of(double figure, double share);
    }

    static List<String[]> rows(String csv) {
        List<String[]> rows = new ArrayList<>();
        for (String line : csv.split("\n")) {
            rows.add(line.split(","));
        }
        return rows;
    }

    static String text(List<String[]> rows) {
        StringBuilder text = new StringBuilder();
        rows.forEach(r -> text.append(String.join(",", r)).append('\n'));
        return text.toString();
    }

    static UnaryOperator<String> column(int column, Figure figure) {
        return csv -> {
            List<String[]> rows = rows(csv);
            for (int i = 1; i < rows.size(); i++) {
                double now = Double.parseDouble(rows.get(i)[column]);
                rows.get(i)[column] = String.format(Locale.ROOT, "%.5f", figure.of(now, (double) i / rows.size()));
            }
            return text(rows);
        };
    }

    static UnaryOperator<String> hot() {
        UnaryOperator<String> coolant = column(COOLANT, (v, share) -> share > 0.6 ? 116 : v);
        UnaryOperator<String> intake = column(INTAKE, (v, share) -> share > 0.6 ? 68 : v);
        return csv -> intake.apply(coolant.apply(csv));
    }

    static UnaryOperator<String> swapped(int a, int b) {
        return csv -> {
            List<String[]> rows = rows(csv);
            for (int i = 1; i < rows.size(); i++) {
                String kept = rows.get(i)[a];
                rows.get(i)[a] = rows.get(i)[b];
                rows.get(i)[b] = kept;
            }
            return text(rows);
        };
    }

    /** The mixture comes later and later, by so much at the end, s. */
    static UnaryOperator<String> delayed(double endS) {
        return csv -> {
            List<String[]> rows = rows(csv);
            List<String> mixture = rows.stream().map(r -> r[MIXTURE]).toList();
            double step = Double.parseDouble(rows.get(2)[TIME]) - Double.parseDouble(rows.get(1)[TIME]);
            for (int i = 1; i < rows.size(); i++) {
                int back = (int) Math.rint(endS * i / rows.size() / step);
                rows.get(i)[MIXTURE] = mixture.get(Math.max(1, i - back));
            }
            return text(rows);
        };
    }

    static UnaryOperator<String> barometer(double fromKpa, double toKpa) {
        return csv -> {
            String[] lines = csv.split("\n");
            StringBuilder text = new StringBuilder(lines[0]).append(",barometer [kPa]\n");
            for (int i = 1; i < lines.length; i++) {
                double kpa = fromKpa + (toKpa - fromKpa) * i / lines.length;
                text.append(lines[i]).append(String.format(Locale.ROOT, ",%.1f\n", kpa));
            }
            return text.toString();
        };
    }

    static UnaryOperator<String> everyOther(UnaryOperator<String> first, UnaryOperator<String> second) {
        int[] count = {0};
        return csv -> (count[0]++ % 2 == 0 ? first : second).apply(csv);
    }

    static UnaryOperator<String> heading(String from, String to) {
        return csv -> csv.replaceFirst(Pattern.quote(from), Matcher.quoteReplacement(to));
    }

    /** What becomes of a row's fields, with all rows at hand. */
    interface Row {
        void change(List<String[]> rows, int row);
    }

    /** Each row in turn, the heading left as it is. */
    static UnaryOperator<String> rows(Row change) {
        return csv -> {
            List<String[]> rows = rows(csv);
            for (int i = 1; i < rows.size(); i++) {
                change.change(rows, i);
            }
            return text(rows);
        };
    }

    /** A row's figure; NaN where there is none. */
    static double figure(String[] row, int column) {
        return row[column].isEmpty() ? Double.NaN : Double.parseDouble(row[column]);
    }

    static void put(String[] row, int column, double figure) {
        row[column] = String.format(Locale.ROOT, "%.3f", figure);
    }

    /** A column's figure is missing where the condition holds. */
    static UnaryOperator<String> missing(int column, Predicate<String[]> where) {
        return rows((rows, i) -> rows.get(i)[column] = where.test(rows.get(i)) ? "" : rows.get(i)[column]);
    }

    /** Rows that fulfil the condition aren't in the log. */
    static UnaryOperator<String> without(Predicate<String[]> gone) {
        return csv -> {
            List<String[]> rows = rows(csv);
            rows.subList(1, rows.size()).removeIf(gone);
            return text(rows);
        };
    }

    /** From a share of the ride on, fuel goes missing while much is drawn: so much each second, and comes back below it. */
    static UnaryOperator<String> fadingFrom(double share, double speedRpm, double throttle, double perS) {
        double[] missing = {0};
        return rows((rows, i) -> {
            String[] row = rows.get(i);
            double step = i > 1 ? figure(row, TIME) - figure(rows.get(i - 1), TIME) : 0;
            boolean drawn = (double) i / rows.size() > share
                    && figure(row, SPEED) > speedRpm
                    && figure(row, THROTTLE) > throttle;
            missing[0] = Math.max(0, Math.min(0.25, missing[0] + step * (drawn ? perS : -0.4)));
            put(row, MIXTURE, Math.min(1.4, figure(row, MIXTURE) / (1 - missing[0])));
        });
    }

    /** Injectors that end at a speed: what they can't deliver is missing. */
    static UnaryOperator<String> injectorsEndAt(double share) {
        return rows((rows, i) -> {
            String[] row = rows.get(i);
            double most = share * 120_000 / figure(row, SPEED);
            double pulse = figure(row, PULSE);
            if (pulse > most) {
                put(row, PULSE, most);
                put(row, MIXTURE, Math.min(1.4, figure(row, MIXTURE) * pulse / most));
            }
        });
    }

    /** The ignition is cut for a moment at each shift up with the throttle open. */
    static UnaryOperator<String> shiftCuts() {
        double[] until = {-1};
        return rows((rows, i) -> {
            String[] row = rows.get(i);
            if (i > 1 && figure(row, SPEED) < figure(rows.get(i - 1), SPEED) - 300 && figure(row, THROTTLE) > 50) {
                until[0] = figure(row, TIME) + 0.2;
            }
            if (figure(row, TIME) < until[0]) {
                put(row, MIXTURE, 1.2);
            }
        });
    }
}
