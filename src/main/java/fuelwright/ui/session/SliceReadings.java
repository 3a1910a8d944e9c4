package fuelwright.ui.session;

import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import fuelwright.work.Analysis;
import java.util.ArrayList;
import java.util.List;

/**
 * The readings that count along one row or column of the table, as they were logged. Near means that at least half of the interpolation's
 * weight across the line lies on it.
 *
 * @param dots at most {@value #MOST}, spread evenly over all of them
 * @param counting how many there are
 * @param rebased whether some are of a ride made with another table, and shown as they would have been with this one
 */
public record SliceReadings(List<Dot> dots, int counting, boolean rebased) {

    private static final double NEAR = 0.5;
    private static final int MOST = 2000;

    /** Where along the line, in the axis's unit, and how far from the target, %. */
    public record Dot(double at, double shortfallPercent) {}

    public SliceReadings {
        dots = List.copyOf(dots);
    }

    /**
     * @param cell a cell on the line
     * @param alongSpeed whether the line goes along engine speed, at that cell's load
     */
    public static SliceReadings of(Analysis analysis, int cell, boolean alongSpeed) {
        Table table = analysis.proposal().before();
        Axis across = alongSpeed ? table.load() : table.speed();
        int line = alongSpeed ? table.loadIndex(cell) : table.speedIndex(cell);
        List<Dot> all = new ArrayList<>();
        boolean rebased = false;
        for (int r = 0; r < analysis.screened().size(); r++) {
            ScreenedRide ride = analysis.screened().get(r);
            int before = all.size();
            LoggedShortfall.of(analysis, r).ifPresent(logged -> {
                for (int row = 0; row < logged.rows(); row++) {
                    double off = alongSpeed ? logged.load(row) : logged.speedRpm(row);
                    if (ride.counts(row) && logged.has(row) && Math.abs(across.position(off) - line) <= NEAR) {
                        all.add(new Dot(alongSpeed ? logged.speedRpm(row) : logged.load(row), logged.percent(row)));
                    }
                }
            });
            rebased |= all.size() > before
                    && LoggedShortfall.otherTable(analysis, r).isPresent();
        }
        int step = Math.max(1, (all.size() + MOST - 1) / MOST);
        List<Dot> some = new ArrayList<>();
        for (int i = 0; i < all.size(); i += step) {
            some.add(all.get(i));
        }
        return new SliceReadings(some, all.size(), rebased);
    }
}
