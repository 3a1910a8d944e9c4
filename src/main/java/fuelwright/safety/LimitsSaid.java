package fuelwright.safety;

import fuelwright.unit.Sentence;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Says which limits were changed: in one caution for all of them, since a limit made wider may keep another caution from firing, and in each
 * caution that was judged by one.
 */
final class LimitsSaid implements Rule {

    private static final Set<Limit> LEAN = EnumSet.of(
            Limit.LEAN_EXCESS, Limit.LEAN_CEILING, Limit.LEAN_FOR, Limit.FUEL_CUT_CLEARING, Limit.SENSOR_TOP);
    private static final Set<Limit> LEFT =
            EnumSet.of(Limit.LEFT_LEAN, Limit.LEAN_EXCESS, Limit.LEAN_CEILING, Limit.LIGHT_LOAD_EXCESS);
    private static final Set<Limit> DUTY = EnumSet.of(Limit.DUTY_CHECK, Limit.DUTY_STOP, Limit.INJECTIONS_PER_CYCLE);

    /** What each rule is judged by; a rule that isn't named uses no limit. */
    private static final Map<String, Set<Limit>> USED = Map.ofEntries(
            Map.entry("lean-under-load", LEAN),
            Map.entry("fuel-supply-fading", LEAN),
            Map.entry("lean-moment", LEAN),
            Map.entry("lean-tip-in", LEAN),
            Map.entry("lean-with-earlier-table", LEAN),
            Map.entry("lean-light-load", EnumSet.of(Limit.LIGHT_LOAD_EXCESS)),
            Map.entry("target-lean", EnumSet.of(Limit.LEAN_CEILING)),
            Map.entry("cap-holds-back-fuel", LEFT),
            Map.entry("held-lean", LEFT),
            Map.entry("proposal-lean", LEFT),
            Map.entry("leaner-cylinder-left", EnumSet.of(Limit.LEFT_LEAN)),
            Map.entry("lean-after-proposal", LEAN),
            Map.entry("cliff", EnumSet.of(Limit.CLIFF)),
            Map.entry("proposal-too-large", EnumSet.of(Limit.LARGE_ADDITION, Limit.LARGE_CUT)),
            Map.entry("injector-duty", DUTY),
            Map.entry("injector-duty-proposed", DUTY),
            Map.entry("injector-duty-table", DUTY),
            Map.entry("injector-duty-estimated", EnumSet.of(Limit.DUTY_CHECK, Limit.INJECTIONS_PER_CYCLE)),
            Map.entry("exhaust-hot", EnumSet.of(Limit.EXHAUST_CHECK, Limit.EXHAUST_STOP)),
            Map.entry("sensor-frozen", EnumSet.of(Limit.SENSOR_FROZEN, Limit.LEAN_FOR)),
            Map.entry("sensor-at-its-end", EnumSet.of(Limit.SENSOR_TOP, Limit.FUEL_CUT_CLEARING)),
            Map.entry("sensor-top-low", EnumSet.of(Limit.LEAN_FOR, Limit.FUEL_CUT_CLEARING)),
            Map.entry("sensor-slow", EnumSet.of(Limit.SENSOR_SLOW)),
            Map.entry("sensors-apart", EnumSet.of(Limit.SENSORS_APART, Limit.SENSOR_TOP)),
            Map.entry("reading-drifts", EnumSet.of(Limit.DRIFT)),
            Map.entry("rides-apart", EnumSet.of(Limit.DRIFT)),
            Map.entry("sensor-still", EnumSet.of(Limit.SENSOR_TOP, Limit.LEAN_FOR)),
            Map.entry("mostly-cold", EnumSet.of(Limit.COOLANT_LEAST)),
            Map.entry("heat-soaked", EnumSet.of(Limit.COOLANT_MOST)),
            Map.entry("intake-hot", EnumSet.of(Limit.INTAKE_MOST)),
            Map.entry("intake-apart", EnumSet.of(Limit.INTAKE_APART)),
            Map.entry("barometer-apart", EnumSet.of(Limit.BAROMETER_APART)),
            Map.entry("barometer-moves", EnumSet.of(Limit.BAROMETER_APART)),
            Map.entry("battery-low", EnumSet.of(Limit.BATTERY_LEAST)),
            Map.entry("ride-short", EnumSet.of(Limit.RIDE_LEAST)));

    @Override
    public List<Caution> judge(Dossier d) {
        Limits limits = d.limits;
        List<Limit> changed = changed(limits);
        if (changed.isEmpty()) {
            return List.of();
        }
        boolean wider = changed.stream().anyMatch(l -> l.isWider(limits.of(l), limits.fuel()));
        return List.of(new Caution(
                "limits-changed",
                wider ? Caution.Level.CHECK : Caution.Level.NOTE,
                "Judged by limits of your own",
                all(changed, limits)
                        .then(Sentence.text(wider ? ". By the usual limits there may be more cautions" : "")),
                wider
                        ? "See that the engine's builder allows it, or go back to the usual limits"
                        : "Nothing, if you meant it: they are as strict as the usual ones or stricter",
                new TreeSet<>(),
                List.of()));
    }

    /** The cautions, each with the changed limits that it was judged by. */
    static List<Caution> said(List<Caution> cautions, Limits limits) {
        List<Limit> changed = changed(limits);
        if (changed.isEmpty()) {
            return cautions;
        }
        List<Caution> out = new ArrayList<>();
        for (Caution caution : cautions) {
            Set<Limit> used = USED.getOrDefault(caution.rule(), Set.of());
            List<Limit> by = changed.stream().filter(used::contains).toList();
            out.add(
                    by.isEmpty()
                            ? caution
                            : caution.saying(Sentence.of("; judged by your limit: %s", all(by, limits))));
        }
        return out;
    }

    private static List<Limit> changed(Limits limits) {
        return limits.changed().keySet().stream()
                .filter(l -> limits.of(l) != l.usual(limits.fuel()))
                .toList();
    }

    private static Sentence all(List<Limit> changed, Limits limits) {
        return Sentence.joined("; ", changed.stream().map(l -> words(l, limits)).toList());
    }

    private static Sentence words(Limit limit, Limits limits) {
        return Sentence.of(
                "%s %s instead of %s",
                limit.words(),
                Say.limit(limit, limits.of(limit)),
                Say.limit(limit, limit.usual(limits.fuel())).alone());
    }
}
