package fuelwright.ride;

import fuelwright.unit.Dimension;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Which column is the time: by its name, also a slightly misspelt one, and by values that run forward. Look-alikes (times since codes
 * were cleared, injection times, lap times) are never taken.
 */
final class TimeChoice {

    private static final Pattern LOOK_ALIKE = Pattern.compile(
            " (mil|codes?|cleared|trouble|lap|sector|split|inj\\w*|dwell|pulse|fuel|spark|ignition|lag|delay|service|duration|open\\w*|"
                    + "response|engine off|best|gap|to|advance|timing|filter|ramp|hold|warm|idle) ");
    private static final Pattern EXACT = Pattern.compile(
            " (time|timestamp|time stamp|zeit|uhrzeit|zeitstempel|temps|tiempo|t|elapsed time|elapsed|log time|record time|session time|date time|datetime|"
                    + "time of day|clock|utc|epoch|unix time|seconds|sec|millis|milliseconds|ms|time since engine start|"
                    + "engine run time|run time since engine start|run time|engine running time|time since start|local time|gps time) ");
    private static final Pattern NAMED = Pattern.compile(" (time|timestamp|zeit|elapsed|millis|clock|utc|epoch) ");

    private TimeChoice() {}

    /** The column, or -1 where there is none. Columns of {@code raw} are looked at, not modified. */
    static int choose(Layout layout, RawTable raw, RideOptions options) {
        for (int c = 0; c < layout.columns(); c++) {
            Optional<Role> said = options.roleOf(layout.headings().get(c));
            if (said.isPresent() && said.get() == Role.TIME) {
                return c;
            }
        }
        int best = -1;
        double bestScore = 0;
        for (int c = 0; c < layout.columns(); c++) {
            if (options.roleOf(layout.headings().get(c)).isEmpty()) {
                double score = score(layout, raw, c);
                if (score > bestScore) {
                    best = c;
                    bestScore = score;
                }
            }
        }
        return best;
    }

    /** Whether a heading says time, whatever is below it. */
    static boolean isNamed(Layout layout) {
        return layout.headings().stream().anyMatch(h -> EXACT.matcher(h.words()).matches());
    }

    private static double score(Layout layout, RawTable raw, int column) {
        Heading heading = layout.headings().get(column);
        boolean clock = layout.forms().get(column).kind() == ColumnForm.Kind.CLOCK;
        boolean otherUnit = heading.unit().isPresent() && heading.unit().get().dimension() != Dimension.TIME;
        int name = Math.max(nameScore(heading.words()), nameScore(withoutUnit(heading)));
        if (LOOK_ALIKE.matcher(heading.words()).find() || otherUnit || name == 0 && !clock) {
            return 0;
        }
        double[] values = raw.columns()[column];
        int steps = 0;
        int forward = 0;
        int still = 0;
        double previous = Double.NaN;
        int stride = Math.max(1, raw.rows() / 20_000);
        for (int i = 0; i < raw.rows(); i += stride) {
            double value = values[i];
            if (!Double.isNaN(value)) {
                if (!Double.isNaN(previous)) {
                    steps++;
                    forward += value > previous || clock && previous - value > 43_200 ? 1 : 0;
                    still += value == previous ? 1 : 0;
                }
                previous = value;
            }
        }
        if (steps == 0) {
            return raw.rows() <= 1 ? name + 1 : 0;
        }
        double runs = (double) (forward + still) / steps;
        if (forward == 0 || runs < 0.7) {
            return 0;
        }
        return name + (clock ? 20 : 0) + 20.0 * forward / steps + 10 * runs;
    }

    /** A unit that is joined to the name says no more of it: {@code t_ms} is t. */
    private static String withoutUnit(Heading heading) {
        String unit = Heading.wordsOf(heading.unitText());
        String words = heading.words();
        return unit.length() > 2 && words.endsWith(unit) && words.length() > unit.length()
                ? words.substring(0, words.length() - unit.length()) + " "
                : words;
    }

    private static int nameScore(String words) {
        if (EXACT.matcher(words).matches()) {
            return 100;
        }
        if (NAMED.matcher(words).find()) {
            return 60;
        }
        for (String word : words.strip().split(" ")) {
            if (word.length() >= 3
                    && word.charAt(0) == 't'
                    && !NEAR_WORDS.containsKey(word)
                    && distance(word, "time") == 1) {
                return 40;
            }
        }
        return 0;
    }

    private static final Map<String, Boolean> NEAR_WORDS =
            Map.of("tire", true, "tile", true, "tide", true, "tie", true, "times", true, "tim", true);

    /** Edit distance (insert, delete, replace) of two short words. */
    static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
