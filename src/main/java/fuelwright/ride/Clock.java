package fuelwright.ride;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Clock times and dates with clock times: {@code h:mm:ss.fff}, {@code m:ss.f}, ISO 8601 with and without zone, and the usual
 * {@code day.month.year h:mm:ss} and {@code month/day/year h:mm:ss PM}.
 */
final class Clock {

    private static final Pattern FORM =
            Pattern.compile("(?:(\\d{4})-(\\d\\d)-(\\d\\d)[T ]\\s*|(\\d{1,2})([./])(\\d{1,2})[./](\\d{4})[ T]\\s*)?"
                    + "(?:(\\d{1,3}):)?(\\d{1,2}):(\\d\\d)(?:[.,](\\d{1,9}))?\\s*([AaPp][Mm])?"
                    + "(Z|[+-]\\d\\d:?(?:\\d\\d)?)?");

    private Clock() {}

    static boolean looksLike(String field) {
        return field.length() >= 4
                && field.length() <= 40
                && field.indexOf(':') > 0
                && FORM.matcher(field).matches();
    }

    /**
     * Seconds since midnight of day {@code baseDay} (days since 1970-01-01), or since midnight where there is no date; the decimal
     * number correctly rounded. NaN where {@code field} isn't such a time.
     */
    static double seconds(String field, long baseDay) {
        Matcher m = FORM.matcher(field);
        if (field.length() > 40 || !m.matches()) {
            return Double.NaN;
        }
        long hours = m.group(8) == null ? 0 : Long.parseLong(m.group(8));
        long minutes = Long.parseLong(m.group(9));
        long seconds = Long.parseLong(m.group(10));
        boolean dated = m.group(1) != null || m.group(4) != null;
        if (minutes > 59 && m.group(8) != null || seconds > 60 || dated && hours > 24) {
            return Double.NaN;
        }
        if (m.group(12) != null) {
            hours = hours % 12 + (Character.toLowerCase(m.group(12).charAt(0)) == 'p' ? 12 : 0);
        }
        long total = hours * 3600 + minutes * 60 + seconds - zoneS(m.group(13));
        if (dated) {
            try {
                total += (day(m) - baseDay) * 86400;
            } catch (DateTimeException e) {
                return Double.NaN;
            }
        }
        BigDecimal exact = BigDecimal.valueOf(total);
        if (m.group(11) != null) {
            exact = exact.add(new BigDecimal("0." + m.group(11)));
        }
        return exact.doubleValue();
    }

    /** The day (since 1970-01-01) of a dated time, 0 where it has no date. */
    static long dayOf(String field) {
        if (field.indexOf(':') <= 0) {
            return 0;
        }
        Matcher m = FORM.matcher(field);
        if (field.length() > 40 || !m.matches() || m.group(1) == null && m.group(4) == null) {
            return 0;
        }
        try {
            return day(m);
        } catch (DateTimeException e) {
            return 0;
        }
    }

    private static long day(Matcher m) {
        if (m.group(1) != null) {
            return LocalDate.of(integer(m, 1), integer(m, 2), integer(m, 3)).toEpochDay();
        }
        int first = integer(m, 4);
        int second = integer(m, 6);
        boolean monthFirst = m.group(5).equals("/") && first <= 12;
        return LocalDate.of(integer(m, 7), monthFirst ? first : second, monthFirst ? second : first)
                .toEpochDay();
    }

    private static int integer(Matcher m, int group) {
        return Integer.parseInt(m.group(group));
    }

    private static long zoneS(String zone) {
        if (zone == null || zone.equals("Z")) {
            return 0;
        }
        String digits = zone.substring(1).replace(":", "");
        long hours = Long.parseLong(digits.substring(0, 2));
        long minutes = digits.length() > 2 ? Long.parseLong(digits.substring(2)) : 0;
        return (zone.charAt(0) == '-' ? -1 : 1) * (hours * 3600 + minutes * 60);
    }
}
