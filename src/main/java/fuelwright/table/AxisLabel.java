package fuelwright.table;

import fuelwright.unit.Dimension;
import fuelwright.unit.Unit;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A name with a unit in brackets, as the corner cell and the {@code # quantity:} line hold them: {@code manifold pressure [kPa]}.
 *
 * @param name without unit, lower case, single blanks; may be empty
 * @param unitText what stands in the brackets; empty where there are none
 */
record AxisLabel(String name, String unitText) {

    private static final Pattern WITH_UNIT = Pattern.compile("(.*?)\\s*[\\[(]([^\\])]*)[\\])]\\s*");
    private static final Set<String> SPEED_NAMES = Set.of("engine speed", "rpm", "revs", "engine rpm", "engine revs");
    private static final Set<String> THROTTLE_NAMES =
            Set.of("throttle", "throttle position", "throttle opening", "tps", "throttle angle");
    private static final Set<String> PRESSURE_NAMES = Set.of(
            "manifold pressure", "map", "manifold absolute pressure", "intake pressure", "intake manifold pressure");

    static AxisLabel of(String text) {
        String stripped = Numerals.strip(text);
        Matcher matcher = WITH_UNIT.matcher(stripped);
        boolean bracketed = matcher.matches();
        String name = bracketed ? matcher.group(1) : stripped;
        String unit = bracketed ? matcher.group(2).strip() : "";
        return new AxisLabel(name.strip().replaceAll("[\\s_]+", " ").toLowerCase(Locale.ROOT), unit);
    }

    boolean isEmpty() {
        return name.isEmpty() && unitText.isEmpty();
    }

    /** The unit, where one is written and known; a bare name that is itself a pressure or speed unit counts too. */
    Optional<Unit> unit() {
        if (!unitText.isEmpty()) {
            return Unit.parse(unitText);
        }
        return Unit.parse(name)
                .filter(u -> !name.isEmpty()
                        && (u.dimension() == Dimension.PRESSURE || u.dimension() == Dimension.ENGINE_SPEED));
    }

    boolean unitIsUnknown() {
        return !unitText.isEmpty() && unit().isEmpty();
    }

    /** Gauge pressures can't be turned into absolute ones without a barometer. */
    boolean isGauge() {
        String all = (name + " " + unitText).toLowerCase(Locale.ROOT);
        return all.contains("gauge") || all.contains("psig") || all.contains("barg") || all.contains("vacuum");
    }

    /** What the axis measures, by its name or, failing that, by a unit that leaves no doubt. */
    Optional<Axis.Kind> kind() {
        if (SPEED_NAMES.contains(name)) {
            return Optional.of(Axis.Kind.ENGINE_SPEED);
        }
        if (THROTTLE_NAMES.contains(name)) {
            return Optional.of(Axis.Kind.THROTTLE);
        }
        if (PRESSURE_NAMES.contains(name)) {
            return Optional.of(Axis.Kind.MANIFOLD_PRESSURE);
        }
        return unit().flatMap(u -> switch (u.dimension()) {
            case ENGINE_SPEED -> Optional.of(Axis.Kind.ENGINE_SPEED);
            case PRESSURE -> Optional.of(Axis.Kind.MANIFOLD_PRESSURE);
            default -> Optional.empty();
        });
    }
}
