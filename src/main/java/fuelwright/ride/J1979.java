package fuelwright.ride;

import java.util.Optional;

/**
 * The scalings of SAE J1979 / ISO 15031-5 mode 01 parameters that this program reads, for checking what a logger made of them. Values are
 * in the role's canonical unit; equivalence-ratio items are lambda (above 1 is lean), whatever their descriptions say.
 */
public enum J1979 {
    COOLANT(0x05, Role.COOLANT, 1, 1, 1, -40),
    SHORT_TRIM_BANK_1(0x06, Role.SHORT_TRIM, 1, 100, 128, -100),
    LONG_TRIM_BANK_1(0x07, Role.LONG_TRIM, 1, 100, 128, -100),
    MANIFOLD_PRESSURE(0x0B, Role.MANIFOLD_PRESSURE, 1, 1, 1, 0),
    ENGINE_SPEED(0x0C, Role.ENGINE_SPEED, 2, 1, 4, 0),
    VEHICLE_SPEED(0x0D, Role.ROAD_SPEED, 1, 1, 1, 0),
    IGNITION_ADVANCE(0x0E, Role.IGNITION, 1, 1, 2, -64),
    INTAKE_AIR(0x0F, Role.INTAKE_AIR, 1, 1, 1, -40),
    THROTTLE(0x11, Role.THROTTLE, 1, 100, 255, 0),
    LAMBDA_WITH_VOLTAGE(0x24, Role.LAMBDA, 2, 2, 65_536, 0),
    BAROMETER(0x33, Role.BAROMETER, 1, 1, 1, 0),
    LAMBDA_WITH_CURRENT(0x34, Role.LAMBDA, 2, 2, 65_536, 0),
    MODULE_VOLTAGE(0x42, Role.BATTERY, 2, 1, 1000, 0),
    COMMANDED_LAMBDA(0x44, Role.COMMANDED_LAMBDA, 2, 2, 65_536, 0);

    private final int parameter;
    private final Role role;
    private final int bytes;
    private final double factor;
    private final double divisor;
    private final double offset;

    J1979(int parameter, Role role, int bytes, double factor, double divisor, double offset) {
        this.parameter = parameter;
        this.role = role;
        this.bytes = bytes;
        this.factor = factor;
        this.divisor = divisor;
        this.offset = offset;
    }

    /** The item of a parameter number; 25–2B and 35–3B are the further sensors of 24 and 34. */
    public static Optional<J1979> of(int parameter) {
        int first = parameter >= 0x24 && parameter <= 0x2B
                ? 0x24
                : parameter >= 0x34 && parameter <= 0x3B ? 0x34 : parameter;
        for (J1979 item : values()) {
            if (item.parameter == first) {
                return Optional.of(item);
            }
        }
        return Optional.empty();
    }

    public Role role() {
        return role;
    }

    /** How many data bytes the value takes, the first ones of the reply. */
    public int bytes() {
        return bytes;
    }

    /**
     * The value of the first data bytes, the first one the most significant.
     *
     * @param raw 0 to 255, or to 65535 where there are two bytes
     */
    public double value(int raw) {
        if (raw < 0 || raw >= 1 << 8 * bytes) {
            throw new IllegalArgumentException("raw " + raw + " must fit " + bytes + " bytes");
        }
        return raw * factor / divisor + offset;
    }

    /** The smallest value that can be sent. */
    public double lowest() {
        return value(0);
    }

    /** The greatest value that can be sent. */
    public double highest() {
        return value((1 << 8 * bytes) - 1);
    }
}
