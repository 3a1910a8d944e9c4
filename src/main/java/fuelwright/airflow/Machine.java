package fuelwright.airflow;

import fuelwright.mixture.Fuel;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What is known of the engine and the change to it. Everything but the fuel may be unknown; what can't be worked out then is said, not
 * guessed.
 *
 * @param displacementCc swept volume of all cylinders, cm³
 * @param bodies number of throttle bodies, at least 1; empty where nobody has said it
 * @param before the body that the old table was made for
 * @param after the body that is fitted now
 * @param fuel what is in the tank
 * @param redlineRpm highest engine speed, rpm
 * @param injectors what is known of them
 * @param altitudeM height above sea level where the rides are made, m: stands in for a barometer that wasn't logged
 */
public record Machine(
        OptionalDouble displacementCc,
        OptionalInt bodies,
        Optional<ThrottleBody> before,
        Optional<ThrottleBody> after,
        Fuel fuel,
        OptionalDouble redlineRpm,
        InjectorSet injectors,
        OptionalDouble altitudeM) {

    /** A machine of whose injectors and place nothing is known. */
    public Machine(
            OptionalDouble displacementCc,
            int bodies,
            Optional<ThrottleBody> before,
            Optional<ThrottleBody> after,
            Fuel fuel,
            OptionalDouble redlineRpm) {
        this(
                displacementCc,
                OptionalInt.of(bodies),
                before,
                after,
                fuel,
                redlineRpm,
                InjectorSet.UNKNOWN,
                OptionalDouble.empty());
    }

    public Machine {
        Objects.requireNonNull(displacementCc, "displacementCc");
        Objects.requireNonNull(bodies, "bodies");
        Objects.requireNonNull(before, "before");
        Objects.requireNonNull(after, "after");
        Objects.requireNonNull(fuel, "fuel");
        Objects.requireNonNull(redlineRpm, "redlineRpm");
        Objects.requireNonNull(injectors, "injectors");
        Objects.requireNonNull(altitudeM, "altitudeM");
        if (bodies.isPresent() && bodies.getAsInt() < 1) {
            throw new IllegalArgumentException("bodies " + bodies.getAsInt() + " must be at least 1");
        }
        if (displacementCc.isPresent() && !(displacementCc.getAsDouble() > 0)) {
            throw new IllegalArgumentException("displacementCc " + displacementCc.getAsDouble() + " must be above 0");
        }
    }

    /** A machine of which only the fuel is known. */
    public static Machine unknown() {
        return new Machine(
                OptionalDouble.empty(),
                OptionalInt.empty(),
                Optional.empty(),
                Optional.empty(),
                Fuel.PETROL,
                OptionalDouble.empty(),
                InjectorSet.UNKNOWN,
                OptionalDouble.empty());
    }

    /** The same with so many bodies; empty where it isn't known. */
    public Machine withBodies(OptionalInt other) {
        return new Machine(displacementCc, other, before, after, fuel, redlineRpm, injectors, altitudeM);
    }

    /** The same with another fuel. */
    public Machine with(Fuel other) {
        return new Machine(displacementCc, bodies, before, after, other, redlineRpm, injectors, altitudeM);
    }

    /** The same with other injectors. */
    public Machine with(InjectorSet other) {
        return new Machine(displacementCc, bodies, before, after, fuel, redlineRpm, other, altitudeM);
    }

    /** @param otherM m; empty where it isn't known */
    public Machine withAltitude(OptionalDouble otherM) {
        return new Machine(displacementCc, bodies, before, after, fuel, redlineRpm, injectors, otherM);
    }

    /** Barometer by altitude (ISO 2533), kPa; NaN where that isn't known. */
    public double barometerKpa() {
        return altitudeM.isPresent()
                ? Atmosphere.pressurePa(Atmosphere.geopotentialM(altitudeM.getAsDouble())) / 1000
                : Double.NaN;
    }

    /** Whether enough is known to forecast what the change of bore does. */
    public boolean hasBodyChange() {
        return displacementCc.isPresent() && bodies.isPresent() && before.isPresent() && after.isPresent();
    }
}
