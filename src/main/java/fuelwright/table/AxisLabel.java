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

    /** Both axes as a corner cell names them, rows first. */
    record Pair(AxisLabel rows, AxisLabel columns) {}

    static AxisLabel of(String text) {
        String stripped = Numerals.strip(text);
        Matcher matcher = WITH_UNIT.matcher(stripped);
        if (matcher.matches()) {
            return new AxisLabel(plain(matcher.group(1)), matcher.group(2).strip());
        }
        // A known name with its unit behind it, as in 'TPS %'.
        int blank = stripped.lastIndexOf(' ');
        if (blank > 0) {
            AxisLabel split = new AxisLabel(
                    plain(stripped.substring(0, blank)),
                    stripped.substring(blank + 1).strip());
            if (split.kindByName().isPresent() && split.unit().isPresent()) {
                return split;
            }
        }
        return new AxisLabel(plain(stripped), "");
    }

    /** The two labels of a corner cell: cut at a backslash or, where both sides are then known axes, at a slash or bar. */
    static Optional<Pair> pair(String corner) {
        int cut = corner.indexOf('\\');
        if (cut >= 0) {
            return Optional.of(new Pair(of(corner.substring(0, cut)), of(corner.substring(cut + 1))));
        }
        for (int i = 0; i < corner.length(); i++) {
            if (corner.charAt(i) == '/' || corner.charAt(i) == '|') {
                Pair pair = new Pair(of(corner.substring(0, i)), of(corner.substring(i + 1)));
                if (pair.rows.kind().isPresent() && pair.columns.kind().isPresent()) {
                    return Optional.of(pair);
                }
            }
        }
        return Optional.empty();
    }

    private static String plain(String name) {
        return name.strip().replaceAll("[\\s_]+", " ").toLowerCase(Locale.ROOT);
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
        return kindByName()
                .or(() -> unit().flatMap(u -> switch (u.dimension()) {
                    case ENGINE_SPEED -> Optional.of(Axis.Kind.ENGINE_SPEED);
                    case PRESSURE -> Optional.of(Axis.Kind.MANIFOLD_PRESSURE);
                    default -> Optional.empty();
                }));
    }

    private Optional<Axis.Kind> kindByName() {
        if (SPEED_NAMES.contains(name)) {
            return Optional.of(Axis.Kind.ENGINE_SPEED);
        }
        if (THROTTLE_NAMES.contains(name)) {
            return Optional.of(Axis.Kind.THROTTLE);
        }
        if (PRESSURE_NAMES.contains(name)) {
            return Optional.of(Axis.Kind.MANIFOLD_PRESSURE);
        }
        return Optional.empty();
    }
}
