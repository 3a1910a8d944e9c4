package fuelwright.safety;

import fuelwright.mixture.Fuel;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;

/**
 * The limits for one fuel: the usual ones with what the user changed, always within bounds. Immutable.
 */
public final class Limits {

    /** The ceiling is so much higher at the edge of high load, lambda. */
    private static final double EDGE = 0.08;

    private final Fuel fuel;
    private final Map<Limit, Double> changed;

    private Limits(Fuel fuel, Map<Limit, Double> changed) {
        this.fuel = Objects.requireNonNull(fuel, "fuel");
        EnumMap<Limit, Double> copy = new EnumMap<>(Limit.class);
        copy.putAll(changed);
        this.changed = Collections.unmodifiableMap(copy);
    }

    /** The usual limits for a fuel. */
    public static Limits usual(Fuel fuel) {
        return new Limits(fuel, Map.of());
    }

    public Fuel fuel() {
        return fuel;
    }

    /** The limit in force, in its own unit. */
    public double of(Limit limit) {
        Double own = changed.get(limit);
        return own != null ? own : limit.usual(fuel);
    }

    /** What the user changed. */
    public Map<Limit, Double> changed() {
        return changed;
    }

    /**
     * The same with one limit changed.
     *
     * @throws IllegalArgumentException if {@code value} isn't within the limit's bounds
     */
    public Limits with(Limit limit, double value) {
        if (!(value >= limit.least() && value <= limit.most())) {
            throw new IllegalArgumentException(
                    limit.key() + " " + value + " must be from " + limit.least() + " to " + limit.most());
        }
        EnumMap<Limit, Double> copy = new EnumMap<>(Limit.class);
        copy.putAll(changed);
        copy.put(limit, value);
        return new Limits(fuel, copy);
    }

    /** The same with the usual figure for one limit. */
    public Limits without(Limit limit) {
        EnumMap<Limit, Double> copy = new EnumMap<>(Limit.class);
        copy.putAll(changed);
        copy.remove(limit);
        return new Limits(fuel, copy);
    }

    /** The same changes on another fuel's usual limits. */
    public Limits withFuel(Fuel other) {
        return new Limits(other, changed);
    }

    /**
     * The leanest allowed at high load for a target, lambda: the target plus the excess, never above the ceiling. At the edge of high load,
     * where a target table may still be on its way from light load to full load, the ceiling is a little lean of stoichiometric, and
     * nothing richer than the usual ceiling is called lean.
     *
     * @param wellInside whether load is high by more than a little
     */
    public double leanest(double targetLambda, boolean wellInside) {
        double ceiling = of(Limit.LEAN_CEILING);
        double byTarget = targetLambda + of(Limit.LEAN_EXCESS);
        if (wellInside) {
            return byTarget < ceiling ? byTarget : ceiling;
        }
        return byTarget < ceiling + EDGE ? Math.max(byTarget, ceiling) : ceiling + EDGE;
    }

    /** The ceiling at the edge of high load, lambda. */
    double edgeCeiling() {
        return of(Limit.LEAN_CEILING) + EDGE;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Limits l && l.fuel == fuel && l.changed.equals(changed);
    }

    @Override
    public int hashCode() {
        return Objects.hash(fuel, changed);
    }

    @Override
    public String toString() {
        return fuel.words() + changed;
    }
}
