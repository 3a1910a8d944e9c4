package fuelwright.safety;

import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;

/**
 * A fuel table whose figures can hardly be what they are taken for: an AFR or a pulse called efficiency would be corrected all the same, and every figure
 * looks at home in its grid. The ranges are common practice, no source.
 */
public final class FuelTableKind implements Rule {

    /** The best-filled cell of an engine's efficiency, %; a charged one reaches the upper end. */
    private static final double LEAST_EFFICIENCY = 40;

    private static final double MOST_EFFICIENCY = 250;

    /** Two turns at 3000 rpm take 40 ms. */
    private static final double MOST_PULSE_MS = 40;

    private static final double LEAST_PULSE_MS = 0.5;
    /** A greater pulse in ms has no engine at full load below 5000 rpm, where efficiency is greater. */
    private static final double PULSE_LIKE = 30;

    private static final double LEAST_MULTIPLIER = 0.2;
    private static final double MOST_MULTIPLIER = 5;
    private static final double TRIM_NOWHERE_BELOW = 40;

    private static final double LEAST_AFR = 9;
    private static final double MOST_AFR = 19.5;
    /** Between the leanest and the richest of a table of mixtures. */
    private static final double MOST_AFR_RATIO = 1.8;

    private static final double LEAST_LAMBDA = 0.6;
    private static final double MOST_LAMBDA = 1.4;
    /** Of the figures at the least load: so much less at the greatest one is a fall. */
    private static final double FALLS = 0.9;

    @Override
    public List<Caution> judge(Dossier d) {
        return doubt(d.fuel).stream()
                .map(doubt -> new Caution(
                        "fuel-table-kind",
                        Caution.Level.CHECK,
                        "Is the fuel table what it is taken for?",
                        "The fuel table " + doubt,
                        "See in the tuning hardware's software what its cells hold; if it is another kind of table, open it anew and say so",
                        new TreeSet<>(),
                        List.of()))
                .toList();
    }

    /** Why a fuel table is hardly what it says, the end of a sentence that begins with the table; empty where nothing speaks against it. */
    public static Optional<String> doubt(Table table) {
        double[] sorted = table.toArray();
        Arrays.sort(sorted);
        double least = sorted[0];
        double most = sorted[sorted.length - 1];
        return why(table, least, most)
                .map(why -> String.format(
                        Locale.ROOT,
                        "is taken as %s%s, and its figures lie from %s to %s: %s",
                        table.quantity().words(),
                        table.quantity().unit().equals("1")
                                ? ""
                                : ", " + table.quantity().unit(),
                        Say.figure(least),
                        Say.figure(most),
                        why));
    }

    private static Optional<String> why(Table table, double least, double most) {
        return switch (table.quantity()) {
            case VOLUMETRIC_EFFICIENCY -> efficiency(table, least, most);
            case INJECTOR_PULSE -> pulse(table, least, most);
            case MULTIPLIER ->
                most < LEAST_MULTIPLIER || least > MOST_MULTIPLIER
                        ? Optional.of("a multiplier lies about 1" + looksLike(least, most))
                        : Optional.empty();
            case FUEL_TRIM ->
                least > TRIM_NOWHERE_BELOW
                        ? Optional.of(
                                "nobody adds so much everywhere. It looks like volumetric efficiency, or like percent of 100")
                        : Optional.empty();
            default -> Optional.empty();
        };
    }

    private static Optional<String> efficiency(Table table, double least, double most) {
        if (most < LEAST_EFFICIENCY) {
            return Optional.of("no engine fills its cylinders so little at full load" + looksLike(least, most));
        }
        if (most > MOST_EFFICIENCY) {
            return Optional.of(
                    "no engine fills its cylinders so much. It looks like another unit, such as thousandths of a millisecond");
        }
        return table.load().kind() == Axis.Kind.THROTTLE && falls(table)
                ? Optional.of("they fall as the throttle opens, which the filling of an engine never does")
                : Optional.empty();
    }

    private static Optional<String> pulse(Table table, double least, double most) {
        if (most > MOST_PULSE_MS) {
            return Optional.of("that is longer than two turns of the engine. It looks like "
                    + (most <= MOST_EFFICIENCY ? "volumetric efficiency, %" : "thousandths of a millisecond"));
        }
        if (most < LEAST_PULSE_MS) {
            return Optional.of("no injector meters such short pulses. It looks like seconds, or a multiplier");
        }
        if (most > least && falls(table)) {
            return Optional.of("they get shorter as load rises" + (isAfr(least, most) ? ". It looks like AFR" : ""));
        }
        return Optional.empty();
    }

    private static String looksLike(double least, double most) {
        if (isAfr(least, most)) {
            return ". It looks like AFR, as of a target table";
        }
        if (least >= LEAST_LAMBDA && most <= MOST_LAMBDA) {
            return ". It looks like lambda, or like a multiplier";
        }
        return least > 0 && most <= PULSE_LIKE ? ". It looks like injector pulses, ms" : "";
    }

    private static boolean isAfr(double least, double most) {
        return least >= LEAST_AFR && most <= MOST_AFR && most <= MOST_AFR_RATIO * least;
    }

    private static boolean falls(Table table) {
        return mean(table, table.load().size() - 1) < FALLS * mean(table, 0);
    }

    private static double mean(Table table, int load) {
        double sum = 0;
        for (int i = 0; i < table.speed().size(); i++) {
            sum += table.at(table.cell(load, i));
        }
        return sum / table.speed().size();
    }
}
