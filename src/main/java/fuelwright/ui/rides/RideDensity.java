package fuelwright.ui.rides;

import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Where a ride was in the table: seconds in each cell (the nearest breakpoints), and its path as points between the breakpoints, thinned to
 * where it moved. A row lasts until the next one, but never longer than {@value #LONGEST_S} s: a gap is nobody's time. Immutable.
 */
final class RideDensity {

    private static final double LONGEST_S = 1;
    private static final int MOST_POINTS = 60_000;
    /** Breakpoints that the path must have moved for a new point. */
    private static final double STEP = 0.04;

    private final Table table;
    private final double[] seconds;
    private final float[] path;
    private final double outsideS;

    private RideDensity(Table table, double[] seconds, float[] path, double outsideS) {
        this.table = table;
        this.seconds = seconds;
        this.path = path;
        this.outsideS = outsideS;
    }

    /** Empty where the ride has no engine speed or not the table's load. */
    static Optional<RideDensity> of(Ride ride, Table table) {
        Role load = table.load().kind() == Axis.Kind.MANIFOLD_PRESSURE ? Role.MANIFOLD_PRESSURE : Role.THROTTLE;
        Optional<Column> speeds = ride.column(Role.ENGINE_SPEED);
        Optional<Column> loads = ride.column(load);
        return speeds.isPresent() && loads.isPresent()
                ? Optional.of(of(ride, table, speeds.get(), loads.get()))
                : Optional.empty();
    }

    private static RideDensity of(Ride ride, Table table, Column speeds, Column loads) {
        double[] seconds = new double[table.cells()];
        float[] path = new float[2 * MOST_POINTS];
        int points = 0;
        double outside = 0;
        double step = STEP * Math.max(1, ride.size() / 500_000.0);
        List<Integer> starts = ride.segmentStarts();
        int segment = 1;
        double lastX = Double.NaN;
        double lastY = Double.NaN;
        for (int row = 0; row < ride.size(); row++) {
            boolean ends = row + 1 == ride.size() || segment < starts.size() && starts.get(segment) == row + 1;
            segment += ends ? 1 : 0;
            double rpm = speeds.at(row);
            double value = loads.at(row);
            if (Double.isNaN(rpm) || Double.isNaN(value)) {
                continue;
            }
            double lasts = ends ? 0 : ride.timeS().at(row + 1) - ride.timeS().at(row);
            if (lasts <= LONGEST_S) {
                boolean inside = rpm >= table.speed().first() * 0.85
                        && rpm <= table.speed().last() * 1.15
                        && value <= table.load().last() * 1.15;
                outside += inside ? 0 : lasts;
                seconds[table.cell(table.load().nearest(value), table.speed().nearest(rpm))] += inside ? lasts : 0;
            }
            double x = table.speed().position(rpm);
            double y = table.load().position(value);
            boolean moved = !(Math.abs(x - lastX) < step && Math.abs(y - lastY) < step);
            if (moved && points < MOST_POINTS) {
                path[2 * points] = (float) x;
                path[2 * points + 1] = (float) y;
                points++;
                lastX = x;
                lastY = y;
            }
        }
        return new RideDensity(table, seconds, Arrays.copyOf(path, 2 * points), outside);
    }

    Table table() {
        return table;
    }

    /** Time in a cell, s. */
    double secondsIn(int cell) {
        return seconds[cell];
    }

    /** The longest time in any cell, s. */
    double mostSeconds() {
        return Arrays.stream(seconds).max().orElse(0);
    }

    /** Time far outside the breakpoints, s. */
    double outsideS() {
        return outsideS;
    }

    /** Cells with any time at all. */
    int riddenCells() {
        return (int) Arrays.stream(seconds).filter(s -> s > 0).count();
    }

    int points() {
        return path.length / 2;
    }

    /** Place of a point between the engine-speed breakpoints: 0 at the first, 1 at the second. */
    double x(int point) {
        return path[2 * point];
    }

    /** Place of a point between the load breakpoints. */
    double y(int point) {
        return path[2 * point + 1];
    }
}
