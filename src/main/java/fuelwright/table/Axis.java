package fuelwright.table;

import fuelwright.unit.Unit;
import java.util.Arrays;

/**
 * One axis of a table: what it measures and its breakpoints, strictly ascending, at least two. Immutable.
 */
public final class Axis {

    /** What an axis measures. */
    public enum Kind {
        ENGINE_SPEED("engine speed", Unit.RPM),
        THROTTLE("throttle", Unit.PERCENT),
        MANIFOLD_PRESSURE("manifold pressure", Unit.KILOPASCAL);

        private final String words;
        private final Unit unit;

        Kind(String words, Unit unit) {
            this.words = words;
            this.unit = unit;
        }

        /** The name as files and screens write it. */
        public String words() {
            return words;
        }

        /** The unit of the breakpoints, canonical for the kind. */
        public Unit unit() {
            return unit;
        }
    }

    private final Kind kind;
    private final double[] breakpoints;
    /** The axis in equal bins: the interval in which each begins. Finds an interval in one step, a million times a second. */
    private final int[] firstOfBin;

    private final double binsPerUnit;

    /**
     * @param breakpoints at least two, finite, strictly ascending; copied
     * @throws IllegalArgumentException if they aren't
     */
    public Axis(Kind kind, double... breakpoints) {
        if (breakpoints.length < 2) {
            throw new IllegalArgumentException("breakpoints: " + breakpoints.length + ", at least 2 needed");
        }
        for (int i = 0; i < breakpoints.length; i++) {
            if (!Double.isFinite(breakpoints[i]) || i > 0 && breakpoints[i] <= breakpoints[i - 1]) {
                throw new IllegalArgumentException(
                        "breakpoints must be finite and ascending, got " + breakpoints[i] + " at " + i);
            }
        }
        this.kind = kind;
        this.breakpoints = breakpoints.clone();
        int last = breakpoints.length - 1;
        this.firstOfBin = new int[8 * last + 1];
        this.binsPerUnit = 8 * last / (breakpoints[last] - breakpoints[0]);
        int low = 0;
        for (int bin = 0; bin < firstOfBin.length; bin++) {
            // A little to the left of the bin, so that rounding can't put a value into a bin whose start is beyond it.
            double start = breakpoints[0] + (bin - 0.01) / binsPerUnit;
            while (low + 1 < last && breakpoints[low + 1] <= start) {
                low++;
            }
            firstOfBin[bin] = low;
        }
    }

    public Kind kind() {
        return kind;
    }

    public int size() {
        return breakpoints.length;
    }

    public double at(int index) {
        return breakpoints[index];
    }

    public double first() {
        return breakpoints[0];
    }

    public double last() {
        return breakpoints[breakpoints.length - 1];
    }

    /** A copy of the breakpoints. */
    public double[] toArray() {
        return breakpoints.clone();
    }

    /**
     * Where {@code x} lies, as index plus fraction: 2.25 is a quarter of the way from breakpoint 2 to 3. Clamped at both ends; NaN
     * gives NaN.
     */
    public double position(double x) {
        if (Double.isNaN(x)) {
            return Double.NaN;
        }
        int last = breakpoints.length - 1;
        if (x <= breakpoints[0]) {
            return 0;
        }
        if (x >= breakpoints[last]) {
            return last;
        }
        int low = firstOfBin[(int) ((x - breakpoints[0]) * binsPerUnit)];
        while (breakpoints[low + 1] <= x) {
            low++;
        }
        int high = low + 1;
        return low + (x - breakpoints[low]) / (breakpoints[high] - breakpoints[low]);
    }

    /** The index of the breakpoint nearest to {@code x}. */
    public int nearest(double x) {
        int best = 0;
        for (int i = 1; i < breakpoints.length; i++) {
            if (Math.abs(breakpoints[i] - x) < Math.abs(breakpoints[best] - x)) {
                best = i;
            }
        }
        return best;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Axis axis && axis.kind == kind && Arrays.equals(axis.breakpoints, breakpoints);
    }

    @Override
    public int hashCode() {
        return 31 * kind.hashCode() + Arrays.hashCode(breakpoints);
    }

    @Override
    public String toString() {
        return kind + Arrays.toString(breakpoints);
    }
}
