package fuelwright.ride;

import fuelwright.unit.Dimension;
import java.util.Locale;
import java.util.Optional;

/** What a channel means. Values in memory are in the dimension's canonical unit; every mixture role holds lambda. */
public enum Role {
    TIME("time", Dimension.TIME),
    ENGINE_SPEED("engine speed", Dimension.ENGINE_SPEED),
    THROTTLE("throttle", Dimension.PERCENTAGE),
    MANIFOLD_PRESSURE("manifold pressure", Dimension.PRESSURE),
    LAMBDA("lambda", Dimension.MIXTURE),
    AFR("AFR", Dimension.MIXTURE),
    EQUIVALENCE_RATIO("equivalence ratio", Dimension.MIXTURE),
    WIDEBAND_VOLTS("wideband volts", Dimension.MIXTURE),
    COMMANDED_LAMBDA("commanded lambda", Dimension.MIXTURE),
    SHORT_TRIM("short trim", Dimension.PERCENTAGE),
    LONG_TRIM("long trim", Dimension.PERCENTAGE),
    INJECTOR_PULSE("injector pulse", Dimension.TIME),
    COOLANT("coolant", Dimension.TEMPERATURE),
    INTAKE_AIR("intake air", Dimension.TEMPERATURE),
    BAROMETER("barometer", Dimension.PRESSURE),
    BATTERY("battery", Dimension.VOLTAGE),
    ROAD_SPEED("road speed", Dimension.ROAD_SPEED),
    GEAR("gear", Dimension.NUMBER),
    FUEL_CUT("fuel cut", Dimension.NUMBER),
    IGNITION("ignition", Dimension.ANGLE),
    EXHAUST_TEMPERATURE("exhaust temperature", Dimension.TEMPERATURE),
    KNOCK("knock", Dimension.NUMBER),
    POWER("power", Dimension.POWER),
    TORQUE("torque", Dimension.TORQUE),
    /** A channel whose meaning isn't known: shown, never dropped, never used. */
    OTHER("other", Dimension.NUMBER);

    private final String words;
    private final Dimension dimension;

    Role(String words, Dimension dimension) {
        this.words = words;
        this.dimension = dimension;
    }

    /** The name as files, screens and {@code --role} write it. */
    public String words() {
        return words;
    }

    public Dimension dimension() {
        return dimension;
    }

    /** Whether the channel is a measured mixture: its values in memory are lambda. */
    public boolean isMixture() {
        return this == LAMBDA || this == AFR || this == EQUIVALENCE_RATIO || this == WIDEBAND_VOLTS;
    }

    /** The role written as {@code text}, by {@link #words} or by its name here, in any case. */
    public static Optional<Role> parse(String text) {
        String plain = text.strip().toLowerCase(Locale.ROOT).replace('_', ' ');
        for (Role role : values()) {
            if (role.words.toLowerCase(Locale.ROOT).equals(plain)
                    || role.name().toLowerCase(Locale.ROOT).replace('_', ' ').equals(plain)) {
                return Optional.of(role);
            }
        }
        return Optional.empty();
    }
}
