package fuelwright.safety;

import fuelwright.estimate.Standing;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** Cells at high load that nobody rode, inside the engine's range of speed: never passed off as fine. */
final class NotRidden implements Rule {

    /** Below this share of the top speed, and below {@link #LEAST_RPM}, nobody opens the throttle wide. */
    private static final double LEAST_SHARE = 0.25;

    private static final double LEAST_RPM = 1500;
    private static final double LEAN_LOG = 0.03;
    private static final int READINGS = 3;
    private static final double LEAST_SHOWN = 0.05;

    @Override
    public List<Caution> judge(Dossier d) {
        Table table = d.fuel;
        double top = Math.min(
                d.file.machine().redlineRpm().orElse(table.speed().last()),
                table.speed().last());
        double bottom = Math.max(LEAST_RPM, LEAST_SHARE * top);
        TreeSet<Integer> unridden = new TreeSet<>();
        TreeSet<Integer> besideLean = new TreeSet<>();
        TreeSet<Integer> slow = new TreeSet<>();
        int all = 0;
        for (int c = 0; c < table.cells(); c++) {
            if (!d.isHigh(c) || table.speedAt(c) > top) {
                continue;
            }
            if (table.speedAt(c) < bottom) {
                if (!isRidden(d, c)) {
                    slow.add(c);
                }
                continue;
            }
            all++;
            if (!isRidden(d, c)) {
                unridden.add(c);
                if (isBesideLean(d, c)) {
                    besideLean.add(c);
                }
            }
        }
        List<Caution> out = new ArrayList<>();
        if (!besideLean.isEmpty()) {
            out.add(new Caution(
                    "not-ridden-beside-lean",
                    Caution.Level.CHECK,
                    "Unridden beside lean",
                    Say.cells(besideLean.size()) + " at high load, " + Say.speeds(table, besideLean)
                            + ": hardly a reading, and right beside what was measured lean",
                    "Ride those next, gently and with the added fuel in; until then don't hold the engine there",
                    besideLean,
                    List.of()));
        }
        if (!unridden.isEmpty()) {
            boolean none = unridden.size() == all;
            boolean some = unridden.stream().anyMatch(c -> hasReadings(d, c));
            out.add(new Caution(
                    "high-load-not-ridden",
                    Caution.Level.CHECK,
                    !none
                            ? "High load partly unridden"
                            : some ? "High load as good as unridden" : "High load never ridden",
                    (some ? "Fewer than " + READINGS + " independent readings in " : "No readings in ")
                            + (none ? "any of the " + all : unridden.size() + " of " + all)
                            + " cells at high load, " + Say.speeds(table, unridden)
                            + ": what they hold comes from neighbours or physics only",
                    "Ride them on a dynamometer or closed course before the engine is loaded there for long",
                    unridden,
                    List.of()));
        }
        if (!slow.isEmpty()) {
            out.add(new Caution(
                    "low-speed-not-ridden",
                    Caution.Level.NOTE,
                    "High load at low speed unridden",
                    Say.cells(slow.size()) + " at high load " + Say.speeds(table, slow)
                            + (slow.size() == 1 ? " has" : " have") + " fewer than " + READINGS
                            + " independent readings. Few riders open the throttle so far down there, but what"
                            + (slow.size() == 1 ? " it holds" : " they hold") + " isn't measured",
                    "Don't open the throttle wide at such low speed; ride there gently if the engine is to pull from it",
                    slow,
                    List.of()));
        }
        return out;
    }

    private static boolean isRidden(Dossier d, int cell) {
        if (d.estimate().isPresent()) {
            return d.standing(cell) != Standing.INFERRED;
        }
        int readings = 0;
        for (Dossier.Trace trace : d.traces()) {
            readings += trace.scan().leanReadings(cell) + trace.scan().fineReadings(cell);
        }
        return readings >= READINGS;
    }

    /** Whether anything at all was read there: what is too little to judge by isn't nothing. */
    private static boolean hasReadings(Dossier d, int cell) {
        return d.estimate().isPresent() && d.estimate().get().independentReadings(cell) >= LEAST_SHOWN;
    }

    private static boolean isBesideLean(Dossier d, int cell) {
        Table table = d.fuel;
        int i = table.speedIndex(cell);
        int j = table.loadIndex(cell);
        for (int y = Math.max(0, j - 1); y <= Math.min(table.load().size() - 1, j + 1); y++) {
            for (int x = Math.max(0, i - 1); x <= Math.min(table.speed().size() - 1, i + 1); x++) {
                if (isMeasuredLean(d, table.cell(y, x))) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean isMeasuredLean(Dossier d, int cell) {
        if (!isRidden(d, cell)) {
            return false;
        }
        if (d.estimate().isPresent()) {
            return d.estimate().get().logFactor(cell) - d.estimate().get().logUncertainty(cell) > LEAN_LOG;
        }
        int lean = 0;
        int fine = 0;
        for (Dossier.Trace trace : d.traces()) {
            lean += trace.scan().leanReadings(cell);
            fine += trace.scan().fineReadings(cell);
        }
        return lean > fine;
    }
}
