package fuelwright.table;

import fuelwright.unit.Unit;

/**
 * What the cells of a table hold, with the arithmetic of correcting it. For a factor k on the fuel that is really delivered: efficiency
 * and multiplier v·k; pulse with dead time d + (v − d)·k; trim ((1 + v/100)·k − 1)·100.
 */
public enum Quantity {
    VOLUMETRIC_EFFICIENCY("volumetric efficiency", "%"),
    INJECTOR_PULSE("injector pulse", "ms"),
    FUEL_TRIM("fuel trim", "%"),
    MULTIPLIER("multiplier", "1"),
    LAMBDA("lambda", "1"),
    AFR("AFR", "1"),
    CHANGE("change", "%"),
    SHORTFALL("shortfall", "%"),
    UNCERTAINTY("uncertainty", "%"),
    READINGS("readings", "1");

    private final String words;
    private final String unit;

    Quantity(String words, String unit) {
        this.words = words;
        this.unit = unit;
    }

    /** The name as files and screens write it. */
    public String words() {
        return words;
    }

    /** The unit's symbol as files write it. */
    public String unit() {
        return unit;
    }

    /** Whether a control unit holds its fuel in this quantity. */
    public boolean isFuel() {
        return ordinal() <= MULTIPLIER.ordinal();
    }

    /** Whether this is a mixture: a target table's quantity. */
    public boolean isMixture() {
        return this == LAMBDA || this == AFR;
    }

    /**
     * The fuel that a cell's value really delivers, in arbitrary proportion: pulse less dead time, 1 + trim/100, or the value.
     *
     * @param deadTimeMs injector dead time contained in the pulse, ms; ignored for the other quantities
     * @throws IllegalStateException if this isn't a fuel quantity
     */
    public double delivered(double value, double deadTimeMs) {
        switch (this) {
            case VOLUMETRIC_EFFICIENCY:
            case MULTIPLIER:
                return value;
            case INJECTOR_PULSE:
                return value - deadTimeMs;
            case FUEL_TRIM:
                return 1 + value / 100;
            default:
                throw new IllegalStateException(words + " is no fuel quantity");
        }
    }

    /** The inverse of {@link #delivered}. */
    public double fromDelivered(double delivered, double deadTimeMs) {
        switch (this) {
            case VOLUMETRIC_EFFICIENCY:
            case MULTIPLIER:
                return delivered;
            case INJECTOR_PULSE:
                return delivered + deadTimeMs;
            case FUEL_TRIM:
                return (delivered - 1) * 100;
            default:
                throw new IllegalStateException(words + " is no fuel quantity");
        }
    }

    /** The value that delivers {@code factor} times the fuel. */
    public double corrected(double value, double factor, double deadTimeMs) {
        return fromDelivered(delivered(value, deadTimeMs) * factor, deadTimeMs);
    }

    /** The factor on delivered fuel between two values of a cell. */
    public double factor(double from, double to, double deadTimeMs) {
        return delivered(to, deadTimeMs) / delivered(from, deadTimeMs);
    }

    /** The last digit that a computed cell is worth writing with, in the quantity's unit: about 0.01 % of fuel. */
    public double finestStep() {
        switch (this) {
            case INJECTOR_PULSE:
                return 0.001;
            case MULTIPLIER:
            case LAMBDA:
                return 0.0001;
            case AFR:
                return 0.001;
            default:
                return 0.01;
        }
    }

    /** The display unit as data. */
    public Unit unitAsData() {
        return Unit.parse(unit).orElseThrow();
    }
}
