package fuelwright.safety;

import fuelwright.estimate.BurntTrace;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/**
 * What the rides read at the place of a lean moment at other times, with the engine warm: whether it was fine there while fuel had been drawn for
 * less long, which a table can't do; and whether it is fine there on rides with the present table. One pass over the traces for all moments.
 */
final class SamePlace {

    /** Within these a table's error is the same, but for a cliff. */
    private static final double SPEED_LOG = 0.03;

    private static final double THROTTLE_PERCENT = 6;
    private static final double KPA = 4;
    /** Tip-in and lag are over by then, s. */
    private static final double SETTLED_S = 1;
    /** Load may be low for so long before the fuel system is called rested, s. */
    private static final double REST_S = 2;

    private static final double GAP_S = 1;
    private static final double FRESH_SHARE = 0.5;
    private static final double DRAWN_SHARE = 0.35;
    private static final double EARLIER_S = 60;
    private static final double AGED_SHARE = 0.7;
    private static final double AGED_S = 8;
    private static final int LEAST_READINGS = 4;
    private static final double FINE_SHARE = 0.75;
    private static final double LEAN_SHARE = 0.5;
    /** By so much less lean it was while the supply was fresh, ln(lambda). */
    private static final double FRESHER_LOG = 0.03;

    private static final double LEAST_FINE_S = 0.5;
    private static final double RIGHT_SHARE = 0.05;

    private final LeanEvent event;
    /** By which the moment was explained; null where by none. */
    private final FuelFading fading;

    private double ageS;
    private int freshFine;
    private int freshLean;
    private double freshLog;
    private double fineNowS;
    private double leanNowS;

    private SamePlace(LeanEvent event, FuelFading fading) {
        this.event = event;
        this.fading = fading;
    }

    /** What was read at the places of some moments, by moment. */
    static Map<LeanEvent, SamePlace> of(Dossier d, List<LeanEvent> events, Map<LeanEvent, FuelFading> fading) {
        Map<LeanEvent, SamePlace> places = new IdentityHashMap<>();
        List<List<SamePlace>> byCell = new ArrayList<>();
        for (int c = 0; c < d.fuel.cells(); c++) {
            byCell.add(new ArrayList<>());
        }
        for (LeanEvent event : events) {
            SamePlace place = new SamePlace(event, fading.get(event));
            places.put(event, place);
            around(d.fuel, event.cell(), cell -> byCell.get(cell).add(place));
        }
        List<double[]> ages = new ArrayList<>();
        for (Dossier.Trace trace : d.traces()) {
            double[] age = events.isEmpty() ? new double[0] : ages(d, trace);
            ages.add(age);
            for (SamePlace place : places.values()) {
                if (place.isOf(trace)) {
                    place.ageS = age[reading(trace.burnt(), place.event.row())];
                }
            }
        }
        for (int t = 0; t < d.traces().size() && !events.isEmpty(); t++) {
            read(d, d.traces().get(t), ages.get(t), byCell);
        }
        return places;
    }

    private interface Cell {
        void at(int cell);
    }

    private static void around(Table table, int cell, Cell action) {
        int i = table.speedIndex(cell);
        int j = table.loadIndex(cell);
        for (int y = Math.max(0, j - 1); y <= Math.min(table.load().size() - 1, j + 1); y++) {
            for (int x = Math.max(0, i - 1); x <= Math.min(table.speed().size() - 1, i + 1); x++) {
                action.at(table.cell(y, x));
            }
        }
    }

    private boolean isOf(Dossier.Trace trace) {
        return trace.ride() == event.ride() && trace.sensor() == event.sensor();
    }

    /** The trace's reading of a row, or the next one that it has. */
    static int reading(BurntTrace trace, int row) {
        int low = 0;
        int high = trace.size() - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (trace.row(middle) < row) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** For how long load has been high at each reading, s; NaN where it isn't. */
    private static double[] ages(Dossier d, Dossier.Trace of) {
        BurntTrace trace = of.burnt();
        double[] ages = new double[trace.size()];
        double since = Double.NaN;
        double lastHigh = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < ages.length; i++) {
            double t = trace.burntS(i);
            boolean high = d.isHighLoad(of.ride(), trace.speedRpm(i), trace.throttlePercent(i), trace.pressureKpa(i));
            if (high && (Double.isNaN(since) || !(t - lastHigh <= REST_S) || t < lastHigh)) {
                since = t;
            }
            lastHigh = high ? t : lastHigh;
            ages[i] = high ? t - since : Double.NaN;
        }
        return ages;
    }

    private static void read(Dossier d, Dossier.Trace of, double[] ages, List<List<SamePlace>> byCell) {
        if (!d.ride(of.ride()).isEvidence(of.sensor())) {
            return;
        }
        BurntTrace trace = of.burnt();
        Locator cells = new Locator(d.fuel);
        Locator targets = new Locator(d.target);
        boolean byThrottle = d.target.load().kind() == Axis.Kind.THROTTLE;
        FuelCutTimes cuts = FuelCutTimes.of(d.ride(of.ride()));
        double clearing = d.limits.of(Limit.FUEL_CUT_CLEARING);
        Table then = d.file.rides().get(of.ride()).madeWith();
        for (int i = 0; i < ages.length; i++) {
            if (!(ages[i] >= SETTLED_S) || !(trace.lambda(i) > 0)) {
                continue;
            }
            int cell = cells.nearest(trace.speedRpm(i), trace.load(i));
            double t = trace.burntS(i);
            if (byCell.get(cell).isEmpty() || d.isWarming(of.ride(), trace.row(i)) || t - cuts.lastS(t) < clearing) {
                continue;
            }
            double target =
                    targets.value(trace.speedRpm(i), byThrottle ? trace.throttlePercent(i) : trace.pressureKpa(i));
            double stepS = i == 0 ? 0 : t - trace.burntS(i - 1);
            for (SamePlace place : byCell.get(cell)) {
                place.read(d, of, i, cell, then, ages[i], target, stepS > 0 && stepS < GAP_S ? stepS : 0);
            }
        }
    }

    private void read(
            Dossier d, Dossier.Trace of, int i, int cell, Table then, double age, double target, double stepS) {
        BurntTrace trace = of.burnt();
        boolean lean = trace.lambda(i) > d.limitOf(event, target);
        if (then.equals(d.fuel) && cell == event.cell() && isAsLong(age)) {
            fineNowS += lean ? 0 : stepS;
            leanNowS += lean ? stepS : 0;
        }
        boolean byThrottle = d.fuel.load().kind() == Axis.Kind.THROTTLE;
        boolean near = Math.abs(Math.log(trace.speedRpm(i) / event.speedRpm())) <= SPEED_LOG
                && Math.abs(trace.load(i) - event.load()) <= (byThrottle ? THROTTLE_PERCENT : KPA);
        boolean comparable = near
                && of.sensor() == event.sensor()
                && then.equals(d.file.rides().get(event.ride()).madeWith())
                && !Double.isNaN(target);
        if (comparable && isFresh(of, i, age)) {
            freshFine += lean ? 0 : 1;
            freshLean += lean ? 1 : 0;
            freshLog += Math.log(trace.lambda(i) / target);
        }
    }

    /** Whether little had been drawn, by what explained the moment, or else by time. */
    private boolean isFresh(Dossier.Trace of, int i, double age) {
        if (fading != null) {
            return isOf(of) && fading.drawnS(of.burnt().row(i)) <= DRAWN_SHARE * fading.drawnS(event.row());
        }
        boolean earlier = of.ride() == event.ride() && of.burnt().burntS(i) < event.startS() - EARLIER_S;
        return age <= FRESH_SHARE * ageS || earlier;
    }

    /** Fuel that fades has to have been drawn for about as long; a table doesn't care. */
    private boolean isAsLong(double age) {
        return event.kind() != LeanEvent.Kind.SUPPLY || age >= Math.min(AGED_SHARE * ageS, AGED_S);
    }

    /** Whether the place was fine at first, so that time makes it lean. */
    boolean isFineAtFirst() {
        int all = freshFine + freshLean;
        return all >= LEAST_READINGS
                && freshFine >= FINE_SHARE * all
                && Math.log(event.leanest() / event.target()) - freshLog / all >= FRESHER_LOG;
    }

    /** Whether the place was lean at first already, so that the table is. */
    boolean isLeanAtFirst() {
        int all = freshFine + freshLean;
        return all >= LEAST_READINGS && freshLean >= LEAN_SHARE * all;
    }

    /** Whether rides with the present table cover the moment's cell and are right there. Settled load says nothing of an opening throttle. */
    boolean isRightNow() {
        return event.kind() != LeanEvent.Kind.TIP_IN && fineNowS >= LEAST_FINE_S && leanNowS <= RIGHT_SHARE * fineNowS;
    }
}
