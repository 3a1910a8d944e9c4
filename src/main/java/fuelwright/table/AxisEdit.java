package fuelwright.table;

import java.util.Arrays;
import java.util.function.DoubleFunction;

/**
 * Changes to the breakpoints of a table. The cells are read off the old surface at the new breakpoints ({@link Table#sampledAt}: bilinear,
 * clamped beyond the old ends), so a breakpoint put in leaves the surface as it was; one taken out or moved loses what only it held.
 * What can't be is refused by an {@link IllegalArgumentException} whose message is a sentence for the user.
 */
public final class AxisEdit {

    /** Most breakpoints on an axis. */
    public static final int MOST = 64;

    private static final double MOST_PERCENT = 110;
    private static final double MOST_KPA = 500;
    private static final double MOST_RPM = 30_000;

    private AxisEdit() {}

    /** Which of a table's axes. */
    public enum Side {
        SPEED,
        LOAD;

        public Axis of(Table table) {
            return this == SPEED ? table.speed() : table.load();
        }

        Table put(Table table, double[] breakpoints) {
            Axis old = of(table);
            Axis axis = new Axis(old.kind(), breakpoints);
            Table sampled = this == SPEED ? table.sampledAt(axis, table.load()) : table.sampledAt(table.speed(), axis);
            double[] values = sampled.toArray();
            for (int cell = 0; cell < values.length; cell++) {
                values[cell] = Numerals.tidy(values[cell]);
            }
            return sampled.withValues(values);
        }
    }

    /** One more breakpoint, anywhere. */
    public static Table insert(Table table, Side side, double value) {
        Axis axis = side.of(table);
        possible(axis, value);
        if (axis.size() >= MOST) {
            throw new IllegalArgumentException("An axis has at most " + MOST + " breakpoints; remove one first");
        }
        double[] old = axis.toArray();
        int place = Arrays.binarySearch(old, value);
        if (place >= 0) {
            throw new IllegalArgumentException("There is a breakpoint at " + Numerals.shortest(value) + " already");
        }
        double[] all = Arrays.copyOf(old, old.length + 1);
        all[old.length] = value;
        Arrays.sort(all);
        return side.put(table, all);
    }

    /** One breakpoint less. */
    public static Table remove(Table table, Side side, int index) {
        Axis axis = side.of(table);
        if (axis.size() <= 2) {
            throw new IllegalArgumentException("An axis needs at least 2 breakpoints");
        }
        double[] old = axis.toArray();
        double[] rest = new double[old.length - 1];
        System.arraycopy(old, 0, rest, 0, index);
        System.arraycopy(old, index + 1, rest, index, rest.length - index);
        return side.put(table, rest);
    }

    /** One breakpoint elsewhere, between the same neighbours. */
    public static Table change(Table table, Side side, int index, double value) {
        Axis axis = side.of(table);
        possible(axis, value);
        double[] all = axis.toArray();
        DoubleFunction<String> words = Numerals::shortest;
        if (index > 0 && value <= all[index - 1]) {
            throw new IllegalArgumentException("Breakpoints ascend: this one must be more than "
                    + words.apply(all[index - 1]) + ", the one before it");
        }
        if (index < all.length - 1 && value >= all[index + 1]) {
            throw new IllegalArgumentException("Breakpoints ascend: this one must be less than "
                    + words.apply(all[index + 1]) + ", the one after it");
        }
        all[index] = value;
        return side.put(table, all);
    }

    private static void possible(Axis axis, double value) {
        double most = axis.kind() == Axis.Kind.ENGINE_SPEED
                ? MOST_RPM
                : axis.kind() == Axis.Kind.THROTTLE ? MOST_PERCENT : MOST_KPA;
        if (!(value >= 0 && value <= most)) {
            throw new IllegalArgumentException("A breakpoint of " + axis.kind().words() + " lies from 0 to "
                    + Numerals.shortest(most) + " " + axis.kind().unit().symbol());
        }
    }
}
