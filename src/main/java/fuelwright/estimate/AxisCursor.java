package fuelwright.estimate;

import fuelwright.table.Axis;

/**
 * Where values lie on an axis, one after another: the same figures as {@link Axis#position}, quicker where the next lies near the last. Mutable, not
 * thread-safe.
 */
final class AxisCursor {

    private final double[] breakpoints;
    private final int last;
    private int low;

    AxisCursor(Axis axis) {
        breakpoints = axis.toArray();
        last = breakpoints.length - 1;
    }

    /** As {@link Axis#position}. */
    double position(double x) {
        double[] b = breakpoints;
        if (!(x >= b[low] && x < b[low + 1])) {
            if (Double.isNaN(x)) {
                return Double.NaN;
            }
            if (x <= b[0]) {
                return 0;
            }
            if (x >= b[last]) {
                return last;
            }
            while (x < b[low]) {
                low--;
            }
            while (x >= b[low + 1]) {
                low++;
            }
        }
        return low + (x - b[low]) / (b[low + 1] - b[low]);
    }
}
