package fuelwright.safety;

import fuelwright.estimate.Standing;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Lean at high load: by stretches of the rides, and by cells whose evidence says so although each crossing was short. One caution each
 * for what the table does, what the fuel supply does, what happened once, and what the opening throttle does.
 */
final class LeanUnderLoad implements Rule {

    private static final double ONCE_EXCESS = 0.10;
    private static final double LEAN_LOG = 0.02;
    /** What is shorter than so many times {@link Limit#LEAN_FOR} is brief. */
    private static final double BRIEF = 2;
    /** What happened less often is no pattern. */
    private static final int AGAIN = 4;

    private static final Comparator<LeanEvent> WORST_FIRST = Comparator.comparingDouble(LeanEvent::danger)
            .reversed()
            .thenComparingInt(LeanEvent::ride)
            .thenComparingDouble(LeanEvent::startS)
            .thenComparingInt(LeanEvent::sensor);

    @Override
    public List<Caution> judge(Dossier d) {
        List<LeanEvent> events = new ArrayList<>();
        List<LeanEvent> cured = new ArrayList<>();
        List<LeanEvent> elsewhere = new ArrayList<>();
        for (Dossier.Trace trace : d.traces()) {
            List<LeanEvent> seen = trace.scan().events();
            if (!d.ride(trace.ride()).isEvidence(trace.sensor())) {
                elsewhere.addAll(seen);
                continue;
            }
            boolean suspect = seen.stream().filter(e -> isAtHighFlow(d, e)).count() >= AGAIN;
            // Fuel that fades can be taken for a late sensor, and is then only seen without that.
            Optional<FuelFading> fading = suspect
                    ? FuelFading.of(d, trace).or(() -> d.usual(trace).flatMap(usual -> FuelFading.of(d, usual)))
                    : Optional.empty();
            for (LeanEvent event : seen) {
                LeanEvent checked = faded(d, recheck(d, event), fading);
                (isCured(d, checked) ? cured : events).add(checked);
            }
        }
        List<LeanEvent> seen = List.copyOf(events);
        events.replaceAll(e -> isAlone(d, e, seen) ? e.with(LeanEvent.Kind.ONCE) : e);
        events.sort(WORST_FIRST);
        elsewhere.sort(WORST_FIRST);
        List<Caution> out = new ArrayList<>();
        table(d, events, out);
        supply(d, of(events, LeanEvent.Kind.SUPPLY), out);
        once(d, of(events, LeanEvent.Kind.ONCE), out);
        tipIn(d, of(events, LeanEvent.Kind.TIP_IN), out);
        cured(d, cured, out);
        elsewhere(d, elsewhere, out);
        lightLoad(d, out);
        notChecked(d, out);
        return out;
    }

    /** A moment after the throttle opened is the table's doing where the evidence says that the cell is lean anyway. */
    private static LeanEvent recheck(Dossier d, LeanEvent event) {
        boolean lean = event.kind() == LeanEvent.Kind.TIP_IN && isLeanByEvidence(d, event.cell());
        return lean ? event.with(LeanEvent.Kind.TABLE) : event;
    }

    /** A stretch at high flow that is lean because fuel was drawn for long, and not where it was, is the supply's doing. */
    private static LeanEvent faded(Dossier d, LeanEvent event, Optional<FuelFading> fading) {
        boolean supply = event.kind() == LeanEvent.Kind.TABLE
                && isAtHighFlow(d, event)
                && fading.isPresent()
                && fading.get().explains(event);
        return supply ? event.with(LeanEvent.Kind.SUPPLY) : event;
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
    private static boolean isBriefAtEdge(Dossier d, LeanEvent event) {
        return event.limit() > d.limits.of(Limit.LEAN_CEILING) + 1e-9
                && event.lengthS() < BRIEF * d.limits.of(Limit.LEAN_FOR)
                && event.excess() <= ONCE_EXCESS;
    }

    private static boolean isAtHighFlow(Dossier d, LeanEvent event) {
        return event.speedRpm() >= d.highFlowRpm();
    }

    /** Seen with an earlier table, and the fuel that the present one adds there would have been enough. */
    private static boolean isCured(Dossier d, LeanEvent event) {
        Table then = d.file.rides().get(event.ride()).madeWith();
        boolean comparable = then.quantity() == d.fuel.quantity()
                && then.load().kind() == d.fuel.load().kind()
                && event.kind() != LeanEvent.Kind.SUPPLY;
        if (then.equals(d.fuel) || !comparable || isLeanByEvidence(d, event.cell())) {
            return false;
        }
        double factor = d.fuel.quantity()
                .factor(
                        then.value(event.speedRpm(), event.load()),
                        d.fuel.value(event.speedRpm(), event.load()),
                        d.deadTimeMs);
        return factor > 1 && event.leanest() / factor <= event.limit();
    }

    private static void cured(Dossier d, List<LeanEvent> events, List<Caution> out) {
        if (!events.isEmpty()) {
            events.sort(Comparator.comparingDouble(LeanEvent::danger).reversed());
            out.add(new Caution(
                    "lean-with-earlier-table",
                    Caution.Level.CHECK,
                    "Was lean with an earlier table",
                    times(events)
                            + " with an earlier table; by the figures the present one adds enough there. Worst then: "
                            + place(d, events.get(0)),
                    "Ride those cells with the present table to see that it is cured",
                    cellsOf(events),
                    moments(d, events)));
        }
    }

    /** By the sensor of a cylinder that this table doesn't feed. */
    private static void elsewhere(Dossier d, List<LeanEvent> events, List<Caution> out) {
        if (!events.isEmpty()) {
            out.add(new Caution(
                    "lean-other-cylinder",
                    events.stream().allMatch(e -> e.kind() == LeanEvent.Kind.TIP_IN) && !anyGrave(d, events)
                            ? Caution.Level.CHECK
                            : Caution.Level.STOP,
                    "Another cylinder is lean under load",
                    times(events) + ", in a cylinder that this table doesn't feed. Worst: " + place(d, events.get(0)),
                    "Don't load the engine there again; correct that cylinder's own table by the same rides before riding",
                    new TreeSet<>(),
                    moments(d, events)));
        }
    }

    private static void lightLoad(Dossier d, List<Caution> out) {
        TreeSet<Integer> cells = new TreeSet<>();
        double leanest = 0;
        for (int c = 0; c < d.fuel.cells(); c++) {
            if (!d.isHigh(c) && d.standing(c) == Standing.MEASURED) {
                double lambda = d.targetAt(c) * Math.exp(d.estimate().get().logFactor(c));
                if (lambda > d.targetAt(c) + d.limits.of(Limit.LIGHT_LOAD_EXCESS)) {
                    cells.add(c);
                    leanest = Math.max(leanest, lambda);
                }
            }
        }
        if (!cells.isEmpty()) {
            out.add(new Caution(
                    "lean-light-load",
                    Caution.Level.CHECK,
                    "Far leaner than asked at light load",
                    Say.cells(cells.size()) + ", " + Say.speeds(d.fuel, cells) + ", up to lambda " + Say.lambda(leanest)
                            + ": the engine may stumble or run hot",
                    "Add the fuel before riding on, and look for an air leak",
                    cells,
                    List.of()));
        }
    }

    private static boolean isLeanByEvidence(Dossier d, int cell) {
        if (!d.isHigh(cell) || d.standing(cell) == Standing.INFERRED) {
            return false;
        }
        double target = d.targetAt(cell);
        double surely = d.estimate().get().logFactor(cell) - d.estimate().get().logUncertainty(cell);
        return surely > LEAN_LOG && target * Math.exp(surely) > d.limitAt(cell);
    }

    private static boolean isBeside(Dossier d, int cell, int other) {
        Table table = d.fuel;
        return Math.abs(table.speedIndex(cell) - table.speedIndex(other)) <= 1
                && Math.abs(table.loadIndex(cell) - table.loadIndex(other)) <= 1;
    }

    private static List<LeanEvent> of(List<LeanEvent> events, LeanEvent.Kind kind) {
        return events.stream().filter(e -> e.kind() == kind).toList();
    }

    private static void table(Dossier d, List<LeanEvent> all, List<Caution> out) {
        List<LeanEvent> grave = of(all, LeanEvent.Kind.TABLE);
        SortedSet<Integer> cells = cellsOf(grave);
        SortedSet<Integer> byEvidence = new TreeSet<>();
        List<LeanEvent> supply = of(all, LeanEvent.Kind.SUPPLY);
        for (int c = 0; c < d.fuel.cells(); c++) {
            int cell = c;
            // Evidence of a cell that the supply starved says nothing of the table; the supply's own Stop stands there.
            if (isLeanByEvidence(d, c) && supply.stream().noneMatch(e -> isBeside(d, cell, e.cell()))) {
                byEvidence.add(c);
            }
        }
        cells.addAll(byEvidence);
        if (!cells.isEmpty()) {
            String what = grave.isEmpty()
                    ? "The readings say that " + Say.cells(byEvidence.size()) + " at high load, "
                            + Say.speeds(d.fuel, byEvidence)
                            + ", run leaner than the limit, though no crossing was long"
                    : times(grave) + ". Worst: " + place(d, grave.get(0)) + supplyHint(grave);
            out.add(new Caution(
                    "lean-under-load",
                    Caution.Level.STOP,
                    "Lean under load",
                    what,
                    "Don't load the engine there again with this table; add the fuel and ride those cells gently first",
                    cells,
                    moments(d, grave)));
        }
    }

    /** Where mixture kept getting leaner to the end, the table may not be the only suspect. */
    private static String supplyHint(List<LeanEvent> events) {
        return events.stream().anyMatch(LeanEvent::growing)
                ? "; mixture kept getting leaner while load lasted, so the fuel supply (pump, filter, pressure) is a suspect as well"
                : "";
    }

    private static void supply(Dossier d, List<LeanEvent> events, List<Caution> out) {
        if (!events.isEmpty()) {
            out.add(new Caution(
                    "fuel-supply-fading",
                    Caution.Level.STOP,
                    "Fuel fades under load",
                    times(events)
                            + " in places that are fine at first: fuel fades the longer much of it is drawn. Worst: "
                            + place(d, events.get(0)),
                    "Check pump, filter and fuel pressure before touching the table: more percent can't deliver fuel that isn't there",
                    cellsOf(events),
                    moments(d, events)));
        }
    }

    private static void once(Dossier d, List<LeanEvent> events, List<Caution> out) {
        if (!events.isEmpty()) {
            boolean grave = events.stream().anyMatch(e -> e.excess() > ONCE_EXCESS)
                    || events.stream().filter(e -> !isBriefAtEdge(d, e)).count() > 2
                    || anyGrave(d, events);
            out.add(new Caution(
                    "lean-moment",
                    grave ? Caution.Level.STOP : Caution.Level.CHECK,
                    "A lean moment under load",
                    times(events) + ", and not again in that place. Worst: " + place(d, events.get(0)),
                    "Ride that place again; if it comes back look at ignition, connectors and fuel supply before adding fuel",
                    cellsOf(events),
                    moments(d, events)));
        }
    }

    private static void tipIn(Dossier d, List<LeanEvent> events, List<Caution> out) {
        if (!events.isEmpty()) {
            out.add(new Caution(
                    "lean-tip-in",
                    anyGrave(d, events) ? Caution.Level.STOP : Caution.Level.CHECK,
                    "Lean at tip-in",
                    times(events) + ", right after load rose and gone while it stayed high. Worst: "
                            + place(d, events.get(0)),
                    "Look at the accel enrichment: the fuel table can't cure this",
                    cellsOf(events),
                    moments(d, events)));
        }
    }

    private static boolean anyGrave(Dossier d, List<LeanEvent> events) {
        return events.stream().anyMatch(e -> e.grave() && !isBriefAtEdge(d, e));
    }

    private static void notChecked(Dossier d, List<Caution> out) {
        List<String> without = new ArrayList<>();
        for (int r = 0; r < d.rides(); r++) {
            int ride = r;
            if (d.traces().stream().noneMatch(t -> t.ride() == ride && t.burnt().size() > 0)) {
                without.add(d.ride(r).name());
            }
        }
        if (!without.isEmpty() || d.rides() == 0) {
            out.add(new Caution(
                    "lean-not-checked",
                    Caution.Level.CHECK,
                    "Lean under load not checked",
                    d.rides() == 0
                            ? "There is no ride"
                            : "No mixture with engine speed and load in " + String.join(", ", without),
                    "Make a ride with a wideband sensor, engine speed and load in the log",
                    new TreeSet<>(),
                    List.of()));
        }
    }

    private static String times(List<LeanEvent> events) {
        double total = events.stream().mapToDouble(LeanEvent::lengthS).sum();
        return (events.size() == 1 ? "Once" : events.size() + " times") + ", " + Say.seconds(total) + " in all";
    }

    private static String place(Dossier d, LeanEvent e) {
        Table fuel = d.fuel;
        Ride ride = d.ride(e.ride());
        double gear = ride.column(Role.GEAR).map(c -> c.at(e.row())).orElse(Double.NaN);
        String sensor = ride.mixtures().size() > 1
                ? ", " + ride.mixtures().get(e.sensor()).heading()
                : "";
        return "lambda " + Say.lambda(e.leanest()) + ", limit " + Say.lambda(e.limit()) + ", for "
                + Say.seconds(e.lengthS()) + " at " + Say.rpm(e.speedRpm()) + ", "
                + Say.load(e.load(), fuel.load().kind()) + (gear >= 1 ? ", gear " + Math.round(gear) : "") + sensor
                + ", " + ride.name() + " at " + Say.minutes(e.startS());
    }

    private static SortedSet<Integer> cellsOf(List<LeanEvent> events) {
        SortedSet<Integer> cells = new TreeSet<>();
        events.forEach(e -> cells.add(e.cell()));
        return cells;
    }

    private static List<Caution.Moment> moments(Dossier d, List<LeanEvent> events) {
        return events.stream()
                .map(e -> new Caution.Moment(
                        e.ride(),
                        d.ride(e.ride()).name(),
                        e.startS(),
                        e.lengthS(),
                        e.leanest(),
                        e.speedRpm(),
                        e.load()))
                .toList();
    }
}
