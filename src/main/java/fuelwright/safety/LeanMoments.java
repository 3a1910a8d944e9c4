package fuelwright.safety;

import fuelwright.estimate.Standing;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The lean moments of all rides, worst first, each called what it is with all rides seen.
 *
 * @param now with the present table, or not known to be cured
 * @param cured with an earlier table, where the present one adds enough by its figures
 * @param right with an earlier table, where rides with the present one are right
 * @param elsewhere by the sensor of a cylinder that this table doesn't feed
 */
record LeanMoments(List<LeanEvent> now, List<LeanEvent> cured, List<LeanEvent> right, List<LeanEvent> elsewhere) {

    private static final double ONCE_EXCESS = 0.10;
    private static final double LEAN_LOG = 0.02;
    /** What is shorter than so many times {@link Limit#LEAN_FOR} is brief. */
    private static final double BRIEF = 2;
    /** What happened less often is no pattern. */
    private static final int AGAIN = 4;

    private static final Comparator<LeanEvent> WORST_FIRST = Comparator.comparing(LeanEvent::isFullLoad)
            .thenComparingDouble(LeanEvent::danger)
            .reversed()
            .thenComparingInt(LeanEvent::ride)
            .thenComparingDouble(LeanEvent::startS)
            .thenComparingInt(LeanEvent::sensor);

    LeanMoments {
        now = now.stream().sorted(WORST_FIRST).toList();
        cured = cured.stream().sorted(WORST_FIRST).toList();
        right = right.stream().sorted(WORST_FIRST).toList();
        elsewhere = elsewhere.stream().sorted(WORST_FIRST).toList();
    }

    static LeanMoments of(Dossier d) {
        List<LeanEvent> seen = new ArrayList<>();
        Map<LeanEvent, FuelFading> regressed = new IdentityHashMap<>();
        List<LeanEvent> elsewhere = new ArrayList<>();
        for (Dossier.Trace trace : d.traces()) {
            List<LeanEvent> events = trace.scan().events();
            if (!d.ride(trace.ride()).isEvidence(trace.sensor())) {
                elsewhere.addAll(events);
                continue;
            }
            boolean suspect = events.stream().filter(e -> isAtHighFlow(d, e)).count() >= AGAIN;
            // Fuel that fades can be taken for a late sensor, and is then only seen without that.
            Optional<FuelFading> fading = suspect
                    ? FuelFading.of(d, trace).or(() -> d.usual(trace).flatMap(usual -> FuelFading.of(d, usual)))
                    : Optional.empty();
            for (LeanEvent event : events) {
                LeanEvent checked = recheck(d, event);
                boolean faded = isFaded(d, checked, fading);
                seen.add(faded ? checked.with(LeanEvent.Kind.SUPPLY) : checked);
                if (faded) {
                    regressed.put(seen.get(seen.size() - 1), fading.get());
                }
            }
        }
        return sorted(d, seen, regressed, elsewhere);
    }

    private static LeanMoments sorted(
            Dossier d, List<LeanEvent> seen, Map<LeanEvent, FuelFading> regressed, List<LeanEvent> elsewhere) {
        List<LeanEvent> asked = seen.stream()
                .filter(e -> e.kind() == LeanEvent.Kind.SUPPLY || isOfEarlierTable(d, e))
                .toList();
        Map<LeanEvent, SamePlace> places = SamePlace.of(d, asked, regressed);
        List<LeanEvent> now = new ArrayList<>();
        List<LeanEvent> cured = new ArrayList<>();
        List<LeanEvent> right = new ArrayList<>();
        for (LeanEvent event : seen) {
            SamePlace place = places.get(event);
            boolean fades = event.kind() == LeanEvent.Kind.SUPPLY
                    && (regressed.containsKey(event) ? !place.isLeanAtFirst() : place.isFineAtFirst());
            LeanEvent named =
                    event.kind() == LeanEvent.Kind.SUPPLY && !fades ? event.with(LeanEvent.Kind.TABLE) : event;
            if (isOfEarlierTable(d, named) && !isLeanByEvidence(d, named.cell())) {
                if (place.isRightNow()) {
                    right.add(named);
                    continue;
                }
                if (isCured(d, named)) {
                    cured.add(named);
                    continue;
                }
            }
            now.add(named);
        }
        List<LeanEvent> all = List.copyOf(now);
        now.replaceAll(e -> isAlone(d, e, all) ? e.with(LeanEvent.Kind.ONCE) : e);
        return new LeanMoments(now, cured, right, elsewhere);
    }

    List<LeanEvent> of(LeanEvent.Kind kind) {
        return now.stream().filter(e -> e.kind() == kind).toList();
    }

    /** A moment after the throttle opened is the table's doing where the evidence says that the cell is lean anyway. */
    private static LeanEvent recheck(Dossier d, LeanEvent event) {
        boolean lean = event.kind() == LeanEvent.Kind.TIP_IN && isLeanByEvidence(d, event.cell());
        return lean ? event.with(LeanEvent.Kind.TABLE) : event;
    }

    /** A stretch at high flow that is lean because fuel was drawn for long, and not where it was, is the supply's doing. */
    private static boolean isFaded(Dossier d, LeanEvent event, Optional<FuelFading> fading) {
        return (event.kind() == LeanEvent.Kind.TABLE || event.kind() == LeanEvent.Kind.SUPPLY)
                && isAtHighFlow(d, event)
                && fading.isPresent()
                && fading.get().explains(event);
    }

    /**
     * A brief moment at the edge of high load, a little beyond its limit and with no other lean moment near it but when the throttle opened, is no pattern of the table; where
     * the evidence calls the cell lean it is one all the same.
     */
    private static boolean isAlone(Dossier d, LeanEvent event, List<LeanEvent> all) {
        return event.kind() == LeanEvent.Kind.TABLE
                && isBriefAtEdge(d, event)
                && !isLeanByEvidence(d, event.cell())
                && all.stream()
                        .filter(e -> e != event && e.kind() != LeanEvent.Kind.TIP_IN)
                        .noneMatch(e -> isBeside(d, event.cell(), e.cell()));
    }

    /** The edge is where the limit is wider than well inside high load. */
    static boolean isBriefAtEdge(Dossier d, LeanEvent event) {
        return event.limit() > d.limits.of(Limit.LEAN_CEILING) + 1e-9
                && event.lengthS() < BRIEF * d.limits.of(Limit.LEAN_FOR)
                && event.excess() <= ONCE_EXCESS;
    }

    /** Whether what happened once is too lean to be passed over. */
    static boolean isFarBeyond(LeanEvent event) {
        return event.excess() > ONCE_EXCESS;
    }

    private static boolean isAtHighFlow(Dossier d, LeanEvent event) {
        return event.speedRpm() >= d.highFlowRpm();
    }

    static boolean isLeanByEvidence(Dossier d, int cell) {
        if (!d.isHigh(cell) || d.standing(cell) == Standing.INFERRED) {
            return false;
        }
        double target = d.targetAt(cell);
        double surely = surelyLean(d, cell);
        return surely > LEAN_LOG && target * Math.exp(surely) > d.limitAt(cell);
    }

    /** Whether the evidence says that a cell is lean, be it within the limit. */
    static boolean isLeanAtAll(Dossier d, int cell) {
        return d.standing(cell) != Standing.INFERRED && surelyLean(d, cell) > LEAN_LOG;
    }

    private static double surelyLean(Dossier d, int cell) {
        return d.estimate().get().logFactor(cell) - d.estimate().get().logUncertainty(cell);
    }

    static boolean isBeside(Dossier d, int cell, int other) {
        Table table = d.fuel;
        return Math.abs(table.speedIndex(cell) - table.speedIndex(other)) <= 1
                && Math.abs(table.loadIndex(cell) - table.loadIndex(other)) <= 1;
    }

    private static boolean isOfEarlierTable(Dossier d, LeanEvent event) {
        return !d.file.rides().get(event.ride()).madeWith().equals(d.fuel);
    }

    /** The fuel that the present table adds there would have been enough. */
    private static boolean isCured(Dossier d, LeanEvent event) {
        Table then = d.file.rides().get(event.ride()).madeWith();
        if (event.kind() == LeanEvent.Kind.SUPPLY) {
            return false;
        }
        double factor = factor(d, then, d.fuel, event);
        return factor > 1 && event.leanest() / factor <= event.limit();
    }

    /** How much more fuel one table delivers than another at a moment, as a factor; NaN where the tables can't be compared. */
    static double factor(Dossier d, Table from, Table to, LeanEvent event) {
        boolean comparable = from.quantity() == to.quantity()
                && from.load().kind() == to.load().kind();
        return comparable
                ? to.quantity()
                        .factor(
                                from.value(event.speedRpm(), event.load()),
                                to.value(event.speedRpm(), event.load()),
                                d.deadTimeMs)
                : Double.NaN;
    }
}
