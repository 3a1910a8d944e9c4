package fuelwright.job;

import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.Objects;
import java.util.Optional;

/**
 * What the tuning hardware takes. The smallest step of a cell is among the proposal's settings, as the rounding needs it.
 *
 * @param name what the user calls it
 * @param holds what its cells hold
 * @param least least figure of a cell that it takes, in its own unit; −∞: no bound
 * @param most greatest figure of a cell that it takes; +∞: no bound
 * @param speed its own breakpoints of engine speed; empty: those of the fuel table
 * @param load its own breakpoints of load; empty: those of the fuel table
 * @param orientation how it lays out its grid; empty: as the fuel table's file
 * @param comma whether it writes a comma as decimal sign, where that was chosen
 * @param cells what its cells hold now, where that was said and they hold a change or a multiplier: typed figures stand on the table that the
 *     control unit holds beneath them, never on each other
 * @param told whether anybody said what it takes, be it that it takes the table as it is
 */
public record HardwareProfile(
        String name,
        Holds holds,
        double least,
        double most,
        Optional<Axis> speed,
        Optional<Axis> load,
        Optional<Table.Orientation> orientation,
        Optional<Boolean> comma,
        Optional<Table> cells,
        boolean told) {

    /** What a cell of the hardware's table means. */
    public enum Holds {
        VALUE("the table's own figure"),
        PERCENT_CHANGE("percent change"),
        MULTIPLIER("multiplier");

        private final String words;

        Holds(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public HardwareProfile {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(holds, "holds");
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(load, "load");
        Objects.requireNonNull(orientation, "orientation");
        Objects.requireNonNull(comma, "comma");
        Objects.requireNonNull(cells, "cells");
        if (!(least < most)) {
            throw new IllegalArgumentException("least " + least + " must be below most " + most);
        }
    }

    /** Told, without a word on what its cells hold now. */
    public HardwareProfile(
            String name,
            Holds holds,
            double least,
            double most,
            Optional<Axis> speed,
            Optional<Axis> load,
            Optional<Table.Orientation> orientation,
            boolean decimalComma) {
        this(name, holds, least, most, speed, load, orientation, Optional.of(decimalComma), Optional.empty(), true);
    }

    /** @param now empty where it isn't known */
    public HardwareProfile withCells(Optional<Table> now) {
        return new HardwareProfile(name, holds, least, most, speed, load, orientation, comma, now, told);
    }

    /** Somebody said that this is what it takes. */
    public HardwareProfile asTold() {
        return new HardwareProfile(name, holds, least, most, speed, load, orientation, comma, cells, true);
    }

    /** Whether it takes the table as it is, in every respect but the decimal sign. */
    boolean takesTableAsItIs() {
        return keepsCells() && Double.isInfinite(least) && Double.isInfinite(most) && orientation.isEmpty();
    }

    /** Whether its cells are those of the fuel table: same meaning, same breakpoints. Else steps are those of its own cells. */
    public boolean keepsCells() {
        return holds == Holds.VALUE && speed.isEmpty() && load.isEmpty();
    }

    /** Hardware that takes the table as it is. */
    public static HardwareProfile plain() {
        return new HardwareProfile(
                "",
                Holds.VALUE,
                Double.NEGATIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                false);
    }
}
