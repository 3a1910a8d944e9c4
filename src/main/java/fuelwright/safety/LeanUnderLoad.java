package fuelwright.safety;

import fuelwright.estimate.Standing;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.table.Table;
import fuelwright.unit.Sentence;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Lean at high load: by stretches of the rides, and by cells whose evidence says so although each crossing was short. One caution each
 * for what the table does, what the fuel supply does, what happened once, and what the opening throttle does.
 */
final class LeanUnderLoad implements Rule {

    /** So much leaner a reading looks leaner, lambda. */
    private static final double SEEN_LEANER = 0.005;

    @Override
    public List<Caution> judge(Dossier d) {
        LeanMoments moments = d.moments();
        List<Caution> out = new ArrayList<>();
        table(d, moments, out);
        supply(d, moments.of(LeanEvent.Kind.SUPPLY), out);
        once(d, moments.of(LeanEvent.Kind.ONCE), out);
        tipIn(d, moments.of(LeanEvent.Kind.TIP_IN), out);
        cured(d, moments.cured(), out);
        right(d, moments.right(), out);
        elsewhere(d, moments.elsewhere(), out);
        lightLoad(d, out);
        notChecked(d, out);
        return out;
    }

    private static void cured(Dossier d, List<LeanEvent> events, List<Caution> out) {
        if (!events.isEmpty()) {
            out.add(new Caution(
                    "lean-with-earlier-table",
                    Caution.Level.CHECK,
                    "Was lean with an earlier table",
                    Sentence.of(
                            "%s with an earlier table; by the figures the present one adds enough there. Worst then: %s",
                            times(events), worst(d, events)),
                    "Ride those cells with the present table to see that it is cured",
                    cellsOf(events),
                    moments(d, events)));
        }
    }

    /** Fuel that fades may come back on another day; a table that was put right doesn't. */
    private static void right(Dossier d, List<LeanEvent> events, List<Caution> out) {
        if (!events.isEmpty()) {
            boolean faded = events.stream().anyMatch(e -> e.kind() == LeanEvent.Kind.SUPPLY);
            out.add(new Caution(
                    "lean-with-earlier-table",
                    faded ? Caution.Level.CHECK : Caution.Level.NOTE,
                    faded ? "Fuel faded with an earlier table" : "Was lean with an earlier table, right with this one",
                    Sentence.of(
                            "%s with an earlier table; rides with the present one cover %s and are right there. Worst then: %s",
                            times(events), events.size() == 1 ? "that place" : "those places", worst(d, events)),
                    faded
                            ? "See to pump, filter and fuel pressure all the same: what fades may do so again"
                            : "Nothing, if you are sure which table each ride was made with",
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
                    Sentence.of(
                            "%s, in a cylinder that this table doesn't feed. Worst: %s",
                            times(events), worst(d, events)),
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
                    Sentence.of(
                            "%s, %s, up to %s: the engine may stumble or run hot",
                            Say.cells(cells.size()), Say.speeds(d.fuel, cells), Say.lambda(leanest)),
                    "Add the fuel before riding on, and look for an air leak",
                    cells,
                    List.of()));
        }
    }

    private static void table(Dossier d, LeanMoments all, List<Caution> out) {
        List<LeanEvent> grave = all.of(LeanEvent.Kind.TABLE);
        SortedSet<Integer> cells = cellsOf(grave);
        SortedSet<Integer> byEvidence = new TreeSet<>();
        List<LeanEvent> supply = all.of(LeanEvent.Kind.SUPPLY);
        for (int c = 0; c < d.fuel.cells(); c++) {
            int cell = c;
            // Evidence of a cell that the supply starved says nothing of the table; the supply's own Stop stands there.
            if (LeanMoments.isLeanByEvidence(d, c)
                    && supply.stream().noneMatch(e -> LeanMoments.isBeside(d, cell, e.cell()))) {
                byEvidence.add(c);
            }
        }
        cells.addAll(byEvidence);
        if (!cells.isEmpty()) {
            Sentence what = grave.isEmpty()
                    ? Sentence.text("The readings say that " + Say.cells(byEvidence.size()) + " at high load, "
                            + Say.speeds(d.fuel, byEvidence)
                            + ", run leaner than the limit, though no crossing was long")
                    : Sentence.of("%s. Worst: %s%s", times(grave), worst(d, grave), supplyHint(d, grave));
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

    /**
     * Where the mixture kept getting leaner to the end, the table may not be the only suspect. Said of the worst moment only where that one shows it, else
     * of the moments that do.
     */
    private static Sentence supplyHint(Dossier d, List<LeanEvent> events) {
        List<LeanEvent> growing =
                events.stream().filter(e -> e.growing().isPresent()).toList();
        if (growing.isEmpty()) {
            return Sentence.NONE;
        }
        LeanEvent shown = growing.get(0);
        SteadyRun.Growth growth = shown.growing().get();
        String where = shown == events.get(0)
                ? "; there"
                : "; not there, but in " + growing.size() + " of the " + events.size() + " moments (such as "
                        + d.ride(shown.ride()).name() + " at " + Say.minutes(shown.startS()) + ")";
        return Sentence.of(
                "%s the mixture kept getting leaner while load stayed, from %s to %s in %s, as it does where the engine climbs into a hole of the table,"
                        + " and where the fuel supply (pump, filter, pressure) can't keep up",
                where, Say.lambda(growth.from()), Say.lambda(growth.to()), Say.seconds(growth.lengthS()));
    }

    private static void supply(Dossier d, List<LeanEvent> events, List<Caution> out) {
        if (!events.isEmpty()) {
            out.add(new Caution(
                    "fuel-supply-fading",
                    Caution.Level.STOP,
                    "Fuel fades under load",
                    Sentence.of(
                            "%s in places that are fine at first: fuel fades the longer much of it is drawn. Worst: %s",
                            times(events), worst(d, events)),
                    "Check pump, filter and fuel pressure before touching the table: more percent can't deliver fuel that isn't there",
                    cellsOf(events),
                    moments(d, events)));
        }
    }

    private static void once(Dossier d, List<LeanEvent> events, List<Caution> out) {
        if (!events.isEmpty()) {
            boolean grave = events.stream().anyMatch(LeanMoments::isFarBeyond)
                    || events.stream()
                                    .filter(e -> !LeanMoments.isBriefAtEdge(d, e))
                                    .count()
                            > 2
                    || anyGrave(d, events);
            out.add(new Caution(
                    "lean-moment",
                    grave ? Caution.Level.STOP : Caution.Level.CHECK,
                    "A lean moment under load",
                    Sentence.of("%s, and not again in that place. Worst: %s", times(events), worst(d, events)),
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
                    Sentence.of(
                            "%s, right after load rose and gone while it stayed high. Worst: %s%s",
                            times(events), worst(d, events), tableToo(d, events)),
                    tableToo(d, events).isEmpty()
                            ? "Look at the accel enrichment: the fuel table can't cure this"
                            : "Put the table right and ride again before you touch the accel enrichment",
                    cellsOf(events),
                    moments(d, events)));
        }
    }

    /** Where the table is lean as well, the accel enrichment can't be judged yet. */
    private static String tableToo(Dossier d, List<LeanEvent> events) {
        SortedSet<Integer> lean = cellsOf(events);
        lean.removeIf(c -> !LeanMoments.isLeanAtAll(d, c));
        double most = lean.stream()
                .mapToDouble(c -> 100 * Math.expm1(d.estimate().get().logFactor(c)))
                .max()
                .orElse(0);
        return lean.isEmpty()
                ? ""
                : ". By the evidence the table itself is lean there, by up to " + Say.percent(most)
                        + ": that makes it look worse";
    }

    private static boolean anyGrave(Dossier d, List<LeanEvent> events) {
        return events.stream().anyMatch(e -> e.grave() && !LeanMoments.isBriefAtEdge(d, e));
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

    /** The worst moment, and that it isn't the leanest one where it isn't: load, speed and length count as well. */
    private static Sentence worst(Dossier d, List<LeanEvent> events) {
        LeanEvent worst = events.get(0);
        LeanEvent leanest = events.stream()
                .max(Comparator.comparingDouble(LeanEvent::leanest))
                .orElseThrow();
        if (leanest.leanest() - worst.leanest() < SEEN_LEANER) {
            return place(d, worst);
        }
        return Sentence.of(
                "%s (not the leanest: that was %s, limit %s, at %s, %s)",
                place(d, worst),
                Say.lambda(leanest.leanest()),
                Say.lambda(leanest.limit()).alone(),
                Say.rpm(leanest.speedRpm()),
                Say.load(leanest.load(), d.fuel.load().kind()));
    }

    private static Sentence place(Dossier d, LeanEvent e) {
        Table fuel = d.fuel;
        Ride ride = d.ride(e.ride());
        double gear = ride.column(Role.GEAR).map(c -> c.at(e.row())).orElse(Double.NaN);
        String sensor = ride.mixtures().size() > 1
                ? ", " + ride.mixtures().get(e.sensor()).heading()
                : "";
        return Sentence.of(
                "%s, limit %s, for %s at %s, %s%s%s, %s at %s",
                Say.lambda(e.leanest()),
                Say.lambda(e.limit()).alone(),
                Say.seconds(e.lengthS()),
                Say.rpm(e.speedRpm()),
                Say.load(e.load(), fuel.load().kind()),
                gear >= 1 ? ", gear " + Math.round(gear) : "",
                sensor,
                ride.name(),
                Say.minutes(e.startS()));
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
