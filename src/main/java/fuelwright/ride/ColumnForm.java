package fuelwright.ride;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * How the fields of one column are written.
 *
 * @param kind what they are
 * @param suffix the unit glued to the figures, empty where there is none
 */
record ColumnForm(Kind kind, String suffix) {

    enum Kind {
        NUMBER,
        /** A clock time, with or without a date. */
        CLOCK,
        /** on/off, yes/no. */
        FLAG,
        /** Words: shown as a channel without figures. */
        TEXT
    }

    private static final Set<String> ON = Set.of("on", "true", "yes", "active", "ein");
    private static final Set<String> OFF = Set.of("off", "false", "no", "inactive", "aus");

    static final ColumnForm PLAIN = new ColumnForm(Kind.NUMBER, "");

    /** The form that fits the fields of a column best. */
    static ColumnForm of(List<String> fields, char decimalSign) {
        int numbers = 0;
        int clocks = 0;
        int texts = 0;
        int flags = 0;
        Map<String, Integer> suffixes = new HashMap<>();
        for (String field : fields) {
            switch (Cells.form(field, decimalSign)) {
                case NUMBER -> {
                    numbers++;
                    String suffix = Cells.suffix(field, decimalSign);
                    if (!suffix.isEmpty()) {
                        suffixes.merge(suffix, 1, Integer::sum);
                    }
                }
                case CLOCK -> clocks++;
                case TEXT -> {
                    texts++;
                    flags += Double.isNaN(flag(field)) ? 0 : 1;
                }
                default -> {}
            }
        }
        if (clocks > numbers && clocks >= texts) {
            return new ColumnForm(Kind.CLOCK, "");
        }
        if (numbers == 0 && texts > 0) {
            return new ColumnForm(flags == texts ? Kind.FLAG : Kind.TEXT, "");
        }
        int half = numbers / 2;
        String suffix = suffixes.entrySet().stream()
                .filter(e -> e.getValue() > half)
                .max(Map.Entry.<String, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                .map(Map.Entry::getKey)
                .orElse("");
        return new ColumnForm(Kind.NUMBER, suffix);
    }

    /** 1 for on, 0 for off, NaN for anything else. */
    static double flag(String field) {
        String lower = field.toLowerCase(Locale.ROOT);
        return ON.contains(lower) ? 1 : OFF.contains(lower) ? 0 : Double.NaN;
    }
}
