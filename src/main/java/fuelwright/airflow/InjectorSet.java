package fuelwright.airflow;

import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The injectors, as far as they are known.
 *
 * @param count how many feed the engine at full load
 * @param beforeCm3PerMin flow of each that the old table was made for, held open at the fuel pressure in use, cm³/min
 * @param afterCm3PerMin flow of each that is fitted now, cm³/min
 * @param deadTimeMs time of each pulse in which one that is fitted now delivers nothing, ms; says nothing of what a table's pulses contain
 */
public record InjectorSet(
        OptionalInt count, OptionalDouble beforeCm3PerMin, OptionalDouble afterCm3PerMin, OptionalDouble deadTimeMs) {

    /** Nothing is known of them. */
    public static final InjectorSet UNKNOWN = new InjectorSet(
            OptionalInt.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    public InjectorSet {
        Objects.requireNonNull(count, "count");
        Objects.requireNonNull(beforeCm3PerMin, "beforeCm3PerMin");
        Objects.requireNonNull(afterCm3PerMin, "afterCm3PerMin");
        Objects.requireNonNull(deadTimeMs, "deadTimeMs");
        if (count.isPresent() && count.getAsInt() < 1) {
            throw new IllegalArgumentException("count " + count.getAsInt() + " must be at least 1");
        }
        if (!(beforeCm3PerMin.orElse(1) > 0) || !(afterCm3PerMin.orElse(1) > 0)) {
            throw new IllegalArgumentException(
                    "flows " + beforeCm3PerMin + " and " + afterCm3PerMin + " must be above 0");
        }
        if (!(deadTimeMs.orElse(0) >= 0)) {
            throw new IllegalArgumentException("deadTimeMs " + deadTimeMs + " must be at least 0");
        }
    }

    /** By how much more each delivers now than before, as a factor; empty where one of the two isn't known. */
    public OptionalDouble ratio() {
        return beforeCm3PerMin.isPresent() && afterCm3PerMin.isPresent()
                ? OptionalDouble.of(afterCm3PerMin.getAsDouble() / beforeCm3PerMin.getAsDouble())
                : OptionalDouble.empty();
    }
}
