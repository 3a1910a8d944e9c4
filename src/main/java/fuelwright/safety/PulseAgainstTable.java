package fuelwright.safety;

import fuelwright.ride.Role;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/**
 * Whether a ride's injector pulse goes with the table that it is said to have been made with. Of settled, warm moments the medians in each cell are
 * compared with the table,
 *
 * <pre>pulse = dead time + k · table · (1 / target)^q · pressure^p</pre>
 *
 * where k is free, the dead time is free unless it is known, and q and p are 0 or 1, whatever fits best: how a unit gets from its table to a pulse isn't
 * known here. What is left over tells nothing of a table that is wrong by one factor, but a region that stands out from the rest was fuelled by something
 * else than this table. Trims that were logged are undone.
 */
final class PulseAgainstTable implements Rule {

    private static final int LEAST_ROWS = 15;
    /** Of a long ride so many rows, spread evenly, are looked at. */
    private static final int MOST_ROWS = 300_000;

    private static final int LEAST_CELLS = 12;
    private static final double SETTLED_S = 0.6;
    private static final double SETTLED_PERCENT = 2;
    private static final double SETTLED_KPA = 4;

    private static final double APART_LOG = 0.05;
    /** What a logger's last digit may make of a short pulse, ms. */
    private static final double APART_MS = 0.06;

    private static final int LEAST_APART = 4;
    private static final double APART_SHARE = 0.12;
    /** Half of the cells have to agree so well, or the pulse comes about in a way that isn't known here. */
    private static final double AGREEING_LOG = 0.025;

    private static final double LEAST_DEAD_MS = -0.5;
    private static final double MOST_DEAD_MS = 2.5;
    private static final double DEAD_STEP_MS = 0.05;

    /** What was seen of one cell, medians; the table's figure is what it delivers. */
    private record Seen(int cell, double pulseMs, double table, double target, double kpa) {

        double predicted(boolean byTarget, boolean byPressure) {
            return table / (byTarget ? target : 1) * (byPressure ? kpa : 1);
        }
    }

    /** ln of pulse over table for each cell, less its median; and how far they are from it on the whole. */
    private record Fit(double[] log, double[] ms, double cost) {}

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        for (int r = 0; r < d.rides(); r++) {
            int from = out.size();
            ride(d, r, out);
            Say.about(out, from, d.ride(r).name());
        }
        return out;
    }

    private static void ride(Dossier d, int r, List<Caution> out) {
        Table table = d.file.rides().get(r).madeWith();
        boolean comparable =
                table.quantity() == Quantity.INJECTOR_PULSE || table.quantity() == Quantity.VOLUMETRIC_EFFICIENCY;
        if (!comparable || d.ride(r).column(Role.INJECTOR_PULSE).isEmpty()) {
            return;
        }
        List<Seen> seen = seen(d, r, table);
        if (seen.size() < LEAST_CELLS) {
            return;
        }
        double known = table.quantity() == Quantity.INJECTOR_PULSE ? d.deadTimeMs : d.injectorDeadTimeMs;
        Fit fit = best(seen, known, Double.isFinite(seen.get(0).kpa));
        double[] sorted = Arrays.stream(fit.log).map(Math::abs).sorted().toArray();
        if (fit.log.length == 0 || sorted[sorted.length / 2] > AGREEING_LOG) {
            return;
        }
        TreeSet<Integer> more = new TreeSet<>();
        TreeSet<Integer> less = new TreeSet<>();
        double sum = 0;
        for (int i = 0; i < fit.log.length; i++) {
            if (Math.abs(fit.log[i]) > APART_LOG && Math.abs(fit.ms[i]) > APART_MS) {
                (fit.log[i] > 0 ? more : less).add(seen.get(i).cell);
            }
        }
        TreeSet<Integer> cells = more.size() >= less.size() ? more : less;
        if (cells.size() < LEAST_APART || cells.size() < APART_SHARE * seen.size()) {
            return;
        }
        for (int i = 0; i < fit.log.length; i++) {
            sum += cells.contains(seen.get(i).cell) ? fit.log[i] : 0;
        }
        out.add(new Caution(
                "wrong-table-by-pulse",
                Caution.Level.CHECK,
                "The pulse isn't what the table says",
                String.format(
                        Locale.ROOT,
                        "In %s the injector pulse of %d of %d cells, %s, is %.0f %% %s, against the other cells, than the"
                                + " table has it. Either the ride was made with another table, and the correction would be wrong"
                                + " by as much, or a trim that wasn't logged was at work",
                        d.ride(r).name(),
                        cells.size(),
                        seen.size(),
                        Say.speeds(table, cells),
                        100 * Math.expm1(Math.abs(sum / cells.size())),
                        sum > 0 ? "longer" : "shorter"),
                "See which table was in the unit on this ride and give that one with it (--made-with); if it was this one, look for trims and corrections by conditions",
                onTable(d, table, cells),
                List.of()));
    }

    private static TreeSet<Integer> onTable(Dossier d, Table madeWith, TreeSet<Integer> cells) {
        TreeSet<Integer> own = new TreeSet<>();
        cells.forEach(c -> own.add(d.nearestCell(madeWith.speedAt(c), madeWith.loadAt(c))));
        return own;
    }

    private static List<Seen> seen(Dossier d, int r, Table table) {
        RideRows rows = d.rows(r);
        double[] pulse = rows.values(Role.INJECTOR_PULSE);
        double[] coolant = rows.values(Role.COOLANT);
        double[] shortTrim = rows.values(Role.SHORT_TRIM);
        double[] longTrim = rows.values(Role.LONG_TRIM);
        double warm = d.limits.of(Limit.COOLANT_LEAST);
        boolean byThrottle = d.target.load().kind() == Axis.Kind.THROTTLE;
        double near = table.load().kind() == Axis.Kind.THROTTLE ? SETTLED_PERCENT : SETTLED_KPA;
        Locator places = new Locator(table);
        Locator targets = new Locator(d.target);
        List<List<double[]>> byCell = new ArrayList<>();
        for (int c = 0; c < table.cells(); c++) {
            byCell.add(new ArrayList<>());
        }
        int stride = 1 + rows.size / MOST_ROWS;
        double held = Double.NaN;
        double sinceS = Double.NaN;
        for (int i = 0; i < rows.size; i++) {
            boolean gap = i == 0 || rows.stepS(i - 1) == 0;
            if (gap || !(Math.abs(rows.load[i] - held) <= near)) {
                held = rows.load[i];
                sinceS = rows.timeS[i];
            }
            if (i % stride != 0
                    || !rows.isEvidence(i)
                    || !(pulse[i] > 0)
                    || !(coolant[i] >= warm)
                    || rows.timeS[i] - sinceS < SETTLED_S
                    || isOutside(table, rows.speedRpm[i], rows.load[i])) {
                continue;
            }
            double trim = factor(shortTrim[i]) * factor(longTrim[i]);
            byCell.get(places.nearest(rows.speedRpm[i], rows.load[i])).add(new double[] {
                1000 * pulse[i] / trim,
                table.quantity().delivered(places.value(rows.speedRpm[i], rows.load[i]), d.deadTimeMs),
                targets.value(rows.speedRpm[i], byThrottle ? rows.throttlePercent[i] : rows.pressureKpa[i]),
                rows.pressureKpa[i]
            });
        }
        List<Seen> seen = new ArrayList<>();
        for (int c = 0; c < table.cells(); c++) {
            List<double[]> own = byCell.get(c);
            if (own.size() >= LEAST_ROWS) {
                Seen one = new Seen(c, median(own, 0), median(own, 1), median(own, 2), median(own, 3));
                if (one.table > 0 && one.target > 0) {
                    seen.add(one);
                }
            }
        }
        return seen;
    }

    private static boolean isOutside(Table table, double speedRpm, double load) {
        return !(speedRpm >= table.speed().at(0) && speedRpm <= table.speed().last())
                || !(load >= table.load().at(0) && load <= table.load().last());
    }

    private static double factor(double trimPercent) {
        return Double.isNaN(trimPercent) ? 1 : 1 + trimPercent / 100;
    }

    private static double median(List<double[]> rows, int column) {
        double[] sorted = rows.stream().mapToDouble(x -> x[column]).sorted().toArray();
        return sorted[sorted.length / 2];
    }

    private static Fit best(List<Seen> seen, double deadTimeMs, boolean withPressure) {
        Fit best = new Fit(new double[0], new double[0], Double.POSITIVE_INFINITY);
        for (int way = 0; way < (withPressure ? 4 : 2); way++) {
            boolean byTarget = way % 2 == 1;
            boolean byPressure = way >= 2;
            double from = deadTimeMs > 0 ? deadTimeMs : LEAST_DEAD_MS;
            double to = deadTimeMs > 0 ? deadTimeMs : MOST_DEAD_MS;
            for (double dead = from; dead <= to + 1e-9; dead += DEAD_STEP_MS) {
                Fit fit = fit(seen, dead, byTarget, byPressure);
                best = fit.cost < best.cost ? fit : best;
            }
        }
        return best;
    }

    private static Fit fit(List<Seen> seen, double deadMs, boolean byTarget, boolean byPressure) {
        double[] log = new double[seen.size()];
        double[] ms = new double[seen.size()];
        for (int i = 0; i < log.length; i++) {
            log[i] = Math.log((seen.get(i).pulseMs - deadMs) / seen.get(i).predicted(byTarget, byPressure));
            if (!Double.isFinite(log[i])) {
                return new Fit(new double[0], new double[0], Double.POSITIVE_INFINITY);
            }
        }
        double[] sorted = log.clone();
        Arrays.sort(sorted);
        double middle = sorted[sorted.length / 2];
        double cost = 0;
        for (int i = 0; i < log.length; i++) {
            log[i] -= middle;
            ms[i] = (seen.get(i).pulseMs - deadMs) * (1 - Math.exp(-log[i]));
            cost += Math.abs(log[i]);
        }
        return new Fit(log, ms, cost);
    }
}
