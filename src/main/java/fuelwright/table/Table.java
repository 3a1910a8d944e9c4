package fuelwright.table;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/**
 * A table over engine speed × load. Cells are numbered {@code loadIndex * speed.size() + speedIndex}; that order is the same whatever
 * the orientation of the file it came from. Immutable; arrays are copied in and out.
 */
public final class Table {

    /** Which way a file lays the table out. */
    public enum Orientation {
        /** One row for each engine speed, load across. */
        SPEED_DOWN,
        /** One row for each load, engine speed across. */
        SPEED_ACROSS
    }

    /** Half of it is about what a wideband can tell apart (common practice, no source), %. */
    private static final double COARSEST_OWN_PERCENT = 2.5;

    /** Key of the note that says which cylinder a table feeds, and what may stand there. */
    static final String CYLINDER = "cylinder";

    /** The highest number of a cylinder. */
    public static final int MOST_CYLINDERS = 19;

    static final Pattern CYLINDERS = Pattern.compile("[1-9]|1[0-9]");

    /**
     * A {@code key: value} line above the grid that the program doesn't interpret itself. Line breaks become blanks and blanks at the
     * ends go, so that a note is always one line.
     *
     * @param key without colon; empty for a remark of its own
     */
    public record Note(String key, String value) {

        public Note {
            key = oneLine(key);
            value = oneLine(value);
            if (key.indexOf(':') >= 0) {
                throw new IllegalArgumentException("key " + key + " must not contain a colon");
            }
        }

        private static String oneLine(String text) {
            return text.replaceAll("[\\r\\n]+", " ").strip();
        }
    }

    private final Quantity quantity;
    private final Axis speed;
    private final Axis load;
    private final double[] values;
    private final List<Note> notes;
    private final Orientation orientation;

    /**
     * @param values length {@code speed.size() * load.size()}, in cell order
     * @throws IllegalArgumentException on a length mismatch or an engine-speed axis in the wrong place
     */
    public Table(Quantity quantity, Axis speed, Axis load, double[] values, List<Note> notes, Orientation orientation) {
        if (values.length != speed.size() * load.size()) {
            throw new IllegalArgumentException("values: " + values.length + ", needed " + speed.size() * load.size());
        }
        if (speed.kind() != Axis.Kind.ENGINE_SPEED || load.kind() == Axis.Kind.ENGINE_SPEED) {
            throw new IllegalArgumentException("axes: " + speed.kind() + " × " + load.kind());
        }
        this.quantity = Objects.requireNonNull(quantity, "quantity");
        this.speed = speed;
        this.load = load;
        this.values = values.clone();
        this.notes = List.copyOf(notes);
        this.orientation = Objects.requireNonNull(orientation, "orientation");
    }

    /** A table without notes, one row for each engine speed. */
    public static Table of(Quantity quantity, Axis speed, Axis load, double[] values) {
        return new Table(quantity, speed, load, values, List.of(), Orientation.SPEED_DOWN);
    }

    public Quantity quantity() {
        return quantity;
    }

    public Axis speed() {
        return speed;
    }

    public Axis load() {
        return load;
    }

    public List<Note> notes() {
        return notes;
    }

    public Orientation orientation() {
        return orientation;
    }

    public int cells() {
        return values.length;
    }

    public int cell(int loadIndex, int speedIndex) {
        return loadIndex * speed.size() + speedIndex;
    }

    public int speedIndex(int cell) {
        return cell % speed.size();
    }

    public int loadIndex(int cell) {
        return cell / speed.size();
    }

    /** Engine speed at a cell, rpm. */
    public double speedAt(int cell) {
        return speed.at(speedIndex(cell));
    }

    /** Load at a cell, in the load axis' unit. */
    public double loadAt(int cell) {
        return load.at(loadIndex(cell));
    }

    public double at(int cell) {
        return values[cell];
    }

    /** A copy of all cells, in cell order. */
    public double[] toArray() {
        return values.clone();
    }

    /** Bilinear interpolation with clamping at the edges, as control units do; NaN where an argument is NaN. */
    public double value(double speedRpm, double loadValue) {
        return Bilinear.interpolate(speed, load, values, speedRpm, loadValue);
    }

    /**
     * What each cell really delivers, as a multiplier table on the same axes.
     *
     * @param deadTimeMs injector dead time contained in a pulse table, ms
     * @throws IllegalStateException if this isn't a fuel table
     */
    public Table delivered(double deadTimeMs) {
        double[] fuel = values.clone();
        for (int c = 0; c < fuel.length; c++) {
            fuel[c] = quantity.delivered(fuel[c], deadTimeMs);
        }
        return with(Quantity.MULTIPLIER, fuel);
    }

    /**
     * The step that the table's own figures lie on, which is what its hardware shows and takes: its last digit. No coarser than {@value
     * #COARSEST_OWN_PERCENT} % of a usual cell, as whole figures may be there by chance, nor finer than the quantity is worth.
     */
    public double ownStep() {
        return step(COARSEST_OWN_PERCENT);
    }

    private double step(double coarsestPercent) {
        double finest = quantity.finestStep();
        if (!quantity.isFuel()) {
            return finest;
        }
        int decimals = 0;
        double[] sizes = new double[values.length];
        for (int cell = 0; cell < values.length; cell++) {
            decimals = Math.max(decimals, Numerals.decimals(values[cell]));
            sizes[cell] = quantity == Quantity.FUEL_TRIM ? 100 + values[cell] : Math.abs(values[cell]);
        }
        Arrays.sort(sizes);
        double coarsest = coarsestPercent / 100 * sizes[(sizes.length - 1) / 2];
        double step = 1;
        for (int digits = 0; digits <= decimals || step > coarsest; digits++) {
            step = new BigDecimal(BigInteger.ONE, digits).doubleValue();
            if (step <= finest) {
                return finest;
            }
        }
        return step;
    }

    /** The same axes, notes and orientation with other cells. */
    public Table withValues(double[] cells) {
        return new Table(quantity, speed, load, cells, notes, orientation);
    }

    /** The same axes and orientation with another quantity and no notes. */
    public Table with(Quantity other, double[] cells) {
        return new Table(other, speed, load, cells, List.of(), orientation);
    }

    public Table withNotes(List<Note> other) {
        return new Table(quantity, speed, load, values, other, orientation);
    }

    /** The cylinder that this table alone feeds, counted from 1, by its note; empty where it feeds all. */
    public OptionalInt cylinder() {
        return notes.stream()
                .filter(Table::isCylinder)
                .mapToInt(n -> Integer.parseInt(n.value()))
                .findFirst();
    }

    /** This table with the note of a cylinder that it alone feeds, or without any. */
    public Table ofCylinder(OptionalInt cylinder) {
        List<Note> others = new ArrayList<>(notes);
        others.removeIf(Table::isCylinder);
        cylinder.ifPresent(n -> others.add(0, new Note(CYLINDER, Integer.toString(n))));
        return withNotes(others);
    }

    private static boolean isCylinder(Note note) {
        return note.key().equalsIgnoreCase(CYLINDER)
                && CYLINDERS.matcher(note.value()).matches();
    }

    public Table withOrientation(Orientation other) {
        return new Table(quantity, speed, load, values, notes, other);
    }

    /**
     * This table read off at other breakpoints, clamped at the edges; quantity, notes and orientation stay.
     *
     * @throws IllegalArgumentException if {@code otherLoad} measures something else than this table's load axis
     */
    public Table sampledAt(Axis otherSpeed, Axis otherLoad) {
        if (otherLoad.kind() != load.kind()) {
            throw new IllegalArgumentException("otherLoad " + otherLoad.kind() + " must be " + load.kind());
        }
        double[] sampled = new double[otherSpeed.size() * otherLoad.size()];
        for (int cell = 0; cell < sampled.length; cell++) {
            sampled[cell] = value(otherSpeed.at(cell % otherSpeed.size()), otherLoad.at(cell / otherSpeed.size()));
        }
        return new Table(quantity, otherSpeed, otherLoad, sampled, notes, orientation);
    }

    /** Whether the two tables have the same breakpoints on both axes. */
    public boolean sameAxes(Table other) {
        return speed.equals(other.speed) && load.equals(other.load);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Table t
                && t.quantity == quantity
                && t.orientation == orientation
                && sameAxes(t)
                && Arrays.equals(t.values, values)
                && t.notes.equals(notes);
    }

    @Override
    public int hashCode() {
        return Objects.hash(quantity, orientation, speed, load, notes, Arrays.hashCode(values));
    }

    @Override
    public String toString() {
        return quantity.words() + " " + speed.size() + "×" + load.size();
    }
}
