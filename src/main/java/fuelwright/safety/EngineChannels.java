package fuelwright.safety;

import fuelwright.ride.Column;
import fuelwright.ride.Role;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/** Exhaust temperature and knock, where they were logged. */
final class EngineChannels implements Rule {

    private static final int LASTING = 3;
    private static final double QUIET_SHARE = 0.8;
    private static final int REPEATED = 3;

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        for (int r = 0; r < d.rides(); r++) {
            int from = out.size();
            if (d.ride(r).column(Role.EXHAUST_TEMPERATURE).isPresent()) {
                exhaust(d, r, out);
            }
            if (d.ride(r).column(Role.KNOCK).isPresent()) {
                knock(d, r, out);
            }
            Say.about(out, from, d.ride(r).name());
        }
        return out;
    }

    private static void exhaust(Dossier d, int r, List<Caution> out) {
        RideRows rows = d.rows(r);
        Column column = d.ride(r).column(Role.EXHAUST_TEMPERATURE).orElseThrow();
        double hottest = Double.NEGATIVE_INFINITY;
        int at = -1;
        double[] last = new double[LASTING];
        int n = 0;
        for (int i = 0; i < column.size(); i++) {
            if (column.has(i)) {
                last[n++ % LASTING] = column.at(i);
                double lasted = Math.min(last[0], Math.min(last[1], last[2]));
                if (n >= LASTING && lasted > hottest) {
                    hottest = lasted;
                    at = i;
                }
            }
        }
        double first = Math.min(d.limits.of(Limit.EXHAUST_CHECK), d.limits.of(Limit.EXHAUST_STOP));
        if (at < 0 || hottest < first) {
            return;
        }
        boolean stop = hottest >= d.limits.of(Limit.EXHAUST_STOP);
        TreeSet<Integer> cells = new TreeSet<>();
        if (!Double.isNaN(rows.speedRpm[at])) {
            cells.add(d.nearestCell(rows.speedRpm[at], rows.load[at]));
        }
        out.add(new Caution(
                "exhaust-hot",
                stop ? Caution.Level.STOP : Caution.Level.CHECK,
                "Exhaust too hot",
                Sentence.of(
                        "%s at %.0f rpm in %s; the limit is %s",
                        Say.celsius(hottest),
                        rows.speedRpm[at],
                        rows.ride.name(),
                        Say.celsius(d.limits.of(stop ? Limit.EXHAUST_STOP : Limit.EXHAUST_CHECK))),
                "Look at mixture and ignition there; near lambda 1 the exhaust is hottest",
                cells,
                List.of(rows.moment(r, at, at, hottest, Unit.CELSIUS.symbol()))));
    }

    /**
     * A counter counts up, a flag or retard leaves zero now and then. A channel that is never quiet is a level whose threshold nobody
     * named: it isn't judged, and that is said.
     */
    private static void knock(Dossier d, int r, List<Caution> out) {
        RideRows rows = d.rows(r);
        double[] knock = rows.values(Role.KNOCK);
        int there = 0;
        int still = 0;
        boolean counter = true;
        double before = Double.NaN;
        List<Caution.Moment> moments = new ArrayList<>();
        TreeSet<Integer> cells = new TreeSet<>();
        double lastS = Double.NEGATIVE_INFINITY;
        double base = median(knock);
        boolean[] event = new boolean[knock.length];
        for (int i = 0; i < knock.length; i++) {
            if (Double.isNaN(knock[i])) {
                continue;
            }
            there++;
            still += knock[i] == base ? 1 : 0;
            counter &= Double.isNaN(before) || knock[i] >= before;
            before = knock[i];
        }
        before = Double.NaN;
        int steps = 0;
        for (int i = 0; i < knock.length; i++) {
            if (!Double.isNaN(knock[i])) {
                event[i] = counter ? knock[i] > before : knock[i] != base;
                steps += event[i] ? 1 : 0;
                before = knock[i];
            }
        }
        if (there == 0 || steps == 0) {
            return;
        }
        boolean known = counter ? steps < (1 - QUIET_SHARE) * there : still > QUIET_SHARE * there;
        if (!known) {
            out.add(new Caution(
                    "knock-not-judged",
                    Caution.Level.NOTE,
                    "Knock not judged",
                    "The knock channel of " + rows.ride.name() + " is a level whose limit nobody knows",
                    "Look at its trace at high load yourself",
                    new TreeSet<>(),
                    List.of()));
            return;
        }
        for (int i = 0; i < knock.length; i++) {
            boolean high = event[i]
                    && rows.isRunning(i)
                    && d.isHighLoad(r, rows.speedRpm[i], rows.throttlePercent[i], rows.pressureKpa[i]);
            if (high) {
                if (rows.timeS[i] - lastS > 1) {
                    moments.add(rows.moment(r, i, i, knock[i], ""));
                }
                lastS = rows.timeS[i];
                cells.add(d.nearestCell(rows.speedRpm[i], rows.load[i]));
            }
        }
        if (!moments.isEmpty()) {
            boolean stop = moments.size() >= REPEATED;
            out.add(new Caution(
                    "knock",
                    stop ? Caution.Level.STOP : Caution.Level.CHECK,
                    "Knock at high load",
                    (moments.size() == 1 ? "Once" : moments.size() + " times") + " in " + rows.ride.name() + ", "
                            + Say.speeds(d.fuel, cells),
                    "Take the load off there; look at fuel quality, ignition, heat and mixture before the next ride",
                    cells,
                    moments));
        }
    }

    private static double median(double[] values) {
        double[] there = Arrays.stream(values).filter(Double::isFinite).sorted().toArray();
        return there.length == 0 ? Double.NaN : there[there.length / 2];
    }
}
